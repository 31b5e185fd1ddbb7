import type { Prisma } from "@trunnion/db";
import { refused } from "@trunnion/register";
import type { Context } from "../context";
import { dayOf } from "../day";
import { carReference } from "../record";

const eventFields = {
  id: true,
  slug: true,
  name: true,
  on: true,
  venue: true,
  ruleSetId: true,
  version: true,
  ruleSet: { select: { name: true, edition: true, version: true } },
} satisfies Prisma.EventSelect;

const entryFields = {
  id: true,
  runningNumber: true,
  driver: true,
  group: true,
  describedAs: true,
  carId: true,
  car: { select: { chassis: true, claim: true, series: { select: { name: true } } } },
  eventClass: { select: { id: true, code: true, name: true } },
} satisfies Prisma.EntrySelect;

/** An event with the rule set in force. */
export interface EventPage {
  readonly id: string;
  readonly slug: string;
  readonly name: string;
  /** ISO day. */
  readonly on: string;
  readonly venue: string;
  readonly ruleSetId: string;
  readonly ruleSet: string;
  /** Counts up with every change of its facts. */
  readonly version: number;
}

/** One car entered, in running order; `car` is missing when it is not on the register. */
export interface EventEntry {
  readonly id: string;
  readonly runningNumber: string;
  readonly driver: string;
  readonly group: string;
  readonly className: string;
  /** Id of the class; empty for none. */
  readonly classId: string;
  readonly carId: string | null;
  readonly car?: { readonly reference: string; readonly chassis: string; readonly series: string };
  readonly describedAs: string;
}

function pageOf(row: Prisma.EventGetPayload<{ select: typeof eventFields }>): EventPage {
  const { ruleSet, on, ...event } = row;
  return {
    ...event,
    on: dayOf(on),
    ruleSet: `${ruleSet.name}, ${ruleSet.edition}, version ${ruleSet.version}`,
  };
}

function entryOf(row: Prisma.EntryGetPayload<{ select: typeof entryFields }>): EventEntry {
  return {
    id: row.id,
    runningNumber: row.runningNumber,
    driver: row.driver ?? "",
    group: row.group ?? "",
    className: row.eventClass === null ? "" : `${row.eventClass.code} ${row.eventClass.name}`,
    classId: row.eventClass?.id ?? "",
    carId: row.carId,
    describedAs: row.describedAs ?? "",
    ...(row.car === null
      ? {}
      : {
          car: {
            reference: carReference(row.car),
            chassis: row.car.chassis,
            series: row.car.series?.name ?? "series not settled",
          },
        }),
  };
}

/** The club's events with how many cars are entered, the latest first; at most 200. */
export async function listEvents(ctx: Context) {
  const rows = await ctx.db.event.findMany({
    select: { ...eventFields, _count: { select: { entries: { where: { withdrawnAt: null } } } } },
    orderBy: [{ on: "desc" }, { slug: "asc" }],
    take: 200,
  });
  return rows.map(({ _count, ...row }) => ({ ...pageOf(row), entryCount: _count.entries }));
}

/** @throws Refusal EVENT_NOT_FOUND with the events there are */
export async function findEvent(ctx: Context, slug: string): Promise<EventPage> {
  const row = await ctx.db.event.findUnique({
    where: { clubId_slug: { clubId: ctx.club.id, slug } },
    select: eventFields,
  });
  if (row) return pageOf(row);
  const known = await ctx.db.event.findMany({ select: { slug: true }, orderBy: { on: "desc" }, take: 20 });
  throw refused("EVENT_NOT_FOUND", { event: slug, known: known.map((event) => event.slug) });
}

/** Entries of an event that were not withdrawn, in running order. */
export async function entriesOf(ctx: Context, eventId: string): Promise<readonly EventEntry[]> {
  const rows = await ctx.db.entry.findMany({
    where: { eventId, withdrawnAt: null },
    select: entryFields,
    orderBy: [{ runningOrder: "asc" }, { id: "asc" }],
  });
  return rows.map(entryOf);
}

/** What the forms of an event and its entries offer. */
export interface EventForm {
  readonly ruleSets: readonly { readonly id: string; readonly label: string }[];
  readonly classes: readonly { readonly id: string; readonly label: string }[];
  readonly event?: EventPage;
}

/** @param slug the event the form is of; left out for a new one @throws Refusal EVENT_NOT_FOUND */
export async function eventForm(ctx: Context, slug?: string): Promise<EventForm> {
  const event = slug === undefined ? undefined : await findEvent(ctx, slug);
  const sets = await ctx.db.ruleSet.findMany({
    where: { OR: [{ status: "current" }, ...(event ? [{ id: event.ruleSetId }] : [])] },
    orderBy: [{ name: "asc" }, { version: "desc" }],
  });
  const classes = event
    ? await ctx.db.eventClass.findMany({ where: { ruleSetId: event.ruleSetId }, orderBy: { code: "asc" } })
    : [];
  return {
    ruleSets: sets.map(({ id, name, edition, version }) => ({
      id,
      label: `${name}, ${edition}, version ${version}`,
    })),
    classes: classes.map(({ id, code, name }) => ({ id, label: `${code} ${name}` })),
    ...(event ? { event } : {}),
  };
}
