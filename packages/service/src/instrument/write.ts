import { NotationError, parseQuantity } from "@trunnion/calc";
import { Problems } from "@trunnion/register";
import { v7 as uuid } from "uuid";
import { z } from "zod";
import type { Context } from "../context";
import { dayColumn } from "../day";
import { lineInput } from "../entry-input";
import { writeJournal } from "../journal";
import { INSTRUMENT_LIMIT, type InstrumentDimension, instrumentDimensions, instrumentUnit } from "./policy";

/** An instrument as its form has it: figures in the trade's notation. */
export const addInstrumentInput = z.object({
  label: lineInput(80).min(1, "Say what it is, and which where there are several: gravity gauge no. 2."),
  dimension: z.enum(instrumentDimensions, "Choose what it reads."),
  /** Smallest step it shows. */
  resolution: lineInput(60).min(1, "Say the smallest step it shows, e.g. 0°05' or 1 psi."),
  /** Expanded uncertainty, k = 2; empty where nobody knows it. */
  uncertainty: lineInput(60).default(""),
  calibratedOn: z.union([z.literal(""), z.iso.date("give the day, as 2026-05-31")]).default(""),
});
export type AddInstrumentInput = z.infer<typeof addInstrumentInput>;

interface Figure {
  readonly field: string;
  readonly entered: string;
  readonly dimension: InstrumentDimension;
  readonly problems: Problems;
}

/** A figure above nought in SI; nothing for an empty one, or where it is told what is wrong. */
function readFigure(ctx: Context, { field, entered, dimension, problems }: Figure): number | null {
  if (entered === "") return null;
  try {
    const defaultUnit = instrumentUnit[dimension][ctx.club.unitSystem];
    const { si } = parseQuantity(entered.replace(/^±\s*/, ""), dimension, { defaultUnit });
    if (si > 0) return si;
    problems.add(field, `"${entered}" is not above nought: write the step or the uncertainty as a figure.`);
  } catch (error) {
    if (!(error instanceof NotationError)) throw error;
    problems.add(field, error.message);
  }
  return null;
}

/**
 * Puts an instrument on the club's books; any member may, since whoever measures knows what with. One of the same name
 * and figures is the same instrument: sent twice it is one.
 *
 * @returns its id
 * @throws Invalid for a figure that cannot be read, an uncertainty finer than half the step, a name that another
 *   instrument has, a day to come, one more than the club may have. Then nothing is written.
 */
export async function addInstrument(ctx: Context, input: AddInstrumentInput): Promise<string> {
  const problems = new Problems();
  const { label, dimension, calibratedOn } = input;
  const figure = (field: "resolution" | "uncertainty") =>
    readFigure(ctx, { field, entered: input[field], dimension, problems });
  const [resolution, expandedUncertainty] = [figure("resolution"), figure("uncertainty")];
  // What is read off in steps is known no better than half a step to either side (JCGM 100, F.2.2.1, as an interval).
  if (resolution !== null && expandedUncertainty !== null && expandedUncertainty < resolution / 2)
    problems.add(
      "uncertainty",
      `"${input.uncertainty}" is finer than half of its smallest step, "${input.resolution}": check both.`,
    );
  if (calibratedOn > ctx.today) problems.add("calibratedOn", `${calibratedOn} is still to come.`);
  const known = await ctx.db.instrument.findFirst({
    where: { label: { equals: label, mode: "insensitive" } },
  });
  const same =
    known !== null &&
    known.dimension === dimension &&
    known.resolution === resolution &&
    known.expandedUncertainty === expandedUncertainty;
  if (known && !same)
    problems.add(
      "label",
      `"${known.label}" is on the books already with other figures: give this one a name of its own.`,
    );
  if (!known && (await ctx.db.instrument.count()) >= INSTRUMENT_LIMIT)
    problems.add("label", `The club has ${INSTRUMENT_LIMIT} instruments, which is the most.`);
  problems.throwIfAny();
  if (known) return known.id;
  if (resolution === null) throw new Error("an instrument without a step was let through");
  const id = uuid();
  await ctx.db.instrument.create({
    data: {
      ...{ id, label, dimension, resolution, expandedUncertainty },
      calibratedOn: calibratedOn === "" ? null : dayColumn(calibratedOn),
    },
  });
  const after = {
    label,
    dimension,
    resolution: input.resolution,
    uncertainty: input.uncertainty,
    calibratedOn,
  };
  await writeJournal(ctx, [{ action: "instrument.add", noun: "instrument", nounId: id, after }]);
  return id;
}
