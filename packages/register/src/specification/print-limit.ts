import { type MeasuredDimension, printQuantity, printToe, unitsOf } from "@trunnion/calc";
import type { QuantityCharacteristic } from "../characteristic/characteristic";
import { parseLimit } from "../value/parse";

/** Decimals that are tried: more say nothing of a car. */
const DECIMALS = 9;
/** Parts of an inch that are tried, in metres: 1/128. */
const FINEST_INCH = 0.0254 / 128;

function* printsOf(si: number, dimension: MeasuredDimension, unit: string): Generator<string> {
  if (unit === "in") yield printQuantity(si, { dimension, unit, resolution: FINEST_INCH, fractions: true });
  for (let decimals = 0; decimals <= DECIMALS; decimals += 1) {
    yield printQuantity(si, { dimension, unit, decimals });
  }
}

function* toesOf(si: number, unit: string): Generator<string> {
  const step = unit === "°" ? Math.PI / 180 : Math.PI / 180 / 60;
  for (let power = 0; power <= DECIMALS; power += 1) {
    yield printToe(si, { share: "perSide", unit, resolution: step / 10 ** power });
  }
}

/** What conversions do to a number: 45 times a minute is not to the last bit 0°45'. */
const LAST_BITS = 1e-14;

/** Digits that notation keeps: a number of more is refused as kept only in appearance. */
const DIGITS = 15;

/** The SI number itself, to fifteen digits, in the unit that is one of SI. */
function bare(si: number, characteristic: QuantityCharacteristic): string {
  const dimension = characteristic.dimension as MeasuredDimension;
  const unit = unitsOf(dimension).find(({ times, over, offset }) => times === over && offset === 0);
  const places = si === 0 ? 0 : DIGITS - 1 - Math.floor(Math.log10(Math.abs(si)));
  const figures = Math.abs(si).toFixed(Math.min(100, Math.max(0, places)));
  const short = figures.includes(".") ? figures.replace(/\.?0+$/, "") : figures;
  if (characteristic.notation === "toe") return `${short} rad ${si < 0 ? "toe-out" : "toe-in"} per side`;
  return `${si < 0 ? "-" : ""}${short} ${unit?.symbol ?? ""}`.trim();
}

function* candidates(
  si: number,
  characteristic: QuantityCharacteristic,
  units: readonly string[],
): Generator<string> {
  const dimension = characteristic.dimension as MeasuredDimension;
  if (characteristic.notation === "toe") {
    for (const unit of ["°'", "'", "°"]) yield* toesOf(si, unit);
  } else {
    for (const unit of units) yield* printsOf(si, dimension, unit);
  }
}

/**
 * A limit as text that reads back to the same number, last bits aside: in the unit wanted, with as few decimals as that needs, or
 * as the fraction of an inch it is; where that unit cannot say it exactly, in another of the dimension. What no unit
 * says exactly (an angle worked out from a distance at the rim) stands in SI to fifteen digits. For forms and tables;
 * `sayLimits` rounds for reading.
 *
 * @param si the limit, SI
 * @param unit unit to try first, as of the nominal beside it
 * @throws RangeError for a number that is not finite
 */
export function printLimit(characteristic: QuantityCharacteristic, si: number, unit?: string): string {
  const { dimension, units } = characteristic;
  if (dimension === "text" || !Number.isFinite(si))
    throw new RangeError(`${si} is no limit of a ${dimension}`);
  const compound = dimension === "angle" ? ["°'"] : [];
  const all = [
    unit,
    ...compound,
    units.metric,
    units.imperial,
    ...unitsOf(dimension).map(({ symbol }) => symbol),
  ];
  const tried = [...new Set(all.filter((one) => one !== undefined))];
  const { minimum: _least, maximum: _most, ...unbounded } = characteristic;
  for (const text of candidates(si, characteristic, tried)) {
    const read = parseLimit(unbounded, text);
    if (read.ok && Math.abs(read.si - si) <= LAST_BITS * Math.abs(si)) return text;
  }
  return bare(si, characteristic);
}
