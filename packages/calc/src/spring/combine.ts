import { CalcRefusal } from "../catalogue/refusal";
import { positive } from "./guard";

function each(rates: readonly number[]): readonly number[] {
  if (rates.length === 0)
    throw new CalcRefusal("NO_SPRING", "at least one spring is needed, but there is none", "rates");
  return rates.map((rate, index) => positive(rate, `rates.${index}`));
}

/**
 * Rate of springs one on top of the other (each carries the whole load), N/m: 1/Σ(1/k). Softer than the softest.
 * Holds while none of them is coil-bound.
 * @throws CalcRefusal without springs, or for a rate that is not positive
 */
export function ratesInSeries(rates: readonly number[]): number {
  return 1 / each(rates).reduce((compliance, rate) => compliance + 1 / rate, 0);
}

/**
 * Rate of springs side by side (each moves the whole way), N/m: the sum.
 * @throws CalcRefusal without springs, or for a rate that is not positive
 */
export function ratesInParallel(rates: readonly number[]): number {
  return each(rates).reduce((sum, rate) => sum + rate, 0);
}
