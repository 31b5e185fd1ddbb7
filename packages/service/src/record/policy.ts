import {
  type CarStatus,
  type IdentityKind,
  type IdentityStanding,
  Prisma,
  type Trust,
  type ValueKind,
} from "@trunnion/db";
import type { Side } from "@trunnion/register";

const sql = Prisma.sql;

/** The five columns of a value as they stand in a row below. */
export type ValueCells = readonly [
  kind: ValueKind,
  entered: string,
  number: number | null,
  resolution: number | null,
  text: string | null,
];
/** Where a row comes from: the source's id, the place in it, how far it is trusted. */
export type SourceCells = readonly [sourceId: string | null, locus: string | null, trust: Trust];

export type AsBuiltCells = readonly [
  id: string,
  characteristic: string,
  side: Side,
  ...ValueCells,
  ...SourceCells,
];
export type ChangeCells = readonly [characteristic: string, side: Side, ...ValueCells];
export type ReadingCells = readonly [
  id: string,
  characteristic: string,
  side: Side,
  expandedUncertainty: number | null,
  ...ValueCells,
];
export type ModificationCells = readonly [
  id: string,
  sequence: number,
  fittedText: string | null,
  fittedEarliest: string | null,
  fittedLatest: string | null,
  /** UTC. */
  recordedOn: string,
  reason: string | null,
  donor: string | null,
  changes: readonly ChangeCells[] | null,
  ...SourceCells,
];
export type SheetCells = readonly [
  on: string,
  sequence: number,
  eventId: string | null,
  readings: readonly ReadingCells[] | null,
  ...SourceCells,
];

/** One car's record as the database puts it together: days ISO, lists missing where there is nothing. */
export interface RecordRow {
  readonly id: string;
  readonly chassis: string;
  readonly chassisKey: string;
  readonly claim: number;
  readonly serial: number | null;
  readonly version: number;
  readonly builtText: string | null;
  readonly builtEarliest: string | null;
  readonly builtLatest: string | null;
  readonly firstRegisteredText: string | null;
  readonly remarks: string | null;
  readonly series: readonly [id: string, slug: string, name: string, marque: string] | null;
  readonly mergedInto: readonly [chassis: string, claim: number] | null;
  readonly status: readonly [status: CarStatus, fromText: string | null] | null;
  readonly options: readonly string[] | null;
  readonly identities:
    | readonly (readonly [
        kind: IdentityKind,
        number: string,
        standing: IdentityStanding,
        fromText: string | null,
        toText: string | null,
      ])[]
    | null;
  readonly asBuilt: readonly AsBuiltCells[] | null;
  readonly modifications: readonly ModificationCells[] | null;
  readonly settingSheets: readonly SheetCells[] | null;
  /** Superseded ones among them: nothing is ever taken away, so the count is the last place given. */
  readonly modificationCount: number;
  readonly sheetCount: number;
}

const changesSql = sql`(SELECT json_agg(json_build_array(h.characteristic, h.side, h.after_value_kind, h.after_entered,
    h.after_number, h.after_resolution, h.after_text) ORDER BY h.id)
  FROM modification_change h WHERE h.modification_id = m.id)`;

const readingsSql = sql`(SELECT json_agg(json_build_array(r.id, r.characteristic, r.side, r.expanded_uncertainty, r.value_kind,
    r.entered, r.number, r.resolution, r.text) ORDER BY r.id)
  FROM reading r WHERE r.setting_sheet_id = t.id)`;

/** Some cars, over `car c`, by their ids. */
export const carsById = (carIds: readonly string[]): Prisma.Sql => sql`c.id = ANY(${[...carIds]}::uuid[])`;

/** The car that claims a number in that place. */
export const carByClaim = (chassisKey: string, claim: number): Prisma.Sql =>
  sql`c.chassis_key = ${chassisKey} AND c.claim = ${claim}::int`;

/**
 * Each car's record in one row of one column, JSON as text: whatever belongs to the car is found by its own index, so the
 * cost is the cars asked for, and nothing is put together row by row here. Of the numbers it bore the latest comes first: who
 * asks for a mark wants the one it bears.
 */
export function recordSql(where: Prisma.Sql): Prisma.Sql {
  return sql`SELECT json_build_object('id', c.id, 'chassis', c.chassis, 'chassisKey', c.chassis_key, 'claim', c.claim,
    'serial', c.serial, 'version', c.version, 'builtText', c.built_text, 'builtEarliest', c.built_earliest,
    'builtLatest', c.built_latest, 'firstRegisteredText', c.first_registered_text, 'remarks', c.remarks,
    'series', (SELECT json_build_array(s.id, s.slug, s.name, q.name) FROM series s
      JOIN marque q ON q.club_id = s.club_id AND q.id = s.marque_id WHERE s.id = c.series_id),
    'mergedInto', (SELECT json_build_array(o.chassis, o.claim) FROM car o WHERE o.id = c.merged_into_id),
    'status', (SELECT json_build_array(t.status, t.from_text) FROM car_status_span t
      WHERE t.car_id = c.id AND t."to" IS NULL ORDER BY t.id LIMIT 1),
    'options', (SELECT json_agg(o.code ORDER BY o.code) FROM car_option o WHERE o.car_id = c.id),
    'identities', (SELECT json_agg(json_build_array(i.kind, i.number, i.standing, i.from_text, i.to_text)
      ORDER BY i.kind, i.id DESC) FROM car_identity i WHERE i.car_id = c.id),
    'asBuilt', (SELECT json_agg(json_build_array(a.id, a.characteristic, a.side, a.value_kind, a.entered, a.number, a.resolution,
      a.text, a.source_id, a.locus, a.trust) ORDER BY a.id) FROM as_built_value a WHERE a.car_id = c.id AND a.superseded_at IS NULL),
    'modifications', (SELECT json_agg(json_build_array(m.id, m.sequence, m.fitted_text, m.fitted_earliest, m.fitted_latest,
      (m.recorded_at AT TIME ZONE 'UTC')::date, m.reason, m.donor, ${changesSql}, m.source_id, m.locus, m.trust) ORDER BY m.sequence)
      FROM modification m JOIN submission b ON b.club_id = m.club_id AND b.id = m.submission_id
      WHERE m.car_id = c.id AND m.superseded_at IS NULL AND b.status = 'accepted'),
    'settingSheets', (SELECT json_agg(json_build_array(t."on", t.sequence, e.event_id, ${readingsSql}, t.source_id, t.locus, t.trust)
      ORDER BY t.sequence) FROM setting_sheet t LEFT JOIN entry e ON e.club_id = t.club_id AND e.id = t.entry_id
      WHERE t.car_id = c.id AND t.superseded_at IS NULL),
    'modificationCount', (SELECT count(*) FROM modification m WHERE m.car_id = c.id),
    'sheetCount', (SELECT count(*) FROM setting_sheet t WHERE t.car_id = c.id))::text AS record
    FROM car c WHERE ${where}`;
}
