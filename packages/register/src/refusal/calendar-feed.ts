import type { Words } from "./words";

/** Refusals of private calendar links. */
export interface CalendarFeedRefusals {
  /** Never was, was taken back, or its member has left: alike, so that nobody learns which. */
  CALENDAR_FEED_UNKNOWN: Record<never, never>;
  CALENDAR_FEED_TOO_MANY: { readonly most: number };
}

export const calendarFeedWords: Words<CalendarFeedRefusals> = {
  CALENDAR_FEED_UNKNOWN: () => ({
    what: "There is no calendar behind this link, or no longer.",
    remedy: "Make a new link under Fleet, what falls due, and put it into the calendar program.",
  }),
  CALENDAR_FEED_TOO_MANY: ({ most }) => ({
    what: `You have ${most} calendar links already.`,
    remedy: "Take back one that no calendar reads any more.",
  }),
};
