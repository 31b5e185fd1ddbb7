import { Prisma } from "@trunnion/db";
import { type DatedItemKind, type DueStanding, dueSoon, shiftDays } from "@trunnion/register";
import { standingRecordSql } from "../standing-record";

const sql = Prisma.sql;

/** Lines of one page of the list. */
export const PAGE = 50;
/** Items named of one day of the calendar; the rest is counted. */
export const OF_DAY = 3;

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

/** That a day, as text, lies where it is asked for. ISO days order as text by any collation. */
function dayHolds(day: Prisma.Sql, { from, to, standing }: DueScope, today: string): Prisma.Sql {
  const soon = shiftDays(today, dueSoon);
  const parts = [
    ...(from === undefined ? [] : [sql`${day} >= ${from}`]),
    ...(to === undefined ? [] : [sql`${day} <= ${to}`]),
    ...(standing === "past" ? [sql`${day} < ${today}`] : []),
    ...(standing === "soon" ? [sql`${day} BETWEEN ${today} AND ${soon}`] : []),
    ...(standing === "later" ? [sql`${day} > ${soon}`] : []),
    ...(standing === "unknown" ? [sql`${day} IS NULL`] : []),
  ];
  return parts.length === 0 ? sql`TRUE` : Prisma.join(parts, " AND ");
}

/**
 * `due(id, car_id, chassis, claim, chassis_key, series, kind, day)`: what is dated on cars that are not gone. A day that is
 * a characteristic of the car and the same day in its dated items are one thing; a dated item without a day stands with none.
 */
export function dueSql(scope: DueScope, today: string): Prisma.Sql {
  const { seriesId, kind } = scope;
  // Side by side, for the database.
  const kinds = scope.kinds.map((one) => one.kind);
  const characteristics = scope.kinds.map(({ characteristic }) => characteristic);
  const series = seriesId === undefined ? Prisma.empty : sql`AND c.series_id = ${seriesId}::uuid`;
  const ofKind = (column: Prisma.Sql) => (kind === undefined ? Prisma.empty : sql`AND ${column} = ${kind}`);
  const item = sql`to_char(d.valid_to, 'YYYY-MM-DD')`;
  return sql`due AS (
    SELECT c.id::text || ' ' || k.kind AS id, c.id AS car_id, c.chassis, c.claim, c.chassis_key, c.series_id, k.kind, v.text AS day
    FROM unnest(${kinds}::text[], ${characteristics}::text[]) AS k(kind, characteristic)
    JOIN current_value v ON v.characteristic = k.characteristic AND v.value_kind = 'date'
    JOIN car c ON c.club_id = v.club_id AND c.id = v.car_id
    WHERE ${counted} ${series} ${ofKind(sql`k.kind`)} AND ${dayHolds(sql`v.text`, scope, today)}
      AND NOT EXISTS (SELECT FROM dated_item d WHERE d.club_id = v.club_id AND d.car_id = v.car_id AND d.kind = k.kind
        AND d.replaced_at IS NULL AND ${item} = v.text)
    UNION ALL
    SELECT d.id::text, c.id, c.chassis, c.claim, c.chassis_key, c.series_id, d.kind, ${item}
    FROM dated_item d JOIN car c ON c.club_id = d.club_id AND c.id = d.car_id
    WHERE d.replaced_at IS NULL AND ${counted} ${series} ${ofKind(sql`d.kind`)} AND ${dayHolds(item, scope, today)})`;
}

/** How many there are of each kind and standing. */
export function dueCountSql(scope: DueScope, today: string): Prisma.Sql {
  const soon = shiftDays(today, dueSoon);
  return sql`WITH ${dueSql(scope, today)} SELECT kind, CASE WHEN day IS NULL THEN 'unknown' WHEN day < ${today} THEN 'past'
      WHEN day <= ${soon} THEN 'soon' ELSE 'later' END AS standing, count(*)::int AS count FROM due GROUP BY 1, 2`;
}

/** Where a page begins: after this line. */
export interface DueCursor {
  readonly day: string;
  readonly id: string;
}

const line = sql`d.id, d.chassis, d.claim, d.kind, d.day,
  (SELECT s.name FROM series s WHERE s.id = d.series_id) AS series`;
/** Items without a day come last. */
const NEVER = "9999-12-31";

/** A page of the list, the longest past first. */
export function duePageSql(scope: DueScope, today: string, after?: DueCursor): Prisma.Sql {
  const following =
    after === undefined
      ? sql`TRUE`
      : sql`(coalesce(d.day, ${NEVER}), d.id) > (${after.day || NEVER}, ${after.id})`;
  return sql`WITH ${dueSql(scope, today)} SELECT ${line} FROM due d WHERE ${following}
    ORDER BY coalesce(d.day, ${NEVER}), d.id LIMIT ${PAGE + 1}::int`;
}

/** The days of a span with how many items fall on each, and the first few of each. */
export function dueDaysSql(scope: DueScope, today: string): Prisma.Sql {
  return sql`WITH ${dueSql(scope, today)}, placed AS (SELECT d.*, count(*) OVER (PARTITION BY day)::int AS count,
      row_number() OVER (PARTITION BY day ORDER BY chassis_key, claim, kind, id) AS place FROM due d WHERE day IS NOT NULL)
    SELECT ${line}, d.count FROM placed d WHERE d.place <= ${OF_DAY}::int ORDER BY d.day, d.place`;
}

/** The items of a span by day, at most so many. */
export function dueListSql(scope: DueScope, today: string, most: number): Prisma.Sql {
  return sql`WITH ${dueSql(scope, today)} SELECT ${line} FROM due d WHERE d.day IS NOT NULL
    ORDER BY d.day, d.id LIMIT ${most}::int`;
}
