import type { WorkingStep } from "../catalogue/computation";
import type { Dimension } from "../quantity/dimension";

/** One line worked out: symbol, label, formula, value in SI, dimension, unit to print in, note. */
export type WorkedLine = readonly [
  symbol: string,
  label: string,
  formula: string,
  value: number | null,
  dimension: Dimension,
  unit?: string | undefined,
  note?: string | undefined,
];

/**
 * Lines of a working from rows, so that an entry shows them as the table they are. A row whose value is `null` was
 * not worked out and is left out.
 */
export function worked(rows: readonly WorkedLine[]): WorkingStep[] {
  return rows.flatMap(([symbol, label, formula, value, dimension, unit, note]) => {
    if (value === null) return [];
    const step = { symbol, label, formula, value, dimension };
    return [{ ...step, ...(unit === undefined ? {} : { unit }), ...(note === undefined ? {} : { note }) }];
  });
}
