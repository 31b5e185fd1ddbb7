import { z } from "zod";

/** What kind of thing a field holds; how it stands in a line of JSON follows from it. */
export type FieldType =
  | "id"
  | "text"
  | "texts"
  | "integer"
  | "number"
  | "yesNo"
  | "day"
  | "instant"
  | "choice"
  | "choices"
  | "json";

/**
 * What becomes of a field where personal data are left out: emptied, or, inside a kept document, emptied at a path.
 * Ids of people stay: by themselves they name nobody, and the journal's chain is worked out over them.
 */
export type PersonalPart = "emptied" | { readonly path: readonly string[] };

/** One field of a kind of row in a club's archive. */
export interface Field {
  readonly type: FieldType;
  /** What it means, in a sentence. */
  readonly meaning: string;
  /** Unit of a number; "SI" where it is that of the characteristic's dimension. */
  readonly unit?: string;
  /** May be null: nothing known, or not so. */
  readonly optional: boolean;
  /** Kind whose `id` it holds. */
  readonly refersTo?: string;
  /** Holds the id of a person: a pseudonym, the same wherever that person did something. */
  readonly person?: true;
  readonly personal?: PersonalPart;
  readonly schema: z.ZodType;
}

/** Lower-case hexadecimal, as PostgreSQL writes it; RFC 9562 of any version. */
const uuid = z
  .string()
  .regex(/^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/, "a UUID in lower case");
// The database keeps no NUL in its texts.
const anyText = z.string().refine((text) => !text.includes("\0"), "no NUL character");
const anyJson = z.json();

function field(type: FieldType, schema: z.ZodType, meaning: string, more: Partial<Field> = {}): Field {
  return { type, schema, meaning, optional: false, ...more };
}

/** The row's own id. */
export const id = (meaning = "UUIDv7, unique within the club."): Field => field("id", uuid, meaning);

/** The id of a row of another kind, or of an earlier one of the same. */
export const refersTo = (kind: string, meaning: string): Field =>
  field("id", uuid, meaning, { refersTo: kind });

/** The id of somebody. */
export const person = (meaning: string): Field => field("id", uuid, meaning, { person: true });

/** An id that may name a row of several kinds, or one that is gone. */
export const someId = (meaning: string): Field => field("id", uuid, meaning);

export const text = (meaning: string): Field => field("text", anyText, meaning);
export const texts = (meaning: string): Field => field("texts", z.array(anyText), meaning);
export const integer = (meaning: string, unit?: string): Field =>
  field("integer", z.int(), meaning, unit === undefined ? {} : { unit });
export const number = (meaning: string, unit: string): Field =>
  field("number", z.number(), meaning, { unit });
export const yesNo = (meaning: string): Field => field("yesNo", z.boolean(), meaning);

/** A day of the calendar, ISO 8601: 1971-05-01. */
export const day = (meaning: string): Field => field("day", z.iso.date(), meaning);

/** An instant, ISO 8601 in UTC to the millisecond: 2026-11-25T16:45:59.123Z. */
export const instant = (meaning: string): Field =>
  field("instant", z.iso.datetime({ precision: 3, offset: false, local: false }), meaning);

export const choice = (codes: readonly string[], meaning: string): Field =>
  field("choice", z.enum(codes), meaning);
export const choices = (codes: readonly string[], meaning: string): Field =>
  field("choices", z.array(z.enum(codes)), meaning);

/** Something nested, as the program keeps it. */
export const json = (meaning: string): Field => field("json", anyJson, meaning);

/** The same, or null. */
export const maybe = (of: Field): Field => ({ ...of, optional: true, schema: of.schema.nullable() });

/** The same, emptied where personal data are left out; so it may be null. */
export const personal = (of: Field): Field => ({ ...maybe(of), personal: "emptied" });

/** The same, with the text at a path inside it emptied where personal data are left out. */
export const personalAt = (path: readonly string[], of: Field): Field => ({ ...of, personal: { path } });

/** Fields that recur, by name. */
export type Fields = Readonly<Record<string, Field>>;

const named = (prefix: string, name: string) =>
  prefix === "" ? name : `${prefix}${name[0]?.toUpperCase()}${name.slice(1)}`;

/** A recorded value in five fields: what was entered stays to the letter beside the reading of it. */
export function valueFields(
  {
    codes,
    prefix = "",
    says = "Value",
  }: { readonly codes: readonly string[]; readonly prefix?: string; readonly says?: string },
  optional = false,
): Fields {
  const kept = optional ? maybe : (one: Field) => one;
  return {
    [named(prefix, "valueKind")]: kept(
      choice(codes, `${says}: what kind of thing it is; absent: known not to be fitted.`),
    ),
    [named(prefix, "entered")]: kept(text(`${says}: what was entered, to the letter.`)),
    [named(prefix, "number")]: maybe(number(`${says}: number of a quantity.`, "SI")),
    [named(prefix, "resolution")]: maybe(number(`${says}: resolution the entry implies.`, "SI")),
    [named(prefix, "text")]: maybe(
      text(`${says}: code of a choice, canonical designation, text, or ISO day.`),
    ),
  };
}

/** A date known to some precision, in three fields. */
export function dateFields(name: string, says: string): Fields {
  return {
    [`${name}Text`]: maybe(text(`${says}, as written ("c. 1971", "before March 1972").`)),
    [`${name}Earliest`]: maybe(day(`${says}: earliest day the text allows.`)),
    [`${name}Latest`]: maybe(day(`${says}: latest day the text allows.`)),
  };
}

/** Where a statement comes from, and how far it is trusted. */
export function sourceFields(trusts: readonly string[]): Fields {
  return {
    sourceId: maybe(refersTo("source", "Source that supports it.")),
    locus: maybe(text("Page, clause or sheet within the source.")),
    trust: choice(trusts, "How far it is trusted: documented, stated by a keeper, inferred, unknown."),
  };
}
