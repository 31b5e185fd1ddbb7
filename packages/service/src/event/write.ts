import { chassisKey, Invalid, refused } from "@trunnion/register";
import { v7 as uuid } from "uuid";
import { z } from "zod";
import type { Context } from "../context";
import { dayColumn } from "../day";
import { lineInput } from "../entry-input";
import { recordReadings } from "../inspection-record";
import { writeJournal } from "../journal";
import { requireRole } from "../role";
import { standingRecord } from "../standing-record";
import { findEvent } from "./read";

export interface AddEventInput {
  readonly slug: string;
  readonly name: string;
  /** ISO day. */
  readonly on: string;
  readonly venue: string;
  readonly ruleSetId: string;
}

/** Adds an event and tells its id. */
export async function addEvent(ctx: Context, input: AddEventInput): Promise<string> {
  requireRole(ctx.actor, "registrar", "scrutineer", "fleetManager");
  const id = uuid();
  const { slug, name, on, venue, ruleSetId } = input;
  const after = { slug, name, on, venue, ruleSetId };
  await ctx.db.event.create({ data: { ...after, id, on: dayColumn(on) } });
  await writeJournal(ctx, [{ action: "event.add", noun: "event", nounId: id, after }]);
  return id;
}

export interface AddEntryInput {
  readonly runningNumber: string;
  /** Missing for a car that is not on the register; then `describedAs` says what it is. */
  readonly carId?: string;
  readonly describedAs?: string;
  readonly driver?: string;
  readonly group?: string;
  readonly eventClassId?: string;
}

/** Running numbers sort as people read them: 7 before 12, 12 before 12A. */
const inOrder = new Intl.Collator("en", { numeric: true });

async function putInOrder(ctx: Context, eventId: string): Promise<void> {
  const entries = await ctx.db.entry.findMany({
    where: { eventId },
    select: { id: true, runningNumber: true, runningOrder: true },
  });
  entries.sort((a, b) => inOrder.compare(a.runningNumber, b.runningNumber));
  for (const [index, { id, runningOrder }] of entries.entries()) {
    if (runningOrder === index + 1) continue;
    const where = { clubId_id: { clubId: ctx.club.id, id } };
    await ctx.db.entry.update({ where, data: { runningOrder: index + 1 } });
  }
}

/**
 * Enters cars in an event and puts all its entries in running-number order.
 *
 * @throws Refusal RUNNING_NUMBER_TAKEN; then none is entered
 */
export async function addEntries(
  ctx: Context,
  eventId: string,
  inputs: readonly AddEntryInput[],
): Promise<void> {
  requireRole(ctx.actor, "registrar", "scrutineer", "fleetManager");
  const event = await ctx.db.event.findUniqueOrThrow({
    where: { clubId_id: { clubId: ctx.club.id, id: eventId } },
    select: { slug: true, entries: { select: { id: true, runningNumber: true } } },
  });
  const taken = new Set(event.entries.map(({ runningNumber }) => runningNumber));
  for (const { runningNumber: number } of inputs) {
    if (taken.has(number)) throw refused("RUNNING_NUMBER_TAKEN", { event: event.slug, number });
    taken.add(number);
  }
  const added = inputs.map((input) => ({ ...input, id: uuid(), eventId }));
  const all = [...event.entries, ...added].sort((a, b) => inOrder.compare(a.runningNumber, b.runningNumber));
  const order = new Map(all.map(({ id }, index) => [id, index + 1]));
  await ctx.db.entry.createMany({
    data: added.map((entry) => ({ ...entry, runningOrder: order.get(entry.id) ?? 0 })),
  });
  await putInOrder(ctx, eventId);
  // The driver's name is personal: the journal says that there is one, not who.
  const lines = added.map(({ id, driver, ...entry }) => ({
    action: "entry.add",
    noun: "entry",
    nounId: id,
    after: { ...entry, driver: driver === undefined ? "not given" : "given" },
    ...(entry.carId === undefined ? {} : { carId: entry.carId }),
  }));
  await writeJournal(ctx, lines);
}

const eventFields = {
  name: lineInput(120).min(1, "give it a name"),
  on: z.iso.date("a day, such as 2026-05-16"),
  venue: lineInput(120).min(1, "say where"),
  /** Id of the version of a rule set in force. */
  ruleSet: z.uuid("choose a rule set"),
} as const;

