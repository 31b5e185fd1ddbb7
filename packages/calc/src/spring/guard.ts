import { CalcRefusal } from "../catalogue/refusal";
import type { MeasuredDimension } from "../quantity/dimension";
import { printQuantity } from "../quantity/print";

/*
 * Guards on single numbers, shared by bar, spring, roll, tyre and noise. Each returns the value it was given and
 * refuses it otherwise, quoting it; `place` is the input's name as the caller knows it.
 */

/** @throws CalcRefusal (`NOT_FINITE`) for NaN and the infinities */
export function finite(value: number, place: string): number {
  if (Number.isFinite(value)) return value;
  throw new CalcRefusal("NOT_FINITE", `${place} must be a finite number, but is ${value}`, place);
}

/** @throws CalcRefusal (`NOT_POSITIVE`, `NOT_FINITE`) unless the value is greater than zero */
export function positive(value: number, place: string): number {
  if (finite(value, place) > 0) return value;
  throw new CalcRefusal("NOT_POSITIVE", `${place} must be greater than zero, but is ${value}`, place);
}

/** @throws CalcRefusal (`NEGATIVE`, `NOT_FINITE`) below zero */
export function notNegative(value: number, place: string): number {
  if (finite(value, place) >= 0) return value;
  throw new CalcRefusal("NEGATIVE", `${place} must not be negative, but is ${value}`, place);
}

/** @throws CalcRefusal (`NOT_WHOLE`, `NEGATIVE`, `NOT_FINITE`) unless the value is 0, 1, 2, … */
export function wholeNumber(value: number, place: string): number {
  if (Number.isInteger(notNegative(value, place))) return value;
  throw new CalcRefusal("NOT_WHOLE", `${place} must be a whole number, but is ${value}`, place);
}

/** A quantity as the trade writes it, for messages: four significant figures and the unit. */
export function written(si: number, dimension: MeasuredDimension, unit?: string): string {
  return printQuantity(si, { dimension, unit });
}
