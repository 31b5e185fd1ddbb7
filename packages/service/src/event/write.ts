import { refused } from "@trunnion/register";
import { v7 as uuid } from "uuid";
import type { Context } from "../context";
import { dayColumn } from "../day";
import { writeJournal } from "../journal";
import { requireRole } from "../role";

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
  await ctx.db.event.create({ data: { ...input, id, on: dayColumn(input.on) } });
  await writeJournal(ctx, [{ action: "event.add", noun: "event", nounId: id, after: { ...input } }]);
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
  for (const { id } of event.entries) {
    const where = { clubId_id: { clubId: ctx.club.id, id } };
    await ctx.db.entry.update({ where, data: { runningOrder: order.get(id) ?? 0 } });
  }
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
