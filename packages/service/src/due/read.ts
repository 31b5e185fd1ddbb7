import {
  type CharacteristicBook,
  type DatedItemKind,
  type DueStanding,
  datedItemKindsOf,
  dueStanding,
  dueStandings,
  monthWeeks,
  refused,
} from "@trunnion/register";
import { z } from "zod";
import { bookOf } from "../characteristic";
import type { ClubFacts, Context } from "../context";
import { carReference } from "../record";
import { refreshSearchIndex } from "../search-index";
import { listSeries, type SeriesLine } from "../series";
import { type DueScope, dueCountSql, dueDaysSql, duePageSql, PAGE } from "./policy";

const short = (most: number) => z.string().trim().min(1).max(most);
const isoDay = z.iso.date();

/** Which dated items, by series, kind, standing and days. */
export const dueInput = z.object({
  series: short(60).exactOptional(),
  kind: short(60).exactOptional(),
  standing: z.enum(dueStandings).exactOptional(),
  from: isoDay.exactOptional(),
  to: isoDay.exactOptional(),
  /** Day and id of the last line of the page before; the day is empty where it has none. */
  after: z.object({ day: z.union([isoDay, z.literal("")]), id: short(120) }).exactOptional(),
});
export type DueInput = z.output<typeof dueInput>;

/** The calendar's month. */
export const dueMonthInput = z.object({
  month: z.string().regex(/^(?:19|20|21)\d\d-(?:0[1-9]|1[0-2])$/, "expected a month such as 2026-12"),
  series: short(60).exactOptional(),
  kind: short(60).exactOptional(),
});
export type DueMonthInput = z.output<typeof dueMonthInput>;

/** One dated item of one car. */
export interface FleetDueItem {
  readonly id: string;
  readonly reference: string;
  readonly chassis: string;
  readonly series: string;
  readonly kind: string;
  /** What it is, in words of its kind: never what somebody wrote of it. */
  readonly label: string;
  /** ISO day, its last; missing where nobody has noted it. */
  readonly day?: string;
  readonly standing: DueStanding;
}

/** How many there are of a kind, by standing. */
export interface DueCount {
  readonly kind: string;
  readonly label: string;
  readonly counts: Readonly<Record<DueStanding, number>>;
}

interface DueFace {
  readonly club: ClubFacts;
  /** ISO day. */
  readonly today: string;
  readonly series: readonly SeriesLine[];
  readonly kinds: readonly { readonly kind: string; readonly label: string }[];
}

/** One page of what falls due, the longest past first. */
export interface DuePage extends DueFace {
  readonly counts: readonly DueCount[];
  readonly items: readonly FleetDueItem[];
  readonly next?: { readonly day: string; readonly id: string };
}

/** One day of the calendar with what falls on it: the first few by name, all counted. */
export interface DueDay {
  readonly day: string;
  readonly count: number;
  readonly items: readonly FleetDueItem[];
}

/** A month of what falls due. */
export interface DueMonth extends DueFace {
  readonly month: string;
  readonly days: readonly DueDay[];
}

/** A row as the queries give it. */
export interface DueRow {
  readonly id: string;
  readonly chassis: string;
  readonly claim: number;
  readonly series: string | null;
  readonly kind: string;
  readonly day: string | null;
}

/** A kind in words; one that nobody has a word for is told as it is filed. */
function labelOf(kind: string, kinds: readonly DatedItemKind[]): string {
  const known = kinds.find((one) => one.kind === kind)?.label;
  return known ?? kind.charAt(0).toUpperCase() + kind.slice(1);
}

/** A row ready to be read. */
export function dueItem(row: DueRow, kinds: readonly DatedItemKind[], today: string): FleetDueItem {
  const { id, chassis, series, kind, day } = row;
  return {
    id,
    reference: carReference(row),
    chassis,
    series: series ?? "series not settled",
    kind,
    label: labelOf(kind, kinds),
    ...(day === null ? {} : { day }),
    standing: dueStanding(day ?? undefined, today),
  };
}

interface CountRow {
  readonly kind: string;
  readonly standing: DueStanding;
  readonly count: number;
}

function countsOf(rows: readonly CountRow[], known: readonly DatedItemKind[]): readonly DueCount[] {
  const kinds = [...new Set(rows.map(({ kind }) => kind))].sort();
  return kinds.map((kind) => {
    const of = (standing: DueStanding) =>
      rows.find((row) => row.kind === kind && row.standing === standing)?.count ?? 0;
    const counts = { past: of("past"), soon: of("soon"), later: of("later"), unknown: of("unknown") };
    return { kind, label: labelOf(kind, known), counts };
  });
}

