import type { SheetModel } from "@trunnion/register";
import { raised } from "./check-row";

/** The sources of a sheet's checks, numbered in the order they come up; common practice needs no number. */
export interface Footnotes {
  readonly of: (source: string) => number | undefined;
  readonly lines: readonly string[];
}

const unnumbered = new Set(["", "common practice", "The record of this car"]);

export function footnotesOf({ stations }: Pick<SheetModel, "stations">): Footnotes {
  const numbers = new Map<string, number>();
  for (const { source } of stations.flatMap(({ checks }) => checks)) {
    if (!unnumbered.has(source) && !numbers.has(source)) numbers.set(source, numbers.size + 1);
  }
  return {
    of: (source) => numbers.get(source),
    lines: [...numbers].map(([source, number]) => `${raised(number)} ${source}`),
  };
}
