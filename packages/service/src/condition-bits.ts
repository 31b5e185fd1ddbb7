import { CarStatus, Prisma } from "@trunnion/db";
import { type Condition, comparedVerdicts, foldText, type Side } from "@trunnion/register";
import { type BlockedAbout, blockSql, keptBlocks, noneSql, oneSql } from "./tally";
import { againstHolds, comparing, double, isOldReading, sidesDifferSql, type TruthSql } from "./value-sql";

type Of<O extends Condition["op"]> = Extract<Condition, { readonly op: O }>;

const sql = Prisma.sql;

/**
 * What a condition says of every car of the club at once, in bits: a car's place in `yes` where it holds, in `no` where it
 * does not, in neither where the record does not say. Both speak of a row `u` of blocks of all cars meant, `u.cars`, and of
 * the `parts` joined to it by their block.
 */
export interface BitsSql {
  /** Relations of `block` with two columns of bits, in the order of their names `p0`, `p1`. */
  readonly parts: readonly Prisma.Sql[];
  readonly yes: Prisma.Sql;
  readonly no: Prisma.Sql;
}

/** A part by itself: its relation, with columns `first` and `second`, and what follows from those. */
interface Leaf {
  readonly part: Prisma.Sql;
  readonly truth: (first: Prisma.Sql, second: Prisma.Sql) => Pick<BitsSql, "yes" | "no">;
}

/** Yes where the first says so, no where only the second does: the second is all of which anything is known. */
const amongKnown: Leaf["truth"] = (yes, known) => ({ yes, no: sql`(${known} & ~${yes})` });
/** No wherever it is not yes. */
const orElseNot: Leaf["truth"] = (yes) => ({ yes, no: sql`(u.cars & ~${yes})` });
const eachItself: Leaf["truth"] = (yes, no) => ({ yes, no });

/**
 * Of the rows of tallies of one kind, the cars of those that fit and of those of which anything is known. Blocks of one sort
 * are put together first, so that each is unpacked once.
 */
const tallied = (
  about: BlockedAbout,
  {
    among = sql`TRUE`,
    yes,
    known,
  }: { readonly among?: Prisma.Sql; readonly yes: Prisma.Sql; readonly known: Prisma.Sql },
) => sql`SELECT s.block, bit_or(s.cars) FILTER (WHERE s.yes) AS first, bit_or(s.cars) FILTER (WHERE s.known) AS second
  FROM (SELECT b.block, ${yes} AS yes, ${known} AS known, bit_or(b.cars) AS cars
    FROM ${keptBlocks(about)} AND ${among} GROUP BY 1, 2, 3) AS s GROUP BY 1`;

interface Place {
  readonly characteristic: string;
  readonly side?: Side;
}

const atPlace = ({ characteristic, side }: Place) =>
  side === undefined
    ? sql`t.characteristic = ${characteristic}`
    : sql`t.characteristic = ${characteristic} AND t.side = ${side}::"Side"`;

/** Something about any of the values: yes of one is yes, and without any value it is unknown. */
const some = (place: Place, yes: Prisma.Sql): Leaf => ({
  part: tallied("value", { among: atPlace(place), yes, known: sql`TRUE` }),
  truth: amongKnown,
});

const textIn = (texts: readonly string[]) => sql`t.text = ANY(${[...texts]}::text[])`;

const statuses: ReadonlySet<string> = new Set(Object.values(CarStatus));

function statusLeaf({ in: wanted }: Of<"status">): Leaf {
  const known = sql`t.text <> ${CarStatus.unknown}`;
  const yes = sql`${known} AND ${textIn(wanted.filter((code) => statuses.has(code)))}`;
  return { part: tallied("car", { yes, known }), truth: amongKnown };
}

function seriesLeaf({ in: slugs }: Of<"series">): Leaf {
  const yes = sql`t.series_id IN (SELECT s.id FROM series s WHERE s.slug = ANY(${[...slugs]}::text[]))`;
  return { part: tallied("car", { yes, known: sql`t.series_id IS NOT NULL` }), truth: amongKnown };
}

function knownLeaf({ what }: Of<"known">): Leaf {
  const yes = {
    series: sql`t.series_id IS NOT NULL`,
    status: sql`t.text <> ${CarStatus.unknown}`,
    decade: sql`t.year IS NOT NULL`,
  }[what];
  return { part: tallied("car", { yes, known: sql`FALSE` }), truth: orElseNot };
}

