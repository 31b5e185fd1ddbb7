import { CalcRefusal } from "../catalogue/refusal";
import { notNegative } from "../spring/guard";

/** What the four scales show, kg (or N: only ratios and sums are taken). */
export interface CornerMasses {
  readonly leftFront: number;
  readonly rightFront: number;
  readonly leftRear: number;
  readonly rightRear: number;
}

/** The corners' names, in the order they are listed. */
export const cornerNames = [
  "leftFront",
  "rightFront",
  "leftRear",
  "rightRear",
] as const satisfies readonly (keyof CornerMasses)[];
export type CornerName = (typeof cornerNames)[number];

/** Sums and shares of the corner weights. Masses in the unit of the corners, shares of 1. */
export interface CornerSums {
  readonly total: number;
  readonly front: number;
  readonly rear: number;
  readonly left: number;
  readonly right: number;
  /** Right front and left rear. */
  readonly cross: number;
  /** Left front and right rear. */
  readonly otherCross: number;
  readonly frontShare: number;
  readonly rearShare: number;
  readonly leftShare: number;
  /** Cross weight: (right front + left rear)/total. */
  readonly crossShare: number;
}

/**
 * Sums and shares of the corner weights. Cross weight is right front and left rear, as most of the trade has it; some
 * quote the other diagonal, or call it wedge.
 * @throws CalcRefusal for a negative or unknown corner, or an empty set of scales
 */
export function cornerSums(corners: CornerMasses): CornerSums {
  const { leftFront, rightFront, leftRear, rightRear } = checkedCorners(corners);
  const front = leftFront + rightFront;
  const rear = leftRear + rightRear;
  const left = leftFront + leftRear;
  const cross = rightFront + leftRear;
  const total = front + rear;
  return {
    total,
    front,
    rear,
    left,
    right: rightFront + rightRear,
    cross,
    otherCross: leftFront + rightRear,
    frontShare: front / total,
    rearShare: rear / total,
    leftShare: left / total,
    crossShare: cross / total,
  };
}

/**
 * Corner weights without any warp: each axle shared between left and right as the whole car is. Same total, same axle
 * and side sums; the cross weight that belongs to them.
 * @throws CalcRefusal as {@link cornerSums}
 */
export function unwarpedCorners(corners: CornerMasses): CornerMasses {
  const { front, rear, left, right, total } = cornerSums(corners);
  return {
    leftFront: (front * left) / total,
    rightFront: (front * right) / total,
    leftRear: (rear * left) / total,
    rightRear: (rear * right) / total,
  };
}

/**
 * Change of the cross weight, of 1, when right front and left rear each gain `gain` and the other two each lose it.
 * @throws CalcRefusal as {@link cornerSums}
 */
export function crossShareChange(gain: number, corners: CornerMasses): number {
  return (2 * gain) / cornerSums(corners).total;
}

/** @throws CalcRefusal (`NEGATIVE`, `NOT_FINITE`, `NO_LOAD`) */
export function checkedCorners(corners: CornerMasses): CornerMasses {
  for (const corner of cornerNames) notNegative(corners[corner], corner);
  if (cornerNames.some((corner) => corners[corner] > 0)) return corners;
  throw new CalcRefusal("NO_LOAD", "all four scales show nothing", "leftFront");
}
