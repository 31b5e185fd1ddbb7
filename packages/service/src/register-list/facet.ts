import { type CarStatus, Prisma } from "@trunnion/db";
import { type Assembly, assemblies, type ComparedVerdict, comparedVerdicts } from "@trunnion/register";
import { carsWhereSql, conditionBits, everyCarSql, truthBitsSql } from "../condition-bits";
import { conditionSql } from "../condition-sql";
import type { Context } from "../context";
import { maySeeKeepers } from "../keeper/policy";
import { searchHolds } from "../search-index";
import { blockSql, facetBlocks, hasSql, keptSql, placesSql, type TallyAbout } from "../tally";
import { fromSql, type Order, orderSql } from "./order";
import { baseSql, type CarChoice, type Shown } from "./policy";

const sql = Prisma.sql;

/** How many of some cars there are of each kind; kinds of which there is none are left out. */
export interface Facets {
  /** By the series' short name, in its order; `null` for cars whose series is not settled. */
  readonly series: readonly { readonly slug: string | null; readonly name: string; readonly cars: number }[];
  readonly status: readonly { readonly status: CarStatus; readonly cars: number }[];
  /** By the first year of the decade they were certainly built in; `null` where that is not known. */
  readonly decade: readonly { readonly decade: number | null; readonly cars: number }[];
  /** Cars of which something recorded has the verdict: one car may count under several. */
  readonly verdict: readonly { readonly verdict: ComparedVerdict; readonly cars: number }[];
  /** Cars on which something of the assembly was modified: one car may count under several. */
  readonly modified: readonly { readonly assembly: Assembly; readonly cars: number }[];
}

/** Counts of one choice. */
export interface Counts {
  readonly total: number;
  /** Cars of which the record does not say whether the condition holds. */
  readonly unknown: number;
  readonly facets: Facets;
}

/** All counts of a choice, in one query that asks each car once: where the tallies are not up to date. */
export function countSql(ctx: Context, choice: CarChoice, show: Shown = "yes"): Prisma.Sql {
  const base = baseSql(ctx, choice);
  const held = choice.condition === undefined ? sql`TRUE` : conditionSql(choice.condition, ctx.today).is;
  const shown = show === "yes" ? sql`t.held` : sql`t.held IS NULL`;
  // Kept apart, or the truth of each car would be worked out once per count. Few kinds of summary are of many cars.
  return sql`WITH truth AS MATERIALIZED (SELECT c.club_id, c.id, ${held} AS held FROM car c WHERE ${base}),
    summed AS MATERIALIZED (SELECT s.series_id, s.status, s.decade, s.verdicts, s.modified, count(*) AS n
      FROM truth t JOIN car_summary s ON s.club_id = t.club_id AND s.car_id = t.id WHERE ${shown} GROUP BY 1, 2, 3, 4, 5)
    SELECT 'total' AS kind, NULL AS value, count(*)::int AS cars FROM truth t WHERE t.held
    UNION ALL SELECT 'unknown', NULL, count(*)::int FROM truth t WHERE t.held IS NULL
    UNION ALL SELECT 'series', series_id::text, sum(n)::int FROM summed GROUP BY series_id
    UNION ALL SELECT 'status', status::text, sum(n)::int FROM summed GROUP BY status
    UNION ALL SELECT 'decade', decade::text, sum(n)::int FROM summed GROUP BY decade
    UNION ALL SELECT 'verdict', v.verdict::text, sum(n)::int FROM summed, unnest(verdicts) AS v(verdict) GROUP BY v.verdict
    UNION ALL SELECT 'modified', m.assembly, sum(n)::int FROM summed, unnest(modified) AS m(assembly) GROUP BY m.assembly`;
}

const kinds = {
  series: { about: "car", value: sql`t.series_id::text` },
  status: { about: "car", value: sql`t.text` },
  decade: { about: "car", value: sql`t.year::text` },
  verdict: { about: "verdict", value: sql`t.text` },
  modified: { about: "modified", value: sql`t.text` },
} as const satisfies Readonly<Record<keyof Facets, unknown>>;

/** The same of every car, or of a series' cars, off the tallies. */
export function keptCountSql(kept: { readonly series?: string }): Prisma.Sql {
  const rows = (kind: string, { about, value }: { readonly about: TallyAbout; readonly value: Prisma.Sql }) =>
    sql`SELECT ${kind} AS kind, ${value} AS value, coalesce(sum(count), 0)::int AS cars FROM ${keptSql(about, kept)} AS t GROUP BY 2`;
  const each = Object.entries(kinds).map(([kind, one]) => rows(kind, one));
  return Prisma.join([rows("total", { about: "car", value: sql`NULL` }), ...each], " UNION ALL ");
}

/** A page of cars to find: in which order, which come behind the page before, and how many. */
interface FoundPage {
  readonly order: Order;
  /** Over the summaries `s`. */
  readonly behind: Prisma.Sql;
  readonly size: number;
}

/** Cars found, up to which they are looked up by their places; more are met soon enough on the way through the whole list. */
const FEW = 1_000;

/**
 * Ids of a page of the cars that `shown` has in its blocks, numbered in their order. Of the two ways the database goes one: which,
 * it knows only when it has counted them. (`places` is worked out by itself: no index serves sums under row-level security.)
 */
