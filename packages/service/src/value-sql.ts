import { Prisma } from "@trunnion/db";
import { type Comparison, type Condition, foldText, measureLimits, type Side } from "@trunnion/register";

/**
 * What a condition says of a row `c` of `car`, three times over: `yes` where it holds and `no` where it does not, never
 * NULL and never both, for a WHERE that an index can serve; and `is`, the database's own three-valued truth, NULL where
 * the record does not say, which looks at each value once: for going over every car.
 */
export interface TruthSql {
  readonly yes: Prisma.Sql;
  readonly no: Prisma.Sql;
  readonly is: Prisma.Sql;
}

/** The truth of one part; `otherwise` is when it does not hold, given that it is not known to hold. */
export function partSql(yes: Prisma.Sql, no: Prisma.Sql, otherwise: Prisma.Sql = no): TruthSql {
  return { yes, no, is: Prisma.sql`CASE WHEN ${yes} THEN TRUE WHEN ${otherwise} THEN FALSE END` };
}

type Of<O extends Condition["op"]> = Extract<Condition, { readonly op: O }>;

const sql = Prisma.sql;

/** Operators by name: the only piece of text that is chosen rather than bound. */
export const comparing: Readonly<Record<Comparison, Prisma.Sql>> = {
  eq: sql`=`,
  ne: sql`<>`,
  lt: sql`<`,
  le: sql`<=`,
  gt: sql`>`,
  ge: sql`>=`,
};

/** Bound as text and read by the server: the shortest decimal of a double gives the same double back. */
export const double = (si: number) => sql`${String(si)}::float8`;

interface Place {
  readonly characteristic: string;
  readonly side?: Side;
}

/** That the car has a known value there, of which `further` holds; what only the specification says is not kept there. */
function known({ characteristic, side }: Place, further: Prisma.Sql = Prisma.empty): Prisma.Sql {
  const onSide = side === undefined ? Prisma.empty : sql`AND v.side = ${side}::"Side"`;
  return sql`EXISTS (SELECT FROM current_value v WHERE v.club_id = c.club_id AND v.car_id = c.id
    AND v.characteristic = ${characteristic} ${onSide} ${further})`;
}

/** Something about any of the values: yes of one is yes, and without any value it is unknown. */
function some(place: Place, is: Prisma.Sql): TruthSql {
  const yes = known(place, sql`AND ${is}`);
  return partSql(yes, sql`(${known(place)} AND NOT ${yes})`, known(place));
}

/** The same, where of a value itself it may be unknown: `is` is then NULL. */
function someThreeValued(place: Place, is: Prisma.Sql, among: Prisma.Sql): TruthSql {
  const yes = known(place, sql`${among} AND ${is}`);
  const open = known(place, sql`${among} AND (${is}) IS NOT FALSE`);
  return partSql(yes, sql`(${known(place, among)} AND NOT ${open})`);
}

export function recordedSql(place: Of<"recorded">): TruthSql {
  const yes = known(place);
  return { yes, no: sql`NOT ${yes}`, is: yes };
}

export const absentSql = (place: Of<"absent">): TruthSql => some(place, sql`v.value_kind = 'absent'`);

export const numberSql = ({ is, si, ...place }: Of<"number">): TruthSql =>
  some(place, sql`v.number ${comparing[is]} ${double(si)}`);

export const codeSql = ({ in: codes, ...place }: Of<"code">): TruthSql =>
  some(place, sql`v.value_kind IN ('choice', 'designation') AND v.text = ANY(${[...codes]}::text[])`);

export const textHasSql = ({ text, ...place }: Of<"textHas">): TruthSql =>
  some(place, sql`strpos(folded_text(v.entered), ${foldText(text)}) > 0`);

/** ISO days have one length and one pattern, so that any collation orders them by day. */
export function dateSql({ is, date, ...place }: Of<"date">, eventDay: string): TruthSql {
  const day = date === "eventDay" ? eventDay : date;
  return some(place, sql`v.value_kind = 'date' AND v.text ${comparing[is]} ${day}`);
}

const compared = sql`AND v.verdict <> 'notRecorded'`;

/** Whether every side asked about was compared; that a characteristic has two sides shows by the one that was. */
function isWhole({ characteristic, side }: Place): Prisma.Sql {
  const has = (one: Side) => known({ characteristic, side: one }, compared);
  if (side !== undefined) return has(side);
  return sql`(${has("whole")} OR (${has("left")} AND ${has("right")}))`;
}

export function verdictSql({ in: wanted, ...place }: Of<"verdict">): TruthSql {
  const found = known(place, sql`${compared} AND v.verdict = ANY(${[...wanted]}::"Verdict"[])`);
  const whole = isWhole(place);
  const yes = wanted.includes("notRecorded") ? sql`(${found} OR NOT ${whole})` : found;
  return partSql(yes, sql`(${whole} AND NOT ${found})`, whole);
}

/** Whether a column can be subtracted and divided without the server's refusing: see `measureLimits`. */
function isMeasure(column: Prisma.Sql): Prisma.Sql {
  const { least, most } = measureLimits;
  return sql`(${column} = 0 OR abs(${column}) BETWEEN ${double(least)} AND ${double(most)})`;
}

/** What a value is against its nominal, of a row `v`: NULL where they cannot be compared. */
export function againstHolds({ measure, is, si }: Pick<Of<"against">, "measure" | "is" | "si">): Prisma.Sql {
  const measures = sql`${isMeasure(sql`v.number`)} AND ${isMeasure(sql`v.nominal_number`)}`;
  return measure === "ratio"
    ? sql`CASE WHEN ${measures} AND v.nominal_number <> 0 THEN v.number / v.nominal_number ${comparing[is]} ${double(si)} END`
    : sql`CASE WHEN ${measures} THEN v.number - v.nominal_number ${comparing[is]} ${double(si)} END`;
}

export const againstSql = ({ measure, is, si, ...place }: Of<"against">): TruthSql =>
  someThreeValued(place, againstHolds({ measure, is, si }), compared);

export function sidesDifferSql({ characteristic, by = 0 }: Of<"sidesDiffer">): TruthSql {
  const differ = sql`CASE WHEN l.value_kind <> r.value_kind THEN TRUE
    WHEN l.value_kind <> 'quantity' THEN l.text IS DISTINCT FROM r.text
    WHEN ${isMeasure(sql`l.number`)} AND ${isMeasure(sql`r.number`)} THEN abs(l.number - r.number) > ${double(by)} END`;
  const pair = (is: Prisma.Sql) => sql`EXISTS (SELECT FROM current_value l
    JOIN current_value r ON r.club_id = l.club_id AND r.car_id = l.car_id AND r.characteristic = l.characteristic
    WHERE l.club_id = c.club_id AND l.car_id = c.id AND l.characteristic = ${characteristic}
    AND l.side = 'left' AND r.side = 'right'
    AND (${differ}) ${is})`;
  return partSql(pair(sql`IS TRUE`), pair(sql`IS FALSE`));
}

/** Whether a reading `v` is older than so many days. */
export const isOldReading = ({ days }: Pick<Of<"readingOlderThan">, "days">, eventDay: string): Prisma.Sql =>
  sql`${eventDay}::date - v.since > ${days}::int`;

export const readingOlderThanSql = (condition: Of<"readingOlderThan">, eventDay: string): TruthSql =>
  someThreeValued(
    { characteristic: condition.characteristic },
    isOldReading(condition, eventDay),
    sql`AND v.origin = 'reading'`,
  );
