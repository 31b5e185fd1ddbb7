import type { CarStatus } from "@trunnion/db";
import { type CharacteristicBook, refused } from "@trunnion/register";
import { bookOf } from "../characteristic";
import type { ClubFacts, Context } from "../context";
import { dayColumn, dayOf } from "../day";
import { maySeeKeepers } from "../keeper/policy";
import { carReference } from "../record";
import { refreshSearchIndex } from "../search-index";
import { listSeriesDetails, type SeriesDetail } from "../series";
import { completenessSql, lackingSql, monthSql, repeatedSql, statusSql, thinSql } from "./policy";

/** How many cars of a series have become what. */
export interface SeriesSurvival {
  /** Missing for cars whose series is not settled. */
  readonly slug?: string;
  readonly name: string;
  /** How many were built; missing where the club does not know. */
  readonly built?: number;
  /** Records, and different numbers among them: two that claim one number are one. */
  readonly cars: number;
  readonly numbers: number;
  readonly statuses: Readonly<Partial<Record<CarStatus, number>>>;
}

/** Cars built in one month, by what has become of them. */
export interface MonthSurvival {
  /** "1971-05" */
  readonly month: string;
  readonly cars: number;
  readonly inUse: number;
  /** Laid up or under restoration. */
  readonly resting: number;
  readonly gone: number;
  /** Status not known, lost from sight, or identity disputed. */
  readonly unknown: number;
}

/** Whom to ask about a car. Names only for those who may see keepers. */
export type Whom =
  | { readonly who: "keeper"; readonly member: boolean; readonly name?: string }
  | { readonly who: "formerKeeper"; readonly member: boolean; readonly name?: string }
  | { readonly who: "nobody" }
  /** The reader may not see keepers. */
  | { readonly who: "registrar" };

/** A record of which little is known, and what to ask next of whom. */
export interface ThinRecord {
  readonly reference: string;
  readonly chassis: string;
  readonly series: string;
  readonly status: CarStatus;
  readonly values: number;
  /** What to ask, the most telling first. */
  readonly ask: readonly string[];
  readonly whom: Whom;
  /** The next event it is entered for, where it can be looked at. */
  readonly seenAt?: { readonly slug: string; readonly name: string; readonly on: string };
}

/** How much the records hold, cars that are gone left out. */
export interface Completeness {
  readonly cars: number;
  readonly noStatus: number;
  readonly noBuilt: number;
  /** Records without a single value. */
  readonly nothing: number;
  /** Quartiles of the number of values of a record; nothing where there is no car. */
  readonly lower: number | null;
  readonly median: number | null;
  readonly upper: number | null;
}

/** What was built, what is known of, what is in use, and which records are thin. */
export interface Survival {
  readonly club: ClubFacts;
  readonly chosenSeries?: string;
  readonly allSeries: readonly { readonly slug: string; readonly name: string }[];
  readonly series: readonly SeriesSurvival[];
  readonly months: readonly MonthSurvival[];
  /** Cars whose month of building is not certain. */
  readonly noMonth: number;
  readonly completeness: Completeness;
  readonly thin: readonly ThinRecord[];
}

interface StatusRow {
  readonly series: string | null;
  readonly status: CarStatus;
  readonly cars: number;
}
interface MonthRow extends StatusRow {
  readonly month: string | null;
}
interface ThinRow {
  readonly id: string;
  readonly chassis: string;
  readonly claim: number;
  readonly status: CarStatus;
  readonly built: string | null;
  readonly values: number;
  readonly series: string | null;
}

const sumOf = (rows: readonly { readonly cars: number }[]) => rows.reduce((sum, { cars }) => sum + cars, 0);

async function bySeries(
  ctx: Context,
  details: readonly SeriesDetail[],
  kept: boolean,
): Promise<readonly SeriesSurvival[]> {
  const rows = await ctx.db.$queryRaw<StatusRow[]>(statusSql(kept));
  const further = await ctx.db.$queryRaw<{ series: string | null; repeated: number }[]>(repeatedSql);
  const one = (id: string | null, face: Pick<SeriesSurvival, "slug" | "name" | "built">) => {
    const own = rows.filter(({ series }) => series === id);
    return {
      ...face,
      cars: sumOf(own),
      numbers: sumOf(own) - (further.find(({ series }) => series === id)?.repeated ?? 0),
      statuses: Object.fromEntries(own.map(({ status, cars }) => [status, cars])),
    };
  };
  const known = details.map(({ id, slug, name, builtCount }) =>
    one(id, { slug, name, ...(builtCount === undefined ? {} : { built: builtCount }) }),
  );
  const unsettled = one(null, { name: "Series not settled" });
  return unsettled.cars === 0 ? known : [...known, unsettled];
}

const kinds: Readonly<Record<CarStatus, "inUse" | "resting" | "gone" | "unknown">> = {
  inUse: "inUse",
  underRestoration: "resting",
  laidUp: "resting",
  dismantled: "gone",
  destroyed: "gone",
  lostFromSight: "unknown",
  identityDisputed: "unknown",
  unknown: "unknown",
};

