import type { PlanField } from "@trunnion/register";

/** What the record gives for a figure, for the line below its field. */
export function sayGiven({ si, from, specified }: PlanField): string {
  if (si === undefined && specified !== undefined)
    return `Specified: ${specified}. What it reads now is not on the record.`;
  if (si === undefined) return "Not on the record.";
  return specified === undefined
    ? `Left empty: ${from}, from the record.`
    : `Left empty: ${from}, as specified, not measured on this car.`;
}
