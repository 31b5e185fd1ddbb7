import type { Database } from "@trunnion/db";
import { feedByToken } from "@trunnion/db/gate";
import { datedItemKindsOf, iCalendar, refused, shiftYears } from "@trunnion/register";
import { bookOf } from "../characteristic";
import type { ClubFacts, Context } from "../context";
import { type DueRow, dueItem, dueListSql } from "../due";
import { openVisitor } from "../gate";
import { hashOf } from "../invitation/read";

/** Most days a feed carries, the soonest first: a calendar program reads them all, each time. */
export const FEED_MOST = 2_000;
/** Years back: what has long been past is no appointment any more. */
const BACK = 1;

/** One of the reader's own links, without its token: that is told once and never again. */
export interface FeedLine {
  readonly id: string;
  readonly label: string;
  /** Name of the series it is narrowed to. */
  readonly series?: string;
  /** Instants, ISO. */
  readonly madeAt: string;
  readonly lastReadAt?: string;
}

/** The reader's own links. */
export interface FeedPage {
  readonly club: ClubFacts;
  readonly feeds: readonly FeedLine[];
  readonly series: readonly { readonly slug: string; readonly name: string }[];
}

/** A member's own calendar links that stand, the newest first. */
export async function feedPage(ctx: Context): Promise<FeedPage> {
  const { membershipId } = ctx.actor;
  const rows =
    membershipId === null
      ? []
      : await ctx.db.calendarFeed.findMany({
          where: { membershipId, revokedAt: null },
          select: {
            id: true,
            label: true,
            lastReadAt: true,
            recordedAt: true,
            series: { select: { name: true } },
          },
          orderBy: { id: "desc" },
        });
  return {
    club: ctx.club,
    feeds: rows.map(({ id, label, series, lastReadAt, recordedAt }) => ({
      id,
      label,
      madeAt: recordedAt.toISOString(),
      ...(series === null ? {} : { series: series.name }),
      ...(lastReadAt === null ? {} : { lastReadAt: lastReadAt.toISOString() }),
    })),
    series: await ctx.db.series.findMany({ select: { slug: true, name: true }, orderBy: { ordinal: "asc" } }),
  };
}

/** Notes that the link was read, and says whose cars it shows; refuses one taken back or of somebody who left. */
async function opened({ db, now }: Context, id: string) {
  const feed = await db.calendarFeed.findFirst({
    where: { id, revokedAt: null, membership: { leftAt: null } },
    select: { seriesId: true, series: { select: { name: true } } },
  });
  if (!feed) throw refused("CALENDAR_FEED_UNKNOWN", {});
  await db.calendarFeed.updateMany({ where: { id }, data: { lastReadAt: now } });
  return feed;
}

/** What a link shows, and the day it is of. */
export interface ReadFeedInput {
  readonly token: string;
  /** Where this installation is reached; without it events carry no address. */
  readonly origin?: string;
}

const soundToken = /^[\w-]{43}$/;

/**
 * What falls due as an iCalendar file, for whoever holds the link. Chassis numbers, kinds and days: no keeper, no driver,
 * nothing that anybody wrote in words.
 *
 * @throws Refusal CALENDAR_FEED_UNKNOWN, alike for a link that never was, was taken back, or whose member has left
 */
export async function readFeed(database: Database, { token, origin }: ReadFeedInput): Promise<string> {
  const found = soundToken.test(token) ? await feedByToken(database, hashOf(token)) : null;
  if (!found || found.revokedAt !== null) throw refused("CALENDAR_FEED_UNKNOWN", {});
  return openVisitor(database, found.club, async (ctx) => {
    if (!ctx) throw refused("CALENDAR_FEED_UNKNOWN", {});
    const { seriesId, series } = await opened(ctx, found.id);
    const kinds = datedItemKindsOf(await bookOf(ctx));
    const scope = { kinds, from: shiftYears(ctx.today, -BACK), ...(seriesId === null ? {} : { seriesId }) };
    const rows = await ctx.db.$queryRaw<DueRow[]>(dueListSql(scope, ctx.today, FEED_MOST));
    const items = rows.map((row) => dueItem(row, kinds, ctx.today));
    return iCalendar({
      name: `${ctx.club.name}: what falls due${series === null ? "" : `, ${series.name}`}`,
      asOf: ctx.now.toISOString(),
      events: items.map(({ id, day = "", reference, label }) => ({
        uid: `${id.replace(" ", "-")}@${ctx.club.slug}.trunnion`,
        on: day,
        summary: `${reference}: ${label.toLowerCase()}, last day`,
        category: label,
        ...(origin === undefined
          ? {}
          : {
              url: `${origin}/club/${encodeURIComponent(ctx.club.slug)}/car/${encodeURIComponent(reference)}`,
            }),
      })),
    });
  });
}
