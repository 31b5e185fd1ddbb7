/** What a page of the register has that changes with what is looked for. */
export interface Found {
  /** How many were found. */
  readonly told: string;
  readonly html: string;
}

/** Header by which the page's own script asks for what changes alone. */
export const partHeader = "x-trunnion-part";

/** Identities of what changes on the page: what holds it, and what stands right behind it. */
export const foundId = "found";
export const foundEndId = "found-end";

const begins = `<div id="${foundId}">`;
const ends = `</div><i id="${foundEndId}"`;

/**
 * What changes, cut out of the text of a page: the rest of it, half of which is the same once more for the framework, need
 * not be taken apart while somebody types.
 */
export function foundIn(page: string): Found | undefined {
  const from = page.indexOf(begins);
  const to = page.indexOf(ends, from);
  if (from < 0 || to < 0) return undefined;
  const html = page.slice(from + begins.length, to);
  const [, told = ""] = /^<div [^>]*data-told="([^"]*)"/.exec(html) ?? [];
  return { told, html };
}
