/** When something was borne or kept, as far as it is known: ISO days, both ends included; left out where not known. */
export interface BorneSpan {
  readonly fromEarliest?: string;
  readonly fromLatest?: string;
  readonly toEarliest?: string;
  readonly toLatest?: string;
}

/** Whether two spans share a day: for certain, possibly (the dates do not tell), or surely not. */
export type Overlap = "certain" | "possible" | "none";

const wholly = (earlier: BorneSpan, later: BorneSpan): boolean =>
  earlier.toLatest !== undefined &&
  later.fromEarliest !== undefined &&
  earlier.toLatest <= later.fromEarliest;

/** Days on which it was borne whatever the dates' doubt; `undefined` where no such day is known. */
function sureDays({ fromLatest, toEarliest }: BorneSpan) {
  if (fromLatest === undefined || toEarliest === undefined || fromLatest > toEarliest) return undefined;
  return { from: fromLatest, to: toEarliest };
}

/**
 * Whether two spans overlap. One that ends on the day the other begins does not: a mark goes from car to car within a
 * day. A beginning or an end that is not known can lie anywhere, so it makes an overlap possible and never certain.
 *
 * @example spanOverlap({ toLatest: "1975-03-31" }, { fromEarliest: "1975-04-01" }) // => "none"
 */
export function spanOverlap(one: BorneSpan, other: BorneSpan): Overlap {
  if (wholly(one, other) || wholly(other, one)) return "none";
  const [a, b] = [sureDays(one), sureDays(other)];
  if (a === undefined || b === undefined) return "possible";
  return a.from < b.to && b.from < a.to ? "certain" : "possible";
}
