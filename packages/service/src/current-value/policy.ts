import { Prisma, type Verdict } from "@trunnion/db";
import { type Origin, type Side, saySince, stateKey, type Value } from "@trunnion/register";
import type { Assessment } from "../assessment";
import { type ValueColumns, valueColumns } from "../value-columns";

/** A row of current values as it is written. */
export interface CurrentRow extends ValueColumns {
  readonly carId: string;
  readonly characteristic: string;
  readonly side: Side;
  readonly origin: Origin;
  readonly originId: string;
  /** ISO day. */
  readonly since: string | null;
  readonly sinceText: string | null;
  readonly nominalNumber: number | null;
  readonly verdict: Verdict;
}

const numberOf = (value: Value | undefined) => (value?.kind === "quantity" ? value.si : null);

/** The rows of current values that an assessment amounts to: what only the specification says is no value of the car. */
export function currentRows({ record, state, deviations }: Assessment): readonly CurrentRow[] {
  const compared = new Map(
    deviations.map((deviation) => [stateKey(deviation.characteristic, deviation.side), deviation]),
  );
  const known = [...state.entries()].filter(([, { origin }]) => origin !== "specification");
  return known.map(([key, standing]) => ({
    carId: record.id,
    characteristic: standing.characteristic,
    side: standing.side,
    ...valueColumns(standing.value),
    origin: standing.origin,
    originId: standing.originId,
    since: standing.since ?? null,
    sinceText: saySince(standing) ?? null,
    nominalNumber: numberOf(compared.get(key)?.nominal),
    verdict: compared.get(key)?.verdict ?? "notRecorded",
  }));
}

/** Columns of a current value beside its car, in the order they are read in. */
const fields = [
  "characteristic",
  "side",
  "valueKind",
  "entered",
  "number",
  "resolution",
  "text",
  "origin",
  "originId",
  "since",
  "sinceText",
  "nominalNumber",
  "verdict",
] as const satisfies readonly (keyof CurrentRow)[];

/** The current values of each car as they stand, one row a car, JSON as text; a car without any is left out. */
export const heldSql = (carIds: readonly string[]): Prisma.Sql =>
  Prisma.sql`SELECT v.car_id::text AS car, json_agg(json_build_array(v.characteristic, v.side, v.value_kind, v.entered, v.number,
      v.resolution, v.text, v.origin, v.origin_id, v.since, v.since_text, v.nominal_number, v.verdict))::text AS held
    FROM current_value v WHERE v.car_id = ANY(${[...carIds]}::uuid[]) GROUP BY v.car_id`;

/** Columns of a row that {@link heldSql} read. */
export type HeldCells = readonly (string | number | null)[];

/** How a row is told among those of its car. */
export const heldKey = ([characteristic, side]: HeldCells): string =>
  stateKey(String(characteristic), side as Side);

/** Whether a row as it stands is not what was worked out. */
export const differs = (held: HeldCells, worked: CurrentRow): boolean =>
  fields.some((field, place) => held[place] !== worked[field]);

/** Whether a car's rows as they stand are not, one by one, those that were worked out. */
export function rowsDiffer(held: readonly HeldCells[], worked: readonly CurrentRow[]): boolean {
  if (held.length !== worked.length) return true;
  const standing = new Map(held.map((cells) => [heldKey(cells), cells]));
  return worked.some((row) => {
    const cells = standing.get(stateKey(row.characteristic, row.side));
    return cells === undefined || differs(cells, row);
  });
}
