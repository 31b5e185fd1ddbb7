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

export const stationHeight = 13;

export function walkOf(model: SheetModel, setting: RowSetting): readonly WalkStation[] {
  let number = 0;
  return model.stations.map(({ label, checks }, at) => ({
    name: `${at + 1}  ${label}`,
    rows: checks.map((check) => checkRow(check, ++number, setting)),
  }));
}

/** What is told of each thing put into a column: the station whose name goes there, or a row. */
type Put = (column: number, down: number, station: WalkStation, row: number) => void;

const nothing: Put = () => undefined;

/** Whether the checks fit, in walking order; tells `put` where each goes, -1 being the station's name. */
function walkThrough(walk: readonly WalkStation[], heights: readonly number[], put: Put): boolean {
  let at = 0;
  let down = 0;
  for (const station of walk) {
    const { rows } = station;
    for (let index = 0; index < rows.length; index++) {
      const height = rows[index]?.height ?? 0;
      const whole = height + stationHeight;
      if (down + (index === 0 || down === 0 ? whole : height) > (heights[at] ?? 0)) {
        do at++;
        while (at < heights.length && (heights[at] ?? 0) < whole);
        down = 0;
      }
      if (at >= heights.length) return false;
      if (index === 0 || down === 0) {
        put(at, down, station, -1 - index);
        down += stationHeight;
      }
      put(at, down, station, index);
      down += height;
    }
  }
  return true;
}

const columnHeights = (regions: readonly Region[]) => regions.flatMap(({ height }) => [height, height]);

/** Whether the checks fit into regions, two columns each. */
export function fits(walk: readonly WalkStation[], regions: readonly Region[]): boolean {
  return walkThrough(walk, columnHeights(regions), nothing);
}

/**
 * Puts the checks into columns in walking order, each column under the name of the station it continues; they must fit.
 */
export function placeIn(walk: readonly WalkStation[], regions: readonly Region[]): readonly Placed[] {
  const placed: Placed[] = [];
  walkThrough(walk, columnHeights(regions), (column, down, { name, rows }, at) => {
    const where = { page: regions[column >> 1]?.page ?? 0, column: column % 2 === 0 ? 0 : 1, down } as const;
    const row = rows[at];
    if (row !== undefined) placed.push({ ...where, row });
    else placed.push({ ...where, name: at === -1 ? name : `${name}, continued` });
  });
  return placed;
}

/** The lowest last region that still takes the checks, so that both its columns end together. */
export function levelled(walk: readonly WalkStation[], regions: readonly Region[]): readonly Region[] {
  const last = regions.at(-1);
  if (last === undefined) return regions;
  const before = regions.slice(0, -1);
  let low = 0;
  let high = last.height;
  while (high - low > 4) {
    const middle = (low + high) / 2;
    if (!fits(walk, [...before, { ...last, height: middle }])) low = middle;
    else high = middle;
  }
  return [...before, { ...last, height: high }];
}
