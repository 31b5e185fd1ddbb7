import { type CarStatus, Prisma } from "@trunnion/db";
import {
  type Assembly,
  assemblies,
  type Characteristic,
  type CharacteristicBook,
  type Condition,
  partsOfCondition,
  type SayOptions,
  sayBriefly,
  sayCondition,
} from "@trunnion/register";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { carReference } from "../record";
import { type Correction, correctionsOf, refreshSearchIndex } from "../search-index";
import { listSeries } from "../series";
import { type Aside, asidesOf, asideTexts } from "./aside";
import { type ChoiceInput, choiceAsked } from "./choice";
import { valuesOf } from "./column";
import { type Counts, countCars, type Facets, findCars } from "./facet";
import { type Nearest, nearestOf } from "./nearest";
import { behind, fromSql, type ListOrder, type Order, orderSql, upToSql } from "./order";
import { type CarPhoto, photosOf } from "./photo";
import { type CarChoice, choiceSql, type Shown } from "./policy";

/** Cars on one page of the list. */
const PAGE = 50;
/** Cars read at once for a file. */
const FILE = 500;

const sql = Prisma.sql;

export interface RegisterListInput extends ChoiceInput {
  /** Cars that fit when left out. */
  readonly show?: Shown;
  /** By chassis number when left out, and where the characteristic it shall go by is unknown. */
  readonly order?: ListOrder;
  /** Reference of the last car of the page before. */
  readonly after?: string;
  /** Keys of characteristics to show beside; unknown ones are passed over. */
  readonly columns?: readonly string[];
  /** A photograph of each car too. */
  readonly photos?: boolean;
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
  /** The latest photograph of the car as a whole, where one was asked for and there is one. */
  readonly photo?: CarPhoto;
  /** Characteristics that differ from factory, and how many in each assembly. */
  readonly deviating: number;
  readonly assemblies: Readonly<Partial<Record<Assembly, number>>>;
  /** Characteristics that could be compared at all: none that differ of none known is no praise. */
  readonly compared: number;
}

/** What is shown beside the cars: a characteristic, by which they may be put in order, or something else. */
export interface RegisterColumn extends Pick<Characteristic, "key" | "label" | "kind"> {
  readonly orders: boolean;
}

/** One page of the register. */
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
  /** Words of the search that are the name of a series, and were taken for it. */
  readonly named: readonly string[];
  /** Words of the search that were not looked for: there were too many. */
  readonly passedOver: readonly string[];
  /** Where no car fits: what does with one thing left out, and numbers beside the one looked for. */
  readonly nearest: readonly Nearest[];
  /** Notes of changed cars that are not in the search yet. */
  readonly stale: number;
  /** Characteristics shown beside. */
  readonly columns: readonly RegisterColumn[];
  /** Reference of the last car of this page, where there are more. */
  readonly next?: string;
  /** The condition asked for, in words, and in few words each of what must hold together; missing where none was. */
  readonly condition?: {
    readonly is: Condition;
    readonly said: string;
    readonly parts: readonly { readonly is: Condition; readonly said: string }[];
  };
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

const rowColumns = sql`c.id::text AS id, c.chassis, c.claim, c.built_text AS built,
      (SELECT s.name FROM series s WHERE s.club_id = c.club_id AND s.id = c.series_id) AS series,
      (SELECT t.status::text FROM car_status_span t
        WHERE t.club_id = c.club_id AND t.car_id = c.id AND t."to" IS NULL) AS status,
      (SELECT i.number FROM car_identity i
        WHERE i.club_id = c.club_id AND i.car_id = c.id AND i.kind = 'registration' ORDER BY i.id DESC LIMIT 1) AS registration,
      (SELECT v.entered FROM current_value v
        WHERE v.club_id = c.club_id AND v.car_id = c.id AND v.characteristic = 'body.colour' AND v.side = 'whole') AS colour,
      (SELECT i.number FROM car_identity i
        WHERE i.club_id = c.club_id AND i.car_id = c.id AND i.kind = 'engine' ORDER BY i.id DESC LIMIT 1) AS engine, c.remarks`;

