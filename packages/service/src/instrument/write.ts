import { Problems, refused } from "@trunnion/register";
import { v7 as uuid } from "uuid";
import { z } from "zod";
import { changedFields, differencesOf } from "../car";
import type { Context } from "../context";
import { dayColumn } from "../day";
import { lineInput } from "../entry-input";
import { writeJournal } from "../journal";
import { requireRole } from "../role";
import {
  INSTRUMENT_LIMIT,
  type InstrumentTexts,
  instrumentDimensions,
  instrumentTexts,
  readInstrumentFigure,
  sayInstrumentFigure,
  wantedInstrument,
} from "./policy";
import { findInstrument, isInstrumentUsed } from "./read";

const dayInput = z.union([z.literal(""), z.iso.date("give the day, as 2026-05-31")]).default("");

/** An instrument as its form has it: figures in the trade's notation. */
export const addInstrumentInput = z.object({
  label: lineInput(80).min(1, "Say what it is, and which where there are several: gravity gauge no. 2."),
  dimension: z.enum(instrumentDimensions, "Choose what it reads."),
  /** Its own number, as stamped on it or on its certificate. */
  number: lineInput(60).default(""),
  /** Smallest step it shows. */
  resolution: lineInput(60).min(1, "Say the smallest step it shows, e.g. 0°05' or 1 psi."),
  /** Expanded uncertainty, k = 2; empty where nobody knows it. */
  uncertainty: lineInput(60).default(""),
  calibratedOn: dayInput,
  calibratedUntil: dayInput,
});
export type AddInstrumentInput = z.infer<typeof addInstrumentInput>;

interface Figures {
  readonly resolution: number | null;
  readonly expandedUncertainty: number | null;
}

/** The figures in SI; what is wrong with them or the days is told. */
function readInput(ctx: Context, input: AddInstrumentInput, problems: Problems): Figures {
  const { dimension, calibratedOn, calibratedUntil } = input;
  const figure = (field: "resolution" | "uncertainty") =>
    readInstrumentFigure(ctx, { field, entered: input[field], dimension, problems });
  const [resolution, expandedUncertainty] = [figure("resolution"), figure("uncertainty")];
  // What is read off in steps is known no better than half a step to either side (JCGM 100, F.2.2.1, as an interval).
  if (resolution !== null && expandedUncertainty !== null && expandedUncertainty < resolution / 2)
    problems.add(
      "uncertainty",
      `"${input.uncertainty}" is finer than half of its smallest step, "${input.resolution}": check both.`,
    );
  if (calibratedOn > ctx.today) problems.add("calibratedOn", `${calibratedOn} is still to come.`);
  if (calibratedUntil !== "" && calibratedUntil < calibratedOn)
    problems.add("calibratedUntil", `${calibratedUntil} is before it was calibrated, ${calibratedOn}.`);
  return { resolution, expandedUncertainty };
}

const columnsOf = ({ label, dimension, number, calibratedOn, calibratedUntil }: AddInstrumentInput) => ({
  label,
  dimension,
  number: number === "" ? null : number,
  calibratedOn: calibratedOn === "" ? null : dayColumn(calibratedOn),
  calibratedUntil: calibratedUntil === "" ? null : dayColumn(calibratedUntil),
});

const sameName = ({ db }: Context, label: string) =>
  db.instrument.findFirst({ where: { label: { equals: label, mode: "insensitive" } } });

/**
 * Puts an instrument on the club's books; any member may, since whoever measures knows what with. One of the same name
 * and figures is the same instrument: sent twice it is one.
 *
 * @returns its id
 * @throws Invalid for a figure that cannot be read, an uncertainty finer than half the step, a name that another
 *   instrument has or that was taken out of use, a day to come, one more than the club may have. Then nothing is written.
 */
export async function addInstrument(ctx: Context, input: AddInstrumentInput): Promise<string> {
  const problems = new Problems();
  const { label, dimension } = input;
  const { resolution, expandedUncertainty } = readInput(ctx, input, problems);
  const known = await sameName(ctx, label);
  const same =
    known !== null &&
    known.retiredAt === null &&
    known.dimension === dimension &&
    known.resolution === resolution &&
    known.expandedUncertainty === expandedUncertainty;
  if (known && !same)
    problems.add(
      "label",
      known.retiredAt === null
        ? `"${known.label}" is on the books already with other figures: give this one a name of its own.`
        : `"${known.label}" was taken out of use: have it put back, or give this one a name of its own.`,
    );
  if (!known && (await ctx.db.instrument.count()) >= INSTRUMENT_LIMIT)
    problems.add("label", `The club has ${INSTRUMENT_LIMIT} instruments, which is the most.`);
  problems.throwIfAny();
  if (known) return known.id;
  if (resolution === null) throw new Error("an instrument without a step was let through");
  const id = uuid();
  await ctx.db.instrument.create({ data: { id, ...columnsOf(input), resolution, expandedUncertainty } });
  const after = { ...input };
  await writeJournal(ctx, [{ action: "instrument.add", noun: "instrument", nounId: id, after }]);
  return id;
}

const mayChange = ["registrar", "fleetManager", "scrutineer"] as const;

