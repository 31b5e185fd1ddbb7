import { type PartialDate, Problems } from "@trunnion/register";
import { z } from "zod";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { rebuildCurrentValues } from "../current-value";
import { dayColumn } from "../day";
import { writeJournal } from "../journal";
import { requireRole } from "../role";
import { changedFields, readDate, requireVersion } from "./policy";
import { findCar } from "./read";

/** Longest remarks, in characters. */
export const REMARKS_LIMIT = 4_000;
/** Longest reason, in characters. */
export const REASON_LIMIT = 500;

/** What the car's facts should be: text as a person writes it; empty for not known. */
export const correctCarInput = z.object({
  car: z.string().min(1).max(60),
  /** Version of the record the form was opened with. */
  version: z.coerce.number().int().min(1),
  built: z.string().max(60),
  firstRegistered: z.string().max(60),
  remarks: z.string().max(REMARKS_LIMIT),
  /** Why, for the journal. */
  reason: z.string().max(REASON_LIMIT),
});
export type CorrectCarInput = z.infer<typeof correctCarInput>;

function dateColumns<P extends string>(prefix: P, date: PartialDate | null) {
  return {
    [`${prefix}Text`]: date?.text ?? null,
    [`${prefix}Earliest`]: date ? dayColumn(date.earliest) : null,
    [`${prefix}Latest`]: date ? dayColumn(date.latest) : null,
  };
}

/**
 * Corrects when a car was built and first registered, and the remarks. Tells the record's version afterwards.
 *
 * @throws Refusal ROLE_NEEDED, CAR_NOT_FOUND, CHANGED_MEANWHILE; Invalid for a date that cannot be read. Then nothing is written.
 */
export async function correctCar(ctx: Context, input: CorrectCarInput): Promise<number> {
  requireRole(ctx.actor, "registrar", "fleetManager");
  const record = await findCar(ctx, input.car);
  const problems = new Problems();
  const built = readDate(input.built, { field: "built", today: ctx.today, problems });
  const first = readDate(input.firstRegistered, { field: "firstRegistered", today: ctx.today, problems });
  const fields = [
    { field: "built", label: "Built", now: record.built ?? "", wanted: built?.text ?? "" },
    {
      field: "firstRegistered",
      label: "First registered",
      now: record.firstRegistered ?? "",
      wanted: first?.text ?? "",
    },
    { field: "remarks", label: "Remarks", now: record.remarks ?? "", wanted: input.remarks.trim() },
  ];
  problems.throwIfAny();
  requireVersion(record, input.version, fields);
  const changed = changedFields(fields);
  if (!changed) return record.version;
  const { version } = await ctx.db.car.update({
    where: { clubId_id: { clubId: ctx.club.id, id: record.id }, version: record.version },
    data: {
      ...dateColumns("built", built),
      ...dateColumns("firstRegistered", first),
      remarks: input.remarks.trim() === "" ? null : input.remarks.trim(),
      version: { increment: 1 },
    },
    select: { version: true },
  });
  // When it was built decides which entries of the specification apply.
  await rebuildCurrentValues(ctx, [record.id], await bookOf(ctx));
  const reason = input.reason.trim();
  await writeJournal(ctx, [
    {
      action: "car.correct",
      noun: "car",
      nounId: record.id,
      carId: record.id,
      ...(reason === "" ? {} : { reason }),
      ...changed,
    },
  ]);
  return version;
}
