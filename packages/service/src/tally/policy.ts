import { Prisma } from "@trunnion/db";
import { type CharacteristicBook, datedItemKindsOf } from "@trunnion/register";
import { standingRecordSql } from "../standing-record";
import { differsSql, toldSql } from "../verdict-sql";

const sql = Prisma.sql;

/**
 * What a row counts: present values with their verdicts; cars of which a characteristic is known; cars that differ there, by
 * what they have; readings and changes by year; cars changed there by year; days that something is valid to; cars by status
 * and decade, by verdicts that something on them has, by assemblies that were modified, by status and month of building, by the span of
 * days they were built in, and by how many values their record has.
 */
export type TallyAbout =
  | ("value" | "known" | "differing" | "told" | "changed" | "due")
  | ("car" | "verdict" | "modified" | "month" | "built" | "thickness");

/**
 * Of what it is kept which cars, besides how many: what a condition asks of, and what is counted where one holds. Of these no car
 * is counted twice in one row.
 */
const blockedAbout = [
  "value",
  "known",
  "differing",
  "told",
  "changed",
  "car",
  "verdict",
  "modified",
  "built",
] as const;
export type BlockedAbout = Extract<TallyAbout, (typeof blockedAbout)[number]>;
export const blockedSql = Prisma.raw(`(${blockedAbout.map((about) => `'${about}'`).join(", ")})`);

/** Places of cars to a block: as many bits as a row of `tally_block` has. */
const BLOCK = 16_384;
const sizeSql = Prisma.raw(String(BLOCK));

/** A block with nobody in it. */
export const noneSql = sql`B'0'::bit(${sizeSql})`;
/** Blocks given by their bits, as an array. */
export const blocksOf = (bits: readonly string[]): Prisma.Sql => sql`${[...bits]}::bit(${sizeSql})[]`;
/** Which block a place is in. */
export const blockSql = (place: Prisma.Sql): Prisma.Sql => sql`${place} / ${sizeSql}`;
/** A block with one car in it, by its place in the club. */
export const oneSql = (place: Prisma.Sql): Prisma.Sql => sql`set_bit(${noneSql}, ${place} % ${sizeSql}, 1)`;
/** That the car at a place is among those of its block. */
export const hasSql = (cars: Prisma.Sql, place: Prisma.Sql): Prisma.Sql =>
  sql`get_bit(${cars}, ${place} % ${sizeSql}) = 1`;
/** The first place of a block. */
export const firstPlaceSql = (block: Prisma.Sql): Prisma.Sql => sql`${block} * ${sizeSql}`;
/** The places of the cars that rows `h` of blocks have in `cars`, as rows of `place`. */
export const placesSql = (
  from: Prisma.Sql,
): Prisma.Sql => sql`SELECT ${firstPlaceSql(sql`h.block`)} + i.place AS place
  FROM ${from}, generate_series(0, ${sizeSql} - 1) AS i(place) WHERE bit_count(h.cars) > 0 AND ${hasSql(sql`h.cars`, sql`i.place`)}`;

/** Columns that tell one kind of what is counted from another, each with its type: the text is ours, never bound. */
const columns = {
  characteristic: sql`''::text`,
  side: sql`NULL::"Side"`,
  value_kind: sql`NULL::"ValueKind"`,
  number: sql`NULL::float8`,
  resolution: sql`NULL::float8`,
  text: sql`NULL::text`,
  entered: sql`NULL::text`,
  standing: sql`NULL::text`,
  year: sql`NULL::int`,
};
type Column = keyof typeof columns;

/** The same columns in the order of the table, with what is counted and of which series. */
export const columnList = Prisma.raw(["about", "series_id", ...Object.keys(columns)].join(", "));
const ofSort = Prisma.raw(
  ["t.about", "NULL::uuid AS series_id", ...Object.keys(columns).map((name) => `t.${name}`)].join(", "),
);

const hashed = (names: readonly string[]) => Prisma.raw(`hash_record_extended(ROW(${names.join(", ")}), 0)`);
/** A row's id: what it counts, hashed. Two kinds under one id are a matter of one in 10 million at a million kinds; `check` would tell. */
export const idSql = hashed(["about", "series_id", ...Object.keys(columns)]);
/** What blocks are kept under: the same of whatever series, since a condition is held against cars of all of them; of cars as a whole with it. */
export const sortSql = hashed([
  "about",
  "CASE WHEN about = 'car' THEN series_id END",
  ...Object.keys(columns),
]);