/** An instrument's form, opened with `version`. */
export const changeInstrumentInput = addInstrumentInput.extend({
  instrument: lineInput(36).min(1),
  version: z.coerce.number().int().min(1),
  /** What the fields said when the form was opened. */
  opened: z.record(z.string().max(40), z.string().max(8_000)).default({}),
});
export type ChangeInstrumentInput = z.infer<typeof changeInstrumentInput>;

/** The texts wanted: a figure as the club says it, so that the same one written otherwise is no change. */
function textsOf(ctx: Context, input: AddInstrumentInput, figures: Figures): InstrumentTexts {
  const { label, dimension, number, calibratedOn, calibratedUntil } = input;
  const say = (si: number | null) => (si === null ? "" : sayInstrumentFigure(ctx, dimension, si));
  return {
    ...{ label, dimension, number, calibratedOn, calibratedUntil },
    resolution: say(figures.resolution),
    uncertainty: say(figures.expandedUncertainty),
  };
}

/**
 * Corrects an instrument. Readings that stand on the record keep the uncertainty they were accepted with.
 *
 * @throws Refusal ROLE_NEEDED, INSTRUMENT_NOT_FOUND, CHANGED_MEANWHILE with both sides' values; Invalid as for one that
 *   is added, and for one that is to read something else than what was read with it. Then nothing is written.
 */
export async function changeInstrument(ctx: Context, input: ChangeInstrumentInput): Promise<void> {
  requireRole(ctx.actor, ...mayChange);
  const row = await findInstrument(ctx, input.instrument);
  const problems = new Problems();
  const figures = readInput(ctx, input, problems);
  const other = await sameName(ctx, input.label);
  if (other && other.id !== row.id)
    problems.add("label", `"${other.label}" is another instrument on the books: give this one its own name.`);
  if (input.dimension !== row.dimension && (await isInstrumentUsed(ctx, row.id)))
    problems.add(
      "dimension",
      "Readings of the record were taken with it: put what reads something else on the books as another instrument.",
    );
  problems.throwIfAny();
  const now = instrumentTexts(ctx, row);
  const wanted = textsOf(ctx, input, figures);
  const fields = wantedInstrument(now, wanted);
  const moved = (version: number) =>
    refused("CHANGED_MEANWHILE", {
      what: "this instrument",
      version,
      differences: differencesOf(fields, input.opened),
    });
  if (input.version !== row.version) throw moved(row.version);
  const line = changedFields(fields);
  if (!line) return;
  const { count } = await ctx.db.instrument.updateMany({
    where: { id: row.id, version: row.version },
    data: {
      ...columnsOf(input),
      // What reads alike is left with all its digits.
      ...(wanted.resolution === now.resolution ? {} : { resolution: figures.resolution ?? row.resolution }),
      ...(wanted.uncertainty === now.uncertainty ? {} : { expandedUncertainty: figures.expandedUncertainty }),
      version: { increment: 1 },
    },
  });
  if (count === 0) throw moved(row.version + 1);
  await writeJournal(ctx, [{ action: "instrument.change", noun: "instrument", nounId: row.id, ...line }]);
}

/** An instrument to take out of use, or to put back. */
export const retireInstrumentInput = z.object({
  instrument: lineInput(36).min(1),
  version: z.coerce.number().int().min(1),
  reason: lineInput(300).min(1, "Say why, for whoever looks for it."),
});
export type RetireInstrumentInput = z.infer<typeof retireInstrumentInput>;

async function setRetired(ctx: Context, input: RetireInstrumentInput, retire: boolean): Promise<void> {
  requireRole(ctx.actor, ...mayChange);
  const { id, label, retiredAt } = await findInstrument(ctx, input.instrument);
  // Sent twice it is retired once.
  if ((retiredAt !== null) === retire) return;
  const { count } = await ctx.db.instrument.updateMany({
    where: { id, version: input.version },
    data: {
      retiredAt: retire ? ctx.now : null,
      retiredReason: retire ? input.reason : null,
      version: { increment: 1 },
    },
  });
  if (count === 0) {
    const { version } = await findInstrument(ctx, id);
    throw refused("CHANGED_MEANWHILE", { what: "this instrument", version, differences: [] });
  }
  const action = retire ? "instrument.retire" : "instrument.restore";
  await writeJournal(ctx, [
    { action, noun: "instrument", nounId: id, reason: input.reason, after: { label } },
  ]);
}

/**
 * Takes an instrument out of use: no form offers it any more, and what was read with it keeps its name.
 *
 * @throws Refusal ROLE_NEEDED, INSTRUMENT_NOT_FOUND, CHANGED_MEANWHILE
 */
export async function retireInstrument(ctx: Context, input: RetireInstrumentInput): Promise<void> {
  await setRetired(ctx, input, true);
}

/** Puts an instrument back in use. @throws Refusal ROLE_NEEDED, INSTRUMENT_NOT_FOUND, CHANGED_MEANWHILE */
export async function restoreInstrument(ctx: Context, input: RetireInstrumentInput): Promise<void> {
  await setRetired(ctx, input, false);
}