/** ISO days have one length and one pattern, so that the collation "C" orders them by day. */
function builtLeaf({ from, to }: Of<"built">): Leaf {
  const ends = (parts: readonly (Prisma.Sql | undefined)[], word: " AND " | " OR ", none: Prisma.Sql) => {
    const given = parts.filter((part) => part !== undefined);
    return given.length === 0 ? none : Prisma.join(given, word, "(", ")");
  };
  const when = (day: string | undefined, holds: (day: Prisma.Sql) => Prisma.Sql) =>
    day === undefined ? undefined : holds(sql`${day} COLLATE "C"`);
  const yes = ends(
    [when(from, (day) => sql`t.text >= ${day}`), when(to, (day) => sql`t.entered <= ${day}`)],
    " AND ",
    sql`TRUE`,
  );
  const beyond = ends(
    [when(from, (day) => sql`t.entered < ${day}`), when(to, (day) => sql`t.text > ${day}`)],
    " OR ",
    sql`FALSE`,
  );
  return { part: tallied("built", { yes, known: sql`${beyond} AND NOT ${yes}` }), truth: eachItself };
}

function verdictLeaf({ in: wanted, ...place }: Of<"verdict">): Leaf {
  const has = (side: Side) => sql`bit_or(s.cars) FILTER (WHERE s.side = ${side}::"Side")`;
  const whole =
    place.side === undefined
      ? sql`coalesce(${has("whole")}, ${noneSql}) | coalesce(${has("left")} & ${has("right")}, ${noneSql})`
      : has(place.side);
  return {
    part: sql`SELECT s.block, bit_or(s.cars) FILTER (WHERE s.found) AS first, ${whole} AS second
      FROM (SELECT b.block, t.side, t.standing = ANY(${[...wanted]}::text[]) AS found, bit_or(b.cars) AS cars
        FROM ${keptBlocks("value")} AND ${atPlace(place)} AND t.standing <> 'notRecorded' GROUP BY 1, 2, 3) AS s GROUP BY 1`,
    truth: (first, second) => ({
      yes: wanted.includes("notRecorded") ? sql`(${first} | (u.cars & ~${second}))` : first,
      no: sql`(${second} & ~${first})`,
    }),
  };
}

/** Values of one characteristic as rows `v`, one by one: of what no row of tallies tells. */
const byRow = (
  characteristic: string,
  among: Prisma.Sql,
  columns: Prisma.Sql,
) => sql`SELECT ${blockSql(sql`k.place`)} AS block, ${columns}
  FROM current_value v JOIN car_summary k ON k.club_id = v.club_id AND k.car_id = v.car_id
  WHERE v.characteristic = ${characteristic} AND ${among} GROUP BY 1`;

const bitsWhere = (holds: Prisma.Sql) => sql`bit_or(${oneSql(sql`k.place`)}) FILTER (WHERE ${holds})`;
const orNone = (bits: Prisma.Sql) => sql`coalesce(${bits}, ${noneSql})`;

/** Of a value itself it may be unknown: no where each is known not to hold. */
function someThreeValued(characteristic: string, is: Prisma.Sql, among: Prisma.Sql): Leaf {
  const open = orNone(bitsWhere(sql`(${is}) IS NOT FALSE`));
  return {
    part: byRow(
      characteristic,
      among,
      sql`${bitsWhere(sql`(${is}) IS TRUE`)} AS first, ${bitsWhere(sql`TRUE`)} & ~${open} AS second`,
    ),
    truth: eachItself,
  };
}

/** Cars one by one. */
function byCar({ yes, no }: TruthSql): Leaf {
  const part = sql`SELECT ${blockSql(sql`k.place`)} AS block, ${bitsWhere(yes)} AS first, ${bitsWhere(no)} AS second
    FROM car c JOIN car_summary k ON k.club_id = c.club_id AND k.car_id = c.id GROUP BY 1`;
  return { part, truth: eachItself };
}

type Nested = "always" | "all" | "any" | "not";

function leafOf(condition: Exclude<Condition, { readonly op: Nested }>, eventDay: string): Leaf {
  switch (condition.op) {
    case "series":
      return seriesLeaf(condition);
    case "status":
      return statusLeaf(condition);
    case "built":
      return builtLeaf(condition);
    case "known":
      return knownLeaf(condition);
    case "anyVerdict":
      return {
        part: tallied("verdict", { yes: textIn(condition.in), known: textIn(comparedVerdicts) }),
        truth: amongKnown,
      };
    case "modified":
      return {
        part: tallied("modified", { yes: textIn(condition.in), known: sql`FALSE` }),
        truth: orElseNot,
      };
    case "recorded":
      return { ...some(condition, sql`TRUE`), truth: orElseNot };
    case "absent":
      return some(condition, sql`t.value_kind = 'absent'`);
    case "number":
      return some(condition, sql`t.number ${comparing[condition.is]} ${double(condition.si)}`);
    case "code":
      return some(condition, sql`t.value_kind IN ('choice', 'designation') AND ${textIn(condition.in)}`);
    case "textHas":
      return some(condition, sql`strpos(folded_text(t.entered), ${foldText(condition.text)}) > 0`);
    case "date": {
      const day = condition.date === "eventDay" ? eventDay : condition.date;
      return some(condition, sql`t.value_kind = 'date' AND t.text ${comparing[condition.is]} ${day}`);
    }
    case "verdict":
      return verdictLeaf(condition);
    case "against": {
      const onSide = condition.side === undefined ? sql`TRUE` : sql`v.side = ${condition.side}::"Side"`;
      return someThreeValued(
        condition.characteristic,
        againstHolds(condition),
        sql`${onSide} AND v.verdict <> 'notRecorded'`,
      );
    }
    case "sidesDiffer":
      return byCar(sidesDifferSql(condition));
    case "readingOlderThan":
      return someThreeValued(
        condition.characteristic,
        isOldReading(condition, eventDay),
        sql`v.origin = 'reading'`,
      );
  }
}

