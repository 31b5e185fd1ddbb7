import { Prisma } from "@trunnion/db";
import type { CharacteristicBook } from "@trunnion/register";
import type { Context } from "../context";
import { standingRecordSql } from "../standing-record";
import { refreshTallies } from "../tally";
import { staleCars } from "./read";

const sql = Prisma.sql;

/** Cars worked out in one go where nobody waits, and where somebody does. */
const CARS = 1_000;
const FEW = 250;
/** Milliseconds after which whoever looks waits for no further go; what is left then is said. */
const PATIENCE = 2_000;

/** Sections of some cars' texts, as written. `given` has their ids. */
const partsSql = sql`
    SELECT c.id AS car_id, 'number' AS section, concat_ws(' ', c.chassis, lower(c.chassis_key), c.built_text, c.first_registered_text,
        CASE WHEN extract(year FROM c.built_earliest) = extract(year FROM c.built_latest) THEN extract(year FROM c.built_earliest)::text END,
        (SELECT string_agg(i.number || ' ' || lower(i.number_key), ' ' ORDER BY i.id) FROM car_identity i WHERE i.club_id = c.club_id AND i.car_id = c.id)) AS text
      FROM given JOIN car c ON c.club_id = given.club_id AND c.id = given.id
    UNION ALL
    SELECT c.id, 'remark', c.remarks FROM given JOIN car c ON c.club_id = given.club_id AND c.id = given.id
    UNION ALL
    SELECT v.car_id, CASE WHEN v.characteristic = 'body.colour' THEN 'colour' ELSE 'part' END, string_agg(DISTINCT v.entered, ' ')
      FROM given JOIN current_value v ON v.club_id = given.club_id AND v.car_id = given.id
      WHERE v.value_kind IN ('choice', 'designation', 'text') GROUP BY 1, 2
    UNION ALL
    SELECT m.car_id, 'modification', string_agg(concat_ws(' ', m.reason, m.donor, m.note, m.fitted_text,
        (SELECT string_agg(x.after_entered, ' ' ORDER BY x.id) FROM modification_change x WHERE x.club_id = m.club_id AND x.modification_id = m.id)), ' ' ORDER BY m.sequence)
      FROM given JOIN modification m ON m.club_id = given.club_id AND m.car_id = given.id WHERE m.superseded_at IS NULL GROUP BY 1
    UNION ALL
    SELECT h.car_id, 'history', string_agg(concat_ws(' ', h.on_text, h.text), ' ' ORDER BY h.id)
      FROM given JOIN history_note h ON h.club_id = given.club_id AND h.car_id = given.id GROUP BY 1
    UNION ALL
    SELECT l.car_id, 'evidence', string_agg(concat_ws(' ', e.caption, e.file_name), ' ' ORDER BY e.id)
      FROM given JOIN evidence_link l ON l.club_id = given.club_id AND l.car_id = given.id
      JOIN evidence e ON e.club_id = l.club_id AND e.id = l.evidence_id WHERE e.withdrawn_at IS NULL GROUP BY 1
    UNION ALL
    SELECT k.car_id, 'keeper', string_agg(p.name, ' ' ORDER BY k.id)
      FROM given JOIN keepership k ON k.club_id = given.club_id AND k.car_id = given.id
      JOIN keeper p ON p.club_id = k.club_id AND p.id = k.keeper_id GROUP BY 1`;

/** Each word after a blank. What goes into a part is put together before it is looked at, or it would be twice. */
const refreshTexts = (ids: readonly string[]) => sql`
  WITH given AS MATERIALIZED (SELECT club_id, id FROM car WHERE id = ANY(${[...ids]}::uuid[]) AND merged_into_id IS NULL),
    parts AS MATERIALIZED (${partsSql}),
    texts AS MATERIALIZED (SELECT car_id, section::"TextSection" AS section,
      ' ' || btrim(regexp_replace(folded_text(text), '\\s+', ' ', 'g')) AS text FROM parts WHERE text <> ''),
    gone AS (DELETE FROM car_text t WHERE t.car_id = ANY(${[...ids]}::uuid[])
      AND NOT EXISTS (SELECT FROM texts n WHERE n.car_id = t.car_id AND n.section = t.section)),
    words AS (INSERT INTO club_word (word)
      SELECT DISTINCT w.word FROM texts, regexp_split_to_table(texts.text, '[^[:alpha:]]+') AS w(word)
      WHERE texts.section <> 'keeper' AND length(w.word) BETWEEN 4 AND 40 ORDER BY 1 ON CONFLICT DO NOTHING)
  INSERT INTO car_text (car_id, section, text) SELECT car_id, section, text FROM texts ORDER BY car_id, section
  ON CONFLICT (club_id, car_id, section) DO UPDATE SET text = excluded.text WHERE car_text.text <> excluded.text`;

/** Days a date column holds, so that what is not known comes last. */
const LAST_DAY = "9999-12-31";

