import pg from "pg";
import { parse as arrayOf } from "postgres-array";
import type { Held } from "./connection";
import { Prisma } from "./generated/prisma/client";

type Written = TemplateStringsArray | Prisma.Sql;

/**
 * Statements in SQL, sent on the connection of a transaction itself: what is sent and what comes back is what the object
 * mapper would make of it, without the 0.3 ms it takes for each. Errors are the driver's, with PostgreSQL's codes.
 */
export interface RawStatements {
  $queryRaw<T = unknown>(sql: Written, ...values: readonly unknown[]): Promise<T>;
  $queryRawUnsafe<T = unknown>(text: string, ...values: readonly unknown[]): Promise<T>;
  /** How many rows were written. */
  $executeRaw(sql: Written, ...values: readonly unknown[]): Promise<number>;
  $executeRawUnsafe(text: string, ...values: readonly unknown[]): Promise<number>;
}

type Parse = (text: string) => unknown;

const utc: Parse = (text) => new Date(`${text.replace(" ", "T")}Z`);
const day: Parse = (text) => new Date(text);
const decimal: Parse = (text) => new Prisma.Decimal(text);
const bytes: Parse = (text) => new Uint8Array(pg.types.getTypeParser(pg.types.builtins.BYTEA)(text));
const each =
  (parse: Parse): Parse =>
  (text) =>
    arrayOf(text, parse);

/** Object ids of arrays, from the catalogue pg_type. */
const arrays = {
  INT8: 1016,
  NUMERIC: 1231,
  DATE: 1182,
  TIMESTAMP: 1115,
  JSON: 199,
  JSONB: 3807,
  BYTEA: 1001,
};
const { builtins } = pg.types;

/** Types that the driver reads otherwise than the mapper does: whole numbers past 2^53, decimals, days, bytes. */
const parsers = new Map<number, Parse>([
  [builtins.INT8, BigInt],
  [builtins.OID, BigInt],
  [builtins.NUMERIC, decimal],
  [builtins.DATE, day],
  [builtins.TIMESTAMP, utc],
  [builtins.BYTEA, bytes],
  [arrays.INT8, each(BigInt)],
  [arrays.NUMERIC, each(decimal)],
  [arrays.DATE, each(day)],
  [arrays.TIMESTAMP, each(utc)],
  [arrays.JSON, each(JSON.parse)],
  [arrays.JSONB, each(JSON.parse)],
  [arrays.BYTEA, each(bytes)],
]);

const types: pg.CustomTypesConfig = {
  getTypeParser: ((oid: number, format: "text" | "binary") =>
    parsers.get(oid) ?? pg.types.getTypeParser(oid, format as "text")) as typeof pg.types.getTypeParser,
};

/** A value as the driver is to send it: an instant in UTC whatever the zone of this machine. */
function sent(value: unknown): unknown {
  if (value instanceof Date) return value.toISOString();
  if (Prisma.Decimal.isDecimal(value)) return String(value);
  return Array.isArray(value) ? value.map(sent) : value;
}

const statementOf = (sql: Written, values: readonly unknown[]): Prisma.Sql =>
  "strings" in sql ? sql : Prisma.sql(sql, ...values);

/** Statements on the connection that is held; once the transaction is over each of them fails. */
export function rawStatements(held: Held): RawStatements {
  const send = async (text: string, values: readonly unknown[]) => {
    if (held.connection === undefined)
      throw new Error("the transaction is over: nothing more can be asked in it");
    return held.connection.query({ text, values: values.map(sent), types });
  };
  const query = async <T>(text: string, values: readonly unknown[]) => (await send(text, values)).rows as T;
  const execute = async (text: string, values: readonly unknown[]) =>
    (await send(text, values)).rowCount ?? 0;
  return {
    $queryRaw: (sql, ...given) => {
      const { text, values } = statementOf(sql, given);
      return query(text, values);
    },
    $queryRawUnsafe: (text, ...values) => query(text, values),
    $executeRaw: (sql, ...given) => {
      const { text, values } = statementOf(sql, given);
      return execute(text, values);
    },
    $executeRawUnsafe: (text, ...values) => execute(text, values),
  };
}
