import { Prisma } from "@trunnion/db";

const sql = Prisma.sql;

/**
 * Below what a share of the values lies, between neighbours in proportion (as percentile_cont has it), of rows that stand for
 * several values each: `upto` is how many there are up to and with a row's, `total` how many altogether.
 */
export function quantileSql(share: "0.25" | "0.5" | "0.75", value: Prisma.Sql): Prisma.Sql {
  const place = sql`${Prisma.raw(share)}::float8 * (total - 1)`;
  const at = (index: Prisma.Sql) => sql`min(${value}) FILTER (WHERE upto > ${index})`;
  const below = at(sql`floor(${place})`);
  return sql`${below} + (max(${place}) - floor(max(${place}))) * (${at(sql`ceil(${place})`)} - ${below})`;
}

/** The same at the three quarters. */
export const quartilesSql = (value: Prisma.Sql): Prisma.Sql =>
  sql`${quantileSql("0.25", value)} AS lower, ${quantileSql("0.5", value)} AS median, ${quantileSql("0.75", value)} AS upper`;
