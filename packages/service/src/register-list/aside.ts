import { Prisma } from "@trunnion/db";
import type { Context } from "../context";
import { maySeeKeepers } from "../keeper/policy";

const sql = Prisma.sql;

/** What may stand beside a car that is no characteristic of it: when it was last looked at, and who has it. */
export interface Aside {
  readonly key: "car.lookedAt" | "car.keeper";
  readonly label: string;
  readonly kind: "date" | "text";
}

const asides: readonly Aside[] = [
  { key: "car.lookedAt", label: "Last looked at", kind: "date" },
  { key: "car.keeper", label: "Keeper", kind: "text" },
];

/** Those asked for that the one who asks may see: keepers are shown to few. */
export function asidesOf(ctx: Context, keys: readonly string[]): readonly Aside[] {
  return asides.filter(({ key }) => keys.includes(key) && (key !== "car.keeper" || maySeeKeepers(ctx)));
}

/** The day of the latest setting sheet, or of the latest finding of an event. */
const lookedAtSql = (ids: readonly string[]) => sql`SELECT car_id::text AS id, max(day)::text AS text FROM (
    SELECT s.car_id, s."on" AS day FROM setting_sheet s
      WHERE s.car_id = ANY(${[...ids]}::uuid[]) AND s.superseded_at IS NULL
    UNION ALL
    SELECT e.car_id, f.found_at::date FROM entry e JOIN finding f ON f.club_id = e.club_id AND f.entry_id = e.id
      WHERE e.car_id = ANY(${[...ids]}::uuid[])) AS looked GROUP BY 1`;

const keeperSql = (
  ids: readonly string[],
) => sql`SELECT DISTINCT ON (h.car_id) h.car_id::text AS id, p.name AS text
  FROM keepership h JOIN keeper p ON p.club_id = h.club_id AND p.id = h.keeper_id
  WHERE h.car_id = ANY(${[...ids]}::uuid[]) AND h."to" IS NULL AND p.name IS NOT NULL ORDER BY h.car_id, h.id DESC`;

/** What stands beside some cars, by car and key; what is not known is left out. */
export async function asideTexts(
  ctx: Context,
  ids: readonly string[],
  shown: readonly Aside[],
): Promise<ReadonlyMap<string, Readonly<Record<string, string>>>> {
  const texts = new Map<string, Record<string, string>>();
  for (const { key } of shown) {
    const query = key === "car.keeper" ? keeperSql(ids) : lookedAtSql(ids);
    for (const { id, text } of await ctx.db.$queryRaw<{ id: string; text: string }[]>(query))
      texts.set(id, { ...texts.get(id), [key]: text });
  }
  return texts;
}
