import fc from "fast-check";
import { expect, test } from "vitest";
import {
  type Coordinates,
  coordinates,
  genericWishbone,
  leastSquares,
  pointAt,
  separation,
} from "../../bench/generic-solver";
import type { Vector } from "../alignment/index";
import { atMost } from "../property-runs.fixture";
import { exampleLiveAxle, exampleStrut, exampleWattAxle, exampleWishbone } from "./example";
import { doubleWishbone, type LiveAxleHardpoints, liveAxle, readLiveAxle, strut } from "./index";

/**
 * Positions against a general-purpose non-linear least-squares solver from the registry (ml-levenberg-marquardt),
 * which is given link lengths and nothing else.
 */
const travel = fc.double({ min: -0.08, max: 0.08, noNaN: true });
const rackTravel = fc.double({ min: -0.05, max: 0.05, noNaN: true });
const runs = atMost(40);

function expectSame(ours: Vector, theirs: Coordinates): void {
  expect(separation(coordinates(ours), theirs)).toBeLessThan(1e-9);
}

test("double wishbone, bump and steer", () => {
  const corner = doubleWishbone(exampleWishbone);
  const generic = genericWishbone(exampleWishbone);
  fc.assert(
    fc.property(travel, rackTravel, (bump, rack) => {
      corner.moveTo(bump, rack);
      const ours = corner.joints();
      const theirs = generic(bump, rack);
      expectSame(ours.lowerJoint, theirs.lowerJoint);
      expectSame(ours.upperJoint, theirs.upperJoint);
      expectSame(ours.tieRodOuter, theirs.tieRodOuter);
      expectSame(ours.wheelCentre, theirs.wheelCentre);
    }),
    runs,
  );
});

test("MacPherson strut, bump and steer", () => {
  const corner = strut(exampleStrut);
  const { lowerArmFront, lowerArmRear, strutTop, tieRodInner } = exampleStrut;
  // Lower joint, strut foot, a second point of the strut's axis, tie rod's end, wheel centre: all on the upright.
  const { lowerJoint, strutFoot, tieRodOuter, wheelCentre } = exampleStrut;
  const start = [lowerJoint, strutFoot, strutTop, tieRodOuter, wheelCentre].flatMap(coordinates);
  const top = coordinates(strutTop);
  const lengths = (unknowns: readonly number[], rack: number): number[] => {
    const body = [0, 1, 2, 3, 4].map((index) => pointAt(unknowns, index)) as [
      Coordinates,
      Coordinates,
      Coordinates,
      Coordinates,
      Coordinates,
    ];
    const [lower, foot, axisPoint, tie] = body;
    const rigid = body.flatMap((a, index) => body.slice(index + 1).map((b) => separation(a, b)));
    const rods = [
      separation(lower, coordinates(lowerArmFront)),
      separation(lower, coordinates(lowerArmRear)),
      separation(tie, [tieRodInner.x, tieRodInner.y + rack, tieRodInner.z]),
    ];
    // The top mount lies on the line from the foot to the second point: nought where the cross product is nought.
    const along = axisPoint.map((value, index) => value - (foot[index] ?? 0)) as unknown as Coordinates;
    const toTop = top.map((value, index) => value - (foot[index] ?? 0)) as unknown as Coordinates;
    const across = [
      along[1] * toTop[2] - along[2] * toTop[1],
      along[2] * toTop[0] - along[0] * toTop[2],
      along[0] * toTop[1] - along[1] * toTop[0],
    ];
    return [...rigid, ...rods, ...across];
  };
  const design = lengths(start, 0);
  fc.assert(
    fc.property(travel, rackTravel, (bump, rack) => {
      corner.moveTo(bump, rack);
      const found = leastSquares((unknowns) => {
        const off = lengths(unknowns, rack).map((length, index) => length - (design[index] ?? Number.NaN));
        return [...off, pointAt(unknowns, 4)[2] - wheelCentre.z - bump];
      }, start);
      const ours = corner.joints();
      expectSame(ours.lowerJoint, pointAt(found, 0));
      expectSame(ours.strutFoot, pointAt(found, 1));
      expectSame(ours.tieRodOuter, pointAt(found, 3));
      expectSame(ours.wheelCentre, pointAt(found, 4));
    }),
    runs,
  );
});

