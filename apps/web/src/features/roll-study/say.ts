import type { RollStudy } from "@trunnion/api";
import { printQuantity } from "@trunnion/calc";

type Field = RollStudy["fields"][number];

/** Most that is named: a linkage lacks two dozen coordinates at once. */
const NAMED = 4;

function sayMissing(missing: readonly string[]): string {
  const [named, rest] = [missing.slice(0, NAMED).join(", "), missing.length - NAMED];
  return rest <= 0 ? named : `${named}, and ${rest} more`;
}

/** What the record says of a figure, or what it lacks; for the field and the line below it. */
export function sayRecorded({ si, unit, dimension, from, origin, missing }: Field): {
  readonly value: string;
  readonly words: string;
} {
  if (si !== undefined) {
    const value = printQuantity(si, { dimension, ...(unit === "" ? {} : { unit }) });
    const known = origin === "specification" ? "as specified, not measured on this car" : "on the record";
    return { value, words: `Left empty: ${value}, ${known}${from === undefined ? "" : ` (${from})`}` };
  }
  return {
    value: "",
    words:
      missing.length === 0
        ? "The register keeps no such figure."
        : `Not on the record: ${sayMissing(missing)}.`,
  };
}
