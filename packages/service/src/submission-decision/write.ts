import {
  type Characteristic,
  Invalid,
  type ReadModification,
  type ReadSheet,
  type ReadSubmission,
  readSubmission,
  refused,
  submissionLimits,
} from "@trunnion/register";
import { v7 as uuid } from "uuid";
import { z } from "zod";
import { editCar, openCar } from "../car";
import type { Context } from "../context";
import { dayColumn } from "../day";
import { proseInput } from "../entry-input";
import { partialDateColumns } from "../partial-date-columns";
import { carReference } from "../record";
import { requireRole } from "../role";
import {
  alreadyTaken,
  contentOf,
  groundOf,
  lockSubmission,
  madeByKeeperOrDesk,
  moveOn,
  requireMove,
  type SubmissionMark,
  type SubmissionRow,
  stepFields,
} from "../submission";
import { prefixedValueColumns, valueColumns } from "../value-columns";

/** What a reviewer makes of a submission. */
export const decideInput = z.object({
  ...stepFields,
  decision: z.enum(["accept", "decline", "query"]),
  /** The reason, or the question. */
  text: proseInput(submissionLimits.message).default(""),
  /** "yes" where the reviewer knows that whoever made it keeps the car no longer. */
  keeperKnown: z.enum(["yes", "no"]).default("no"),
});
export type DecideInput = z.infer<typeof decideInput>;

interface Placing {
  readonly row: SubmissionRow;
  readonly carId: string;
}

/** Places are given once and never again, superseded ones keep theirs. */
async function nextPlace(
  ctx: Context,
  table: "modification" | "settingSheet",
  carId: string,
): Promise<number> {
  const last =
    table === "modification"
      ? await ctx.db.modification.aggregate({ where: { carId }, _max: { sequence: true } })
      : await ctx.db.settingSheet.aggregate({ where: { carId }, _max: { sequence: true } });
  return (last._max.sequence ?? 0) + 1;
}

async function writeModification(
  ctx: Context,
  { row, carId }: Placing,
  { modification, sequence }: { readonly modification: ReadModification; readonly sequence: number },
): Promise<string> {
  const id = uuid();
  const { fitted, changes, fasteners, ...facts } = modification;
  await ctx.db.modification.create({
    data: {
      id,
      submissionId: row.id,
      carId,
      sequence,
      ...facts,
      ...partialDateColumns("fitted", fitted),
      trust: "stated",
    },
  });
  await ctx.db.modificationChange.createMany({
    data: changes.map(({ characteristic, side, before, after }) => ({
      modificationId: id,
      characteristic: characteristic.key,
      side,
      ...(before === undefined ? {} : prefixedValueColumns("before", before)),
      ...prefixedValueColumns("after", after),
    })),
  });
  await ctx.db.modificationFastener.createMany({
    data: fasteners.map((fastener) => ({ modificationId: id, ...fastener })),
  });
  return id;
}

type InstrumentFacts = ReadonlyMap<
  string,
  { readonly dimension: string; readonly expandedUncertainty: number | null }
>;

async function instrumentsOf(ctx: Context, readings: ReadSheet["readings"]): Promise<InstrumentFacts> {
  const ids = [...new Set(readings.flatMap(({ instrument }) => instrument ?? []))];
  const rows = await ctx.db.instrument.findMany({
    where: { id: { in: ids } },
    select: { id: true, dimension: true, expandedUncertainty: true },
  });
  return new Map(rows.map(({ id, ...facts }) => [id, facts]));
}

/** A reading carries its instrument's uncertainty as it was when it was accepted: a later calibration does not change it. */
function readWith(
  characteristic: Characteristic,
  instrument: string | null,
  instruments: InstrumentFacts,
): { readonly instrumentId: string | null; readonly expandedUncertainty: number | null } {
  const facts = instrument === null ? undefined : instruments.get(instrument);
  const fits = characteristic.kind === "quantity" && characteristic.dimension === facts?.dimension;
  return {
    instrumentId: facts ? instrument : null,
    expandedUncertainty: (fits && facts?.expandedUncertainty) || null,
  };
}

