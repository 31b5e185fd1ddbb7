import { sayDay } from "../identity/say-day";
import type { StateValue } from "./state";

/** When something was, as far as the record knows it: the words, and the days they allow (ISO, both included). */
export interface KnownTime {
  readonly text: string;
  readonly earliest: string;
  readonly latest: string;
}

/**
 * A time as people read it, no sharper than the record: a known day in full, anything else in the record's own words.
 *
 * @example sayTime({ text: "1998", earliest: "1998-01-01", latest: "1998-12-31" }) // => "1998"
 * @example sayTime({ text: "12/3/98", earliest: "1998-03-12", latest: "1998-03-12" }) // => "12 Mar 1998"
 */
export function sayTime({ text, earliest, latest }: KnownTime): string {
  return earliest === latest ? sayDay(latest) : text;
}

/** Since when the car has a value, no sharper than the record; `undefined` for as specified and as built. */
export function saySince({ since, sinceSaid }: StateValue): string | undefined {
  return sinceSaid ?? (since === undefined ? undefined : sayDay(since));
}
