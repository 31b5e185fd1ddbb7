import type { CharacteristicBook } from "../characteristic/book";
import type { Characteristic } from "../characteristic/characteristic";
import type { Deviation } from "../deviation/deviation";
import { type DeviationLine, deviationLine, sayLimits } from "../deviation/line";
import type { Limits } from "../specification/specification";
import type { Value } from "../value/value";

type UnitSystem = "metric" | "imperial";

const MINUTE = Math.PI / 180 / 60;

/**
 * An angle as every sheet writes it: degrees and whole minutes with two figures, a true minus. Some enter 2.4°, some
 * 2°24', some "neg 34'"; on one page a reader compares them, so they are written alike.
 *
 * @param si radians
 * @example angleOnSheet(-0.0098902) // => "−0°34'"
 */
export function angleOnSheet(si: number): string {
  const minutes = Math.round(Math.abs(si) / MINUTE);
  const sign = si < 0 && minutes > 0 ? "−" : "";
  return `${sign}${Math.floor(minutes / 60)}°${String(minutes % 60).padStart(2, "0")}'`;
}

/** Whether values of a characteristic are plain angles; toe has a notation of its own. */
export const isAngle = (characteristic: Characteristic | undefined): boolean =>
  characteristic?.kind === "quantity" &&
  characteristic.dimension === "angle" &&
  characteristic.notation !== "toe";

/** Limits in words, angles in the sheet's one notation. */
export function limitsOnSheet(
  characteristic: Characteristic,
  limits: Limits,
  system: UnitSystem,
  nominal?: Value,
): string {
  if (!isAngle(characteristic)) return sayLimits(characteristic, limits, system, nominal);
  const { lower, upper } = limits;
  if (lower !== undefined && upper !== undefined) return `${angleOnSheet(lower)} to ${angleOnSheet(upper)}`;
  if (lower !== undefined) return `at least ${angleOnSheet(lower)}`;
  return upper === undefined ? "" : `at most ${angleOnSheet(upper)}`;
}

/** A deviation in words, angles in the sheet's one notation. */
export function lineOnSheet(
  deviation: Deviation,
  book: CharacteristicBook,
  system: UnitSystem,
): DeviationLine {
  const line = deviationLine(deviation, book, system);
  const characteristic = book.find(deviation.characteristic);
  if (characteristic === undefined || !isAngle(characteristic)) return line;
  const { actual, nominal, limits, difference } = deviation;
  const wanted = nominal?.kind === "quantity" ? angleOnSheet(nominal.si) : line.specified;
  const between = limits === undefined ? "" : ` (${limitsOnSheet(characteristic, limits, system, nominal)})`;
  const known = line.actual !== "" && actual?.value.kind === "quantity";
  const more = difference !== undefined && difference > 0 ? "+" : "";
  return {
    ...line,
    specified: nominal === undefined ? line.specified : `${wanted}${between}`,
    actual: known && actual.value.kind === "quantity" ? angleOnSheet(actual.value.si) : line.actual,
    difference:
      line.difference === "" || difference === undefined ? "" : `${more}${angleOnSheet(difference)}`,
  };
}
