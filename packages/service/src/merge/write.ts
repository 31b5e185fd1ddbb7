import { chassisKey, refused } from "@trunnion/register";
import { z } from "zod";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { rebuildCurrentValues } from "../current-value";
import { lineInput } from "../entry-input";
import { writeJournal } from "../journal";
import { carReference } from "../record";
import { requireRole } from "../role";
import { type MergeRow, mergingFacts, mergingRows, movingRows } from "./read";

/** Two records of one car: everything goes to the one, the other stays as a pointer. */
export const mergeCarsInput = z.object({
  into: lineInput(60).min(1),
  from: lineInput(60).min(1),
  intoVersion: z.coerce.number().int().min(1),
  fromVersion: z.coerce.number().int().min(1),
  reason: lineInput(500).default(""),
});
export type MergeCarsInput = z.infer<typeof mergeCarsInput>;

const ids = (rows: readonly { readonly id: string }[]) => ({ id: { in: rows.map(({ id }) => id) } });

async function moveStatements({ db, now }: Context, into: MergeRow, from: MergeRow): Promise<void> {
  const moving = movingRows(into, from);
  const carId = into.id;
  await db.carIdentity.updateMany({ where: ids(moving.identities), data: { carId } });
  await db.carStatusSpan.updateMany({ where: ids(moving.statuses), data: { carId } });
  await db.keepership.updateMany({ where: ids(moving.keeperships), data: { carId } });
  await db.carOption.deleteMany({
    where: { carId: from.id, code: { in: moving.options.map(({ code }) => code) } },
  });
  await db.carOption.createMany({ data: moving.options.map(({ code }) => ({ carId, code })) });
  const standing = new Set(
    into.asBuilt.filter((one) => one.supersededAt === null).map((one) => `${one.characteristic} ${one.side}`),
  );
  // Where both say something, what the remaining record says stands; the other stays readable as superseded.
  const second = from.asBuilt.filter(
    (one) => one.supersededAt === null && standing.has(`${one.characteristic} ${one.side}`),
  );
  await db.asBuiltValue.updateMany({ where: ids(second), data: { supersededAt: now } });
  await db.asBuiltValue.updateMany({ where: { carId: from.id }, data: { carId } });
}

/** Modifications and sheets keep their order behind those of the other record: places are unique on a car. */
async function moveLife({ db }: Context, into: MergeRow, from: MergeRow): Promise<void> {
  const carId = into.id;
  const last = (rows: readonly { readonly sequence: number }[]) =>
    rows.reduce((most, { sequence }) => Math.max(most, sequence), 0);
  const [modified, measured] = [last(into.modifications), last(into.settingSheets)];
  for (const { id, sequence } of from.modifications) {
    await db.modification.updateMany({ where: { id }, data: { carId, sequence: modified + sequence } });
  }
  for (const { id, sequence } of from.settingSheets) {
    await db.settingSheet.updateMany({ where: { id }, data: { carId, sequence: measured + sequence } });
  }
  const where = { carId: from.id };
  await db.submission.updateMany({ where, data: { carId } });
  await db.historyNote.updateMany({ where, data: { carId } });
  await db.entry.updateMany({ where, data: { carId } });
  await db.datedItem.updateMany({ where, data: { carId } });
  await db.partNote.updateMany({ where, data: { carId } });
  await db.evidenceLink.updateMany({ where, data: { carId } });
  await db.numberDecision.updateMany({ where: { holderId: from.id }, data: { holderId: carId } });
}

/** Facts the remaining record lacks are taken; what differs goes into a note, to the letter. */
function takenFacts(into: MergeRow, from: MergeRow) {
  return {
    ...(into.builtText === null
      ? { builtText: from.builtText, builtEarliest: from.builtEarliest, builtLatest: from.builtLatest }
      : {}),
    ...(into.firstRegisteredText === null
      ? {
          firstRegisteredText: from.firstRegisteredText,
          firstRegisteredEarliest: from.firstRegisteredEarliest,
          firstRegisteredLatest: from.firstRegisteredLatest,
        }
      : {}),
    ...(into.remarks === null ? { remarks: from.remarks } : {}),
  };
}

async function noteFacts({ db }: Context, into: MergeRow, from: MergeRow): Promise<void> {
  const noted = mergingFacts(into, from).filter(({ becomes }) => becomes === "noted");
  const number =
    chassisKey(from.chassis) === chassisKey(into.chassis) ? [] : [`Was also filed as ${from.chassis}.`];
  const lines = [...number, ...noted.map(({ what, said }) => `${what}: ${said}`)];
  if (lines.length === 0) return;
  const text = [`From the record ${carReference(from)}, which is of the same car:`, ...lines].join("\n");
  await db.historyNote.create({ data: { carId: into.id, text, trust: "unknown" } });
}

/**
 * Makes two records of one car one: numbers, statuses, keepers, values, modifications, sheets, notes, entries and
 * evidence go to the one that stays, and what that has already stays with the other, which from then on only points to
 * it. Nothing is deleted; both journals say what was done.
 *
 * @throws Refusal ROLE_NEEDED, CAR_NOT_FOUND, MERGE_IMPOSSIBLE; CHANGED_MEANWHILE when either changed since it was shown
 */
export async function mergeCars(ctx: Context, input: MergeCarsInput): Promise<string> {
  requireRole(ctx.actor, "registrar", "fleetManager");
  const shown = await mergingRows(ctx, input);
  await ctx.db.$queryRaw`
    SELECT 1 FROM car WHERE club_id = ${ctx.club.id}::uuid AND id IN (${shown.into.id}::uuid, ${shown.from.id}::uuid)
    ORDER BY id FOR UPDATE`;
  const { into, from } = await mergingRows(ctx, input);
  for (const [row, version] of [
    [into, input.intoVersion],
    [from, input.fromVersion],
  ] as const) {
    if (row.version === version) continue;
    throw refused("CHANGED_MEANWHILE", { what: carReference(row), version: row.version, differences: [] });
  }
  await moveStatements(ctx, into, from);
  await moveLife(ctx, into, from);
  await noteFacts(ctx, into, from);
  const of = (id: string) => ({ clubId_id: { clubId: ctx.club.id, id } });
  await ctx.db.car.update({
    where: of(into.id),
    data: { ...takenFacts(into, from), version: { increment: 1 } },
  });
  await ctx.db.car.update({ where: of(from.id), data: { mergedIntoId: into.id, version: { increment: 1 } } });
  await rebuildCurrentValues(ctx, [into.id, from.id], await bookOf(ctx));
  const names = { from: carReference(from), into: carReference(into) };
  const line = {
    action: "car.merge",
    noun: "car",
    after: names,
    ...(input.reason === "" ? {} : { reason: input.reason }),
  };
  await writeJournal(
    ctx,
    [into, from].map(({ id }) => ({ ...line, nounId: id, carId: id })),
  );
  return names.into;
}
