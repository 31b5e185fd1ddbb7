import {
  findUnit,
  type MeasuredDimension,
  NotationError,
  parseQuantity,
  printQuantity,
  printToe,
  unitNamed,
} from "@trunnion/calc";
import type { Characteristic, QuantityCharacteristic } from "../characteristic/characteristic";
import { sayDay } from "../identity/say-day";
import type { Value } from "./value";

export type UnitSystem = "metric" | "imperial";

export interface PrintValueOptions {
  /** `asEntered` gives the entry to the letter; the others the value in the characteristic's units, days in words. */
  readonly system: UnitSystem | "asEntered";
}

type QuantityValue = Extract<Value, { readonly kind: "quantity" }>;

/** Unit of the entry as written, e.g. "in" or "°'"; `undefined` where the entry alone does not read. */
function entryUnit({ dimension }: QuantityCharacteristic, entered: string): string | undefined {
  try {
    return parseQuantity(entered, dimension).unit;
  } catch (error) {
    if (error instanceof NotationError) return undefined;
    throw error;
  }
}

/** Halves to 128ths of the unit. */
function isVulgarStep(resolution: number, dimension: MeasuredDimension, unit: string): boolean {
  if (dimension !== "length") return false;
  const { times, over } = unitNamed(dimension, unit);
  const parts = times / over / resolution;
  return [2, 4, 8, 16, 32, 64, 128].some((power) => Math.abs(parts - power) < 1e-6);
}

function sameSize(dimension: MeasuredDimension, one: string, other: string): boolean {
  const [a, b] = [findUnit(dimension, one), findUnit(dimension, other)];
  return a !== undefined && b !== undefined && a.times / a.over === b.times / b.over;
}

/**
 * In another unit than the entry's at least half its step is shown, so that 9/16 in is 14.3 mm and not 14; an angle
 * entered in degrees and minutes stays so.
 */
function printNumber(
  characteristic: QuantityCharacteristic,
  { si, resolution, entered }: QuantityValue,
  system: UnitSystem,
): string {
  const { dimension } = characteristic;
  if (dimension === "text") throw new RangeError(`${characteristic.key} is a quantity without a dimension`);
  const written = entryUnit(characteristic, entered);
  if (dimension === "angle" && written !== undefined && written.length > 1) {
    return printQuantity(si, { dimension, unit: written, resolution });
  }
  const unit = characteristic.units[system];
  if (written === undefined || !sameSize(dimension, written, unit)) {
    return printQuantity(si, { dimension, unit, resolution: resolution / 2 });
  }
  const fractions = isVulgarStep(resolution, dimension, unit);
  return printQuantity(si, { dimension, unit, resolution, fractions });
}

/** Toe in degrees and minutes per side: the one form that needs no rim. */
function printToeValue({ si, resolution, entered }: QuantityValue): string {
  const asAngle = /°|'|′|deg|min/i.test(entered);
  return printToe(si, { share: "perSide", resolution: asAngle ? resolution : resolution / 2 });
}

/**
 * A value as text: to the letter, or in a system of units with as many decimals as the entry allows. What is absent
 * is "not fitted".
 * @throws RangeError for a value of another kind than the characteristic's
 * @example printValue(bar, { kind: "quantity", si: 0.0142875, resolution: 0.0015875, entered: "9/16 in" }, { system: "metric" }) // => "14.3 mm"
 */
export function printValue(
  characteristic: Characteristic,
  value: Value,
  { system }: PrintValueOptions,
): string {
  if (system === "asEntered") return value.entered;
  if (value.kind === "absent") return "not fitted";
  if (value.kind === "quantity" && characteristic.kind === "quantity") {
    return characteristic.notation === "toe"
      ? printToeValue(value)
      : printNumber(characteristic, value, system);
  }
  if (value.kind === "choice" && characteristic.kind === "choice") {
    return characteristic.choices.find(({ code }) => code === value.code)?.label ?? value.entered;
  }
  if (value.kind === "designation" && characteristic.kind === "designation") return value.canonical;
  if (value.kind === "text" && characteristic.kind === "text") return value.text;
  if (value.kind === "date" && characteristic.kind === "date") return sayDay(value.date);
  throw new RangeError(`${characteristic.key} is a ${characteristic.kind}, but the value is a ${value.kind}`);
}
