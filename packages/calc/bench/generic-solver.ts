import { levenbergMarquardt } from "ml-levenberg-marquardt";
import type { Vector } from "../src/alignment/index";
import type { WishboneHardpoints } from "../src/linkage/index";

/** A point as a generic solver sees it. */
export type Coordinates = readonly [number, number, number];

export function coordinates({ x, y, z }: Vector): Coordinates {
  return [x, y, z];
}

export function separation(a: Coordinates, b: Coordinates): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
}

/** The n-th point of a list of unknowns that holds points one after another. */
export function pointAt(unknowns: readonly number[], index: number): Coordinates {
  const [x, y, z] = unknowns.slice(3 * index, 3 * index + 3);
  if (x === undefined || y === undefined || z === undefined)
    throw new RangeError(`no point ${index} among the unknowns`);
  return [x, y, z];
}

/**
 * Brings residuals to nought with a general-purpose Levenberg-Marquardt solver (ml-levenberg-marquardt), which knows
 * nothing of linkages: positions of all joints are unknowns, every link's length is a residual.
 */
export function leastSquares(
  residuals: (unknowns: number[]) => number[],
  start: readonly number[],
): number[] {
  const x = residuals([...start]).map((_, index) => index);
  const { parameterValues } = levenbergMarquardt(
    { x, y: x.map(() => 0) },
    (unknowns: number[]) => {
      const values = residuals(unknowns);
      return (index: number) => values[index] ?? Number.NaN;
    },
    {
      initialValues: [...start],
      damping: 1e-9,
      gradientDifference: 1e-7,
      centralDifference: true,
      maxIterations: 60,
      improvementThreshold: 1e-12,
      errorTolerance: 1e-26,
    },
  );
  return [...parameterValues];
}

/** Joints of a double wishbone found by the generic solver from the design position. */
export function genericWishbone(hardpoints: WishboneHardpoints): (
  bump: number,
  rack: number,
) => {
  lowerJoint: Coordinates;
  upperJoint: Coordinates;
  tieRodOuter: Coordinates;
  wheelCentre: Coordinates;
} {
  const fixed = {
    lowerArmFront: coordinates(hardpoints.lowerArmFront),
    lowerArmRear: coordinates(hardpoints.lowerArmRear),
    upperArmFront: coordinates(hardpoints.upperArmFront),
    upperArmRear: coordinates(hardpoints.upperArmRear),
  };
  const start = [
    hardpoints.lowerJoint,
    hardpoints.upperJoint,
    hardpoints.tieRodOuter,
    hardpoints.wheelCentre,
  ].flatMap(coordinates);
  const lengths = (unknowns: readonly number[], rack: number): number[] => {
    const [lower, upper, tie, wheel] = [0, 1, 2, 3].map((index) => pointAt(unknowns, index)) as [
      Coordinates,
      Coordinates,
      Coordinates,
      Coordinates,
    ];
    const { x, y, z } = hardpoints.tieRodInner;
    return [
      separation(lower, fixed.lowerArmFront),
      separation(lower, fixed.lowerArmRear),
      separation(upper, fixed.upperArmFront),
      separation(upper, fixed.upperArmRear),
      separation(tie, [x, y + rack, z]),
      separation(lower, upper),
      separation(lower, tie),
      separation(upper, tie),
      separation(wheel, lower),
      separation(wheel, upper),
      separation(wheel, tie),
    ];
  };
  const design = lengths(start, 0);
  return (bump, rack) => {
    const found = leastSquares((unknowns) => {
      const off = lengths(unknowns, rack).map((length, index) => length - (design[index] ?? Number.NaN));
      return [...off, pointAt(unknowns, 3)[2] - hardpoints.wheelCentre.z - bump];
    }, start);
    const [lowerJoint, upperJoint, tieRodOuter, wheelCentre] = [0, 1, 2, 3].map((index) =>
      pointAt(found, index),
    ) as [Coordinates, Coordinates, Coordinates, Coordinates];
    return { lowerJoint, upperJoint, tieRodOuter, wheelCentre };
  };
}
