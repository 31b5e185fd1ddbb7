import type { SheetModel } from "@trunnion/register";
import { type CheckRow, checkRow, type RowSetting } from "./check-row";

/** A station of the walk with its checks measured. */
export interface WalkStation {
  readonly name: string;
  readonly rows: readonly CheckRow[];
}

/** Room for checks on one page: two columns of one height. */
export interface Region {
  readonly page: number;
  readonly height: number;
}

export type Placed = { readonly page: number; readonly column: 0 | 1; readonly down: number } & (
  | { readonly name: string }
  | { readonly row: CheckRow }
);

export const stationHeight = 15;

export function walkOf(model: SheetModel, setting: RowSetting): readonly WalkStation[] {
  let number = 0;
  return model.stations.map(({ label, checks }, at) => ({
    name: `${at + 1}  ${label}`,
    rows: checks.map((check) => checkRow(check, ++number, setting)),
  }));
}

/**
 * Puts the checks into columns in walking order, each column under the name of the station it continues. Answers
 * undefined where they do not fit.
 */
export function placeIn(
  walk: readonly WalkStation[],
  regions: readonly Region[],
): readonly Placed[] | undefined {
  const columns = regions.flatMap((region) => [
    { ...region, column: 0 as const },
    { ...region, column: 1 as const },
  ]);
  const placed: Placed[] = [];
  let at = 0;
  let down = 0;
  for (const { name, rows } of walk) {
    for (const [index, row] of rows.entries()) {
      const whole = row.height + stationHeight;
      if (down + (index === 0 || down === 0 ? whole : row.height) > (columns[at]?.height ?? 0)) {
        at = columns.findIndex((one, next) => next > at && one.height >= whole);
        down = 0;
      }
      const column = columns[at];
      if (column === undefined) return undefined;
      const where = { page: column.page, column: column.column };
      if (index === 0 || down === 0) {
        placed.push({ ...where, down, name: index === 0 ? name : `${name}, continued` });
        down += stationHeight;
      }
      placed.push({ ...where, down, row });
      down += row.height;
    }
  }
  return placed;
}

/** The lowest last region that still takes the checks, so that both its columns end together. */
export function levelled(walk: readonly WalkStation[], regions: readonly Region[]): readonly Region[] {
  const last = regions.at(-1);
  if (last === undefined) return regions;
  const before = regions.slice(0, -1);
  let low = 0;
  let high = last.height;
  while (high - low > 2) {
    const middle = (low + high) / 2;
    if (placeIn(walk, [...before, { ...last, height: middle }]) === undefined) low = middle;
    else high = middle;
  }
  return [...before, { ...last, height: high }];
}
