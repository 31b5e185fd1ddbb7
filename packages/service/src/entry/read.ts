import { refused } from "@trunnion/register";
import type { Context } from "../context";
import { type EventForm, type EventPage, eventForm } from "../event";
import { carReference } from "../record";
import { requireRole } from "../role";

/** Fields of an entry's form. */
export const entryTextKeys = [
  "number",
  "car",
  "describedAs",
  "driver",
  "group",
  "eventClass",
  "withdrawn",
] as const;
/** An entry as its form shows it, as text; the same is sent along as `opened`. */
export type EntryTexts = Readonly<Record<(typeof entryTextKeys)[number], string>>;

export const entryTextLabels: EntryTexts = {
  number: "Running number",
  car: "Car",
  describedAs: "What car it is",
  driver: "Driver",
  group: "Group",
  eventClass: "Class",
  withdrawn: "Withdrawn",
};

/** A class as people know it; empty for none. */
export async function className({ db, club }: Context, id: string): Promise<string> {
  if (id === "") return "";
  const row = await db.eventClass.findUnique({ where: { clubId_id: { clubId: club.id, id } } });
  return row ? `${row.code} ${row.name}` : "";
}

async function entryRow({ db, club }: Context, id: string) {
  return db.entry.findUniqueOrThrow({
    where: { clubId_id: { clubId: club.id, id } },
    include: { car: { select: { chassis: true, claim: true } }, eventClass: true },
  });
}
type EntryRow = Awaited<ReturnType<typeof entryRow>>;

function textsOf({
  runningNumber,
  car,
  describedAs,
  driver,
  group,
  eventClass,
  withdrawnAt,
}: EntryRow): EntryTexts {
  return {
    number: runningNumber,
    car: car === null ? "" : carReference(car),
    describedAs: describedAs ?? "",
    driver: driver ?? "",
    group: group ?? "",
    eventClass: eventClass === null ? "" : `${eventClass.code} ${eventClass.name}`,
    withdrawn: withdrawnAt === null ? "no" : "yes",
  };
}

/** An entry as its form shows it now. */
export async function entryTexts(ctx: Context, id: string): Promise<EntryTexts> {
  return textsOf(await entryRow(ctx, id));
}

/** One entry, withdrawn or not, with what its form offers. */
export interface EntryForm {
  readonly event: EventPage;
  readonly classes: EventForm["classes"];
  readonly entry: {
    readonly id: string;
    readonly version: number;
    readonly texts: EntryTexts;
    /** Id of its class; empty for none. */
    readonly classId: string;
    /** How many findings and decisions there are of it: withdrawn or moved to another car, they stay. */
    readonly records: number;
  };
}

/** @throws Refusal ROLE_NEEDED, EVENT_NOT_FOUND, ENTRY_NOT_FOUND */
export async function entryForm(
  ctx: Context,
  input: { readonly event: string; readonly number: string },
): Promise<EntryForm> {
  requireRole(ctx.actor, "registrar", "scrutineer", "fleetManager");
  const { event, classes } = await eventForm(ctx, input.event);
  if (!event) throw new Error("an event's form without its event");
  const found = await ctx.db.entry.findFirst({
    where: { eventId: event.id, runningNumber: input.number },
    select: { id: true, _count: { select: { findings: true, decisions: true } } },
  });
  if (!found) throw refused("ENTRY_NOT_FOUND", { event: event.slug, number: input.number, known: [] });
  const row = await entryRow(ctx, found.id);
  return {
    event,
    classes,
    entry: {
      id: row.id,
      version: row.version,
      texts: textsOf(row),
      classId: row.eventClassId ?? "",
      records: found._count.findings + found._count.decisions,
    },
  };
}
