import type { JournalQuery } from "../../lib/path";
import { askedDay } from "../timeline/handle";

/** What an address asks of the journal, and what of it cannot be read. */
export interface Asked {
  readonly query: JournalQuery;
  readonly errors: Readonly<Record<string, string>>;
}

type Given = Readonly<Record<string, string | readonly string[] | undefined>>;

/** What no name has in it, and the database takes in no text. */
const control = /\p{Cc}/gu;
/** Longest part of an address that is looked at; what is longer names nothing. */
const LONGEST = 60;
const uuid = /^[0-9a-f]{8}-(?:[0-9a-f]{4}-){3}[0-9a-f]{12}$/i;
/** Fifteen figures: more entries than any club writes, and a number still exact. */
const place = /^[1-9]\d{0,14}$/;

/** Whether a part can mean anything at all; what cannot is passed over, as a link with a slip in it is. */
const fits: Readonly<Record<keyof JournalQuery, (text: string) => boolean>> = {
  car: () => true,
  person: (text) => text === "none" || uuid.test(text),
  action: (text) => /^[A-Za-z.]+$/.test(text),
  from: () => true,
  to: () => true,
  before: (text) => place.test(text),
  check: (text) => text === "chain",
};

const names = Object.keys(fits) as (keyof JournalQuery)[];
const farDay = "9999-12-31";

/** Reads what the journal is narrowed to. A day that is none is said at its field, and nothing is shown. */
export function askedOf(given: Given): Asked {
  const query: Partial<Record<keyof JournalQuery, string>> = {};
  const errors: Record<string, string> = {};
  for (const name of names) {
    const value = given[name];
    const text = typeof value === "string" ? value.replace(control, "").trim().slice(0, LONGEST) : "";
    if (text === "" || !fits[name](text)) continue;
    query[name] = text;
    const isDay = name === "from" || name === "to";
    if (isDay && askedDay(text, "1000-01-01", farDay) === undefined)
      errors[name] = `"${text}" is no day: write one such as 2026-05-03.`;
  }
  if (
    Object.keys(errors).length === 0 &&
    query.from !== undefined &&
    query.to !== undefined &&
    query.to < query.from
  ) {
    errors.to = `${query.to} lies before ${query.from}: the end must not come before the beginning.`;
  }
  return { query, errors };
}
