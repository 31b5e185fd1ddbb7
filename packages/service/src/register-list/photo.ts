import { Prisma } from "@trunnion/db";
import type { Context } from "../context";

/** A photograph of a car as a whole, by which it is made small and turned upright. */
export interface CarPhoto {
  readonly id: string;
  readonly quarterTurns: number;
  readonly caption: string;
}

interface Row extends CarPhoto {
  readonly carId: string;
}

/** The latest photograph of each of some cars as a whole that still stands; a car without one is left out. */
export async function photosOf(
  ctx: Context,
  carIds: readonly string[],
): Promise<ReadonlyMap<string, CarPhoto>> {
  const rows = await ctx.db.$queryRaw<Row[]>(Prisma.sql`
    SELECT DISTINCT ON (l.car_id) l.car_id::text AS "carId", e.id::text AS id, e.quarter_turns AS "quarterTurns",
      coalesce(e.caption, '') AS caption
    FROM evidence_link l JOIN evidence e ON e.club_id = l.club_id AND e.id = l.evidence_id
    WHERE l.car_id = ANY(${[...carIds]}::uuid[]) AND e.withdrawn_at IS NULL AND e.width IS NOT NULL
    ORDER BY l.car_id, e.taken_latest DESC NULLS LAST, e.id DESC`);
  return new Map(rows.map(({ carId, ...photo }) => [carId, photo]));
}
