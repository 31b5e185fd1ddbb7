import {
  buildSheet,
  type CarriedFinding,
  type CharacteristicBook,
  dueStanding,
  sayDay,
  shiftDays,
} from "@trunnion/register";
import { type Assessment, assessAll } from "../assessment";
import { deviatingCounts, sumOf } from "../car";
import { carriedFindings } from "../carried-finding";
import { bookOf } from "../characteristic";
import { carConsequences } from "../consequence";
import type { ClubFacts, Context } from "../context";
import { dayColumn, dayOf, dayOrNothing } from "../day";
import { entriesOf, findEvent } from "../event";
import { recordsOf } from "../record";
import { checksOf } from "../rule-set";
import { standingRecord } from "../standing-record";
import { ownSubmissions, type SubmissionBrief } from "../submission-list";

/** One thing that runs out on a car. */
export interface DueItem {
  readonly label: string;
  /** Written: "14 Nov 2026"; "date not recorded" where nobody knows. */
  readonly on: string;
  readonly standing: "past" | "soon" | "unknown";
}

/** One thing that the scrutineer will look at because of what this car is. */
export interface Expected {
  readonly text: string;
  /** Why it is on this car's sheet. */
  readonly why: string;
  /** How to look at it oneself beforehand, and what passes. */
  readonly prepare: string;
}

/** The next event a car is entered for. */
export interface CarEvent {
  readonly slug: string;
  readonly name: string;
  /** Written. */
  readonly on: string;
  readonly runningNumber: string;
  readonly expected: readonly Expected[];
  /** What would have to be looked for on the day because the record does not say it. */
  readonly unrecorded: readonly string[];
  /** Checks that every car gets, besides. */
  readonly besides: number;
}

/** One of the reader's cars, with everything that waits for him there. */
export interface GarageCar {
  readonly reference: string;
  readonly chassis: string;
  readonly series: string;
  readonly deviating: number;
  /** What would be worth recording, with what it would let be worked out; most telling first. */
  readonly missing: readonly { readonly label: string; readonly adds: readonly string[] }[];
  readonly due: readonly DueItem[];
  readonly event?: CarEvent;
  /** What was advised or refused at an event and has not been passed since. */
  readonly carried: readonly CarriedFinding[];
}

/** What an owner comes back to. */
export interface Garage {
  readonly club: ClubFacts;
  readonly cars: readonly GarageCar[];
  readonly open: readonly SubmissionBrief[];
  readonly done: readonly SubmissionBrief[];
}

/** Most of what is missing that is named. */
const MISSING = 5;
/** Cars whose particulars are worked out; a fleet manager keeps none, an owner few. */
const CARS = 20;

async function dueOf(ctx: Context, carId: string): Promise<readonly DueItem[]> {
  const rows = await ctx.db.datedItem.findMany({
    where: { carId, replacedAt: null },
    select: { label: true, validTo: true },
    orderBy: [{ validTo: { sort: "asc", nulls: "last" } }, { id: "asc" }],
  });
  return rows.flatMap(({ label, validTo }) => {
    const standing = dueStanding(dayOrNothing(validTo), ctx.today);
    const on = validTo === null ? "date not recorded" : sayDay(dayOf(validTo));
    return standing === "later" ? [] : [{ label, on, standing }];
  });
}

async function eventOf(
  ctx: Context,
  assessment: Assessment,
  book: CharacteristicBook,
): Promise<CarEvent | undefined> {
  const next = await ctx.db.entry.findFirst({
    where: { carId: assessment.record.id, withdrawnAt: null, event: { on: { gte: dayColumn(ctx.today) } } },
    select: { id: true, event: { select: { slug: true } } },
    orderBy: { event: { on: "asc" } },
  });
  if (!next) return undefined;
  const event = await findEvent(ctx, next.event.slug);
  const entry = (await entriesOf(ctx, event.id)).find(({ id }) => id === next.id);
  if (!entry) return undefined;
  const [onTheDay] = await assessAll(ctx, [assessment.record], book, event.on);
  const { record, state, deviations } = onTheDay ?? assessment;
  const sheet = buildSheet({
    club: { name: ctx.club.name, unitSystem: ctx.club.unitSystem },
    event,
    entry,
    checks: await checksOf(ctx, event.ruleSetId),
    book,
    recordHash: "",
    preparedAt: ctx.now.toISOString(),
    car: { ...record, state, deviations },
  });
  const checks = sheet.stations.flatMap((station) => station.checks);
  const special = checks.filter((check) => check.special && !check.undecided);
  const undecided = checks.filter((check) => check.undecided);
  return {
    slug: event.slug,
    name: event.name,
    on: sayDay(event.on),
    runningNumber: entry.runningNumber,
    expected: special.map(({ text, why, method, criterion }) => ({
      text,
      why,
      prepare: [method, "text" in criterion ? criterion.text : undefined]
        .filter((one) => one !== undefined)
        .join(" "),
    })),
    unrecorded: undecided.map(({ text }) => text),
    besides: checks.length - special.length - undecided.length,
  };
}

/**
 * What an owner comes back to: his cars with what is missing, falls due and will be looked at, and what he handed in.
 * Nobody else's: who keeps no car sees his submissions alone.
 */
export async function garage(ctx: Context): Promise<Garage> {
  const { membershipId } = ctx.actor;
  const book = await bookOf(ctx);
  const kept =
    membershipId === null
      ? []
      : await ctx.db.car.findMany({
          where: { keeperships: { some: { to: null, keeper: { membershipId } } }, ...standingRecord },
          select: { id: true },
          orderBy: { chassisKey: "asc" },
          take: CARS,
        });
  const ids = kept.map(({ id }) => id);
  const records = new Map((await recordsOf(ctx, ids)).map((record) => [record.id, record]));
  const counts = await deviatingCounts(ctx, ids, book);
  const ordered = ids.flatMap((id) => records.get(id) ?? []);
  const carried = await carriedFindings(ctx, ids, shiftDays(ctx.today, 1));
  const cars: GarageCar[] = [];
  for (const assessment of await assessAll(ctx, ordered, book, ctx.today)) {
    const { record } = assessment;
    const { lacking } = await carConsequences(ctx, record.reference);
    const event = await eventOf(ctx, assessment, book);
    cars.push({
      reference: record.reference,
      chassis: record.chassis,
      series: record.series?.name ?? "series not settled",
      deviating: sumOf(counts.get(record.id) ?? {}),
      missing: lacking.slice(0, MISSING).map(({ label, adds }) => ({ label, adds })),
      due: await dueOf(ctx, record.id),
      carried: carried.get(record.id) ?? [],
      ...(event === undefined ? {} : { event }),
    });
  }
  const own = await ownSubmissions(ctx, (key) => book.find(key)?.label ?? key);
  return { club: ctx.club, cars, ...own };
}