/** The axle's pose as shift and three angles in turn (not our rotation vector), plus the bellcrank's angle. */
function genericAxle(
  axle: LiveAxleHardpoints,
): (left: number, right: number) => { left: Coordinates; right: Coordinates } {
  const origin = coordinates(axle.left.wheelCentre);
  const place = (unknowns: readonly number[], design: Vector): Coordinates => {
    const [tx = 0, ty = 0, tz = 0, yaw = 0, pitch = 0, roll = 0] = unknowns;
    const [x, y, z] = [design.x - origin[0], design.y - origin[1], design.z - origin[2]];
    const [y1, z1] = [y * Math.cos(roll) - z * Math.sin(roll), y * Math.sin(roll) + z * Math.cos(roll)];
    const [x2, z2] = [x * Math.cos(pitch) + z1 * Math.sin(pitch), z1 * Math.cos(pitch) - x * Math.sin(pitch)];
    return [
      origin[0] + tx + x2 * Math.cos(yaw) - y1 * Math.sin(yaw),
      origin[1] + ty + x2 * Math.sin(yaw) + y1 * Math.cos(yaw),
      origin[2] + tz + z2,
    ];
  };
  const lengths = (unknowns: readonly number[]): number[] => {
    const { location, lateral } = axle;
    const rods = location.kind === "three-link" ? location.links : [];
    const links = rods.map((rod) => separation(place(unknowns, rod.axle), coordinates(rod.chassis)));
    if (lateral.kind === "panhard")
      return [...links, separation(place(unknowns, lateral.axle), coordinates(lateral.chassis))];
    const turned = ({ x, y, z }: Vector): Vector => {
      const angle = unknowns[6] ?? Number.NaN;
      const [dy, dz] = [y - lateral.pivot.y, z - lateral.pivot.z];
      return {
        x,
        y: lateral.pivot.y + dy * Math.cos(angle) - dz * Math.sin(angle),
        z: lateral.pivot.z + dy * Math.sin(angle) + dz * Math.cos(angle),
      };
    };
    return [
      ...links,
      separation(place(unknowns, turned(lateral.firstArm)), coordinates(lateral.firstEnd)),
      separation(place(unknowns, turned(lateral.secondArm)), coordinates(lateral.secondEnd)),
    ];
  };
  const start = axle.lateral.kind === "panhard" ? [0, 0, 0, 0, 0, 0] : [0, 0, 0, 0, 0, 0, 0];
  const design = lengths(start);
  return (left, right) => {
    const found = leastSquares((unknowns) => {
      const off = lengths(unknowns).map((length, index) => length - (design[index] ?? Number.NaN));
      return [
        ...off,
        place(unknowns, axle.left.wheelCentre)[2] - axle.left.wheelCentre.z - left,
        place(unknowns, axle.right.wheelCentre)[2] - axle.right.wheelCentre.z - right,
      ];
    }, start);
    return { left: place(found, axle.left.wheelCentre), right: place(found, axle.right.wheelCentre) };
  };
}

test.each([
  ["Panhard rod", exampleLiveAxle],
  ["Watt linkage", exampleWattAxle],
])("live axle with a %s, bump and roll", (_, hardpoints) => {
  const axle = liveAxle(hardpoints);
  const generic = genericAxle(hardpoints);
  fc.assert(
    fc.property(travel, travel, (left, right) => {
      axle.moveTo(left, right);
      const ours = readLiveAxle(axle);
      const theirs = generic(left, right);
      expectSame(ours.left.wheelCentre, theirs.left);
      expectSame(ours.right.wheelCentre, theirs.right);
    }),
    runs,
  );
});
