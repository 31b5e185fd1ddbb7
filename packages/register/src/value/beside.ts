import { printQuantity, printToe } from "@trunnion/calc";
import type { Characteristic } from "../characteristic/characteristic";
import { sayLimits } from "../deviation/line";
import type { Limits } from "../specification/specification";
import { parseValue } from "./parse";
import { printValue, type UnitSystem } from "./print";
import type { Value } from "./value";

/** One minute of arc, in radians. */
const MINUTE = Math.PI / 180 / 60;

const isPlainAngle = (one: Characteristic): boolean =>
  one.kind === "quantity" && one.dimension === "angle" && one.notation !== "toe";

/**
 * A value that stands beside others of its characteristic, in one notation with them: in the system's unit, and every
 * angle in degrees and minutes however it was entered, toe per side, so that they compare at sight. Decimals are as the entry allows. A
 * value of another kind than the characteristic now has stands as it was entered.
 *
 * @example printBeside(camber, { kind: "quantity", si: -0.0157, resolution: 0.0017, entered: "-0.9°" }, "metric") // => "-0°54'"
 */
export function printBeside(characteristic: Characteristic, value: Value, system: UnitSystem): string {
  if (value.kind === "quantity" && isPlainAngle(characteristic))
    return printQuantity(value.si, { dimension: "angle", unit: "°'", resolution: value.resolution });
  if (value.kind === "quantity" && characteristic.kind === "quantity" && characteristic.notation === "toe")
    return printToe(value.si, { share: "perSide", resolution: MINUTE });
  const isOurs = value.kind === "absent" || value.kind === characteristic.kind;
  return printValue(characteristic, value, { system: isOurs ? system : "asEntered" });
}

/** The same of a value of which only the entry is at hand; an entry that no longer reads stands as it is. */
export function enteredBeside(characteristic: Characteristic, entered: string, system: UnitSystem): string {
  const parsed = parseValue(characteristic, entered);
  return parsed.ok ? printBeside(characteristic, parsed.value, system) : entered;
}

/** An angle in the notation that angles beside each other have. */
const inMinutes: Value = { kind: "quantity", si: 0, resolution: 0, entered: "0°00'" };

/** Limits in the notation of {@link printBeside}: "-0°30' to 0°30'", "1.379 bar to 1.793 bar". */
export function limitsBeside(characteristic: Characteristic, limits: Limits, system: UnitSystem): string {
  return sayLimits(characteristic, limits, system, isPlainAngle(characteristic) ? inMinutes : undefined);
}
