import { refused } from "@trunnion/register";
import type { Database } from "@trunnion/service";
import type pg from "pg";
import { drawPool } from "./pool";
import { rowIdSql } from "./row-id";
import { Writer } from "./writer";

export interface GenerateInput {
  /** Short name of the club whose cars are the pattern: what the new ones are like is drawn from what those are. */
  readonly from: string;
  /** Short name and full name of the new club. */
  readonly slug: string;
  readonly name: string;
  readonly cars: number;
  /** The same seed gives the same club. */
  readonly seed: number;
  /** Cars that are drawn one by one, which further ones follow; 1,500 when left out. */
  readonly pool?: number;
}

/** What was made. */
export interface Generated {
  readonly clubId: string;
  /** Rows written, all tables together. */
  readonly rows: number;
  readonly modifications: number;
  readonly currentValues: number;
}

const POOL = 1_500;

async function addClub(owner: pg.Client, { from, slug, name, seed }: GenerateInput) {
  const pattern = await owner.query<{ id: string }>("SELECT id FROM club WHERE slug = $1", [from]);
  const patternId = pattern.rows[0]?.id;
  if (patternId === undefined) {
    const { rows } = await owner.query<{ slug: string }>("SELECT slug FROM club ORDER BY slug");
    throw refused("CLUB_NOT_FOUND", { club: from, known: rows.map((row) => row.slug) });
  }
  const made = await owner.query<{ id: string }>(
    `INSERT INTO club (id, slug, name, kind, worked_out_by)
     SELECT ${rowIdSql("$2::text", "0", "$1::text")}, $1, $3, 'ownersClub', worked_out_by FROM club WHERE id = $4::uuid
     ON CONFLICT (slug) DO NOTHING RETURNING id`,
    [slug, seed, name, patternId],
  );
  const clubId = made.rows[0]?.id;
  if (clubId === undefined) throw refused("CLUB_EXISTS", { club: slug });
  return { patternId, clubId };
}

/**
 * Makes a club of any size. What a club has once is copied from the pattern club. The first cars are drawn one by one: each
 * has what a car of the pattern has, and beside it a works' card, modifications, setting sheets and stories, drawn in
 * {@link drawPool}; the others follow these in bulk, by SQL alone, so that this process holds no more rows for a hundred
 * thousand cars than for a thousand. Numbers and keepers are invented. One journal entry a car. All or nothing.
 *
 * @param owner a connection of the role that owns the tables
 * @param database the same database by the service's role, which reads the pattern
 * @throws Refusal CLUB_NOT_FOUND for a pattern that is not there, CLUB_EXISTS for a short name that is taken
 */
export async function generateClub(
  owner: pg.Client,
  database: Database,
  input: GenerateInput,
): Promise<Generated> {
  const { from, cars, seed } = input;
  await owner.query("BEGIN");
  try {
    const { patternId, clubId } = await addClub(owner, input);
    const writer = new Writer(owner, clubId, seed);
    const pool = Math.min(cars, input.pool ?? POOL);
    await writer.copyShared(patternId);
    const followers = await writer.draw("pattern", patternId, 1, pool);
    await writer.copyCars("pattern", patternId, 1, pool);
    await writer.write(await drawPool(database, { from, seed, followers }));
    if (cars > pool) {
      await writer.draw("pool", clubId, pool + 1, cars);
      await writer.copyCars("pool", clubId, pool + 1, cars);
    }
    await writer.journal();
    await owner.query("COMMIT");
    await owner.query("ANALYZE");
    const { rows, modifications, currentValues } = writer;
    return { clubId, rows, modifications, currentValues };
  } catch (error) {
    await owner.query("ROLLBACK");
    throw error;
  }
}
