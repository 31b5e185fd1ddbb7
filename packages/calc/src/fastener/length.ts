import { CalcRefusal } from "../catalogue/refusal";
import { notNegative, positive, written } from "../spring/guard";

/** What a bolt goes through and is held by. Lengths m. */
export interface BoltStackUp {
  /** Everything clamped: bracket, link, spacers, washers. */
  readonly grip: number;
  readonly nutHeight: number;
  readonly pitch: number;
  /** Full threads that stand out of the nut; 2 when left out, the point included. */
  readonly threadsOut?: number | undefined;
}

/** Least length under the head, m: grip + nut + threads standing out. */
export function leastBoltLength({ grip, nutHeight, pitch, threadsOut = 2 }: BoltStackUp): number {
  const out = notNegative(threadsOut, "threadsOut") * positive(pitch, "pitch");
  return positive(grip, "grip") + positive(nutHeight, "nutHeight") + out;
}

/** Lengths that bolts are sold in, metric: ISO 888, mm (from memory). */
const metricLengths = [
  6, 8, 10, 12, 16, 20, 25, 30, 35, 40, 45, 50, 55, 60, 65, 70, 80, 90, 100, 110, 120, 130, 140, 150, 160,
  180, 200, 220, 240, 260, 280, 300,
];
/** Inch bolts go in eighths up to 1 in, in quarters up to 4 in, in halves up to 8 in (common practice). */
const inchLengths = [...steps(0.25, 1, 0.125), ...steps(1.25, 4, 0.25), ...steps(4.5, 8, 0.5)];

/** Lists of nominal lengths. */
export type LengthSeries = "metric" | "inch";

/**
 * The shortest nominal length that is not below a least one, m.
 * @throws CalcRefusal (`TOO_LONG`) beyond the list
 */
export function nominalLength(least: number, series: LengthSeries): number {
  const lengths =
    series === "metric" ? metricLengths.map((mm) => mm / 1000) : inchLengths.map((inch) => inch * 0.0254);
  const rounding = 1e-9;
  const found = lengths.find((length) => length >= positive(least, "least") - rounding);
  if (found !== undefined) return found;
  throw new CalcRefusal(
    "TOO_LONG",
    `${written(least, "length")} is beyond the nominal ${series} lengths, which end at ${written(lengths.at(-1) ?? 0, "length")}`,
    "grip",
  );
}

/**
 * Usual length of thread on a bolt with a plain shank, m: 2d + 6 mm up to 125 mm, + 12 up to 200, + 25 above (ISO 888);
 * inch 2d + 1/4 in up to 6 in, + 1/2 above (ASME B18.2.1). Both from memory. Shorter bolts are threaded to the head.
 */
export function usualThreadLength(majorDiameter: number, length: number, series: LengthSeries): number {
  const twice = 2 * positive(majorDiameter, "majorDiameter");
  const long = positive(length, "length");
  if (series === "inch") return Math.min(long, twice + (long <= 6 * 0.0254 ? 0.25 : 0.5) * 0.0254);
  return Math.min(long, twice + (long <= 0.125 ? 0.006 : long <= 0.2 ? 0.012 : 0.025));
}

/** How a bolt's shank and thread lie in the stack-up. */
export interface BoltFit {
  /** Plain part under the head, m. */
  readonly shankLength: number;
  /** Threads standing out of the nut. */
  readonly threadsOut: number;
  /** Thread left under the nut before it runs on to the shank, m; negative: the nut jams before it clamps. */
  readonly threadUnderNut: number;
  /** Plain where the parts try to slide on each other? */
  readonly shearPlane: "shank" | "thread" | "not given";
}

/**
 * How a bolt fits a stack-up.
 * @param shearPlane head's seat to the joint face that is in shear, m
 */
export function boltFit(
  { grip, nutHeight, pitch }: BoltStackUp,
  {
    length,
    threadLength,
    shearPlane,
  }: { length: number; threadLength: number; shearPlane?: number | undefined },
): BoltFit {
  if (positive(threadLength, "threadLength") > positive(length, "length"))
    throw new CalcRefusal("THREAD_TOO_LONG", "the thread cannot be longer than the bolt", "threadLength");
  const shankLength = length - threadLength;
  const plane =
    shearPlane === undefined
      ? "not given"
      : notNegative(shearPlane, "shearPlane") <= shankLength
        ? "shank"
        : "thread";
  return {
    shankLength,
    threadsOut:
      (length - positive(grip, "grip") - positive(nutHeight, "nutHeight")) / positive(pitch, "pitch"),
    threadUnderNut: grip - shankLength,
    shearPlane: plane,
  };
}

function steps(from: number, to: number, step: number): number[] {
  return Array.from({ length: Math.round((to - from) / step) + 1 }, (_, index) => from + index * step);
}
