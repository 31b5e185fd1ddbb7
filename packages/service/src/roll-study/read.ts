import { readStudy, type StudyField, type StudyReading, studyFields } from "@trunnion/register";
import { assessAll } from "../assessment";
import { findCar } from "../car";
import { bookOf } from "../characteristic";
import type { ClubFacts, Context } from "../context";

/** A car's springs and bars in roll: what the record gives, what was typed besides, and what is lacking. */
export interface RollStudy extends StudyReading {
  readonly club: ClubFacts;
  readonly of: { readonly reference: string; readonly chassis: string };
  readonly fields: readonly StudyField[];
  /** Diameters of its bars as the record has them, m, by axle. */
  readonly diameters: { readonly front?: number; readonly rear?: number };
}

/**
 * What a study of a car in roll starts from. Nothing is assumed: a figure that neither the record nor the reader gives is
 * told as lacking.
 *
 * @throws Refusal CAR_NOT_FOUND
 */
export async function rollStudy(
  ctx: Context,
  input: { readonly car: string; readonly typed: Readonly<Record<string, string>> },
): Promise<RollStudy> {
  const record = await findCar(ctx, input.car);
  const book = await bookOf(ctx);
  const [assessment] = await assessAll(ctx, [record], book, ctx.today);
  if (!assessment) throw new Error(`no assessment of ${input.car}`);
  const fields = studyFields(assessment.state, book);
  const diameter = (axle: string) => {
    const value = assessment.state.get(`${axle}.antiRollBar.diameter whole`)?.value;
    return value?.kind === "quantity" ? value.si : undefined;
  };
  const [front, rear] = [diameter("front"), diameter("rear")];
  return {
    club: ctx.club,
    of: { reference: record.reference, chassis: record.chassis },
    fields,
    ...readStudy(fields, input.typed),
    diameters: { ...(front === undefined ? {} : { front }), ...(rear === undefined ? {} : { rear }) },
  };
}
