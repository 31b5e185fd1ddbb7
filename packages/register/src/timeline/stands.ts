import type { TimelineEvent } from "./event";

/** Whether something was so on a day: the dates prove it, leave it open, or rule it out; or there are no dates. */
export type Stands = "yes" | "maybe" | "no" | "undated";

function begun({ when }: TimelineEvent, day: string): Stands {
  if (when === undefined) return "undated";
  if (day < when.earliest) return "no";
  return day < when.latest ? "maybe" : "yes";
}

/** On its last day it still is. */
function ended({ until }: TimelineEvent, day: string): Stands {
  if (until === undefined || until === "open" || day <= until.earliest) return "no";
  return day > until.latest ? "yes" : "maybe";
}

/**
 * Whether what an event tells was so on a day. Something without an end lasts; its last day counts. Without a
 * beginning it is undated up to its end: it was so at some time, since when is not known.
 *
 * @param day ISO day
 * @example standsOn({ id: "1", lane: "life", title: "Laid up", until: "open", when: { text: "1998", earliest: "1998-01-01", latest: "1998-12-31" } }, "1998-06-01") // => "maybe"
 */
export function standsOn(event: TimelineEvent, day: string): Stands {
  const [start, end] = [begun(event, day), ended(event, day)];
  if (start === "no" || end === "yes") return "no";
  if (start === "undated") return "undated";
  return start === "maybe" || end === "maybe" ? "maybe" : "yes";
}
