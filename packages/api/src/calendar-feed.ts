import { refused } from "@trunnion/register";
import { type ReadFeedInput, readFeed } from "@trunnion/service";
import { RateLimit } from "./rate-limit";
import type { Request } from "./request";

const HOUR = 3_600_000;
/** A calendar program reads once an hour or less; somebody's hand now and then. */
const ofLink = new RateLimit({ most: 30, within: HOUR });
/** Tries from one address, links that there are not among them. */
const ofAddress = new RateLimit({ most: 120, within: HOUR });

export interface CalendarFeedInput extends ReadFeedInput {
  /** Network address of whoever reads, as far as it is known. */
  readonly address: string;
}

/**
 * What falls due as an iCalendar file, for whoever holds the link.
 *
 * @throws Refusal CALENDAR_FEED_UNKNOWN; TOO_MANY_TRIES of one link or from one address, saying when to come again
 */
export async function calendarFeed(
  { database }: Pick<Request, "database">,
  { address, ...input }: CalendarFeedInput,
): Promise<string> {
  const now = Date.now();
  const wait = Math.max(ofAddress.take(address, now), ofLink.take(input.token, now));
  if (wait > 0) throw refused("TOO_MANY_TRIES", { seconds: Math.ceil(wait / 1000) });
  return readFeed(database, input);
}
