import { likeness, type NearMiss, nearMisses } from "./near-miss";
import { chassisKey, explainNumber, type NumberPattern, sayMisfit } from "./number";

/** A series with its pattern, as advice names it. */
export interface AdvisingSeries {
  readonly slug: string;
  readonly pattern: NumberPattern;
}

/** A number proposed instead, with the series it belongs to. */
export interface ProposedNumber extends NearMiss {
  readonly series: string;
}

/** What can be said of a chassis number while it is being typed. Nothing is put right by itself. */
export interface NumberAdvice {
  /** Serial in the series chosen, or in the one that it fits; left out where it fits none. */
  readonly serial?: number;
  /** Short names of the series it fits as it stands. */
  readonly fits: readonly string[];
  /** What is wrong with it, in one sentence; left out where it fits the series chosen, or one at all. */
  readonly problem?: string;
  /** Numbers that could be meant, likeliest first; at most six. */
  readonly proposals: readonly ProposedNumber[];
}

const PROPOSALS = 6;

function proposalsFor(number: string, series: readonly AdvisingSeries[]): readonly ProposedNumber[] {
  const all = series.flatMap(({ slug, pattern }) =>
    nearMisses(number, pattern).map((miss, rank) => ({ miss: { ...miss, series: slug }, rank })),
  );
  // What differs least in writing is likelier than what needs another prefix; then the likeliest of each series.
  const far = ({ miss }: (typeof all)[number]) => (likeness(miss.number, number) === undefined ? 1 : 0);
  return all
    .toSorted((a, b) => far(a) - far(b) || a.rank - b.rank)
    .slice(0, PROPOSALS)
    .map(({ miss }) => miss);
}

/**
 * Holds a number against the series chosen, or, where none is chosen, against all of the club's.
 *
 * @param chosen short name of the series the car is filed under; left out while not settled
 * @example adviseOnNumber("S2-O145", series, "series-2").proposals[0].number // => "S2-0145"
 */
export function adviseOnNumber(
  number: string,
  series: readonly AdvisingSeries[],
  chosen?: string,
): NumberAdvice {
  if (chassisKey(number) === "") return { fits: [], proposals: [] };
  const read = series.map((one) => ({ ...one, reading: explainNumber(number, one.pattern) }));
  const fitting = read.filter(({ reading }) => reading.ok);
  const fits = fitting.map(({ slug }) => slug);
  const own = read.find(({ slug }) => slug === chosen);
  const taken = own ?? fitting[0];
  if (taken?.reading.ok) return { fits, proposals: [], serial: taken.reading.serial };
  if (own && !own.reading.ok) {
    return { fits, problem: own.reading.problem, proposals: proposalsFor(number, [own]) };
  }
  if (series.length === 0) return { fits, proposals: [] };
  const problem = sayMisfit(
    number,
    series.map(({ pattern }) => pattern),
  );
  return { fits, problem, proposals: proposalsFor(number, series) };
}
