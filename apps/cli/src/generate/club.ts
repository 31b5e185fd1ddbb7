import { archiveKinds, type Field, type Kind, refused } from "@trunnion/register";
import type pg from "pg";

export interface GenerateInput {
  /** Short name of the club whose cars are the pattern: what the new ones are like is drawn from what those are. */
  readonly from: string;
  /** Short name and full name of the new club. */
  readonly slug: string;
  readonly name: string;
  readonly cars: number;
  /** The same seed gives the same club. */
  readonly seed: number;
}

/** What was made. */
export interface Generated {
  readonly clubId: string;
  /** Rows written, all tables together. */
  readonly rows: number;
  readonly modifications: number;
  readonly currentValues: number;
}

const snake = (name: string) => name.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);

/** Kinds that are there once, whatever the cars. */
const shared = [
  "marque",
  "series",
  "seriesOption",
  "characteristic",
  "source",
  "specification",
  "specificationEntry",
  "specificationAlternative",
];

const OF_ROW = "t.car_id";
/** Kinds that are of a car, and how its row is known. */
const ofCar: Readonly<Record<string, string>> = {
  car: "t.id",
  carIdentity: OF_ROW,
  carStatusSpan: OF_ROW,
  carOption: OF_ROW,
  keeper:
    "(SELECT min(k.car_id::text)::uuid FROM keepership k WHERE k.club_id = t.club_id AND k.keeper_id = t.id)",
  keepership: OF_ROW,
  asBuiltValue: OF_ROW,
  historyNote: OF_ROW,
  submission: OF_ROW,
  modification: OF_ROW,
  modificationChange:
    "(SELECT m.car_id FROM modification m WHERE m.club_id = t.club_id AND m.id = t.modification_id)",
  modificationFastener:
    "(SELECT m.car_id FROM modification m WHERE m.club_id = t.club_id AND m.id = t.modification_id)",
  settingSheet: OF_ROW,
  reading: "(SELECT s.car_id FROM setting_sheet s WHERE s.club_id = t.club_id AND s.id = t.setting_sheet_id)",
  datedItem: OF_ROW,
};

/** An id that follows from seed, copy and pattern, in the form of a UUIDv7. */
const idOf = (copy: string, column: string) =>
  `overlay(overlay(md5($2::text || ':' || ${copy} || ':' || ${column}::text) placing '7' from 13) placing '8' from 17)::uuid`;

/** What makes a copy's row its own where the pattern's would stand twice, or be somebody else's. */
const own: Readonly<Record<string, string>> = {
  "car.chassis": "'G-' || lpad(p.copy::text, 7, '0')",
  "car.chassisKey": "'G' || lpad(p.copy::text, 7, '0')",
  "car.claim": "1",
  "carIdentity.number": "t.number || '-' || p.copy",
  "carIdentity.numberKey": "t.number_key || p.copy",
  "keeper.name": "'Keeper ' || p.copy",
  "keeper.address": "CASE WHEN t.address IS NOT NULL THEN p.copy || ' Harbour Road' END",
  "keeper.email": "CASE WHEN t.email IS NOT NULL THEN 'keeper' || p.copy || '@example.test' END",
  "keeper.phone": "NULL",
  "keeper.membershipId": "NULL",
};

function copied(kind: Kind, name: string, { type, refersTo, person }: Field): string {
  const special = own[`${kind.name}.${name}`];
  if (special !== undefined) return special;
  const column = `t."${snake(name)}"`;
  if (person || refersTo === kind.name) return "NULL";
  const isShared = shared.includes(refersTo ?? kind.name);
  if (type !== "id") return column;
  return `CASE WHEN ${column} IS NOT NULL THEN ${idOf(isShared ? "'0'" : "p.copy::text", column)} END`;
}

/** The statement that copies a kind's rows: once where they are shared, else once for every car drawn. */
function copySql(kind: Kind): string {
  const columns = [...kind.fields.keys()].map((name) => `"${snake(name)}"`).join(", ");
  const values = [...kind.fields].map(([name, field]) => copied(kind, name, field)).join(", ");
  const drawn = shared.includes(kind.name) ? "" : `JOIN drawn p ON p.car_id = ${ofCar[kind.name]}`;
  return `INSERT INTO "${snake(kind.name)}" (club_id, ${columns})
    SELECT $3::uuid, ${values} FROM "${snake(kind.name)}" t ${drawn} WHERE t.club_id = $1::uuid`;
}

