import type { PartUse } from "@trunnion/api";
import { type PartFit, partFitWords } from "@trunnion/register";

type NamedFit = PartFit & { readonly seriesName: string };

/** "Series 2, 1 to 199: original". */
export function sayFit({ seriesName, serialFrom, serialTo, standing }: NamedFit): string {
  const from = serialFrom === undefined ? "the first" : String(serialFrom);
  const to = serialTo === undefined ? "the last" : String(serialTo);
  const span = serialFrom === undefined && serialTo === undefined ? "" : `, ${from} to ${to}`;
  return `${seriesName}${span}: ${partFitWords[standing]}`;
}

const cars = (count: number) => (count === 1 ? "1 car" : `${count} cars`);

/** How many cars depend on a part and how that is known, a line each; what would be nought is left out. */
export function sayUse({ recorded, presumed, open }: PartUse): readonly string[] {
  const lines = [
    recorded === 0 ? [] : [`${cars(recorded)} recorded with it`],
    presumed === 0 ? [] : [`${cars(presumed)} had it from the works`],
    open === 0 ? [] : [`${cars(open)} of which the record does not say`],
  ].flat();
  return lines.length === 0 ? ["no car known"] : lines;
}