async function writeSheet(
  ctx: Context,
  { row, carId }: Placing,
  { sheet, sequence }: { readonly sheet: ReadSheet; readonly sequence: number },
): Promise<string> {
  const id = uuid();
  const { on, loadState, note, readings } = sheet;
  if (on === null) throw new Error("a sheet without a day was let through");
  const instruments = await instrumentsOf(ctx, readings);
  await ctx.db.settingSheet.create({
    data: { id, carId, submissionId: row.id, on: dayColumn(on), sequence, loadState, note, trust: "stated" },
  });
  await ctx.db.reading.createMany({
    data: readings.map(({ characteristic, side, repeat, value, instrument }) => ({
      settingSheetId: id,
      characteristic: characteristic.key,
      side,
      repeat,
      ...valueColumns(value),
      ...readWith(characteristic, instrument, instruments),
    })),
  });
  return id;
}

/** A row that a submission became, with the characteristics it is about. */
interface Became {
  readonly target: { readonly modificationId: string } | { readonly settingSheetId: string };
  readonly keys: ReadonlySet<string>;
}

const keysOf = (list: readonly { readonly characteristic: Characteristic }[]) =>
  new Set(list.map(({ characteristic }) => characteristic.key));

/** What supported the submission supports what it became from now on. */
async function moveEvidence(ctx: Context, { row }: Placing, became: readonly Became[]): Promise<void> {
  const { id: submissionId, supersedesId } = row;
  // What supported what this takes the place of supports this as well: a correction loses no photo.
  const old =
    supersedesId === null
      ? []
      : [{ modification: { submissionId: supersedesId } }, { settingSheet: { submissionId: supersedesId } }];
  const links = await ctx.db.evidenceLink.findMany({
    where: { OR: [{ submissionId }, ...old] },
    select: { evidenceId: true, characteristic: true, locus: true },
    orderBy: { id: "asc" },
  });
  const made = new Map(
    links.flatMap(({ evidenceId, characteristic, locus }) => {
      const shown = became.filter(({ keys }) => characteristic !== null && keys.has(characteristic));
      // A photo of a part that was taken out again supports the whole.
      const told = shown.length > 0 ? characteristic : null;
      return (shown.length > 0 ? shown : became).map(({ target }) => {
        const link = { id: uuid(), evidenceId, locus, characteristic: told, ...target };
        return [`${evidenceId} ${told} ${Object.values(target)[0]}`, link] as const;
      });
    }),
  );
  await ctx.db.evidenceLink.createMany({ data: [...made.values()] });
  await ctx.db.evidenceLink.deleteMany({ where: { submissionId } });
}

async function supersede(ctx: Context, { row }: Placing): Promise<void> {
  if (row.supersedesId === null) return;
  const before = { submissionId: row.supersedesId, supersededAt: null };
  await ctx.db.modification.updateMany({ where: before, data: { supersededAt: ctx.now } });
  await ctx.db.settingSheet.updateMany({ where: before, data: { supersededAt: ctx.now } });
}

async function writeRows(ctx: Context, placing: Placing, read: ReadSubmission): Promise<void> {
  await supersede(ctx, placing);
  const became: Became[] = [];
  let sequence = await nextPlace(ctx, "modification", placing.carId);
  for (const modification of read.modifications) {
    const modificationId = await writeModification(ctx, placing, { modification, sequence: sequence++ });
    became.push({ target: { modificationId }, keys: keysOf(modification.changes) });
  }
  sequence = await nextPlace(ctx, "settingSheet", placing.carId);
  for (const sheet of read.sheets) {
    const settingSheetId = await writeSheet(ctx, placing, { sheet, sequence: sequence++ });
    became.push({ target: { settingSheetId }, keys: keysOf(sheet.readings) });
  }
  await moveEvidence(ctx, placing, became);
}