/** Each car's rows of one kind, one for each time it counts. `from` has a row `c` of `car`. */
function part(
  about: TallyAbout,
  given: Readonly<Partial<Record<Column, Prisma.Sql>>>,
  from: Prisma.Sql,
): Prisma.Sql {
  const each = Object.entries(columns).map(
    ([name, nothing]) => sql`${given[name as Column] ?? nothing} AS ${Prisma.raw(name)}`,
  );
  return sql`SELECT c.id AS car_id, ${Prisma.raw(`'${about}'`)}::text AS about, c.series_id, ${Prisma.join(each)} FROM ${from}`;
}

/** What a year is that values are told by: that of building, where the record is sure of it. */
const builtYear = sql`CASE WHEN extract(year FROM c.built_earliest) = extract(year FROM c.built_latest)
  THEN extract(year FROM c.built_earliest)::int END`;

/** The year a change was made in, where its date leaves no doubt of it. */
const changeYear = sql`CASE WHEN extract(year FROM m.fitted_earliest) = extract(year FROM m.fitted_latest)
  THEN extract(year FROM m.fitted_latest)::int END`;

/** The month a car was built in, where the record is sure of it. */
export const builtMonth = sql`CASE WHEN date_trunc('month', c.built_earliest) = date_trunc('month', c.built_latest)
  THEN to_char(c.built_earliest, 'YYYY-MM') END`;

/** Which cars are counted: a relation of rows of `car`, and what must hold of a row `c`. */
interface Cars {
  readonly cars: Prisma.Sql;
  readonly where: Prisma.Sql;
}

const values = ({ cars }: Cars) =>
  sql`${cars} c JOIN current_value v ON v.club_id = c.club_id AND v.car_id = c.id`;
const summaries = ({ cars }: Cars) =>
  sql`${cars} c JOIN car_summary s ON s.club_id = c.club_id AND s.car_id = c.id`;

const valueParts = {
  value: (of: Cars) =>
    part(
      "value",
      {
        characteristic: sql`v.characteristic`,
        side: sql`v.side`,
        value_kind: sql`v.value_kind`,
        number: sql`v.number`,
        resolution: sql`v.resolution`,
        text: sql`v.text`,
        entered: sql`v.entered`,
        standing: sql`v.verdict::text`,
        year: builtYear,
      },
      sql`${values(of)} WHERE ${of.where}`,
    ),
  // On either side is enough.
  known: (of: Cars) =>
    part(
      "known",
      {
        characteristic: sql`v.characteristic`,
        standing: sql`CASE WHEN bool_or(${differsSql}) THEN 'differs' WHEN bool_or(${toldSql}) THEN 'compared'
          WHEN bool_or(v.verdict <> 'notRecorded') THEN 'cannotTell' ELSE 'notCompared' END`,
      },
      sql`${values(of)} WHERE ${of.where} GROUP BY c.id, c.series_id, v.characteristic`,
    ),
  differing: (of: Cars) =>
    part(
      "differing",
      {
        characteristic: sql`v.characteristic`,
        value_kind: sql`v.value_kind`,
        number: sql`v.number`,
        text: sql`v.text`,
        entered: sql`min(v.entered)`,
      },
      sql`${values(of)} WHERE ${differsSql} AND ${of.where}
        GROUP BY c.id, c.series_id, v.characteristic, v.value_kind, v.number, v.text`,
    ),
};

/**
 * What was measured or fitted in each year, present values and those before them alike: readings by their day, changes by
 * the latest day their date allows. What a car was told of a second time in a year is a row of its own, so that none counts a
 * car twice.
 */
