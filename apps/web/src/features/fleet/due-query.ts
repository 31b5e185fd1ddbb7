import { type DueStanding, dueStandings } from "@trunnion/register";
import type { DueQuery } from "../../lib/path";
import { type AskedQuery, queryPart } from "../../lib/register-search";

const isStanding = (text: string | undefined): text is DueStanding =>
  dueStandings.some((one) => one === text);

/** A day of an address: what is none is left out, and the page then shows more rather than less. */
function dayOf(query: AskedQuery, name: string): string | undefined {
  const day = queryPart(query, name);
  return day !== undefined && /^\d{4}-\d\d-\d\d$/.test(day) && !Number.isNaN(Date.parse(day))
    ? day
    : undefined;
}

/** What an address narrows the list of what falls due to. */
export function dueQuery(query: AskedQuery): DueQuery & { readonly standing?: DueStanding } {
  const standing = queryPart(query, "standing");
  const parts = {
    series: queryPart(query, "series"),
    kind: queryPart(query, "kind"),
    from: dayOf(query, "from"),
    to: dayOf(query, "to"),
  };
  const kept = Object.fromEntries(Object.entries(parts).filter(([, part]) => part !== undefined));
  return { ...kept, ...(isStanding(standing) ? { standing } : {}) };
}

/** Where the address's page begins: the day and the id of the line before. */
export function dueCursor(query: AskedQuery): {
  readonly after?: { readonly day: string; readonly id: string };
} {
  const id = queryPart(query, "after", 120);
  return id === undefined ? {} : { after: { id, day: dayOf(query, "at") ?? "" } };
}

/** The month of an address, else the present one. */
export function monthOf(query: AskedQuery, today: string): string {
  const month = queryPart(query, "month");
  return month !== undefined && /^(?:19|20|21)\d\d-(?:0[1-9]|1[0-2])$/.test(month)
    ? month
    : today.slice(0, 7);
}
