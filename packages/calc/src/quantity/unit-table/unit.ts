/**
 * One unit of one dimension. SI value = (entered + offset) × times ÷ over; two whole-ish numbers instead of one
 * factor, so that 1.1 mm is the double nearest to 0.0011 m and not one beside it.
 */
export interface Unit {
  /** As printed, e.g. "lbf ft". Unique within the dimension. */
  readonly symbol: string;
  /** Other spellings that are read. Spaces, dots and dashes between letters all count as one separator. */
  readonly also: readonly string[];
  readonly times: number;
  readonly over: number;
  /** For temperature scales only: added to the entered value before scaling. */
  readonly offset: number;
  /** Printed straight after the number, without a space. */
  readonly tight: boolean;
  /** Read only in its own capitals, because other capitals mean another unit (MPa, mPa). */
  readonly strictCase: boolean;
}

/** Makes a unit from its symbol, its exact factor `times / over` and its other spellings. */
export function unit(
  symbol: string,
  [times, over]: readonly [times: number, over: number],
  also = "",
  extra: Partial<Pick<Unit, "offset" | "tight" | "strictCase">> = {},
): Unit {
  const spellings = also === "" ? [] : also.split("|");
  return { symbol, also: spellings, times, over, offset: 0, tight: false, strictCase: false, ...extra };
}

/** International pound, kg (international yard and pound agreement, 1959): exact. */
export const pound = 0.45359237;
/** International inch, m: exact, as 254 / 10000. */
export const inch = 0.0254;
/** Standard acceleration of gravity, m/s² (3rd CGPM, 1901): exact by definition. */
export const standardGravity = 9.80665;
/** Pound-force, N: pound × standard gravity, 4.4482216152605 exactly. */
export const poundForce = 4.4482216152605;
/** Imperial gallon, m³ (4.54609 litres, Weights and Measures Act 1985): exact. */
export const imperialGallon = 0.00454609;
