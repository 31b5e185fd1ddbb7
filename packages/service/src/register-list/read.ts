import { type CarStatus, Prisma } from "@trunnion/db";
import {
  type Assembly,
  assemblies,
  type CharacteristicBook,
  type Condition,
  sayCondition,
} from "@trunnion/register";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { filterNamed } from "../filter";
import { carReference } from "../record";
import { type Correction, correctionsOf, refreshSearchIndex } from "../search-index";
import { listSeries } from "../series";
import { valuesOf } from "./column";
import { countCars, type Facets } from "./facet";
import {
  type CarChoice,
  choiceSql,
  followingSql,
  fromSql,
  type ListOrder,
  orderSql,
  type Shown,
} from "./policy";

/** Cars on one page of the list. */
const PAGE = 50;

const sql = Prisma.sql;

export interface RegisterListInput extends CarChoice {
  /** Name of a saved filter, own or shared; instead of a condition. */
  readonly filter?: string;
  /** Cars that fit when left out. */
  readonly show?: Shown;
  /** By chassis number when left out. */
  readonly order?: ListOrder;
  /** Reference of the last car of the page before. */
  readonly after?: string;
  /** Keys of characteristics to show beside; unknown ones are passed over. */
  readonly columns?: readonly string[];
}

export interface RegisterListRow {
  readonly reference: string;
  readonly chassis: string;
  readonly claim: number;
  readonly series: string;
  readonly built: string;
  readonly status: CarStatus;
  readonly registration: string;
  readonly colour: string;
  readonly engine: string;
  readonly remarks: string;
  /** What the car has of the characteristics asked for as columns, as entered; both sides where they differ. */
  readonly values: Readonly<Record<string, string>>;
  /** Characteristics that differ from factory, and how many in each assembly. */
  readonly deviating: number;
  readonly assemblies: Readonly<Partial<Record<Assembly, number>>>;
  /** Characteristics that could be compared at all: none that differ of none known is no praise. */
  readonly compared: number;
}

/** One page of the register by chassis number. */
export interface RegisterList {
  /** Cars that fit, all pages together. */
  readonly total: number;
  /** Cars of which the record does not say whether they fit; none without a condition. */
  readonly unknown: number;
  readonly cars: readonly RegisterListRow[];
  /** How many of the cars shown there are of each series, status, decade, verdict, modified assembly. */
  readonly facets: Facets;
  /** Words that no car has to the letter, and what was looked for instead. */
  readonly corrections: readonly Correction[];
  /** Notes of changed cars that are not in the search yet. */
  readonly stale: number;
  /** Characteristics shown beside. */
  readonly columns: readonly { readonly key: string; readonly label: string }[];
  /** Reference of the last car of this page, where there are more. */
  readonly next?: string;
  /** The condition asked for, and in words; missing where none was. */
  readonly condition?: { readonly is: Condition; readonly said: string };
}

interface Row {
  readonly engine: string | null;
  readonly remarks: string | null;
  readonly id: string;
  readonly chassis: string;
  readonly claim: number;
  readonly series: string | null;
  readonly built: string | null;
  readonly status: CarStatus | null;
  readonly registration: string | null;
  readonly colour: string | null;
}

/** The rows of a page, in one query: the keyset decides where it begins, the index in which order it goes. */
export function pageSql(where: Prisma.Sql, order: ListOrder = "chassis"): Prisma.Sql {
  return sql`
    SELECT c.id::text AS id, c.chassis, c.claim, c.built_text AS built,
      (SELECT s.name FROM series s WHERE s.club_id = c.club_id AND s.id = c.series_id) AS series,
      (SELECT t.status::text FROM car_status_span t
        WHERE t.club_id = c.club_id AND t.car_id = c.id AND t."to" IS NULL) AS status,
      (SELECT i.number FROM car_identity i
        WHERE i.club_id = c.club_id AND i.car_id = c.id AND i.kind = 'registration' ORDER BY i.id DESC LIMIT 1) AS registration,
      (SELECT v.entered FROM current_value v
        WHERE v.club_id = c.club_id AND v.car_id = c.id AND v.characteristic = 'body.colour' AND v.side = 'whole') AS colour,
      (SELECT i.number FROM car_identity i
        WHERE i.club_id = c.club_id AND i.car_id = c.id AND i.kind = 'engine' ORDER BY i.id DESC LIMIT 1) AS engine, c.remarks
    FROM ${fromSql(order)} WHERE ${where} ORDER BY ${orderSql[order]} LIMIT ${PAGE + 1}::int`;
}

