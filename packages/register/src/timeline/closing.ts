import { sayDay } from "../identity/say-day";
import type { KnownTime } from "../state/since";

/** Something that was so for a time, of which the end is kept as a day only. */
export interface ClosedSpan {
  /** Missing where it is not known since when. */
  readonly from?: KnownTime;
  /** ISO day: the last day it may have lasted; missing while it goes on. */
  readonly to?: string;
}

/**
 * When each span ended, no sharper than the record. One that gave way to another ended when that one began: laid up
 * since "1998" means in use until "1998", not until 31 December. Where the next has no date, all that is known is that it
 * was over by then. Missing for a span that goes on.
 */
export function endsOf(spans: readonly ClosedSpan[]): readonly (KnownTime | undefined)[] {
  return spans.map((span) => {
    const { from, to } = span;
    if (to === undefined) return undefined;
    const next = spans.find((other) => other !== span && other.from?.latest === to);
    if (next?.from !== undefined) return next.from;
    const exact = { text: sayDay(to), earliest: to, latest: to };
    const undatedNext = spans.some(
      (other) => other !== span && other.from === undefined && other.to === undefined,
    );
    if (!undatedNext) return exact;
    const earliest = from !== undefined && from.earliest < to ? from.earliest : to;
    return { text: `by ${sayDay(to)}`, earliest, latest: to };
  });
}
