import { chassisKey, Invalid, refused } from "@trunnion/register";
import { z } from "zod";
import { requireUnmoved, type WantedField } from "../car/policy";
import type { Context } from "../context";
import { lineInput, openedFields } from "../entry-input";
import { addEntries, findEvent, putInOrder } from "../event";
import { recordReadings } from "../inspection-record";
import { writeJournal } from "../journal";
import { requireRole } from "../role";
import { standingRecord } from "../standing-record";
import { className, type EntryTexts, entryTextKeys, entryTextLabels, entryTexts } from "./read";

const entryFields = {
  event: lineInput(60).min(1),
  number: lineInput(12).min(1, "give the running number"),
  /** Chassis number or registration mark; empty for a car that is not on the register. */
  car: lineInput(60).default(""),
  describedAs: lineInput(200).default(""),
  driver: lineInput(120).default(""),
  group: lineInput(60).default(""),
  /** Id of a class of the event's rule set; empty for none. */
  eventClass: z.union([z.literal(""), z.uuid()]).default(""),
} as const;

export const enterCarInput = z.object(entryFields);
export type EnterCarInput = z.infer<typeof enterCarInput>;

/** The one car a number, mark or reference ("SV2-0417~2") means. @throws Invalid at `car` where it is none or several */
async function carNamed(ctx: Context, text: string): Promise<string | undefined> {
  if (text === "") return undefined;
  const [number = "", claim] = text.split("~");
  const key = chassisKey(number);
  const byNumber = { chassisKey: key, ...(claim === undefined ? {} : { claim: Number(claim) || 0 }) };
  const byMark = { identities: { some: { kind: "registration", numberKey: key } } } as const;
  const cars = await ctx.db.car.findMany({
    where: { ...standingRecord, OR: claim === undefined ? [byNumber, byMark] : [byNumber] },
    select: { id: true },
    take: 9,
  });
  const [car, ...others] = cars;
  if (car && others.length === 0) return car.id;
  const message = car
    ? `${cars.length} cars claim "${text}": name one by its reference, such as ${text}~2`
    : `no car of the register has the number or mark "${text}"; leave it empty and describe the car`;
  throw new Invalid([{ field: "car", message }]);
}

async function entryColumns(ctx: Context, input: EnterCarInput, ruleSetId: string) {
  const { number: runningNumber, driver, group, describedAs, eventClass } = input;
  const carId = await carNamed(ctx, input.car);
  if (eventClass !== "") {
    const known = await ctx.db.eventClass.findFirst({ where: { id: eventClass, ruleSetId } });
    if (!known)
      throw new Invalid([{ field: "eventClass", message: "choose a class of this event's rule set" }]);
  }
  if (carId === undefined && describedAs === "")
    throw new Invalid([{ field: "describedAs", message: "say what car it is" }]);
  return {
    runningNumber,
    ...(carId === undefined ? { describedAs } : { carId }),
    ...(driver === "" ? {} : { driver }),
    ...(group === "" ? {} : { group }),
    ...(eventClass === "" ? {} : { eventClassId: eventClass }),
  };
}

/** Enters one car by hand. @throws Refusal ROLE_NEEDED, EVENT_NOT_FOUND, RUNNING_NUMBER_TAKEN; Invalid */
export async function enterCar(ctx: Context, input: EnterCarInput): Promise<void> {
  requireRole(ctx.actor, "registrar", "scrutineer", "fleetManager");
  const { id, ruleSetId } = await findEvent(ctx, input.event);
  const entry = await entryColumns(ctx, input, ruleSetId);
  const twin =
    "carId" in entry
      ? await ctx.db.entry.findFirst({ where: { eventId: id, carId: entry.carId ?? "", withdrawnAt: null } })
      : null;
  if (twin)
    throw new Invalid([
      { field: "car", message: `this car is entered already, as number ${twin.runningNumber}` },
    ]);
  await addEntries(ctx, id, [entry]);
}

export const changeEntryInput = z.object({
  ...entryFields,
  ...openedFields,
  /** Id of the entry. */
  entry: z.uuid(),
  withdrawn: z.enum(["yes", "no"]).default("no"),
});
export type ChangeEntryInput = z.infer<typeof changeEntryInput>;

/** An entry as its form shows it; the driver is personal and told in no journal. */
function fieldsOf(now: EntryTexts, wanted: EntryTexts): readonly WantedField[] {
  return entryTextKeys.map((field) => ({
    field,
    label: entryTextLabels[field],
    now: now[field],
    wanted: wanted[field],
    ...(field === "driver" ? { personal: true } : {}),
  }));
}

async function wantedTexts(ctx: Context, input: ChangeEntryInput): Promise<EntryTexts> {
  const { number, car, describedAs, driver, group, eventClass, withdrawn } = input;
  return { number, car, describedAs, driver, group, withdrawn, eventClass: await className(ctx, eventClass) };
}

/**
 * Changes an entry, withdraws it or takes it back. The journal says that the driver changed, not who it is.
 *
 * @throws Refusal ROLE_NEEDED, EVENT_NOT_FOUND, ENTRY_NOT_FOUND, RUNNING_NUMBER_TAKEN, CHANGED_MEANWHILE with what both
 * made of it; Invalid for a car or class that is none. Then nothing is written.
 */
export async function changeEntry(ctx: Context, input: ChangeEntryInput): Promise<void> {
  requireRole(ctx.actor, "registrar", "scrutineer", "fleetManager");
  const event = await findEvent(ctx, input.event);
  await ctx.db.$queryRaw`
    SELECT 1 FROM entry WHERE club_id = ${ctx.club.id}::uuid AND id = ${input.entry}::uuid FOR UPDATE`;
  const entry = await ctx.db.entry.findFirst({ where: { id: input.entry, eventId: event.id } });
  if (!entry) throw refused("ENTRY_NOT_FOUND", { event: event.slug, number: input.number, known: [] });
  const fields = fieldsOf(await entryTexts(ctx, entry.id), await wantedTexts(ctx, input));
  requireUnmoved({ what: "this entry", version: entry.version, input, fields });
  const columns = await entryColumns(ctx, input, event.ruleSetId);
  const taken = await ctx.db.entry.findFirst({
    where: { eventId: event.id, runningNumber: input.number, id: { not: entry.id } },
  });
  if (taken) throw refused("RUNNING_NUMBER_TAKEN", { event: event.slug, number: input.number });
  const empty = { carId: null, describedAs: null, driver: null, group: null, eventClassId: null };
  const withdrawnAt = input.withdrawn === "yes" ? (entry.withdrawnAt ?? ctx.now) : null;
  const data = { ...empty, ...columns, withdrawnAt };
  await ctx.db.entry.update({
    where: { clubId_id: { clubId: ctx.club.id, id: entry.id } },
    data: { ...data, version: { increment: 1 } },
  });
  await putInOrder(ctx, event.id);
  if (data.carId !== entry.carId) await recordReadings(ctx, [entry.id]);
  const said = (row: typeof data | typeof entry) => ({
    runningNumber: row.runningNumber,
    group: row.group,
    describedAs: row.describedAs,
    withdrawn: row.withdrawnAt === null ? "no" : "yes",
    driver: row.driver === null ? "not given" : "given",
  });
  const carId = data.carId ?? entry.carId;
  await writeJournal(ctx, [
    {
      action: "entry.change",
      noun: "entry",
      nounId: entry.id,
      before: said(entry),
      after: { ...said(data), ...(entry.driver === data.driver ? {} : { driver: "changed" }) },
      ...(carId === null ? {} : { carId }),
    },
  ]);
}
