import { type CarStatus, Prisma } from "@trunnion/db";
import { type Assembly, assemblies, type ComparedVerdict, comparedVerdicts } from "@trunnion/register";
import { conditionSql } from "../condition-sql";
import type { Context } from "../context";
import { keptSql } from "../tally";
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

/** All counts of a choice, in one query that asks each car once. */
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

/** The same of every car, or of a series' cars, off the tallies. */
export function keptCountSql(kept: { readonly series?: string }): Prisma.Sql {
  const rows = (kind: string, value: Prisma.Sql, about: "car" | "verdict" | "modified") =>
    sql`SELECT ${kind} AS kind, ${value} AS value, coalesce(sum(count), 0)::int AS cars FROM ${keptSql(about, kept)} AS t GROUP BY 2`;
  return Prisma.join(
    [
      rows("total", sql`NULL`, "car"),
      rows("series", sql`series_id::text`, "car"),
      rows("status", sql`text`, "car"),
      rows("decade", sql`year::text`, "car"),
      rows("verdict", sql`text`, "verdict"),
      rows("modified", sql`text`, "modified"),
    ],
    " UNION ALL ",
  );
}

interface Count {
  readonly kind: "total" | "unknown" | keyof Facets;
  readonly value: string | null;
  readonly cars: number;
}

/** Which cars are counted. */
interface CountInput {
  readonly choice: CarChoice;
  readonly show: Shown | undefined;
  /** The tallies are up to date. */
  readonly tallied: boolean;
}

/** Counts the cars of a choice, and of which kinds they are: off the tallies where nothing but a series narrows it. */
export async function countCars(ctx: Context, { choice, show, tallied }: CountInput): Promise<Counts> {
  const { search, series: slug, condition } = choice;
  const kept = tallied && search === undefined && condition === undefined && show !== "unknown";
  const rows = await ctx.db.$queryRaw<Count[]>(
    kept ? keptCountSql(slug === undefined ? {} : { series: slug }) : countSql(ctx, choice, show),
  );
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
