import type { BracketModel } from "@trunnion/register";

/** Limits, value and the rest with what is not a number taken out. */
export interface BracketMarks {
  readonly lower: number | undefined;
  readonly upper: number | undefined;
  readonly nominal: number | undefined;
  readonly value: number | undefined;
  readonly uncertainty: number;
}

const finite = (value: number | undefined): number | undefined =>
  value !== undefined && Number.isFinite(value) ? value : undefined;

export function bracketMarks(model: BracketModel): BracketMarks {
  return {
    lower: finite(model.lower),
    upper: finite(model.upper),
    nominal: finite(model.nominal),
    value: finite(model.value),
    uncertainty: Math.abs(finite(model.expandedUncertainty) ?? 0),
  };
}

/** Place across the drawing of a value, 0 to 1; below or above where it does not fit. */
export type BracketScale = (value: number) => number;

/**
 * Where on the drawing a value stands. Two limits fill the middle half, and keep that scale however far off the value
 * is (it becomes an arrow). One limit stands a quarter in from its side, with room for what is inside it and for what
 * is beyond. Without limits the nominal is in the middle. The printed sheet is drawn by the same rule.
 */
export function bracketScale(marks: BracketMarks, others: readonly number[] = []): BracketScale {
  const { lower, upper, nominal, value } = marks;
  if (lower !== undefined && upper !== undefined && upper > lower) {
    return (of) => 0.25 + (0.5 * (of - lower)) / (upper - lower);
  }
  const around = [nominal, ...spread(marks), ...others].filter((one) => one !== undefined);
  const only = lower ?? upper;
  if (only !== undefined && lower !== upper)
    return oneLimitScale(only, { inside: lower === undefined ? -1 : 1, around });
  const middle = only ?? nominal ?? value ?? others[0] ?? 0;
  const unit = 0.3 / furthest(around.map((one) => Math.abs(one - middle)));
  return (of) => 0.5 + unit * (of - middle);
}

const furthest = (distances: readonly number[]): number => Math.max(0, ...distances) || 1;

function spread({ value, uncertainty }: BracketMarks): readonly number[] {
  return value === undefined ? [] : [value - uncertainty, value + uncertainty];
}

/** `inside` is +1 for a lower limit, whose good side is above it, −1 for an upper one. */
function oneLimitScale(
  limit: number,
  { inside, around }: { readonly inside: 1 | -1; readonly around: readonly number[] },
): BracketScale {
  const within = furthest(around.map((one) => (one - limit) * inside));
  const beyond = Math.max(0, ...around.map((one) => (limit - one) * inside));
  const unit = beyond === 0 ? 0.6 / within : Math.min(0.6 / within, 0.2 / beyond);
  return (of) => (inside === 1 ? 0.25 : 0.75) + unit * (of - limit);
}

/** True where the value lies beyond a limit, whatever its uncertainty. */
export function isBeyond({ lower, upper, value }: BracketMarks): boolean {
  if (value === undefined) return false;
  return (lower !== undefined && value < lower) || (upper !== undefined && value > upper);
}
