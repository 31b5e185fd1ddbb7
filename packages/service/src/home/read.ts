import type { Role } from "@trunnion/db";
import { type AssemblyCounts, deviatingCounts, sumOf } from "../car";
import { bookOf } from "../characteristic";
import type { ClubFacts, Context } from "../context";
import { dayColumn, dayOf } from "../day";
import { dueSums } from "../due";
import { carReference } from "../record";
import { standingRecord } from "../standing-record";

/** A car the reader keeps. */
export interface OwnCar {
  readonly reference: string;
  readonly chassis: string;
  readonly series: string;
  readonly deviating: number;
  readonly assemblies: AssemblyCounts;
}

/** What a day at the desk begins with. */
export interface Home {
  readonly club: ClubFacts;
  readonly roles: readonly Role[];
  /** ISO day. */
  readonly today: string;
  readonly cars: number;
  /** Numbers that more than one car claims, at most three. */
  readonly disputed: readonly {
    readonly reference: string;
    readonly chassis: string;
    readonly claims: number;
  }[];
  readonly nextEvent?: {
    readonly slug: string;
    readonly name: string;
    readonly on: string;
    readonly entryCount: number;
  };
  readonly ownCars: readonly OwnCar[];
  /** Submissions that wait for a decision; nought for who does not decide. */
  readonly toReview: number;
  /** The reader's own submissions about which the registrar asked something. */
  readonly toAnswer: number;
  /** Dated items past their day, and soon due; only for who runs a fleet. */
  readonly due?: { readonly past: number; readonly soon: number };
}

async function disputedNumbers({ db }: Context): Promise<Home["disputed"]> {
  const groups = await db.car.groupBy({
    by: ["chassisKey"],
    where: standingRecord,
    _count: { _all: true },
    _min: { chassis: true },
    having: { chassisKey: { _count: { gt: 1 } } },
    orderBy: { chassisKey: "asc" },
    take: 3,
  });
  return groups.map(({ chassisKey, _min, _count }) => {
    const chassis = _min.chassis ?? chassisKey;
    return { reference: chassis, chassis, claims: _count._all };
  });
}

async function eventAhead({ db, today }: Context): Promise<Home["nextEvent"]> {
  const event = await db.event.findFirst({
    where: { on: { gte: dayColumn(today) } },
    orderBy: { on: "asc" },
    select: {
      slug: true,
      name: true,
      on: true,
      _count: { select: { entries: { where: { withdrawnAt: null } } } },
    },
  });
  if (!event) return undefined;
  const { slug, name, on, _count } = event;
  return { slug, name, on: dayOf(on), entryCount: _count.entries };
}

async function keptBy(ctx: Context): Promise<readonly OwnCar[]> {
  const { membershipId } = ctx.actor;
  if (membershipId === null) return [];
  const cars = await ctx.db.car.findMany({
    where: { ...standingRecord, keeperships: { some: { to: null, keeper: { membershipId } } } },
    select: { id: true, chassis: true, claim: true, series: { select: { name: true } } },
    orderBy: { chassisKey: "asc" },
    take: 20,
  });
  const ids = cars.map(({ id }) => id);
  const counts = await deviatingCounts(ctx, ids, await bookOf(ctx));
  return cars.map((car) => {
    const assemblies = counts.get(car.id) ?? {};
    const series = car.series?.name ?? "series not settled";
    return {
      reference: carReference(car),
      chassis: car.chassis,
      series,
      deviating: sumOf(assemblies),
      assemblies,
    };
  });
}

async function waitingSubmissions({ db, actor }: Context): Promise<Pick<Home, "toReview" | "toAnswer">> {
  const decides = actor.roles.includes("registrar") || actor.roles.includes("fleetManager");
  const { personId } = actor;
  return {
    toReview: decides
      ? await db.submission.count({ where: { status: { in: ["submitted", "answered"] } } })
      : 0,
    toAnswer:
      personId === null ? 0 : await db.submission.count({ where: { madeById: personId, status: "queried" } }),
  };
}

/** What a day at the desk begins with, for the one who asks. */
export async function home(ctx: Context): Promise<Home> {
  const nextEvent = await eventAhead(ctx);
  return {
    club: ctx.club,
    roles: ctx.actor.roles,
    today: ctx.today,
    cars: await ctx.db.car.count({ where: standingRecord }),
    disputed: await disputedNumbers(ctx),
    ownCars: await keptBy(ctx),
    ...(await waitingSubmissions(ctx)),
    ...(ctx.actor.roles.includes("fleetManager") ? { due: await dueSums(ctx) } : {}),
    ...(nextEvent === undefined ? {} : { nextEvent }),
  };
}
