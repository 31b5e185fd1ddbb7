import { Prisma } from "@trunnion/db";
import { type DatedItemKind, type DueStanding, dueSoon, shiftDays } from "@trunnion/register";
import { standingRecordSql } from "../standing-record";
import { keptSql } from "../tally";

const sql = Prisma.sql;

/** Lines of one page of the list. */
export const PAGE = 50;
/** Items named of one day of the calendar; the rest is counted. */
export const OF_DAY = 20;

/** Which dated items are meant. */
export interface DueScope {
  /** Kinds whose day is a characteristic of the car (`datedItemKindsOf`). */
  readonly kinds: readonly DatedItemKind[];
  readonly seriesId?: string;
  readonly kind?: string;
  /** ISO days, both included; items without a day are left out once one is given. */
  readonly from?: string;
  readonly to?: string;
  readonly standing?: DueStanding;
}

/** Cars that are gone need nothing renewed. */
const counted = sql`${standingRecordSql} AND NOT EXISTS (SELECT FROM car_status_span t WHERE t.club_id = c.club_id
  AND t.car_id = c.id AND t."to" IS NULL AND t.status IN ('dismantled', 'destroyed'))`;

/** A day of a row: the column, and how a day that is given compares with it, along an index of the column. */
interface DayColumn {
  readonly column: Prisma.Sql;
  readonly given: (day: string) => Prisma.Sql;
}

/** ISO days order as text by any collation. */
const labelDay: DayColumn = { column: sql`v.text`, given: (day) => sql`${day}` };
const itemDay: DayColumn = { column: sql`d.valid_to`, given: (day) => sql`${day}::date` };

/** That a day lies where it is asked for. */
function dayHolds({ column, given }: DayColumn, { from, to, standing }: DueScope, today: string): Prisma.Sql {
  const soon = given(shiftDays(today, dueSoon));
  const now = given(today);
  const parts = [
    ...(from === undefined ? [] : [sql`${column} >= ${given(from)}`]),
    ...(to === undefined ? [] : [sql`${column} <= ${given(to)}`]),
    ...(standing === "past" ? [sql`${column} < ${now}`] : []),
    ...(standing === "soon" ? [sql`${column} BETWEEN ${now} AND ${soon}`] : []),
    ...(standing === "later" ? [sql`${column} > ${soon}`] : []),
    ...(standing === "unknown" ? [sql`${column} IS NULL`] : []),
  ];
  return parts.length === 0 ? sql`TRUE` : Prisma.join(parts, " AND ");
}

/** Where a page begins: after this line. Those without a day come last. */
export interface DueCursor {
  readonly day: string;
  readonly id: string;
}

/** How far a list is read: after a line, and at most so many. */
interface DueStretch {
  readonly after?: DueCursor;
  readonly most?: number;
}

/** That a row with a day comes behind that line. */
function follows({ column, given }: DayColumn, id: Prisma.Sql, after: DueCursor | undefined): Prisma.Sql {
  if (after === undefined) return sql`TRUE`;
  if (after.day === "") return sql`FALSE`;
  const day = given(after.day);
  return sql`${column} >= ${day} AND (${column} > ${day} OR ${id} > ${after.id})`;
}

/**
 * `due(id, chassis, claim, chassis_key, series_id, kind, day)`: what is dated on cars that are not gone. A day that is a
 * characteristic of the car and the same day in its dated items are one thing; a dated item without a day stands with none.
 * Of a stretch each kind of label, what is dated beside and what has no day give as many as are wanted, in order along an
 * index: whoever orders those and takes the first has read no more.
 */
