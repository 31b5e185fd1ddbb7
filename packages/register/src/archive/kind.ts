import { z } from "zod";
import type { Field, Fields } from "./field";

/** One kind of row in a club's archive: one JSON Lines file, and one table of the database. */
export interface Kind {
  /** Singular, as the glossary has it. */
  readonly name: string;
  /** What one row is. */
  readonly meaning: string;
  /** Fields the lines are sorted by, ascending: texts by their UTF-8 bytes, ids likewise. Together they are unique. */
  readonly order: readonly string[];
  /** By name, sorted as they stand in a line. */
  readonly fields: ReadonlyMap<string, Field>;
  /** What one line must be: every field there, none besides. */
  readonly row: z.ZodType<Readonly<Record<string, unknown>>>;
}

export interface KindInput {
  readonly name: string;
  readonly meaning: string;
  /** `id` when left out. */
  readonly order?: readonly string[];
  readonly fields: Fields;
}

// By UTF-16 code units, as RFC 8785 sorts the names of a JSON object.
const byName = ([a]: readonly [string, Field], [b]: readonly [string, Field]) => (a < b ? -1 : a > b ? 1 : 0);

/** @throws RangeError when it is sorted by a field it does not have */
export function defineKind({ name, meaning, order = ["id"], fields }: KindInput): Kind {
  const sorted = new Map(Object.entries(fields).sort(byName));
  const unknown = order.find((one) => !sorted.has(one));
  if (unknown !== undefined) throw new RangeError(`${name} is sorted by ${unknown}, which it has not`);
  const shape = Object.fromEntries([...sorted].map(([key, field]) => [key, field.schema]));
  return { name, meaning, order, fields: sorted, row: z.strictObject(shape) };
}

/** Name of a kind in file names: `carIdentity` is `car-identity`. */
export function kindFile(name: string): string {
  return name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
}
