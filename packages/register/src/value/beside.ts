import { printQuantity } from "@trunnion/calc";
import type { Characteristic } from "../characteristic/characteristic";
import { parseValue } from "./parse";
import { printValue, type UnitSystem } from "./print";
import type { Value } from "./value";

/**
 * A value that stands beside others of its characteristic, in one notation with them: in the system's unit, and every
 * angle in degrees and minutes however it was entered, so that they compare at sight. Decimals are as the entry allows. A
 * value of another kind than the characteristic now has stands as it was entered.
 *
 * @example printBeside(camber, { kind: "quantity", si: -0.0157, resolution: 0.0017, entered: "-0.9°" }, "metric") // => "-0°54'"
 */
export function printBeside(characteristic: Characteristic, value: Value, system: UnitSystem): string {
  if (
    value.kind === "quantity" &&
    characteristic.kind === "quantity" &&
    characteristic.dimension === "angle" &&
    characteristic.notation !== "toe"
  )
    return printQuantity(value.si, { dimension: "angle", unit: "°'", resolution: value.resolution });
  const isOurs = value.kind === "absent" || value.kind === characteristic.kind;
  return printValue(characteristic, value, { system: isOurs ? system : "asEntered" });
}

/** The same of a value of which only the entry is at hand; an entry that no longer reads stands as it is. */
export function enteredBeside(characteristic: Characteristic, entered: string, system: UnitSystem): string {
  const parsed = parseValue(characteristic, entered);
  return parsed.ok ? printBeside(characteristic, parsed.value, system) : entered;
}