function refreshSummaries(ids: readonly string[], book: CharacteristicBook): Prisma.Sql {
  const keys = book.all.map(({ key }) => key);
  const places = book.all.map(({ assembly }) => assembly);
  return sql`
  WITH given AS MATERIALIZED (SELECT * FROM car WHERE id = ANY(${[...ids]}::uuid[]) AND merged_into_id IS NULL),
    counted AS (SELECT v.car_id, array_agg(DISTINCT v.verdict ORDER BY v.verdict) AS verdicts,
        array_agg(DISTINCT b.assembly ORDER BY b.assembly) FILTER (WHERE v.origin = 'modification' AND b.assembly IS NOT NULL) AS modified,
        count(*) FILTER (WHERE v.verdict NOT IN ('asSpecified', 'insideLimits', 'notRecorded')) AS differing, count(*) AS values
      FROM given JOIN current_value v ON v.club_id = given.club_id AND v.car_id = given.id
      LEFT JOIN unnest(${keys}::text[], ${places}::text[]) AS b(key, assembly) ON b.key = v.characteristic GROUP BY 1)
  INSERT INTO car_summary (car_id, chassis_key, claim, series_id, status, built, decade, verdicts, modified, differing, values, place)
  SELECT g.id, g.chassis_key, g.claim, g.series_id,
    coalesce((SELECT t.status FROM car_status_span t WHERE t.club_id = g.club_id AND t.car_id = g.id AND t."to" IS NULL ORDER BY t.id DESC LIMIT 1), 'unknown'),
    coalesce(g.built_earliest, ${LAST_DAY}::date),
    CASE WHEN floor(extract(year FROM g.built_earliest) / 10) = floor(extract(year FROM g.built_latest) / 10)
      THEN floor(extract(year FROM g.built_earliest) / 10)::int * 10 END,
    coalesce(n.verdicts, '{}'), coalesce(n.modified, '{}'), coalesce(n.differing, 0), coalesce(n.values, 0),
    coalesce(h.place, (SELECT coalesce(max(place), -1) FROM car_summary) + row_number() OVER (PARTITION BY h.place IS NULL ORDER BY g.id))
  FROM given g LEFT JOIN counted n ON n.car_id = g.id LEFT JOIN car_summary h ON h.car_id = g.id ORDER BY g.id
  ON CONFLICT (club_id, car_id) DO UPDATE SET chassis_key = excluded.chassis_key, claim = excluded.claim,
    series_id = excluded.series_id, status = excluded.status, built = excluded.built, decade = excluded.decade,
    verdicts = excluded.verdicts, modified = excluded.modified, differing = excluded.differing,
    values = excluded.values`;
}

/** A car that is gone is a car until the tallies have let go of it: they need its place. */
const forgetGone = (
  ids: readonly string[],
) => sql`DELETE FROM car_summary s WHERE s.car_id = ANY(${[...ids]}::uuid[])
  AND NOT EXISTS (SELECT FROM car c WHERE c.club_id = s.club_id AND c.id = s.car_id AND ${standingRecordSql})`;

/** One at a time works a club's cars out, so that no two wait for each other's rows crosswise; it ends with the transaction. */
const TURN = 5;

/** Takes every note of some changed cars off the pile. */
const takeSql = (
  cars: number,
) => sql`WITH cars AS MATERIALIZED (SELECT DISTINCT car_id FROM stale_car ORDER BY car_id LIMIT ${cars}::int),
    taken AS (DELETE FROM stale_car s USING cars WHERE s.car_id = cars.car_id)
  SELECT car_id::text AS id FROM cars`;

async function refreshSome(ctx: Context, book: CharacteristicBook, cars: number): Promise<number> {
  const { db, club } = ctx;
  await db.$executeRaw`SELECT pg_advisory_xact_lock(hashtextextended(${club.id}, ${TURN}))`;
  const ids = (await db.$queryRaw<{ id: string }[]>(takeSql(cars))).map(({ id }) => id);
  if (ids.length === 0) return 0;
  await db.$executeRaw(refreshTexts(ids));
  await db.$executeRaw(refreshSummaries(ids, book));
  await refreshTallies(ctx, ids, book);
  await db.$executeRaw(forgetGone(ids));
  return ids.length;
}

/**
 * Works out anew what cars are found by and counted under, for those that changed since: in the caller's transaction, before
 * it looks. Of very many, after a large reading-in, some are left for the next who looks.
 *
 * @returns how many changed cars are left
 */
export async function refreshSearchIndex(ctx: Context, book: CharacteristicBook): Promise<number> {
  let left = await staleCars(ctx);
  const until = performance.now() + PATIENCE;
  while (left > 0) {
    await refreshSome(ctx, book, FEW);
    left = await staleCars(ctx);
    if (performance.now() > until) break;
  }
  return left;
}

/** The same, until none is left: after something large. One go a transaction, which `open` opens. */
export async function refreshWholeSearchIndex(
  open: <T>(work: (ctx: Context) => Promise<T>) => Promise<T>,
  book: CharacteristicBook,
): Promise<void> {
  while ((await open((ctx) => refreshSome(ctx, book, CARS))) > 0);
}