/** Per car and assembly, how much was compared with factory and how much of it differs. */
export function comparedSql(carIds: readonly string[], book: CharacteristicBook): Prisma.Sql {
  const keys = book.all.map(({ key }) => key);
  const places = book.all.map(({ assembly }) => assembly);
  return sql`SELECT v.car_id::text AS id, b.assembly, count(*)::int AS compared,
      count(*) FILTER (WHERE v.verdict NOT IN ('asSpecified', 'insideLimits'))::int AS deviating
    FROM current_value v JOIN unnest(${keys}::text[], ${places}::text[]) AS b(key, assembly) ON b.key = v.characteristic
    WHERE v.car_id = ANY(${[...carIds]}::uuid[]) AND v.verdict <> 'notRecorded' GROUP BY 1, 2`;
}

interface Compared {
  readonly id: string;
  readonly assembly: Assembly;
  readonly compared: number;
  readonly deviating: number;
}

type Differing = Pick<RegisterListRow, "deviating" | "assemblies" | "compared">;

function differingOf(rows: readonly Compared[]): Differing {
  const inOrder = assemblies.flatMap((assembly) =>
    rows.filter((row) => row.assembly === assembly && row.deviating > 0),
  );
  return {
    deviating: rows.reduce((sum, row) => sum + row.deviating, 0),
    assemblies: Object.fromEntries(inOrder.map(({ assembly, deviating }) => [assembly, deviating])),
    compared: rows.reduce((sum, row) => sum + row.compared, 0),
  };
}

function rowOf(row: Row, differing: Differing): Omit<RegisterListRow, "values"> {
  return {
    reference: carReference(row),
    chassis: row.chassis,
    claim: row.claim,
    series: row.series ?? "not settled",
    built: row.built ?? "not known",
    status: row.status ?? "unknown",
    registration: row.registration ?? "",
    colour: row.colour ?? "",
    engine: row.engine ?? "",
    remarks: row.remarks ?? "",
    ...differing,
  };
}

async function said(ctx: Context, condition: Condition, book: CharacteristicBook): Promise<string> {
  const series = new Map((await listSeries(ctx)).map(({ slug, name }) => [slug, name]));
  return sayCondition(condition, book, { series, system: ctx.club.unitSystem, day: "today" });
}

async function conditionOf(
  ctx: Context,
  { filter, condition }: RegisterListInput,
): Promise<Condition | undefined> {
  return filter === undefined ? condition : (await filterNamed(ctx, filter)).condition;
}

/**
 * One page of the register by chassis number: the cars that fit, or on request those of which the record does not say;
 * with how many there are of either.
 *
 * @throws Refusal FILTER_NOT_FOUND
 */
export async function registerList(ctx: Context, input: RegisterListInput): Promise<RegisterList> {
  const { filter: _filter, condition: _condition, columns: _columns, order: _order, ...rest } = input;
  const condition = await conditionOf(ctx, input);
  const choice: CarChoice = { ...rest, ...(condition === undefined ? {} : { condition }) };
  const book = await bookOf(ctx);
  const stale = await refreshSearchIndex(ctx, book);
  const { total, unknown, facets } = await countCars(ctx, choice, input.show);
  const order = input.order ?? "chassis";
  const chosen = choiceSql(ctx, choice, input.show);
  const where = input.after === undefined ? chosen : sql`${chosen} AND ${followingSql(input.after, order)}`;
  const rows = await ctx.db.$queryRaw<Row[]>(pageSql(where, order));
  const page = rows.slice(0, PAGE);
  const ids = page.map(({ id }) => id);
  const compared = await ctx.db.$queryRaw<Compared[]>(comparedSql(ids, book));
  const columns = (input.columns ?? []).flatMap((key) => book.find(key) ?? []);
  const values = await valuesOf(ctx, ids, columns);
  const cars = page.map((row) => ({
    ...rowOf(row, differingOf(compared.filter(({ id }) => id === row.id))),
    values: values.get(row.id) ?? {},
  }));
  const last = cars.at(-1);
  return {
    total,
    unknown,
    facets,
    corrections: input.search === undefined ? [] : await correctionsOf(ctx, input.search),
    stale,
    columns: columns.map(({ key, label }) => ({ key, label })),
    cars,
    ...(rows.length > PAGE && last ? { next: last.reference } : {}),
    ...(condition === undefined
      ? {}
      : { condition: { is: condition, said: await said(ctx, condition, book) } }),
  };
}

/**
 * Ids of every car chosen, by chassis number: for what goes over the whole list, an export among it. It only reads: whoever
 * looks for words brings the search up to date before.
 */
export async function chosenCarIds(
  ctx: Context,
  choice: CarChoice,
  show?: Shown,
): Promise<readonly string[]> {
  const rows = await ctx.db.$queryRaw<{ id: string }[]>(
    sql`SELECT c.id::text AS id FROM car c WHERE ${choiceSql(ctx, choice, show)} ORDER BY c.chassis_key, c.claim`,
  );
  return rows.map(({ id }) => id);
}