function toldPart({ cars, where }: Cars): Prisma.Sql {
  const told = (row: Prisma.Sql, value: Prisma.Sql, year: Prisma.Sql, from: Prisma.Sql) =>
    part(
      "told",
      {
        characteristic: sql`${row}.characteristic`,
        side: sql`${row}.side`,
        number: sql`${value}number`,
        text: sql`${value}text`,
        year,
      },
      sql`${from} AND ${value}value_kind <> 'absent' AND ${where}`,
    );
  const readings = told(
    sql`r`,
    sql`r.`,
    sql`extract(year FROM s."on")::int`,
    sql`${cars} c JOIN setting_sheet s ON s.club_id = c.club_id AND s.car_id = c.id
      JOIN reading r ON r.club_id = s.club_id AND r.setting_sheet_id = s.id WHERE s.superseded_at IS NULL`,
  );
  const changes = told(
    sql`h`,
    sql`h.after_`,
    sql`extract(year FROM m.fitted_latest)::int`,
    sql`${cars} c JOIN modification m ON m.club_id = c.club_id AND m.car_id = c.id
      JOIN modification_change h ON h.club_id = m.club_id AND h.modification_id = m.id
      WHERE m.superseded_at IS NULL AND m.fitted_latest IS NOT NULL`,
  );
  const again = Object.keys(columns).map((name) =>
    name === "standing" ? "CASE WHEN w.nth > 1 THEN w.nth::text END AS standing" : `w.${name}`,
  );
  return sql`SELECT w.car_id, w.about, w.series_id, ${Prisma.raw(again.join(", "))}
    FROM (SELECT u.*, row_number() OVER (PARTITION BY u.car_id, u.characteristic, u.side, u.number, u.text, u.year) AS nth
      FROM (${readings} UNION ALL ${changes}) AS u) AS w`;
}

/** Cars with a recorded change by its year; those whose year is in doubt under no year. */
const changedPart = ({ cars, where }: Cars) =>
  part(
    "changed",
    { characteristic: sql`h.characteristic`, year: changeYear },
    sql`${cars} c JOIN modification m ON m.club_id = c.club_id AND m.car_id = c.id
      JOIN modification_change h ON h.club_id = m.club_id AND h.modification_id = m.id
      WHERE m.superseded_at IS NULL AND ${where} GROUP BY c.id, c.series_id, h.characteristic, ${changeYear}`,
  );

/** What a page counts that need not be of every car. */
const livePart = { ...valueParts, told: toldPart, changed: changedPart };
export type LiveAbout = keyof typeof livePart;

/** Days that cars which are not gone have on their labels, and what is dated on them beside. */
function dueParts({ cars }: Cars, book: CharacteristicBook): Prisma.Sql {
  const kinds = datedItemKindsOf(book);
  const pairs = sql`unnest(${kinds.map(({ kind }) => kind)}::text[], ${kinds.map(({ characteristic }) => characteristic)}::text[])`;
  const item = sql`to_char(d.valid_to, 'YYYY-MM-DD')`;
  const stays = sql`s.status NOT IN ('dismantled', 'destroyed')`;
  const onLabel = part(
    "due",
    { characteristic: sql`k.kind`, text: sql`v.text` },
    sql`${summaries({ cars, where: sql`TRUE` })} JOIN current_value v ON v.club_id = c.club_id AND v.car_id = c.id
      JOIN ${pairs} AS k(kind, characteristic) ON k.characteristic = v.characteristic
      WHERE v.value_kind = 'date' AND ${stays} AND NOT EXISTS (SELECT FROM dated_item d WHERE d.club_id = v.club_id
        AND d.car_id = v.car_id AND d.kind = k.kind AND d.replaced_at IS NULL AND ${item} = v.text)`,
  );
  const beside = part(
    "due",
    { characteristic: sql`d.kind`, text: item },
    sql`${summaries({ cars, where: sql`TRUE` })} JOIN dated_item d ON d.club_id = c.club_id AND d.car_id = c.id
      WHERE d.replaced_at IS NULL AND ${stays}`,
  );
  return sql`${onLabel} UNION ALL ${beside}`;
}

/** What is counted of cars as a whole, by their summaries. */
function carParts(of: Cars): Prisma.Sql {
  const from = summaries(of);
  const status = sql`s.status::text`;
  return Prisma.join(
    [
      part("car", { text: status, year: sql`s.decade` }, from),
      part("month", { text: status, standing: builtMonth }, from),
      part(
        "built",
        {
          text: sql`to_char(c.built_earliest, 'YYYY-MM-DD')`,
          entered: sql`to_char(c.built_latest, 'YYYY-MM-DD')`,
        },
        sql`${from} WHERE c.built_earliest IS NOT NULL AND c.built_latest IS NOT NULL`,
      ),
      part(
        "thickness",
        {
          text: status,
          number: sql`s.values::float8`,
          standing: sql`CASE WHEN c.built_text IS NULL THEN 'noBuilt' ELSE 'built' END`,
        },
        from,
      ),
      part("verdict", { text: sql`w.verdict::text` }, sql`${from}, unnest(s.verdicts) AS w(verdict)`),
      part("modified", { text: sql`w.assembly` }, sql`${from}, unnest(s.modified) AS w(assembly)`),
    ],
    " UNION ALL ",
  );
}

