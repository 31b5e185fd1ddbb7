import { CalcRefusal } from "../catalogue/refusal";
import { notNegative } from "../spring/guard";

/** @throws CalcRefusal (`NOT_A_SHARE`, `NEGATIVE`, `NOT_FINITE`) unless 0 ≤ value ≤ 1 */
export function share(value: number, place: string): number {
  if (notNegative(value, place) <= 1) return value;
  throw new CalcRefusal("NOT_A_SHARE", `${place} must lie between 0 and 1, but is ${value}`, place);
}

/** @throws CalcRefusal (`SERVO_WEAKENS`) unless the gain is 1 or more */
export function servoGain(gain: number, place: string): number {
  if (notNegative(gain, place) >= 1) return gain;
  throw new CalcRefusal("SERVO_WEAKENS", `${place} must be 1 (no servo) or more, but is ${gain}`, place);
}
