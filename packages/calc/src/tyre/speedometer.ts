import { notNegative, positive } from "../spring/guard";

const kilometresPerHour = 1 / 3.6;
/** A limit is met inclusively; this much, m/s, is the last bits of a conversion. */
const rounding = 1e-9;

/** UN R39 5.3: what an indicated speed is against the true one. */
export type SpeedometerVerdict = "within" | "low" | "high";

/**
 * Highest reading UN R39 allows at a true speed, m/s: true + true/10 + 4 km/h. The lowest is the true speed itself.
 * @example Math.round(highestReading(80 / 3.6) * 3.6) // => 92
 */
export function highestReading(trueSpeed: number): number {
  return 1.1 * notNegative(trueSpeed, "trueSpeed") + 4 * kilometresPerHour;
}

/** UN R39 5.3: 0 ≤ indicated − true ≤ true/10 + 4 km/h, both limits allowed. Speeds in m/s. */
export function judgeReading(indicated: number, trueSpeed: number): SpeedometerVerdict {
  if (notNegative(indicated, "indicated") < notNegative(trueSpeed, "trueSpeed") - rounding) return "low";
  return indicated > highestReading(trueSpeed) + rounding ? "high" : "within";
}

/**
 * Speeds, m/s, shown on the speedometer at which UN R39 5.2.5 tests a car of a given top speed: 80 % of it up to
 * 45 km/h; 40 and 80 % of it (if that is 55 or more) up to 100; 40, 80 and 80 % of it (if that is 100 or more) up to
 * 150; 40, 80 and 120 km/h above (from memory). That the test speed is the one shown: Australian circular 18/03-3-1.
 */
export function speedometerTestSpeeds(topSpeed: number): readonly number[] {
  const top = positive(topSpeed, "topSpeed") / kilometresPerHour;
  const share = 0.8 * top;
  const fitting = (least: number): readonly number[] => (share >= least ? [share] : []);
  return testSpeeds(top, { share, fitting }).map((speed) => speed * kilometresPerHour);
}

interface Share {
  readonly share: number;
  readonly fitting: (least: number) => readonly number[];
}

function testSpeeds(top: number, { share, fitting }: Share): readonly number[] {
  if (top <= 45) return [share];
  if (top <= 100) return [40, ...fitting(55)];
  if (top <= 150) return [40, 80, ...fitting(100)];
  return [40, 80, 120];
}

/**
 * Speedometer reading over true speed once the tyres are changed: it falls as the new ones go further per turn.
 * @param factor reading over true speed on the old tyres
 */
export function readingFactorAfter(factor: number, { before, after }: Circumferences): number {
  return (positive(factor, "factor") * positive(before, "before")) / positive(after, "after");
}

/** Rolling circumferences of the tyres that drive the speedometer, m. */
export interface Circumferences {
  readonly before: number;
  readonly after: number;
}

/**
 * Range of reading over true speed that UN R39 allows at all of the speeds shown: from 1 to the least of
 * 1.1·V/(V − 4 km/h), which is the fastest one's.
 * @param shown speeds shown, m/s, each above 4 km/h: below it the regulation allows any reading above the true one
 */
export function allowedFactors(shown: readonly number[]): { readonly least: 1; readonly greatest: number } {
  const limits = shown.map(
    (speed) => (1.1 * speed) / positive(speed - 4 * kilometresPerHour, "shown less 4 km/h"),
  );
  return { least: 1, greatest: Math.min(...limits) };
}