/** The rows of a page, in one query: the keyset decides where it begins, the index in which order it goes. */
export const pageSql = (where: Prisma.Sql, order: Order = "chassis", size = PAGE): Prisma.Sql =>
  sql`SELECT ${rowColumns} FROM ${fromSql(order)} WHERE ${where} ORDER BY ${orderSql(order)} LIMIT ${size + 1}::int`;

/** The rows of cars that were found, in the order given. */
const givenSql = (ids: readonly string[]): Prisma.Sql =>
  sql`SELECT ${rowColumns} FROM unnest(${[...ids]}::uuid[]) WITH ORDINALITY AS g(id, n) JOIN car c ON c.id = g.id ORDER BY g.n`;

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

const withPhoto = (photo: CarPhoto | undefined) => (photo === undefined ? {} : { photo });

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

/** Units and names to say a condition with. */
async function wordsOf(ctx: Context): Promise<SayOptions> {
  const series = new Map((await listSeries(ctx)).map(({ slug, name }) => [slug, name]));
  return { series, system: ctx.club.unitSystem, day: "today" };
}

async function told(ctx: Context, is: Condition, book: CharacteristicBook) {
  const words = await wordsOf(ctx);
  const parts = partsOfCondition(is).map((part) => ({ is: part, said: sayBriefly(part, book, words) }));
  return { is, said: sayCondition(is, book, words), parts };
}

/** Which cars a list is of, and how it goes on. */
interface Listed {
  readonly choice: CarChoice;
  readonly show: Shown | undefined;
  readonly order: Order;
  readonly columns: readonly Characteristic[];
  readonly asides: readonly Aside[];
  readonly photos: boolean;
  readonly book: CharacteristicBook;
}

function orderOf(order: ListOrder, book: CharacteristicBook): Order {
  if (typeof order === "string") return order;
  const of = book.find(order.key);
  return of === undefined ? "chassis" : { of, descending: order.descending };
}

async function listedOf(ctx: Context, input: RegisterListInput): Promise<Listed> {
  const { show, order = "chassis", columns = [], photos = false } = input;
  const book = await bookOf(ctx);
  const choice = await choiceAsked(ctx, input);
  const settled = orderOf(order, book);
  const shown = columns.flatMap((key) => book.find(key) ?? []);
  // What a list goes by is shown in it.
  const by = typeof settled === "string" || shown.includes(settled.of) ? [] : [settled.of];
  return {
    choice,
    show,
    order: settled,
    columns: [...shown, ...by],
    asides: asidesOf(ctx, columns),
    photos,
    book,
  };
}

const columnsOf = ({ columns, asides }: Listed): readonly RegisterColumn[] => [
  ...columns.map(({ key, label, kind }) => ({ key, label, kind, orders: true })),
  ...asides.map((aside) => ({ ...aside, orders: false })),
];

interface Page {
  readonly after: string | undefined;
  readonly size: number;
}

interface Rows {
  readonly cars: readonly RegisterListRow[];
  readonly more: boolean;
}

/** What stands in the rows of a page; of one row more than its size there is more. */
async function rowsOf(ctx: Context, listed: Listed, rows: readonly Row[], size: number): Promise<Rows> {
  const { columns, asides, photos, book } = listed;
  const page = rows.slice(0, size);
  const ids = page.map(({ id }) => id);
  const compared = new Map<string, Compared[]>();
  for (const one of await ctx.db.$queryRaw<Compared[]>(comparedSql(ids, book)))
    compared.set(one.id, [...(compared.get(one.id) ?? []), one]);
  const values = await valuesOf(ctx, ids, columns);
  const beside = await asideTexts(ctx, ids, asides);
  const photoOf = photos ? await photosOf(ctx, ids) : new Map<string, CarPhoto>();
  const cars = page.map((row) => ({
    ...withPhoto(photoOf.get(row.id)),
    ...rowOf(row, differingOf(compared.get(row.id) ?? [])),
    values: { ...values.get(row.id), ...beside.get(row.id) },
  }));
  return { cars, more: rows.length > size };
}

