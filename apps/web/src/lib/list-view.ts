import { oneOf } from "./register-order";
import { listViews } from "./register-search";

/** Where it is kept how somebody last looked at the register. */
export const viewCookie = "trunnion-list-view";
/** A year. */
export const viewCookieAge = 365 * 24 * 60 * 60;

/** The view that an address of the register asks for, to be kept. */
export function viewAsked(url: URL): string | undefined {
  return /^\/club\/[^/]+\/car$/.test(url.pathname)
    ? oneOf(listViews, url.searchParams.get("view") ?? undefined)
    : undefined;
}
