import { daysBetween } from "../identity/calendar";
import type { PartNote } from "./part";

/** Worst first; `notKnown` last of those that need somebody to look. */
export const scarcityRungs = ["unobtainable", "scarce", "thinning", "notKnown", "obtainable"] as const;
export type ScarcityRung = (typeof scarcityRungs)[number];

export const scarcityWords: Readonly<Record<ScarcityRung, string>> = {
  unobtainable: "not to be had",
  scarce: "scarce",
  thinning: "getting scarce",
  notKnown: "nobody has noted looking",
  obtainable: "to be had",
};

/** Notes older than this say nothing of today; years. */
const LATELY = 5;
/** A find is fresh for so long; years. */
const FRESH = 2;
/** More cars than this for each one found lately are more than the finds will serve. */
const CARS_PER_FIND = 25;
const YEAR = 365.25;

/** The rule in words, for the page that shows what comes of it. */
export const scarcityRule = [
  `Not to be had: looked for in vain on two days or more since it was last found, and not found for ${LATELY} years.`,
  `Scarce: looked for in vain since it was last found, or not found for ${LATELY} years.`,
  `Getting scarce: last found more than ${FRESH} years ago, or more than ${CARS_PER_FIND} cars depend on each one found in the last ${LATELY} years.`,
  `To be had: found within ${FRESH} years, and none of these.`,
  "A car depends on a part where its record shows it, or where the works fitted it and the record says nothing else. Dismantled and destroyed cars do not count.",
] as const;

export interface ScarcityInput {
  readonly notes: readonly PartNote[];
  /** Cars that need it: recorded with it, and those that had it from the works and of which nothing else is recorded. */
  readonly dependentCars: number;
  /** ISO day. */
  readonly today: string;
}

/** How hard a part is to find, and how that is known. */
export interface Scarcity {
  readonly rung: ScarcityRung;
  /** One sentence: what the rung follows from. */
  readonly because: string;
  readonly dependentCars: number;
  /** How many were found in the last five years. */
  readonly foundLately: number;
  /** ISO days; missing where there is no such note. */
  readonly lastFound?: string;
  readonly lastNotFound?: string;
  readonly lastConfirmed?: string;
  readonly lastDoubted?: string;
}

const latest = (notes: readonly PartNote[], kind: PartNote["kind"]) =>
  notes
    .filter((note) => note.kind === kind)
    .map(({ on }) => on)
    .sort()
    .at(-1);

interface Looked {
  readonly found?: string | undefined;
  /** Days on which it was looked for in vain since. */
  readonly inVain: number;
  /** Since it was last found. */
  readonly years?: number | undefined;
  readonly carsPerFind?: number | undefined;
}

function rungOf({ found, inVain, years, carsPerFind }: Looked): ScarcityRung {
  if (found === undefined && inVain === 0) return "notKnown";
  const longAgo = years === undefined || years > LATELY;
  if (longAgo && inVain >= 2) return "unobtainable";
  if (longAgo || inVain > 0) return "scarce";
  return years > FRESH || (carsPerFind ?? 0) > CARS_PER_FIND ? "thinning" : "obtainable";
}

function because({ found, inVain, years, carsPerFind }: Looked): string {
  if (found === undefined && inVain === 0) return "Nobody has noted finding it, or looking for it in vain.";
  const times = inVain === 1 ? "once" : `on ${inVain} days`;
  if (found === undefined) return `Never noted as found; looked for in vain ${times}.`;
  const since =
    years === undefined || years < 1
      ? "within a year"
      : `${Math.floor(years)} ${years < 2 ? "year" : "years"} ago`;
  const vain = inVain === 0 ? "" : `, and looked for in vain ${times} since`;
  const each =
    carsPerFind !== undefined && carsPerFind > CARS_PER_FIND
      ? `; ${Math.round(carsPerFind)} cars depend on each one found in ${LATELY} years`
      : "";
  return `Last found ${since}${vain}${each}.`;
}

/** Works out how scarce a part is from dated notes and the number of cars that depend on it; see {@link scarcityRule}. */
export function scarcityOf({ notes, dependentCars, today }: ScarcityInput): Scarcity {
  const found = latest(notes, "found");
  const age = (day: string) => daysBetween(day, today) / YEAR;
  const foundLately = notes
    .filter(({ kind, on }) => kind === "found" && age(on) <= LATELY)
    .reduce((sum, { count = 1 }) => sum + count, 0);
  const inVain = new Set(
    notes.flatMap(({ kind, on }) => (kind === "notFound" && (found === undefined || on > found) ? [on] : [])),
  ).size;
  const looked: Looked = {
    found,
    inVain,
    years: found === undefined ? undefined : age(found),
    carsPerFind: foundLately === 0 ? undefined : dependentCars / foundLately,
  };
  const days = {
    lastFound: found,
    lastNotFound: latest(notes, "notFound"),
    lastConfirmed: latest(notes, "confirmed"),
    lastDoubted: latest(notes, "doubted"),
  };
  return {
    rung: rungOf(looked),
    because: because(looked),
    dependentCars,
    foundLately,
    ...Object.fromEntries(Object.entries(days).filter(([, day]) => day !== undefined)),
  };
}

/** Worst first: by rung, then by how many cars depend on it. */
export function byScarcity(one: Scarcity, other: Scarcity): number {
  const place = ({ rung }: Scarcity) => scarcityRungs.indexOf(rung);
  return place(one) - place(other) || other.dependentCars - one.dependentCars;
}
