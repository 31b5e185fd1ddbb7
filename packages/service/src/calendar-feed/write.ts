import { randomBytes } from "node:crypto";
import { refused } from "@trunnion/register";
import { v7 as uuid } from "uuid";
import { z } from "zod";
import type { Context } from "../context";
import { hashOf } from "../invitation/read";
import { writeJournal } from "../journal";

/** Links one member may have at once: more are forgotten ones. */
const MOST = 10;

const name = z
  .string()
  .trim()
  .min(1, "Give it a name, so that you know later which calendar reads it.")
  .max(60)
  .regex(/^\P{Cc}*$/u, "One line, please.");

/** A new private link to what falls due. */
export const addFeedInput = z.object({ label: name, series: z.string().trim().max(60).exactOptional() });
export type AddFeedInput = z.output<typeof addFeedInput>;

export const removeFeedInput = z.object({ id: z.uuid() });

/** Who acts here has a membership: whoever holds the machine has none, and no calendar. */
function membershipOf({ actor }: Context): string {
  if (actor.membershipId !== null) return actor.membershipId;
  throw refused("ROLE_NEEDED", { needed: [], has: actor.roles });
}

async function seriesIdOf({ db }: Context, slug: string | undefined): Promise<string | null> {
  if (slug === undefined || slug === "") return null;
  const found = await db.series.findFirst({ where: { slug }, select: { id: true } });
  if (found) return found.id;
  const known = await db.series.findMany({ select: { slug: true }, orderBy: { ordinal: "asc" } });
  throw refused("SERIES_NOT_FOUND", { series: slug, known: known.map((one) => one.slug) });
}

/**
 * Makes a link and tells its token, this once: only the token's hash is kept.
 *
 * @throws Refusal CALENDAR_FEED_TOO_MANY, SERIES_NOT_FOUND
 */
export async function addFeed(ctx: Context, { label, series }: AddFeedInput): Promise<string> {
  const membershipId = membershipOf(ctx);
  const standing = await ctx.db.calendarFeed.count({ where: { membershipId, revokedAt: null } });
  if (standing >= MOST) throw refused("CALENDAR_FEED_TOO_MANY", { most: MOST });
  const token = randomBytes(32).toString("base64url");
  const id = uuid();
  const seriesId = await seriesIdOf(ctx, series);
  await ctx.db.calendarFeed.create({ data: { id, membershipId, label, seriesId, tokenHash: hashOf(token) } });
  await writeJournal(ctx, [
    { action: "calendarFeed.add", noun: "calendarFeed", nounId: id, after: { seriesId } },
  ]);
  return token;
}

/**
 * Takes one of the member's own links back: whoever reads it is told from then on that there is none.
 *
 * @throws Refusal CALENDAR_FEED_UNKNOWN, also for somebody else's
 */
export async function removeFeed(ctx: Context, { id }: z.output<typeof removeFeedInput>): Promise<void> {
  const where = { id, membershipId: membershipOf(ctx), revokedAt: null };
  const { count } = await ctx.db.calendarFeed.updateMany({ where, data: { revokedAt: ctx.now } });
  if (count === 0) throw refused("CALENDAR_FEED_UNKNOWN", {});
  await writeJournal(ctx, [{ action: "calendarFeed.remove", noun: "calendarFeed", nounId: id }]);
}