/**
 * A condition over all cars by the blocks of the tallies: what `conditionSql` says of each car, in a time that hardly grows
 * with the cars (a property test holds both, and `evaluate`, together). Of use where the tallies are up to date.
 *
 * @param eventDay ISO day of the event; for a search, today
 */
export function conditionBits(condition: Condition, eventDay: string): BitsSql {
  const parts: Prisma.Sql[] = [];
  const folded = (each: readonly Prisma.Sql[], word: " & " | " | ", none: Prisma.Sql) =>
    each.length === 0 ? none : Prisma.join([...each], word, "(", ")");
  const truthOf = (is: Condition): Pick<BitsSql, "yes" | "no"> => {
    switch (is.op) {
      case "always":
        return { yes: sql`u.cars`, no: noneSql };
      case "all": {
        const each = is.of.map(truthOf);
        return {
          yes: folded(
            each.map(({ yes }) => yes),
            " & ",
            sql`u.cars`,
          ),
          no: folded(
            each.map(({ no }) => no),
            " | ",
            noneSql,
          ),
        };
      }
      case "any": {
        const each = is.of.map(truthOf);
        return {
          yes: folded(
            each.map(({ yes }) => yes),
            " | ",
            noneSql,
          ),
          no: folded(
            each.map(({ no }) => no),
            " & ",
            sql`u.cars`,
          ),
        };
      }
      case "not": {
        const { yes, no } = truthOf(is.of);
        return { yes: no, no: yes };
      }
      default: {
        const { part, truth } = leafOf(is, eventDay);
        const name = Prisma.raw(`p${parts.length}`);
        parts.push(part);
        return truth(sql`coalesce(${name}.first, ${noneSql})`, sql`coalesce(${name}.second, ${noneSql})`);
      }
    }
  };
  return { ...truthOf(condition), parts };
}

/** Blocks of every car that is counted, or of those of a series by its short name. */
export const everyCarSql = ({
  series,
}: {
  readonly series?: string;
}): Prisma.Sql => sql`SELECT b.block, bit_or(b.cars) AS cars
  FROM ${keptBlocks("car")} ${series === undefined ? Prisma.empty : sql`AND t.series_id = (SELECT s.id FROM series s WHERE s.slug = ${series})`} GROUP BY 1`;

/** Blocks of the cars of which something else holds, for a WHERE over the id and series of a `c`. */
export const carsWhereSql = (where: Prisma.Sql): Prisma.Sql =>
  sql`SELECT ${blockSql(sql`c.place`)} AS block, bit_or(${oneSql(sql`c.place`)}) AS cars
  FROM (SELECT s.club_id, s.car_id AS id, s.series_id, s.place FROM car_summary s) AS c WHERE ${where} GROUP BY 1`;

/**
 * For a WITH: `truth` of `block`, with `yes` the cars among those meant of which it holds, and `open` those of which the
 * record does not say.
 */
export function truthBitsSql({
  parts,
  yes,
  no,
  among,
}: BitsSql & { readonly among: Prisma.Sql }): Prisma.Sql {
  const named = parts.map((part, place) => sql`${Prisma.raw(`p${place}`)} AS MATERIALIZED (${part}),`);
  const joins = parts.map((_, place) => sql`LEFT JOIN ${Prisma.raw(`p${place}`)} USING (block)`);
  const all = (some: readonly Prisma.Sql[]) =>
    some.length === 0 ? Prisma.empty : Prisma.join([...some], " ");
  return sql`meant AS MATERIALIZED (${among}), ${all(named)}
    truth AS MATERIALIZED (SELECT u.block, u.cars & ${yes} AS yes, u.cars & ~(${yes} | ${no}) AS open FROM meant u ${all(joins)})`;
}