function idsSql({ order, behind, size }: FoundPage): Prisma.Sql {
  const ordered = orderSql(order, "s");
  const from = fromSql(order, "s");
  const cars = sql`(SELECT coalesce(sum(bit_count(h.cars)), 0) FROM shown h)`;
  const block = sql`(SELECT h.cars FROM shown h WHERE h.block = ${blockSql(sql`s.place`)})`;
  const numbered = sql`SELECT s.car_id, row_number() OVER (ORDER BY ${ordered}) AS n`;
  const first = sql`ORDER BY ${ordered} LIMIT ${size + 1}::int`;
  return sql`(${numbered} FROM ${from} JOIN places f ON f.place = s.place WHERE ${cars} <= ${FEW} AND ${behind} ${first})
    UNION ALL (${numbered} FROM ${from} WHERE ${cars} > ${FEW} AND ${hasSql(block, sql`s.place`)} AND ${behind} ${first})`;
}

/**
 * The same of any choice by the blocks of the tallies, in a time that hardly grows with the cars; and the ids of the cars of a
 * page, as rows of kind `car` numbered in their order, one more than its size where there are more.
 */
function blockCountSql(
  ctx: Context,
  { search, series, condition }: CarChoice,
  show: Shown,
  page: FoundPage,
): Prisma.Sql {
  const every = everyCarSql(series === undefined ? {} : { series });
  const among =
    search === undefined
      ? every
      : sql`SELECT m.block, m.cars & f.cars AS cars FROM (${every}) m
          JOIN (${carsWhereSql(searchHolds(search, maySeeKeepers(ctx)))}) f USING (block)`;
  const truth = truthBitsSql({ ...conditionBits(condition ?? { op: "always" }, ctx.today), among });
  const shown = show === "yes" ? sql`h.yes` : sql`h.open`;
  const rows = ([kind, { about, value }]: readonly [string, (typeof kinds)[keyof typeof kinds]]) =>
    sql`SELECT ${kind} AS kind, ${value} AS value, sum(t.n)::int AS cars FROM counted t WHERE t.about = ${about} AND t.n > 0 GROUP BY 2`;
  return sql`WITH ${truth},
    counted AS MATERIALIZED (SELECT t.about, t.series_id, t.text, t.year, bit_count(b.cars & ${shown}) AS n
      FROM ${facetBlocks} JOIN truth h ON h.block = b.block),
    shown AS MATERIALIZED (SELECT h.block, ${shown} AS cars FROM truth h),
    places AS MATERIALIZED (${placesSql(sql`shown h`)}),
    page AS (${idsSql(page)})
    SELECT 'total' AS kind, NULL AS value, coalesce(sum(bit_count(h.yes)), 0)::int AS cars FROM truth h
    UNION ALL SELECT 'unknown', NULL, coalesce(sum(bit_count(h.open)), 0)::int FROM truth h
    UNION ALL SELECT 'car', p.car_id::text, p.n::int FROM page p
    UNION ALL ${Prisma.join(Object.entries(kinds).map(rows), " UNION ALL ")}`;
}

interface Count {
  readonly kind: "total" | "unknown" | "car" | keyof Facets;
  readonly value: string | null;
  readonly cars: number;
}

/**
 * Counts the cars of a choice, and of which kinds they are.
 *
 * @param tallied whether the tallies are up to date
 */
export async function countCars(
  ctx: Context,
  {
    choice,
    show = "yes",
    tallied,
  }: { readonly choice: CarChoice; readonly show?: Shown; readonly tallied: boolean },
): Promise<Counts> {
  const { series } = choice;
  const counting = tallied
    ? keptCountSql(series === undefined ? {} : { series })
    : countSql(ctx, choice, show);
  return countsOf(ctx, await ctx.db.$queryRaw<Count[]>(counting));
}

/** Counts them, and finds a page of them: once the tallies are up to date. */
export async function findCars(
  ctx: Context,
  choice: CarChoice,
  show: Shown,
  page: FoundPage,
): Promise<{ readonly counts: Counts; readonly ids: readonly string[] }> {
  const rows = await ctx.db.$queryRaw<Count[]>(blockCountSql(ctx, choice, show, page));
  const found = rows.filter(({ kind }) => kind === "car").sort((a, b) => a.cars - b.cars);
  return { counts: await countsOf(ctx, rows), ids: found.flatMap(({ value }) => value ?? []) };
}

async function countsOf(ctx: Context, rows: readonly Count[]): Promise<Counts> {
  const series = await ctx.db.series.findMany({
    select: { id: true, slug: true, name: true },
    orderBy: [{ ordinal: "asc" }, { slug: "asc" }],
  });
  const of = (kind: Count["kind"]) => rows.filter((row) => row.kind === kind);
  const number = (kind: Count["kind"], value: string | null) =>
    of(kind).find((row) => row.value === value)?.cars ?? 0;
  const inOrder = <K extends string>(kind: Count["kind"], all: readonly K[]) =>
    all.map((value) => ({ value, cars: number(kind, value) })).filter(({ cars }) => cars > 0);
  const unsettled = number("series", null);
  return {
    total: number("total", null),
    unknown: number("unknown", null),
    facets: {
      series: [
        ...series
          .map(({ id, slug, name }) => ({ slug, name, cars: number("series", id) }))
          .filter(({ cars }) => cars > 0),
        ...(unsettled === 0 ? [] : [{ slug: null, name: "not settled", cars: unsettled }]),
      ],
      status: of("status")
        .map(({ value, cars }) => ({ status: value as CarStatus, cars }))
        .sort((a, b) => b.cars - a.cars),
      decade: of("decade")
        .map(({ value, cars }) => ({ decade: value === null ? null : Number(value), cars }))
        .sort((a, b) => (a.decade ?? 9999) - (b.decade ?? 9999)),
      verdict: inOrder("verdict", comparedVerdicts).map(({ value, cars }) => ({ verdict: value, cars })),
      modified: inOrder("modified", assemblies).map(({ value, cars }) => ({ assembly: value, cars })),
    },
  };
}
