import { chassisKey, Problems, partNoteKinds } from "@trunnion/register";
import { v7 as uuid } from "uuid";
import { z } from "zod";
import type { Context } from "../context";
import { dayColumn } from "../day";
import { lineInput, proseInput } from "../entry-input";
import { writeJournal } from "../journal";
import { findPart } from "../part";
import { requireRole } from "../role";
import { standingRecord } from "../standing-record";

export const addPartNoteInput = z.object({
  part: lineInput(60).min(1),
  /** Made by the form, so that sending it twice is one note. */
  clientKey: z.uuid(),
  on: z.iso.date("give the day, as 2026-05-31"),
  kind: z.enum(partNoteKinds, "choose what was so"),
  count: z
    .union([z.literal(""), z.coerce.number("a whole number").int("a whole number").min(1).max(9_999)])
    .default(""),
  text: proseInput(1_000).default(""),
  /** Chassis number of the car it was tried on; empty for none. */
  car: lineInput(60).default(""),
});
export type AddPartNoteInput = z.infer<typeof addPartNoteInput>;

/** The car a number means; of several that claim it the first. Told at its field where there is none. */
async function carNumbered(ctx: Context, text: string, problems: Problems): Promise<string | null> {
  if (text === "") return null;
  const [number = "", claim = "1"] = text.split("~");
  const car = await ctx.db.car.findFirst({
    where: { ...standingRecord, chassisKey: chassisKey(number), claim: Number(claim) || 0 },
    select: { id: true },
  });
  if (!car)
    problems.add("car", `No car of the register has the number "${text}": leave it empty, or correct it.`);
  return car?.id ?? null;
}

/**
 * Notes what a member saw of a part on a day. Sent again under its key it is the same note.
 *
 * @throws Refusal PART_NOT_FOUND; Invalid for a day to come, a count of what was not found, a car there is none of
 */
export async function addPartNote(ctx: Context, input: AddPartNoteInput): Promise<void> {
  const { id: partId, slug } = await findPart(ctx, input.part);
  if ((await ctx.db.partNote.count({ where: { clientKey: input.clientKey } })) > 0) return;
  const problems = new Problems();
  if (input.on > ctx.today) problems.add("on", `${input.on} is still to come: give a day up to today.`);
  if (input.count !== "" && input.kind !== "found")
    problems.add("count", "Only what was found is counted: leave it empty.");
  const carId = await carNumbered(ctx, input.car, problems);
  problems.throwIfAny();
  const { on, kind, text, clientKey } = input;
  const count = input.count === "" ? null : input.count;
  const id = uuid();
  const madeById = ctx.actor.personId;
  const columns = { id, partId, on: dayColumn(on), kind, count, carId, madeById, clientKey };
  await ctx.db.partNote.create({ data: { ...columns, text: text === "" ? null : text } });
  // What was written may name people: the journal says that something was, not what.
  const after = { part: slug, on, kind, count, text: text === "" ? "" : "not told here" };
  const of = carId === null ? {} : { carId };
  await writeJournal(ctx, [{ action: "partNote.add", noun: "partNote", nounId: id, after, ...of }]);
}

export const withdrawPartNoteInput = z.object({ part: lineInput(60).min(1), note: z.uuid() });
export type WithdrawPartNoteInput = z.infer<typeof withdrawPartNoteInput>;

/** Takes a note back: whoever made it may, and who keeps the list. @throws Refusal PART_NOT_FOUND, ROLE_NEEDED */
export async function withdrawPartNote(ctx: Context, input: WithdrawPartNoteInput): Promise<void> {
  const part = await findPart(ctx, input.part);
  const note = await ctx.db.partNote.findFirst({
    where: { id: input.note, partId: part.id, withdrawnAt: null },
    select: { id: true, madeById: true, carId: true },
  });
  if (!note) return;
  const own = note.madeById !== null && note.madeById === ctx.actor.personId;
  if (!own) requireRole(ctx.actor, "registrar", "fleetManager");
  const where = { clubId_id: { clubId: ctx.club.id, id: note.id } };
  await ctx.db.partNote.update({ where, data: { withdrawnAt: ctx.now } });
  const of = note.carId === null ? {} : { carId: note.carId };
  const line = {
    action: "partNote.withdraw",
    noun: "partNote",
    nounId: note.id,
    before: { part: part.slug },
  };
  await writeJournal(ctx, [{ ...line, ...of }]);
}