/** Everything that some cars count in: `cars` is a relation of standing rows of `car` whose summaries are up to date. */
export function everySql(cars: Prisma.Sql, book: CharacteristicBook): Prisma.Sql {
  const of: Cars = { cars, where: sql`TRUE` };
  return Prisma.join(
    [...Object.values(livePart).map((sqlOf) => sqlOf(of)), dueParts(of, book), carParts(of)],
    " UNION ALL ",
  );
}

/** Rows `t` of the tallies of some kinds, one of each sort, with their blocks `b`. */
const withBlocks = (which: Prisma.Sql): Prisma.Sql =>
  sql`(SELECT DISTINCT ON (about, characteristic, sort) * FROM tally WHERE ${which}) AS t
    JOIN tally_block b ON b.club_id = t.club_id AND b.sort = t.sort`;
const ofKind = (about: BlockedAbout): Prisma.Sql => sql`about = ${Prisma.raw(`'${about}'`)}::text`;

/** The same of one kind, for a FROM that a further AND may follow. */
export const keptBlocks = (about: BlockedAbout): Prisma.Sql => sql`${withBlocks(ofKind(about))} WHERE TRUE`;

/** The same of cars as a whole, of verdicts on them and of assemblies that were modified. */
export const facetBlocks = withBlocks(sql`about IN ('car', 'verdict', 'modified')`);

/** Where counts of some cars come from. */
export interface Counted {
  /** Over `car c`. */
  readonly where: Prisma.Sql;
  /** The tallies are of just these cars, and up to date: those of a series, by its short name, or all. */
  readonly kept?: { readonly series?: string };
  /** The tallies are up to date, and these cars are the bits `yes` of `truth`: for a WITH. */
  readonly bits?: Prisma.Sql;
}

/** Rows of the tallies of every car, or of a series' cars: for a FROM. */
export function keptSql(about: TallyAbout, { series }: NonNullable<Counted["kept"]>): Prisma.Sql {
  const ofSeries =
    series === undefined
      ? Prisma.empty
      : sql`AND t.series_id = (SELECT s.id FROM series s WHERE s.slug = ${series})`;
  return sql`(SELECT t.* FROM tally t WHERE t.about = ${Prisma.raw(`'${about}'`)}::text ${ofSeries})`;
}

/**
 * What is counted of the cars meant, with how many there are of each in `count`, for a FROM: read off the tallies where they
 * are of these very cars, or off their blocks; else counted here, by the same rows that the tallies are kept by. One kind may
 * come in several rows; off blocks they are of no series, and some count none: nobody counts the bits twice to leave those out.
 */
export function countedSql(about: LiveAbout, { where, kept, bits }: Counted): Prisma.Sql {
  if (kept !== undefined) return keptSql(about, kept);
  if (bits !== undefined)
    return sql`(WITH ${bits} SELECT ${ofSort}, bit_count(b.cars & h.yes)::int AS count FROM ${withBlocks(ofKind(about))}
      JOIN truth h ON h.block = b.block)`;
  const cars = { cars: sql`car`, where };
  return sql`(SELECT p.*, 1 AS count FROM (${livePart[about](cars)}) AS p)`;
}

/** How many cars are meant at all. */
export function carsSql({ where, kept, bits }: Counted): Prisma.Sql {
  if (kept !== undefined)
    return sql`SELECT coalesce(sum(t.count), 0)::int AS cars FROM ${keptSql("car", kept)} AS t`;
  if (bits !== undefined)
    return sql`WITH ${bits} SELECT coalesce(sum(bit_count(h.yes)), 0)::int AS cars FROM truth h`;
  return sql`SELECT count(*)::int AS cars FROM car c WHERE ${where}`;
}

/** Cars that were given, as rows of `car`: a record of another car is none. */
export const givenSql = (ids: readonly string[]): Prisma.Sql =>
  sql`given AS MATERIALIZED (SELECT c.* FROM car c WHERE c.id = ANY(${[...ids]}::uuid[]) AND ${standingRecordSql})`;