/** Characteristics as the journal tells them: what was typed, before and after. */
function told(read: ReadSubmission, which: "before" | "after"): Record<string, string> {
  const changes = read.modifications.flatMap(({ changes: list }) => list);
  return Object.fromEntries(
    changes.map(({ characteristic, side, ...values }) => {
      const name = side === "whole" ? characteristic.key : `${characteristic.key} ${side}`;
      return [name, values[which]?.entered ?? ""];
    }),
  );
}

async function requireStanding(ctx: Context, row: SubmissionRow, input: DecideInput): Promise<void> {
  if (input.keeperKnown !== "yes" && !(await madeByKeeperOrDesk(ctx, row)))
    throw refused("KEEPER_CHANGED", { car: carReference(row.car) });
  if (row.supersedesId === null) return;
  const others = await ctx.db.submission.count({
    where: { supersedesId: row.supersedesId, status: "accepted" },
  });
  if (others > 0) throw refused("SUBMISSION_SUPERSEDED", {});
}

/**
 * Puts a submission on the car's record: modifications, sheets, current values, journal and notice in one transaction.
 * Read anew against the record as it is now, since that may have moved since it was handed in.
 */
async function accept(ctx: Context, row: SubmissionRow, input: DecideInput): Promise<SubmissionMark> {
  const record = await openCar(ctx, carReference(row.car));
  const { basis } = await groundOf(ctx, row);
  await requireStanding(ctx, row, input);
  const read = readSubmission(contentOf(row), basis);
  if (read.problems.length > 0) throw new Invalid(read.problems);
  const decided = { decidedAt: ctx.now, decidedById: ctx.actor.personId, decisionReason: input.text };
  const status = requireMove(ctx, row, "accept");
  let mark: SubmissionMark | undefined;
  await editCar(ctx, {
    record,
    form: { version: record.version, opened: {}, openedAt: 0, reason: input.text },
    line: { action: "submission.accept", noun: "submission", nounId: row.id },
    fields: [],
    always: true,
    also: { before: told(read, "before"), after: told(read, "after") },
    write: async () => {
      await writeRows(ctx, { row, carId: record.id }, read);
      // Before the current values are worked out again: only what is accepted counts.
      const step = {
        name: "accept",
        status,
        key: input.key,
        text: input.text,
        data: decided,
        silent: true,
      } as const;
      mark = await moveOn(ctx, row, step);
    },
  });
  if (!mark) throw new Error("a submission was accepted without being moved on");
  return mark;
}

/**
 * Accepts or declines a submission, or asks about it. Sent again under the same key it is the same decision.
 *
 * @throws Refusal ROLE_NEEDED, SUBMISSION_NOT_FOUND, SUBMISSION_STEP, CHANGED_MEANWHILE; KEEPER_CHANGED,
 *   SUBMISSION_SUPERSEDED, CAR_MERGED when accepting; Invalid for a question or refusal without words, and with
 *   everything by which it does not fit the record any more. Then nothing is written.
 */
export async function decideSubmission(ctx: Context, input: DecideInput): Promise<SubmissionMark> {
  requireRole(ctx.actor, "registrar", "fleetManager");
  const row = await lockSubmission(ctx, input.id);
  const { decision, text, key } = input;
  if (alreadyTaken(ctx, row, { ...input, step: decision }))
    return { id: row.id, version: row.version, status: row.status };
  const status = requireMove(ctx, row, decision);
  if (decision === "accept") return accept(ctx, row, input);
  if (text === "") {
    const message = decision === "query" ? "Write the question." : "Say why, so that it can be mended.";
    throw new Invalid([{ field: "text", message }]);
  }
  const decided = { decidedAt: ctx.now, decidedById: ctx.actor.personId, decisionReason: text };
  return moveOn(ctx, row, {
    name: decision,
    status,
    key,
    text,
    ...(decision === "decline" ? { data: decided } : {}),
  });
}
