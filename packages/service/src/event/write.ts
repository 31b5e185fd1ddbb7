import { Invalid, refused } from "@trunnion/register";
import { v7 as uuid } from "uuid";
import { z } from "zod";
import { requireUnmoved, type WantedField } from "../car/policy";
import type { Context } from "../context";
import { dayColumn } from "../day";
import { lineInput, openedFields } from "../entry-input";
import { writeJournal } from "../journal";
import { requireRole } from "../role";
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

/** Puts an event's entries in the order of their running numbers. */
export async function putInOrder(ctx: Context, eventId: string): Promise<void> {
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

export const changeEventInput = z.object({ event: lineInput(60).min(1), ...openedFields, ...eventFields });
export type ChangeEventInput = z.infer<typeof changeEventInput>;

async function ruleSetLabel(ctx: Context, id: string): Promise<string> {
  const set = await ctx.db.ruleSet.findUnique({ where: { clubId_id: { clubId: ctx.club.id, id } } });
  return set ? `${set.name}, ${set.edition}, version ${set.version}` : "";
}

/**
 * Changes an event's facts. Entries in classes of another rule set lose their class.
 *
 * @throws Refusal ROLE_NEEDED, EVENT_NOT_FOUND, CHANGED_MEANWHILE with what both made of it; Invalid for a rule set that
 * is not the club's. Then nothing is written.
 */
export async function changeEvent(ctx: Context, input: ChangeEventInput): Promise<void> {
  requireRole(ctx.actor, "registrar", "scrutineer", "fleetManager");
  await ctx.db.$queryRaw`
    SELECT 1 FROM event WHERE club_id = ${ctx.club.id}::uuid AND slug = ${input.event} FOR UPDATE`;
  const { id, name, on, venue, ruleSetId, ruleSet, version, slug } = await findEvent(ctx, input.event);
  await requireRuleSet(ctx, input.ruleSet);
  const fields: readonly WantedField[] = [
    { field: "name", label: "Name", now: name, wanted: input.name },
    { field: "on", label: "Day", now: on, wanted: input.on },
    { field: "venue", label: "Venue", now: venue, wanted: input.venue },
    { field: "ruleSet", label: "Rule set", now: ruleSet, wanted: await ruleSetLabel(ctx, input.ruleSet) },
  ];
  requireUnmoved({ what: "this event", version, input, fields });
  const after = { name: input.name, on: input.on, venue: input.venue, ruleSetId: input.ruleSet };
  await ctx.db.event.update({
    where: { clubId_id: { clubId: ctx.club.id, id } },
    data: { ...after, on: dayColumn(after.on), version: { increment: 1 } },
  });
  if (input.ruleSet !== ruleSetId)
    await ctx.db.entry.updateMany({ where: { eventId: id }, data: { eventClassId: null } });
  const before = { name, on, venue, ruleSetId };
  await writeJournal(ctx, [
    { action: "event.change", noun: "event", nounId: id, before, after: { slug, ...after } },
  ]);
}