/** Which series a short name is of: its id for the query. */
async function scopeOf(
  ctx: Context,
  { series, ...rest }: Omit<DueScope, "kinds"> & { readonly series?: string },
  book: CharacteristicBook,
): Promise<DueScope> {
  const scope = { ...rest, kinds: datedItemKindsOf(book) };
  if (series === undefined) return scope;
  const found = await ctx.db.series.findFirst({ where: { slug: series }, select: { id: true } });
  if (found) return { ...scope, seriesId: found.id };
  const known = (await listSeries(ctx)).map(({ slug }) => slug);
  throw refused("SERIES_NOT_FOUND", { series, known });
}

/** Kinds there are anywhere in the club, for the choice. */
async function faceOf(ctx: Context, known: readonly DatedItemKind[]): Promise<DueFace> {
  const filed = await ctx.db.$queryRaw<{ kind: string }[]>`
    SELECT DISTINCT kind FROM dated_item WHERE replaced_at IS NULL ORDER BY kind LIMIT 50`;
  const kinds = [...new Set([...known.map(({ kind }) => kind), ...filed.map(({ kind }) => kind)])];
  return {
    club: ctx.club,
    today: ctx.today,
    series: await listSeries(ctx),
    kinds: kinds.map((kind) => ({ kind, label: labelOf(kind, known) })),
  };
}

/** How many dated items of the whole fleet are past their day, and how many fall due soon. */
export async function dueSums(ctx: Context): Promise<Pick<Record<DueStanding, number>, "past" | "soon">> {
  const book = await bookOf(ctx);
  const kept = (await refreshSearchIndex(ctx, book)) === 0;
  const scope = { kinds: datedItemKindsOf(book) };
  const counts = await ctx.db.$queryRaw<CountRow[]>(dueCountSql(scope, ctx.today, kept));
  const sum = (standing: DueStanding) =>
    counts.reduce((all, row) => all + (row.standing === standing ? row.count : 0), 0);
  return { past: sum("past"), soon: sum("soon") };
}

/**
 * What falls due across the fleet: labels' days that are on the cars' records and dated items, of cars that are not gone.
 *
 * @throws Refusal SERIES_NOT_FOUND
 */
export async function duePage(
  ctx: Context,
  { after, standing, from, to, ...rest }: DueInput,
): Promise<DuePage> {
  const book = await bookOf(ctx);
  const wide = await scopeOf(ctx, rest, book);
  const scope = {
    ...wide,
    ...(standing === undefined ? {} : { standing }),
    ...(from === undefined ? {} : { from }),
    ...(to === undefined ? {} : { to }),
  };
  const kept = (await refreshSearchIndex(ctx, book)) === 0;
  const counts = await ctx.db.$queryRaw<CountRow[]>(dueCountSql(wide, ctx.today, kept));
  const rows = await ctx.db.$queryRaw<DueRow[]>(duePageSql(scope, ctx.today, after));
  const items = rows.slice(0, PAGE).map((row) => dueItem(row, scope.kinds, ctx.today));
  const last = items.at(-1);
  return {
    ...(await faceOf(ctx, scope.kinds)),
    counts: countsOf(counts, scope.kinds),
    items,
    ...(rows.length > PAGE && last ? { next: { day: last.day ?? "", id: last.id } } : {}),
  };
}

/**
 * What falls due in a month, day by day.
 *
 * @throws Refusal SERIES_NOT_FOUND
 */
export async function dueMonth(ctx: Context, { month, ...rest }: DueMonthInput): Promise<DueMonth> {
  const days = monthWeeks(month)
    .flat()
    .filter((day) => day !== undefined);
  const span = { from: days[0] ?? "", to: days.at(-1) ?? "" };
  const scope = await scopeOf(ctx, { ...rest, ...span }, await bookOf(ctx));
  const rows = await ctx.db.$queryRaw<(DueRow & { count: number })[]>(dueDaysSql(scope, ctx.today));
  return {
    ...(await faceOf(ctx, scope.kinds)),
    month,
    days: [...new Set(rows.map(({ day }) => day ?? ""))].map((day) => {
      const own = rows.filter((row) => row.day === day);
      return {
        day,
        count: own[0]?.count ?? 0,
        items: own.map((row) => dueItem(row, scope.kinds, ctx.today)),
      };
    }),
  };
}
