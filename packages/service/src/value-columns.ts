import { Prisma, type ValueKind } from "@trunnion/db";
import type { Value } from "@trunnion/register";

/** The five columns that every table keeps a value in. */
export interface ValueColumns {
  readonly valueKind: ValueKind;
  readonly entered: string;
  readonly number: number | null;
  readonly resolution: number | null;
  readonly text: string | null;
}

/** The same five of a row `v`, for a SELECT. */
export const valueSql = Prisma.sql`v.value_kind::text AS "valueKind", v.entered, v.number, v.resolution, v.text`;

/** Columns of a value: what was entered stays to the letter beside the reading of it. */
export function valueColumns(value: Value): ValueColumns {
  const columns = {
    valueKind: value.kind,
    entered: value.entered,
    number: null,
    resolution: null,
    text: null,
  };
  switch (value.kind) {
    case "quantity":
      return { ...columns, number: value.si, resolution: value.resolution };
    case "choice":
      return { ...columns, text: value.code };
    case "designation":
      return { ...columns, text: value.canonical };
    case "text":
      return { ...columns, text: value.text };
    case "date":
      return { ...columns, text: value.date };
    case "absent":
      return columns;
  }
}

function needed<T>(part: T | null, columns: ValueColumns): T {
  if (part === null)
    throw new Error(`a ${columns.valueKind} row lacks its value: ${JSON.stringify(columns)}`);
  return part;
}

/** The value that a row's columns carry. A row that contradicts itself is a bug, not a value. */
export function valueFrom(columns: ValueColumns): Value {
  const { valueKind: kind, entered } = columns;
  switch (kind) {
    case "quantity":
      return {
        kind,
        entered,
        si: needed(columns.number, columns),
        resolution: needed(columns.resolution, columns),
      };
    case "choice":
      return { kind, entered, code: needed(columns.text, columns) };
    case "designation":
      return { kind, entered, canonical: needed(columns.text, columns) };
    case "text":
      return { kind, entered, text: needed(columns.text, columns) };
    case "date":
      return { kind, entered, date: needed(columns.text, columns) };
    case "absent":
      return { kind, entered };
  }
}

type Prefixed<P extends string> = {
  [K in keyof ValueColumns as `${P}${Capitalize<K>}`]: ValueColumns[K];
};

/** The same columns under a prefix, where a table keeps two values side by side. */
export function prefixedValueColumns<P extends string>(prefix: P, value: Value): Prefixed<P> {
  const columns = Object.entries(valueColumns(value)).map(([name, part]) => [
    `${prefix}${name[0]?.toUpperCase()}${name.slice(1)}`,
    part,
  ]);
  return Object.fromEntries(columns) as Prefixed<P>;
}