export function dueSql(scope: DueScope, today: string, { after, most }: DueStretch = {}): Prisma.Sql {
  const { seriesId, kind } = scope;
  // Side by side, for the database.
  const kinds = scope.kinds.map((one) => one.kind);
  const characteristics = scope.kinds.map(({ characteristic }) => characteristic);
  const series = seriesId === undefined ? Prisma.empty : sql`AND c.series_id = ${seriesId}::uuid`;
  const ofKind = (column: Prisma.Sql) => (kind === undefined ? Prisma.empty : sql`AND ${column} = ${kind}`);
  const first = (order: Prisma.Sql) =>
    most === undefined ? Prisma.empty : sql`ORDER BY ${order} LIMIT ${most}::int`;
  const labelId = sql`v.car_id::text || ' ' || k.kind`;
  const items = (holds: Prisma.Sql, order: Prisma.Sql) =>
    sql`(SELECT d.id::text, c.chassis, c.claim, c.chassis_key, c.series_id, d.kind, to_char(d.valid_to, 'YYYY-MM-DD')
      FROM dated_item d JOIN car c ON c.club_id = d.club_id AND c.id = d.car_id
      WHERE d.replaced_at IS NULL AND ${holds} AND ${dayHolds(itemDay, scope, today)} AND ${counted} ${series} ${ofKind(sql`d.kind`)}
      ${first(order)})`;
  const undated = after === undefined || after.day !== "" ? sql`TRUE` : sql`d.id::text > ${after.id}`;
  return sql`due AS (
    SELECT l.* FROM unnest(${kinds}::text[], ${characteristics}::text[]) AS k(kind, characteristic), LATERAL (
      SELECT ${labelId} AS id, c.chassis, c.claim, c.chassis_key, c.series_id, k.kind, v.text AS day
      FROM current_value v JOIN car c ON c.club_id = v.club_id AND c.id = v.car_id
      WHERE v.characteristic = k.characteristic AND v.value_kind = 'date' AND ${follows(labelDay, labelId, after)}
        AND ${dayHolds(labelDay, scope, today)} AND ${counted} ${series} ${ofKind(sql`k.kind`)}
        AND NOT EXISTS (SELECT FROM dated_item d WHERE d.club_id = v.club_id AND d.car_id = v.car_id AND d.kind = k.kind
          AND d.replaced_at IS NULL AND to_char(d.valid_to, 'YYYY-MM-DD') = v.text)
      ${first(sql`v.text, v.car_id`)}) AS l
    UNION ALL ${items(sql`d.valid_to IS NOT NULL AND ${follows(itemDay, sql`d.id::text`, after)}`, sql`d.valid_to, d.id`)}
    UNION ALL ${items(sql`d.valid_to IS NULL AND ${undated}`, sql`d.id`)})`;
}

/** How many there are of each kind and standing: off the tallies, where those are up to date. */
export function dueCountSql(scope: DueScope, today: string, kept: boolean): Prisma.Sql {
  const soon = shiftDays(today, dueSoon);
  const { seriesId, kind } = scope;
  const counts = kept
    ? sql`WITH counts AS (SELECT t.characteristic AS kind, t.text AS day, t.count FROM ${keptSql("due", {})} AS t WHERE TRUE
        ${seriesId === undefined ? Prisma.empty : sql`AND t.series_id = ${seriesId}::uuid`}
        ${kind === undefined ? Prisma.empty : sql`AND t.characteristic = ${kind}`})`
    : sql`WITH ${dueSql(scope, today)}, counts AS (SELECT kind, day, 1 AS count FROM due)`;
  return sql`${counts} SELECT kind, CASE WHEN day IS NULL THEN 'unknown' WHEN day < ${today} THEN 'past'
      WHEN day <= ${soon} THEN 'soon' ELSE 'later' END AS standing, sum(count)::int AS count FROM counts GROUP BY 1, 2`;
}

const line = sql`d.id, d.chassis, d.claim, d.kind, d.day,
  (SELECT s.name FROM series s WHERE s.id = d.series_id) AS series`;

/** A page of the list, the longest past first; items without a day come last. */
export function duePageSql(scope: DueScope, today: string, after?: DueCursor): Prisma.Sql {
  const most = PAGE + 1;
  return sql`WITH ${dueSql(scope, today, { most, ...(after === undefined ? {} : { after }) })}
    SELECT ${line} FROM due d ORDER BY d.day NULLS LAST, d.id LIMIT ${most}::int`;
}

/** The days of a span with how many items fall on each, and the first few of each. */
export function dueDaysSql(scope: DueScope, today: string): Prisma.Sql {
  return sql`WITH ${dueSql(scope, today)}, placed AS (SELECT d.*, count(*) OVER (PARTITION BY day)::int AS count,
      row_number() OVER (PARTITION BY day ORDER BY chassis_key, claim, kind, id) AS place FROM due d WHERE day IS NOT NULL)
    SELECT ${line}, d.count FROM placed d WHERE d.place <= ${OF_DAY}::int ORDER BY d.day, d.place`;
}

/** The items of a span by day, at most so many. */
export function dueListSql(scope: DueScope, today: string, most: number): Prisma.Sql {
  return sql`WITH ${dueSql(scope, today, { most })} SELECT ${line} FROM due d WHERE d.day IS NOT NULL
    ORDER BY d.day, d.id LIMIT ${most}::int`;
}