/** Some rows of a list from where the page before ended, car by car. */
async function oneByOne(ctx: Context, listed: Listed, { after, size }: Page): Promise<Rows> {
  const { choice, show, order } = listed;
  const chosen = choiceSql(ctx, choice, show);
  const where = after === undefined ? chosen : sql`${chosen} AND ${await behind(ctx, after, order)}`;
  return rowsOf(ctx, listed, await ctx.db.$queryRaw<Row[]>(pageSql(where, order, size)), size);
}

/** The same with the counts, by the blocks of the tallies, which are up to date. */
async function byBlocks(
  ctx: Context,
  listed: Listed,
  { after, size }: Page,
): Promise<Rows & { readonly counts: Counts }> {
  const { choice, show = "yes", order } = listed;
  const later = after === undefined ? sql`TRUE` : await behind(ctx, after, order, "s");
  const { counts, ids } = await findCars(ctx, choice, show, { order, behind: later, size });
  return { counts, ...(await rowsOf(ctx, listed, await ctx.db.$queryRaw<Row[]>(givenSql(ids)), size)) };
}

/** The same of a whole list by a quantity, for no more of the cars than the page needs; nothing where that were too few. */
async function soonest(ctx: Context, listed: Listed, page: Page): Promise<Rows | undefined> {
  const { order, choice } = listed;
  if (typeof order === "string" || order.of.kind !== "quantity") return undefined;
  const kept = choice.series === undefined ? {} : { series: choice.series };
  const [end] = await ctx.db.$queryRaw<{ number: number }[]>(upToSql(order, { kept, ...page }));
  if (end === undefined) return undefined;
  const rows = await oneByOne(ctx, { ...listed, order: { ...order, upTo: end.number } }, page);
  return rows.more ? rows : undefined;
}

/** One page with its counts. Where nothing narrows the list, its rows are the first of an index and its counts are kept. */
async function pageOf(ctx: Context, listed: Listed, page: Page, tallied: boolean) {
  const { choice, show } = listed;
  const plain = choice.search === undefined && choice.condition === undefined && show !== "unknown";
  if (tallied && !plain) return byBlocks(ctx, listed, page);
  const counts = await countCars(ctx, { choice, tallied, ...(show === undefined ? {} : { show }) });
  const first = tallied && plain ? await soonest(ctx, listed, page) : undefined;
  return { counts, ...(first ?? (await oneByOne(ctx, listed, page))) };
}

/**
 * One page of the register in the order asked for: the cars that fit, or on request those of which the record does not
 * say; with how many there are of either.
 *
 * @throws Refusal FILTER_NOT_FOUND
 */
export async function registerList(ctx: Context, input: RegisterListInput): Promise<RegisterList> {
  const listed = await listedOf(ctx, input);
  const { choice, book } = listed;
  const stale = await refreshSearchIndex(ctx, book);
  const { counts, cars, more } = await pageOf(ctx, listed, { after: input.after, size: PAGE }, stale === 0);
  const { total, unknown, facets } = counts;
  const last = cars.at(-1);
  return {
    total,
    unknown,
    facets,
    corrections: choice.search === undefined ? [] : await correctionsOf(ctx, choice.search),
    named: (choice.search?.named ?? []).map(({ said }) => said),
    passedOver: choice.search?.passedOver ?? [],
    nearest: total === 0 ? await nearestOf(ctx, choice) : [],
    stale,
    columns: columnsOf(listed),
    cars,
    ...(more && last ? { next: last.reference } : {}),
    ...(choice.condition === undefined ? {} : { condition: await told(ctx, choice.condition, book) }),
  };
}

/**
 * Every car of a list as its pages show them, in their order and with their columns: for a file of it. It only reads:
 * whoever looks for words brings the search up to date before.
 *
 * @throws Refusal FILTER_NOT_FOUND
 */
export async function foundCars(
  ctx: Context,
  input: Omit<RegisterListInput, "after">,
): Promise<{ readonly columns: readonly RegisterColumn[]; readonly rows: AsyncIterable<RegisterListRow> }> {
  const listed = await listedOf(ctx, input);
  async function* rows() {
    for (let after: string | undefined; ; ) {
      const { cars, more } = await oneByOne(ctx, listed, { after, size: FILE });
      yield* cars;
      after = cars.at(-1)?.reference;
      if (!more) return;
    }
  }
  return { columns: columnsOf(listed), rows: rows() };
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
