/** A mechanism with one freedom, placed by an angle, of which a height is wanted. */
export interface Driven {
  /** Where it stands; set by `place`. */
  readonly angle: number;
  /** Height at that angle, and its derivative; set by `place`. */
  readonly height: number;
  readonly heightRate: number;
  /** Puts the mechanism to an angle; false, with the above untouched, where it does not reach. */
  place(angle: number): boolean;
}

const mostSteps = 60;
const longestStep = 0.2;
/** Metres: met for sure, and met if a further step does not come nearer, since rounding then rules. */
const met = 1e-14;
const asNearAsCanBe = 1e-12;

/**
 * Brings a placed mechanism to a height by Newton's method from where it stands. A step that would leave the reach is
 * halved. Answers false if the height is not met in 60 steps: then it lies out of reach.
 */
export function drive(mechanism: Driven, height: number): boolean {
  let miss = height - mechanism.height;
  let step = miss / mechanism.heightRate;
  for (let count = 0; count < mostSteps; count += 1) {
    if (Math.abs(miss) <= met) return true;
    step = Math.max(-longestStep, Math.min(longestStep, step));
    if (mechanism.place(mechanism.angle + step)) {
      const before = Math.abs(miss);
      miss = height - mechanism.height;
      if (Math.abs(miss) <= asNearAsCanBe && Math.abs(miss) >= before) return true;
      step = miss / mechanism.heightRate;
    } else {
      step /= 2;
    }
  }
  return false;
}
