import { Prisma } from "@trunnion/db";
import {
  assemblyLabels,
  foldText,
  type Part,
  type PartFit,
  partFitWords,
  partKindWords,
  tellingTolerance,
} from "@trunnion/register";
import type { WantedField } from "../car";
import type { Context } from "../context";
import { standingRecordSql } from "../standing-record";

const sql = Prisma.sql;

/** Cars that can need no part any more. */
const lasting = sql`NOT EXISTS (SELECT FROM car_status_span t
  WHERE t.club_id = c.club_id AND t.car_id = c.id AND t."to" IS NULL AND t.status IN ('dismantled', 'destroyed'))`;

/** One telling feature of one part as the database compares it; `marks` is how many the part has. */
interface Mark {
  readonly part: string;
  readonly mark: number;
  readonly marks: number;
  readonly characteristic: string;
  readonly kind: string;
  readonly text: string | null;
  readonly number: number | null;
  readonly tolerance: number | null;
}

/** A part as it is stored. */
export interface StoredPart extends Part {
  readonly id: string;
}

function marksOf({ id: part, features }: StoredPart): readonly Mark[] {
  const telling = features.filter(({ tells }) => tells);
  return telling.map(({ characteristic = "", value }, mark) => ({
    part,
    mark,
    marks: telling.length,
    characteristic,
    kind: value.kind,
    text: textOf(value),
    number: value.kind === "quantity" ? value.si : null,
    tolerance: tellingTolerance(value) ?? null,
  }));
}

function textOf(value: Part["features"][number]["value"]): string | null {
  switch (value.kind) {
    case "choice":
      return value.code;
    case "designation":
      return value.canonical;
    case "date":
      return value.date;
    case "text":
      return foldText(value.text);
    default:
      return null;
  }
}

/** The twin of `carHasPart` (register), held to it by a test: what a recorded value `v` says of a mark `m`. */
const hit = sql`(v.value_kind::text = m.kind AND CASE m.kind
  WHEN 'quantity' THEN abs(v.number - m.number) <= m.tolerance
  WHEN 'text' THEN strpos(folded_text(v.entered), m.text) > 0
  WHEN 'designation' THEN (v.text = m.text OR starts_with(v.text, m.text || ' '))
  WHEN 'absent' THEN TRUE
  ELSE v.text = m.text END)`;

/** `judged(part, car_id, use)`: what the record of each car that says anything of it says of each part. */
export function judgedSql(ctx: Context, parts: readonly StoredPart[]): Prisma.Sql {
  const marks = JSON.stringify(parts.flatMap(marksOf));
  return sql`
    mark AS (SELECT * FROM jsonb_to_recordset(${marks}::jsonb) AS m(part uuid, mark int, marks int,
      characteristic text, kind text, text text, number float8, tolerance float8)),
    seen AS (SELECT m.part, m.marks, m.mark, v.car_id, bool_or(${hit}) AS hit
      FROM mark m JOIN current_value v ON v.club_id = ${ctx.club.id}::uuid AND v.characteristic = m.characteristic
      GROUP BY 1, 2, 3, 4),
    judged AS (SELECT part, car_id,
      CASE WHEN NOT bool_and(hit) THEN 'no' WHEN count(*) = min(marks) THEN 'yes' ELSE 'unknown' END AS use
      FROM seen GROUP BY 1, 2)`;
}

/** Cars `c` that count; joined to `part_fit` `f` on series and serial. */
export const fittingCarSql = sql`c.club_id = f.club_id AND c.series_id = f.series_id AND ${standingRecordSql} AND ${lasting}
  AND (f.serial_from IS NULL OR c.serial >= f.serial_from) AND (f.serial_to IS NULL OR c.serial <= f.serial_to)`;
export const countedCarSql = sql`${standingRecordSql} AND ${lasting}`;

/** What the form of a part shows, as text; the same is sent along as `opened`. */
export type PartTexts = Readonly<Record<keyof typeof labels, string>>;

const labels = {
  assembly: "Assembly",
  place: "Place",
  name: "Name",
  kind: "Kind",
  origin: "Donor or maker",
  partNumber: "Part number",
  note: "Note",
  source: "Source",
  locus: "Page or place",
  trust: "Trust",
  fits: "Fits",
  features: "What matters",
} as const;

export interface PartSaid extends Pick<Part, "assembly" | "place" | "name" | "kind" | "features"> {
  readonly origin: string;
  readonly partNumber: string;
  readonly note: string;
  /** Title of the source. */
  readonly source: string;
  readonly locus: string;
  readonly trust: string;
  readonly fits: readonly (PartFit & { readonly seriesName: string })[];
}

function sayFit({ seriesName, standing, serialFrom, serialTo, note }: PartSaid["fits"][number]): string {
  const span =
    serialFrom === undefined && serialTo === undefined ? "" : ` ${serialFrom ?? ""} to ${serialTo ?? ""}`;
  return `${seriesName}${span}: ${partFitWords[standing]}${note === undefined ? "" : ` (${note})`}`;
}

/** A part as the texts its form and the journal have. */
export function partTexts({ assembly, kind, fits, features, ...said }: PartSaid): PartTexts {
  const { place, name, origin, partNumber, note, source, locus, trust } = said;
  return {
    ...{ place, name, origin, partNumber, note, source, locus, trust },
    assembly: assemblyLabels[assembly],
    kind: partKindWords[kind],
    fits: fits.map(sayFit).join("; "),
    features: features
      .map(({ label, value, tells }) => `${label}: ${value.entered}${tells ? " (seen on the record)" : ""}`)
      .join("; "),
  };
}

/** The texts of now and those wanted, field by field, for conflicts and the journal. */
export function wantedFields(now: PartTexts, wanted: PartTexts): readonly WantedField[] {
  return (Object.keys(labels) as (keyof PartTexts)[]).map((field) => ({
    field,
    label: labels[field],
    now: now[field],
    wanted: wanted[field],
  }));
}
