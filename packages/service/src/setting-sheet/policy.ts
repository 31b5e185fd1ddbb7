import {
  coverageFactor,
  meanOf,
  medianOf,
  NotationError,
  parseQuantity,
  printQuantity,
  printToe,
  repeatability,
} from "@trunnion/calc";
import {
  type QuantityCharacteristic,
  type Reading,
  type Side,
  type State,
  stateKey,
  type UnitSystem,
} from "@trunnion/register";

/** One minute of arc, rad. */
const MINUTE = Math.PI / 180 / 60;

/** A computed figure of a setting in the club's units: angles to the minute, toe per side. */
export function sayFigure(one: QuantityCharacteristic, si: number, system: UnitSystem): string {
  const { dimension, units, notation } = one;
  if (notation === "toe") return printToe(si, { share: "perSide", unit: "'", resolution: MINUTE / 2 });
  if (dimension === "angle") return printQuantity(si, { dimension, unit: "°'", resolution: MINUTE });
  return rounded(printQuantity(si, { dimension, unit: units[system], decimals: 2 }));
}

/** Two decimals at most: a median or a difference is no finer than the readings it is made of. */
const rounded = (printed: string) =>
  printed.replace(/\.(\d*?)0+(?!\d)/, (_, kept: string) => (kept === "" ? "" : `.${kept}`));

/** The same with its sign, for a difference. Toe in minutes of arc, more toe-in positive. */
export function sayDifference(one: QuantityCharacteristic, si: number, system: UnitSystem): string {
  const { dimension, units } = one;
  const unit = dimension === "angle" ? "°'" : units[system];
  const printed =
    dimension === "angle"
      ? printQuantity(si, { dimension, unit, resolution: MINUTE })
      : rounded(printQuantity(si, { dimension, unit, decimals: 2 }));
  return si > 0 ? `+${printed}` : printed;
}

/** Repeat readings of one thing on one occasion. */
export interface Repeats {
  readonly entered: readonly string[];
  readonly mean: string;
  /** Standard deviation of one reading (n − 1), GUM 4.2. */
  readonly deviation: string;
  /** They scatter more than the uncertainty stated with them allows. */
  readonly wide: boolean;
}

/** What repeats amount to; nothing of a single reading. */
export function repeatsOf(
  readings: readonly Reading[],
  one: QuantityCharacteristic,
  system: UnitSystem,
): Repeats | undefined {
  const numbers = readings.flatMap(({ value }) => (value.kind === "quantity" ? [value.si] : []));
  if (numbers.length < 2) return undefined;
  const { standardDeviation: deviation } = repeatability(numbers);
  const stated = readings.at(-1)?.expandedUncertainty;
  return {
    entered: readings.map(({ value }) => value.entered),
    mean: sayFigure(one, meanOf(numbers), system),
    deviation: sayDifference(one, deviation, system).replace(/^\+/, ""),
    wide: stated !== undefined && coverageFactor * deviation > stated,
  };
}

/** The system of units something was read in, so that what stands beside it is said alike; `other` where it does not show. */
export function systemOf(one: QuantityCharacteristic, entered: string, other: UnitSystem): UnitSystem {
  if (one.dimension === "text") return other;
  try {
    const { unit } = parseQuantity(entered, one.dimension);
    const fits = (["metric", "imperial"] as const).filter((system) => one.units[system] === unit);
    return fits.includes(other) ? other : (fits[0] ?? other);
  } catch (error) {
    if (error instanceof NotationError) return other;
    throw error;
  }
}

/** The other cars of a series at one place. */
export interface SeriesSpread {
  /** How many other cars have a value there that is not only the specification's. */
  readonly count: number;
  readonly median: string;
  /** The middle half of them: Tukey's hinges. */
  readonly low: string;
  readonly high: string;
  /** SI, for the strip over the bracket. */
  readonly others: readonly number[];
}

/** The spread of some values; nothing of none. */
export function spreadOf(
  values: readonly number[],
  one: QuantityCharacteristic,
  system: UnitSystem,
): SeriesSpread | undefined {
  if (values.length === 0) return undefined;
  const sorted = [...values].sort((a, b) => a - b);
  const half = Math.ceil(sorted.length / 2);
  const say = (numbers: readonly number[]) => sayFigure(one, medianOf(numbers), system);
  return {
    count: sorted.length,
    median: say(sorted),
    low: say(sorted.slice(0, half)),
    high: say(sorted.slice(-half)),
    others: sorted,
  };
}

/** A car as one sheet alone knows it: its last reading of each place. */
export function stateOfSheet(readings: readonly Reading[]): State {
  return new Map(
    readings.map(({ id, on, sequence: _, ...one }) => [
      stateKey(one.characteristic, one.side),
      { ...one, origin: "reading", originId: id, since: on },
    ]),
  );
}

/** Readings of one place, repeats in order. */
export const readingsAt = (
  readings: readonly Reading[],
  { characteristic, side }: { readonly characteristic: string; readonly side: Side },
): readonly Reading[] => readings.filter((one) => one.characteristic === characteristic && one.side === side);

/** Lean and steer of the wheels as a sheet has them, rad; what was not read is not there. */
export interface WheelSigns {
  readonly camber?: number;
  readonly toeIn?: number;
}
export type CornerSigns = Readonly<Record<"front" | "rear", Readonly<Record<"left" | "right", WheelSigns>>>>;

/** Lean and steer of every wheel that a sheet read, by its last reading. */
export function signsOf(readings: readonly Reading[]): CornerSigns {
  const at = (characteristic: string, side: Side) => {
    const value = readingsAt(readings, { characteristic, side }).at(-1)?.value;
    return value?.kind === "quantity" ? value.si : undefined;
  };
  const wheel = (axle: "front" | "rear", side: "left" | "right"): WheelSigns => {
    const [camber, toeIn] = [at(`${axle}.camber`, side), at(`${axle}.toe`, side)];
    return { ...(camber === undefined ? {} : { camber }), ...(toeIn === undefined ? {} : { toeIn }) };
  };
  const axle = (name: "front" | "rear") => ({ left: wheel(name, "left"), right: wheel(name, "right") });
  return { front: axle("front"), rear: axle("rear") };
}
