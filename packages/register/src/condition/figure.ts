import { NotationError, parseQuantity, parseToe, printQuantity, printToe } from "@trunnion/calc";
import type { QuantityCharacteristic } from "../characteristic/characteristic";
import type { UnitSystem } from "../value/print";

/** Most decimals tried: finer than any figure of the trade. */
const decimalLimit = 10;
const arcMinute = Math.PI / 10_800;

/** What a figure stands for, as the form reads it; NaN for one that cannot be read. */
function readBack({ dimension, notation }: QuantityCharacteristic, text: string): number {
  try {
    return notation === "toe" ? parseToe(text).perWheel : parseQuantity(text, dimension).si;
  } catch (error) {
    if (error instanceof NotationError) return Number.NaN;
    throw error;
  }
}

function* toes(si: number): Generator<string> {
  for (let step = 0; step <= 6; step += 1) {
    yield printToe(si, { share: "perSide", resolution: arcMinute / 10 ** step });
  }
}

function* plain(
  { dimension, units }: QuantityCharacteristic,
  si: number,
  system: UnitSystem,
): Generator<string> {
  const other = system === "metric" ? "imperial" : "metric";
  for (const unit of [units[system], units[other]]) {
    for (let decimals = 0; decimals <= decimalLimit; decimals += 1) {
      if (Math.abs(si) < 1e12) yield printQuantity(si, { dimension, unit, decimals });
    }
  }
}

/**
 * A number of a condition in trade notation: the shortest figure in the characteristic's units that reads back as
 * exactly that number, so that changing a condition in the form and saving it again changes nothing; where there is
 * none, the nearest.
 * @param si SI number; may be a difference, so it need not be believable as a value
 */
export function exactFigure(characteristic: QuantityCharacteristic, si: number, system: UnitSystem): string {
  const candidates = characteristic.notation === "toe" ? toes(si) : plain(characteristic, si, system);
  let nearest = { text: String(si), off: Number.POSITIVE_INFINITY };
  for (const text of candidates) {
    const off = Math.abs(readBack(characteristic, text) - si);
    if (off === 0) return text;
    if (off < nearest.off) nearest = { text, off };
  }
  return nearest.text;
}
