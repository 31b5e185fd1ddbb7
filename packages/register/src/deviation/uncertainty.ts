import { printQuantity } from "@trunnion/calc";
import type { CharacteristicBook } from "../characteristic/book";
import type { UnitSystem } from "../value/print";
import { uncertaintyOf } from "./compare";
import type { Deviation } from "./deviation";
import { unitBeside } from "./line";

/** One minute of arc, in radians. */
const MINUTE = Math.PI / 180 / 60;

/** Two significant digits, as GUM 7.2.6 advises for an uncertainty. */
const twoDigits = (value: number) => String(Number(value.toPrecision(2)));

/**
 * The expanded uncertainty that a verdict was given with, in words: "± 6', k = 2". Empty where the value carries none (a part
 * is what it is sold as) or is not known. What only the notation implies says so: the true one is larger.
 */
export function sayUncertainty(deviation: Deviation, book: CharacteristicBook, system: UnitSystem): string {
  const { actual, nominal } = deviation;
  const characteristic = book.find(deviation.characteristic);
  if (!actual || actual.origin === "specification" || characteristic?.kind !== "quantity") return "";
  const expanded = uncertaintyOf(actual, characteristic);
  if (actual.value.kind !== "quantity" || expanded === 0) return "";
  const told = actual.expandedUncertainty === undefined ? "k = 2, from the notation alone" : "k = 2";
  const { dimension } = characteristic;
  if (dimension === "angle") return `± ${twoDigits(expanded / MINUTE)}', ${told}`;
  const unit = unitBeside(characteristic, nominal, system);
  return `± ${printQuantity(expanded, { dimension, unit, resolution: Number(expanded.toPrecision(1)) / 10 })}, ${told}`;
}
