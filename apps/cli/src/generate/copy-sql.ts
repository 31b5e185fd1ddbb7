import { archiveKinds, type Field, type Kind } from "@trunnion/register";
import { rowIdSql } from "./row-id";

/** Name of a column or table by that of the field or kind. */
export const snake = (name: string) => name.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);

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

const idOf = (copy: string, column: string) => rowIdSql("$1::text", copy, column);

/** What makes a copy's row its own where the pattern's would stand twice, or be somebody else's. */
const own: Readonly<Record<string, string>> = {
  "car.chassis": "'G-' || lpad(p.copy::text, 7, '0')",
  "car.chassisKey": "'G' || lpad(p.copy::text, 7, '0')",
  "car.claim": "1",
  "carIdentity.number": "left(t.number, length(t.number) - length(p.tail)) || '-' || p.copy",
  "carIdentity.numberKey":
    "left(t.number_key, length(t.number_key) - greatest(length(p.tail) - 1, 0)) || p.copy",
  "keeper.name": "'Keeper ' || p.copy",
  "keeper.address": "CASE WHEN t.address IS NOT NULL THEN p.copy || ' Harbour Road' END",
  "keeper.email": "CASE WHEN t.email IS NOT NULL THEN 'keeper' || p.copy || '@example.test' END",
  "keeper.phone": "NULL",
  "keeper.membershipId": "NULL",
};

function copied(kind: Kind, name: string, { type, refersTo, person }: Field, within: boolean): string {
  const special = own[`${kind.name}.${name}`];
  if (special !== undefined) return special;
  const column = `t."${snake(name)}"`;
  if (person || refersTo === kind.name) return "NULL";
  const isShared = shared.includes(refersTo ?? kind.name);
  if (type !== "id" || (within && isShared)) return column;
  return `CASE WHEN ${column} IS NOT NULL THEN ${idOf(isShared ? "0" : "p.copy", column)} END`;
}

const sourceOf = (kind: Kind) => `pattern_${snake(kind.name)}`;

/** The kinds that are of a car, in the order that foreign keys want. */
export const carKinds = archiveKinds.filter(({ name }) => ofCar[name] !== undefined);
/** The kinds that a club has once. */
export const sharedKinds = archiveKinds.filter(({ name }) => shared.includes(name));

/** Puts the rows that are copied aside, with the car each is of: the table itself grows while it is copied from. */
export const putAside = (kind: Kind, clubId: string) =>
  `CREATE TEMP TABLE ${sourceOf(kind)} ON COMMIT DROP AS
   SELECT t.*, ${ofCar[kind.name]} AS of_car FROM "${snake(kind.name)}" t WHERE t.club_id = '${clubId}'`;

/**
 * The statement that copies a kind's rows: once where they are shared, else once for every car drawn from $3 to $4.
 *
 * @param within whether it copies within one club, whose shared records are there already
 */
export function copySql(kind: Kind, within: boolean): string {
  const columns = [...kind.fields.keys()].map((name) => `"${snake(name)}"`).join(", ");
  const values = [...kind.fields].map(([name, field]) => copied(kind, name, field, within)).join(", ");
  const into = `INSERT INTO "${snake(kind.name)}" (club_id, ${columns}) SELECT $2::uuid, ${values}`;
  if (shared.includes(kind.name)) return `${into} FROM "${snake(kind.name)}" t WHERE t.club_id = $3::uuid`;
  return `${into} FROM ${sourceOf(kind)} t JOIN drawn p ON p.car_id = t.of_car WHERE p.copy BETWEEN $3 AND $4 ORDER BY p.copy`;
}

/** Which car each new one follows: drawn by the hash of seed and place, so that every car of a club is as likely. */
export const drawSql = (club: "pattern" | "pool") => `INSERT INTO drawn
  WITH pattern AS MATERIALIZED (
    SELECT id, chassis, row_number() OVER (ORDER BY chassis_key, claim) - 1 AS place FROM car
    WHERE club_id = $1::uuid AND merged_into_id IS NULL),
  draw AS MATERIALIZED (
    SELECT copy, ('x' || substr(md5($2::text || '/' || copy), 1, 8))::bit(32)::bigint % (SELECT count(*) FROM pattern) AS place
    FROM generate_series($3::int, $4::int) AS copy)
  SELECT copy, pattern.id, ${club === "pool" ? "'-' || ltrim(substr(pattern.chassis, 3), '0')" : "''"} FROM draw JOIN pattern USING (place)`;

/** Current values of the cars that are copied within a club, put aside. */
export const putValuesAside = (clubId: string) =>
  `CREATE TEMP TABLE pattern_current_value ON COMMIT DROP AS SELECT * FROM current_value WHERE club_id = '${clubId}'`;

/**
 * Current values are copied too, not worked out again: series, serial, day of building and every record they follow from are
 * those of the car that is followed, so they are what the records amount to wherever that car's are. `trunnion check` proves it.
 */
export const CURRENT_VALUES = `INSERT INTO current_value (club_id, car_id, characteristic, side, value_kind, entered, number,
    resolution, text, origin, origin_id, since, since_text, nominal_number, verdict)
  SELECT $2::uuid, ${idOf("p.copy", "t.car_id")}, t.characteristic, t.side, t.value_kind, t.entered, t.number,
    t.resolution, t.text, t.origin, ${idOf("p.copy", "t.origin_id")}, t.since, t.since_text, t.nominal_number, t.verdict
  FROM pattern_current_value t JOIN drawn p USING (car_id) WHERE p.copy BETWEEN $3 AND $4
  ORDER BY p.copy, t.characteristic, t.side`;

/** One journal entry a car. */
export const JOURNAL = `INSERT INTO journal_entry (club_id, action, noun, noun_id, car_id, after)
  SELECT club_id, 'car.generate', 'car', id, id, jsonb_build_object('chassis', chassis)
  FROM car WHERE club_id = $1::uuid ORDER BY chassis_key`;
