import { findUnit, fromSi, printQuantity, printToe, toSi } from "@trunnion/calc";
import type { QuantityCharacteristic } from "../characteristic/characteristic";
import type { UnitSystem } from "./print";

/** How the values of a quantity stand along a drawing: in which unit, in what steps, and how a place on it is said. */
export interface ValueAxis {
  /** Unit as it stands at the axis: "mm", "°". */
  readonly unit: string;
  /** Widths of classes that read well in it; empty for 1, 2 and 5 times powers of ten. */
  readonly widths: readonly number[];
  /** A value, SI, as a number along the axis, and back. */
  readonly toAxis: (si: number) => number;
  readonly fromAxis: (place: number) => number;
  /** A place on the axis in the trade's notation, to a step along it. */
  readonly say: (place: number, step: number) => string;
}

/** Minutes: an angle of a car is read to some of them, and classes of a tenth of a degree would cut between. */
const MINUTE = Math.PI / 180 / 60;
const minuteWidths = [1, 2, 5, 10, 15, 30, 60, 120, 300, 600];

const mostDecimals = 6;

/** As many as a step of 1, 2 or 5 times a power of ten needs, or as show any other step once. */
function decimalsOf(step: number): number {
  return Math.min(mostDecimals, Math.max(0, Math.ceil(-Math.log10(step) - 1e-9)));
}

/** Angles along minutes, said in degrees and minutes; toe as toe-in or toe-out per side. */
function angleAxis({ notation }: QuantityCharacteristic): ValueAxis {
  const say = (place: number) =>
    notation === "toe"
      ? printToe(place * MINUTE, { share: "perSide", resolution: MINUTE })
      : printQuantity(place * MINUTE, { dimension: "angle", unit: "°'", decimals: 0 });
  return {
    unit: "°",
    widths: minuteWidths,
    toAxis: (si) => si / MINUTE,
    fromAxis: (place) => place * MINUTE,
    say,
  };
}

/**
 * The axis of a quantity in a club's units.
 *
 * @throws RangeError for a characteristic whose unit its dimension does not have
 */
export function valueAxis(characteristic: QuantityCharacteristic, system: UnitSystem): ValueAxis {
  const { dimension, units, key } = characteristic;
  if (dimension === "angle") return angleAxis(characteristic);
  const unit = dimension === "text" ? undefined : findUnit(dimension, units[system]);
  if (unit === undefined || dimension === "text") throw new RangeError(`${key} has no unit to be drawn in`);
  return {
    unit: unit.symbol,
    widths: [],
    toAxis: (si) => fromSi(si, unit),
    fromAxis: (place) => toSi(place, unit),
    say: (place, step) =>
      printQuantity(toSi(place, unit), { dimension, unit: units[system], decimals: decimalsOf(step) }),
  };
}