export const planEventInput = z.object({
  ...eventFields,
  /** Short name; made of name and year when empty. */
  slug: lineInput(60).default(""),
});
export type PlanEventInput = z.infer<typeof planEventInput>;

const slugOf = (text: string) =>
  text
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-|-$/g, "")
    .slice(0, 60);

async function requireRuleSet(ctx: Context, id: string): Promise<void> {
  const found = await ctx.db.ruleSet.findUnique({ where: { clubId_id: { clubId: ctx.club.id, id } } });
  if (!found) throw new Invalid([{ field: "ruleSet", message: "choose one of the club's rule sets" }]);
}

/** Plans an event and tells its short name. @throws Refusal ROLE_NEEDED, EVENT_SLUG_TAKEN; Invalid */
export async function planEvent(ctx: Context, input: PlanEventInput): Promise<string> {
  requireRole(ctx.actor, "registrar", "scrutineer", "fleetManager");
  const { ruleSet, ...event } = input;
  const slug = slugOf(event.slug === "" ? `${event.name} ${event.on.slice(0, 4)}` : event.slug);
  if (slug === "") throw new Invalid([{ field: "slug", message: "small letters, digits and dashes" }]);
  await requireRuleSet(ctx, ruleSet);
  const taken = await ctx.db.event.findUnique({ where: { clubId_slug: { clubId: ctx.club.id, slug } } });
  if (taken) throw refused("EVENT_SLUG_TAKEN", { slug });
  await addEvent(ctx, { ...event, slug, ruleSetId: ruleSet });
  return slug;
}

export const changeEventInput = z.object({ event: lineInput(60).min(1), ...eventFields });
export type ChangeEventInput = z.infer<typeof changeEventInput>;

/** Changes an event's facts. Entries in classes of another rule set lose their class. */
export async function changeEvent(ctx: Context, input: ChangeEventInput): Promise<void> {
  requireRole(ctx.actor, "registrar", "scrutineer", "fleetManager");
  const { id, name, on, venue, ruleSetId, slug } = await findEvent(ctx, input.event);
  await requireRuleSet(ctx, input.ruleSet);
  const after = { name: input.name, on: input.on, venue: input.venue, ruleSetId: input.ruleSet };
  await ctx.db.event.update({
    where: { clubId_id: { clubId: ctx.club.id, id } },
    data: { ...after, on: dayColumn(after.on) },
  });
  if (input.ruleSet !== ruleSetId)
    await ctx.db.entry.updateMany({ where: { eventId: id }, data: { eventClassId: null } });
  const before = { name, on, venue, ruleSetId };
  await writeJournal(ctx, [
    { action: "event.change", noun: "event", nounId: id, before, after: { slug, ...after } },
  ]);
}

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
  /** Id of the entry. */
  entry: z.uuid(),
  withdrawn: z.enum(["yes", "no"]).default("no"),
});
export type ChangeEntryInput = z.infer<typeof changeEntryInput>;

/** Changes an entry, withdraws it or takes it back. The journal says that the driver changed, not who it is. */
export async function changeEntry(ctx: Context, input: ChangeEntryInput): Promise<void> {
  requireRole(ctx.actor, "registrar", "scrutineer", "fleetManager");
  const event = await findEvent(ctx, input.event);
  const entry = await ctx.db.entry.findFirst({ where: { id: input.entry, eventId: event.id } });
  if (!entry) throw refused("ENTRY_NOT_FOUND", { event: event.slug, number: input.number, known: [] });
  const columns = await entryColumns(ctx, input, event.ruleSetId);
  const taken = await ctx.db.entry.findFirst({
    where: { eventId: event.id, runningNumber: input.number, id: { not: entry.id } },
  });
  if (taken) throw refused("RUNNING_NUMBER_TAKEN", { event: event.slug, number: input.number });
  const empty = { carId: null, describedAs: null, driver: null, group: null, eventClassId: null };
  const withdrawnAt = input.withdrawn === "yes" ? (entry.withdrawnAt ?? ctx.now) : null;
  const data = { ...empty, ...columns, withdrawnAt };
  await ctx.db.entry.update({ where: { clubId_id: { clubId: ctx.club.id, id: entry.id } }, data });
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
