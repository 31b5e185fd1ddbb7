import { CalcRefusal } from "../catalogue/refusal";
import { positive, written } from "./guard";

/** A coil spring under load. */
export interface SpringFit {
  /** Rate, N/m. */
  readonly rate: number;
  /** Length unloaded, m. */
  readonly freeLength: number;
  /** Length with all coils touching, m; left out: not checked. */
  readonly solidLength?: number | undefined;
}

/** Force in a spring, N, that carries a load at the wheel, N, through a motion ratio (virtual work): W/MR. */
export function springForceOfWheelLoad(wheelLoad: number, motionRatio: number): number {
  return positive(wheelLoad, "wheelLoad") / positive(motionRatio, "motionRatio");
}

/**
 * Length of a spring under a force, m: free length − F/k.
 * @throws CalcRefusal (`COIL_BOUND`) when it would be no longer than its solid length, or than nothing
 */
export function loadedLength({ rate, freeLength, solidLength = 0 }: SpringFit, force: number): number {
  const length = positive(freeLength, "freeLength") - positive(force, "force") / positive(rate, "rate");
  if (length > solidLength) return length;
  throw new CalcRefusal(
    "COIL_BOUND",
    `a spring of ${written(rate, "rate")}, ${written(freeLength, "length")} free, is coil-bound under ${written(force, "force")}: a stiffer or longer one is needed`,
    "rate",
  );
}

/** What the height of a corner depends on. */
export interface HeightChangeInput {
  readonly before: SpringFit;
  readonly after: SpringFit;
  /** Force in the spring at rest, N; the same before and after, because load and motion ratio are. */
  readonly force: number;
  readonly motionRatio: number;
  /** How far the spring's seat was screwed up against the spring, m; negative when screwed down. Left out: 0. */
  readonly seatLift?: number | undefined;
}

/**
 * Change of ride height at the wheel, m, positive when the body rises: (change of loaded length + seat lift)/MR.
 * Constant motion ratio, rigid tyre, this corner's load unchanged (raising one corner of a car loads the others
 * differently: that is the corner weights' business).
 */
export function rideHeightChange({
  before,
  after,
  force,
  motionRatio,
  seatLift = 0,
}: HeightChangeInput): number {
  const change = loadedLength(after, force) - loadedLength(before, force);
  return (change + seatLift) / positive(motionRatio, "motionRatio");
}

/** Seat lift, m, that sets a ride-height change, m: the inverse of {@link rideHeightChange}. */
export function seatLiftForHeight(wantedChange: number, input: Omit<HeightChangeInput, "seatLift">): number {
  return (wantedChange - rideHeightChange(input)) * input.motionRatio;
}
