import { v7 as uuid } from "uuid";
import type { Context } from "../context";
import type { PlannedRow } from "../planned-row";
import { type CarRecord, recordsOf } from "../record";
import { type CarChanges, type ChangeBasis, changesOf, nothingNew, type PresentKeeper } from "./policy";

/** A row with the car it is about, known or new. */
export interface CarRow {
  readonly planned: PlannedRow;
  readonly record: CarRecord | undefined;
  readonly keeper: PresentKeeper | undefined;
  /** The span of what has become of it that is open now. */
  readonly openSpanId: string | undefined;
  readonly changes: CarChanges;
  readonly carId: string;
}

async function keepersOf(
  ctx: Context,
  carIds: readonly string[],
): Promise<ReadonlyMap<string, PresentKeeper>> {
  const rows = await ctx.db.keepership.findMany({
    where: { carId: { in: [...carIds] }, to: null },
    select: { id: true, carId: true, fromText: true, keeper: true },
  });
  return new Map(
    rows.map(({ id, carId, fromText, keeper }) => [
      carId,
      { ...keeper, since: fromText, keepershipId: id, keeperId: keeper.id },
    ]),
  );
}

async function openSpansOf(ctx: Context, carIds: readonly string[]): Promise<ReadonlyMap<string, string>> {
  const rows = await ctx.db.carStatusSpan.findMany({
    where: { carId: { in: [...carIds] }, to: null },
    select: { id: true, carId: true },
  });
  return new Map(rows.map(({ id, carId }) => [carId, id]));
}

/** Keeps others from changing these cars until the transaction ends, so that what is read of them still holds when it is written. */
async function hold({ db }: Context, carIds: readonly string[]): Promise<void> {
  await db.$queryRaw`SELECT id FROM car WHERE id = ANY(${carIds}::uuid[]) ORDER BY id FOR UPDATE`;
}

/**
 * Puts rows beside the cars the register has already, and says what each would change.
 *
 * @param held for writing: the cars are kept from others until the transaction ends
 */
export async function meetRecords(
  ctx: Context,
  rows: readonly PlannedRow[],
  basis: ChangeBasis & { readonly held: boolean },
): Promise<readonly CarRow[]> {
  const found = await ctx.db.car.findMany({
    where: { chassisKey: { in: rows.map(({ key }) => key) } },
    select: { id: true, chassisKey: true, claim: true },
  });
  const ids = new Map(found.map(({ id, chassisKey, claim }) => [`${chassisKey} ${claim}`, id]));
  const known = [...ids.values()];
  const none = known.length === 0;
  if (basis.held && !none) await hold(ctx, known);
  const records = new Map((none ? [] : await recordsOf(ctx, known)).map((record) => [record.id, record]));
  const keepers = none ? new Map<string, PresentKeeper>() : await keepersOf(ctx, known);
  const spans = none ? new Map<string, string>() : await openSpansOf(ctx, known);
  return rows.map((planned) => {
    const id = ids.get(`${planned.key} ${planned.claim}`);
    const record = id === undefined ? undefined : records.get(id);
    const keeper = id === undefined ? undefined : keepers.get(id);
    return {
      planned,
      record,
      keeper,
      openSpanId: id === undefined ? undefined : spans.get(id),
      changes: changesOf(planned, { record, keeper }, basis),
      carId: id ?? uuid(),
    };
  });
}

/** Those of the rows that say something the register does not say yet. */
export function movedRows(rows: readonly CarRow[]): readonly CarRow[] {
  return rows.filter(({ changes }) => !nothingNew(changes));
}