/** Which pattern each new car follows: drawn by the hash of seed and place, so that every pattern is as likely. */
const DRAW = `CREATE TEMP TABLE drawn ON COMMIT DROP AS
  WITH pattern AS MATERIALIZED (
    SELECT id, row_number() OVER (ORDER BY chassis_key, claim) - 1 AS place FROM car WHERE club_id = $1::uuid AND merged_into_id IS NULL),
  draw AS MATERIALIZED (
    SELECT copy, ('x' || substr(md5($2::text || '/' || copy), 1, 8))::bit(32)::bigint % (SELECT count(*) FROM pattern) AS place
    FROM generate_series(1, $3::int) AS copy)
  SELECT copy, pattern.id AS car_id FROM draw JOIN pattern USING (place)`;

const JOURNAL = `INSERT INTO journal_entry (club_id, action, noun, noun_id, car_id, after)
  SELECT club_id, 'car.generate', 'car', id, id, jsonb_build_object('chassis', chassis)
  FROM car WHERE club_id = $1::uuid ORDER BY chassis_key`;

/**
 * Current values are copied too, not worked out again: series, serial, day of building and every record they follow from are
 * the pattern's, so they are what the records amount to wherever the pattern's are. `trunnion check` proves it.
 */
const CURRENT_VALUES = `INSERT INTO current_value (club_id, car_id, characteristic, side, value_kind, entered, number,
    resolution, text, origin, origin_id, since, since_text, nominal_number, verdict)
  SELECT $3::uuid, ${idOf("p.copy::text", "t.car_id")}, t.characteristic, t.side, t.value_kind, t.entered, t.number,
    t.resolution, t.text, t.origin, ${idOf("p.copy::text", "t.origin_id")}, t.since, t.since_text, t.nominal_number, t.verdict
  FROM current_value t JOIN drawn p USING (car_id) WHERE t.club_id = $1::uuid`;

async function addClub(owner: pg.Client, { from, slug, name, seed }: GenerateInput) {
  const pattern = await owner.query<{ id: string }>("SELECT id FROM club WHERE slug = $1", [from]);
  const patternId = pattern.rows[0]?.id;
  if (patternId === undefined) {
    const { rows } = await owner.query<{ slug: string }>("SELECT slug FROM club ORDER BY slug");
    throw refused("CLUB_NOT_FOUND", { club: from, known: rows.map((row) => row.slug) });
  }
  const made = await owner.query<{ id: string }>(
    `INSERT INTO club (id, slug, name, kind) SELECT ${idOf("'club'", "$1::text")}, $1, $3, 'ownersClub'
     ON CONFLICT (slug) DO NOTHING RETURNING id`,
    [slug, seed, name],
  );
  const clubId = made.rows[0]?.id;
  if (clubId === undefined) throw refused("CLUB_EXISTS", { club: slug });
  return { patternId, clubId };
}

/**
 * Makes a club of any size in bulk, by SQL alone: shared records copied once, cars drawn with everything of theirs from the
 * cars of another club, so that what is common there is common here. Numbers and keepers are invented. One journal entry a
 * car. All or nothing, and inside the database: this process holds no row.
 *
 * @param owner a connection of the role that owns the tables
 * @throws Refusal CLUB_NOT_FOUND for a pattern that is not there, CLUB_EXISTS for a short name that is taken
 */
export async function generateClub(owner: pg.Client, input: GenerateInput): Promise<Generated> {
  await owner.query("BEGIN");
  try {
    const { patternId, clubId } = await addClub(owner, input);
    await owner.query(DRAW, [patternId, input.seed, input.cars]);
    await owner.query("CREATE INDEX ON drawn (car_id)");
    await owner.query("ANALYZE drawn");
    let rows = 1;
    let modifications = 0;
    for (const kind of archiveKinds) {
      if (!shared.includes(kind.name) && ofCar[kind.name] === undefined) continue;
      const written = await owner.query(copySql(kind), [patternId, input.seed, clubId]);
      rows += written.rowCount ?? 0;
      if (kind.name === "modification") modifications = written.rowCount ?? 0;
    }
    const values = await owner.query(CURRENT_VALUES, [patternId, input.seed, clubId]);
    const currentValues = values.rowCount ?? 0;
    rows += currentValues;
    rows += (await owner.query(JOURNAL, [clubId])).rowCount ?? 0;
    await owner.query("COMMIT");
    await owner.query("ANALYZE");
    return { clubId, rows, modifications, currentValues };
  } catch (error) {
    await owner.query("ROLLBACK");
    throw error;
  }
}