async function byMonth(ctx: Context, seriesId: string | undefined, kept: boolean) {
  const all = await ctx.db.$queryRaw<MonthRow[]>(monthSql(kept));
  const rows = all.filter(({ series }) => seriesId === undefined || series === seriesId);
  const months = [...new Set(rows.flatMap(({ month }) => month ?? []))].sort();
  const count = (month: string, kind: (typeof kinds)[CarStatus]) =>
    sumOf(rows.filter((row) => row.month === month && kinds[row.status] === kind));
  return {
    months: months.map((month) => ({
      month,
      cars: sumOf(rows.filter((row) => row.month === month)),
      inUse: count(month, "inUse"),
      resting: count(month, "resting"),
      gone: count(month, "gone"),
      unknown: count(month, "unknown"),
    })),
    noMonth: sumOf(rows.filter(({ month }) => month === null)),
  };
}

const keeperSelect = { name: true, erasedAt: true, membership: { select: { leftAt: true } } } as const;

/** Whom to ask of each car, by its id. */
async function whomOf(ctx: Context, ids: readonly string[]): Promise<ReadonlyMap<string, Whom>> {
  if (!maySeeKeepers(ctx)) return new Map(ids.map((id) => [id, { who: "registrar" }]));
  const rows = await ctx.db.keepership.findMany({
    where: { carId: { in: [...ids] }, keeper: { erasedAt: null } },
    select: { carId: true, to: true, keeper: { select: keeperSelect } },
    orderBy: { id: "desc" },
  });
  return new Map(
    ids.map((id): [string, Whom] => {
      const own = rows.filter(({ carId }) => carId === id);
      const kept = own.find(({ to }) => to === null) ?? own[0];
      if (!kept) return [id, { who: "nobody" }];
      const { membership, name } = kept.keeper;
      const member = membership !== null && membership.leftAt === null;
      const who = kept.to === null ? ("keeper" as const) : ("formerKeeper" as const);
      return [id, { who, member, ...(name === null ? {} : { name }) }];
    }),
  );
}

async function eventsOf(ctx: Context, ids: readonly string[]) {
  const rows = await ctx.db.entry.findMany({
    where: { carId: { in: [...ids] }, withdrawnAt: null, event: { on: { gte: dayColumn(ctx.today) } } },
    select: { carId: true, event: { select: { slug: true, name: true, on: true } } },
    orderBy: { event: { on: "desc" } },
  });
  return new Map(
    rows.map(({ carId, event }) => [
      carId ?? "",
      { slug: event.slug, name: event.name, on: dayOf(event.on) },
    ]),
  );
}

/** Where what is asked comes from. */
interface Asked {
  readonly seriesId: string | undefined;
  /** Off the tallies and summaries, which are up to date. */
  readonly kept: boolean;
  readonly book: CharacteristicBook;
}

async function thinOf(ctx: Context, { seriesId, kept, book }: Asked): Promise<readonly ThinRecord[]> {
  const rows = await ctx.db.$queryRaw<ThinRow[]>(thinSql(seriesId, kept));
  const ids = rows.map(({ id }) => id);
  if (ids.length === 0) return [];
  const lacking = await ctx.db.$queryRaw<{ id: string; characteristic: string }[]>(lackingSql(ids, kept));
  const whom = await whomOf(ctx, ids);
  const events = await eventsOf(ctx, ids);
  return rows.map((row) => {
    const seenAt = events.get(row.id);
    return {
      reference: carReference(row),
      chassis: row.chassis,
      series: row.series ?? "series not settled",
      status: row.status,
      values: row.values,
      ask: [
        ...(row.status === "unknown" || row.status === "lostFromSight" ? ["What has become of it"] : []),
        ...(row.built === null ? ["When it was built"] : []),
        ...lacking
          .filter(({ id }) => id === row.id)
          .map(({ characteristic }) => book.find(characteristic)?.label ?? characteristic),
      ],
      whom: whom.get(row.id) ?? { who: "nobody" },
      ...(seenAt === undefined ? {} : { seenAt }),
    };
  });
}

const empty: Completeness = {
  cars: 0,
  noStatus: 0,
  noBuilt: 0,
  nothing: 0,
  lower: null,
  median: null,
  upper: null,
};

/**
 * What was built, what the register knows of, what is in use, by series and month of building; and which records are thin,
 * with what to ask next of whom. Everything is counted by the database.
 *
 * @throws Refusal SERIES_NOT_FOUND
 */
export async function survival(ctx: Context, slug?: string): Promise<Survival> {
  const details = await listSeriesDetails(ctx);
  const chosen = slug === undefined ? undefined : details.find((one) => one.slug === slug);
  if (slug !== undefined && chosen === undefined)
    throw refused("SERIES_NOT_FOUND", { series: slug, known: details.map((one) => one.slug) });
  const book = await bookOf(ctx);
  const kept = (await refreshSearchIndex(ctx, book)) === 0;
  const [completeness = empty] = await ctx.db.$queryRaw<Completeness[]>(completenessSql(chosen?.id, kept));
  return {
    club: ctx.club,
    ...(chosen === undefined ? {} : { chosenSeries: chosen.slug }),
    allSeries: details.map(({ slug: short, name }) => ({ slug: short, name })),
    series: await bySeries(ctx, details, kept),
    ...(await byMonth(ctx, chosen?.id, kept)),
    completeness,
    thin: await thinOf(ctx, { seriesId: chosen?.id, kept, book }),
  };
}
