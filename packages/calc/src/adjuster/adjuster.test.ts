import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { coordinates, leastSquares, pointAt, separation } from "../../bench/generic-solver";
import { camberOf, castorOf, kingpinOf, toeInOf, type Vector } from "../alignment/index";
import { CalcRefusal } from "../catalogue/refusal";
import { exampleWishbone } from "../linkage/example";
import { doubleWishbone, readCorner, type WishbonePoint } from "../linkage/index";
import { atMost } from "../property-runs.fixture";
import { type Adjuster, combine, settable } from "./adjuster";
import { exampleAdjusters, exampleArmAdjusters } from "./example";

const minute = Math.PI / 180 / 60;
const { spring: _spring, damper: _damper, bar: _bar, ...bare } = exampleWishbone;
const assemble = (adjustment: Parameters<typeof doubleWishbone>[1]) => doubleWishbone(bare, adjustment);
const now = readCorner(assemble({}));

describe("one adjuster at a time", { timeout: 30_000 }, () => {
  const withSteps = (adjuster: Adjuster<WishbonePoint>, steps: number) =>
    readCorner(assemble(settable(adjuster).effect(steps)));

  test("moving the upper joint outwards adds positive camber (common practice, no source)", () => {
    const [joint] = exampleAdjusters;
    if (joint === undefined) throw new Error("the example has adjusters");
    expect(withSteps(joint, 2).camber).toBeGreaterThan(now.camber);
    expect(withSteps(joint, -2).camber).toBeLessThan(now.camber);
  });

  test("moving the upper arm rearwards adds castor (common practice, no source)", () => {
    const washers = exampleAdjusters[1];
    if (washers === undefined) throw new Error("the example has adjusters");
    expect(withSteps(washers, 2).castor ?? 0).toBeGreaterThan(now.castor ?? 0);
  });

  test("a longer tie rod behind the axle toes the wheel in, and moves camber by next to nothing", () => {
    const rod = exampleAdjusters[2];
    if (rod === undefined) throw new Error("the example has adjusters");
    const turned = withSteps(rod, 12);
    // One turn of 1.814 mm at the steering arm's length of some 130 mm.
    expect(turned.toeIn - now.toeIn).toBeCloseTo(0.001814 / 0.13, 2);
    expect(turned.toeIn).toBeGreaterThan(now.toeIn);
    expect(Math.abs(turned.camber - now.camber)).toBeLessThan(6 * minute);
  });

  test("an adjusted linkage is what a generic solver makes of the changed lengths", () => {
    const [joint, , rod] = exampleAdjusters.map(settable);
    if (joint === undefined || rod === undefined) throw new Error("the example has three adjusters");
    fc.assert(
      fc.property(fc.integer({ min: -8, max: 8 }), fc.integer({ min: -24, max: 24 }), (half, twelfth) => {
        const ours = assemble(combine([joint, rod], [half, twelfth]));
        const theirs = genericAdjusted(joint.effect(half).shift?.upperJoint, rod.effect(twelfth).tieRod ?? 0);
        const reading = readCorner(ours);
        expect(camberOf(theirs.spin)).toBeCloseTo(reading.camber, 8);
        expect(toeInOf(theirs.spin, "left")).toBeCloseTo(reading.toeIn, 8);
        expect(castorOf(theirs.steering)).toBeCloseTo(reading.castor ?? Number.NaN, 8);
        expect(kingpinOf(theirs.steering, "left")).toBeCloseTo(reading.kingpin ?? Number.NaN, 8);
      }),
      atMost(25),
    );
  });
});

/** The example with its upper joint shifted in the arm and its tie rod lengthened, by the generic solver. */
function genericAdjusted(shift: Vector | undefined, longer: number): { spin: Vector; steering: Vector } {
  const { lowerJoint, upperJoint, tieRodOuter, wheelCentre, lowerArmFront, lowerArmRear } = exampleWishbone;
  const { upperArmFront, upperArmRear, tieRodInner } = exampleWishbone;
  const spin = doubleWishbone(exampleWishbone).wheel.designSpin;
  const by = shift ?? { x: 0, y: 0, z: 0 };
  const inArm = { x: upperJoint.x + by.x, y: upperJoint.y + by.y, z: upperJoint.z + by.z };
  const tip = { x: wheelCentre.x + spin.x, y: wheelCentre.y + spin.y, z: wheelCentre.z + spin.z };
  const upright = [lowerJoint, upperJoint, tieRodOuter, wheelCentre, tip];
  const rods: [number, Vector, number][] = [
    [0, lowerArmFront, separation(coordinates(lowerJoint), coordinates(lowerArmFront))],
    [0, lowerArmRear, separation(coordinates(lowerJoint), coordinates(lowerArmRear))],
    [1, upperArmFront, separation(coordinates(inArm), coordinates(upperArmFront))],
    [1, upperArmRear, separation(coordinates(inArm), coordinates(upperArmRear))],
    [2, tieRodInner, separation(coordinates(tieRodOuter), coordinates(tieRodInner)) + longer],
  ];
  const rigid = (points: readonly (readonly [number, number, number])[]) =>
    points.flatMap((a, index) => points.slice(index + 1).map((b) => separation(a, b)));
  const design = rigid(upright.map(coordinates));
  const found = leastSquares((unknowns) => {
    const points = upright.map((_, index) => pointAt(unknowns, index));
    return [
      ...rigid(points).map((length, index) => length - (design[index] ?? Number.NaN)),
      ...rods.map(([at, to, length]) => separation(pointAt(unknowns, at), coordinates(to)) - length),
      pointAt(unknowns, 3)[2] - wheelCentre.z,
    ];
  }, upright.flatMap(coordinates));
  const between = (from: number, to: number): Vector => {
    const [a, b] = [pointAt(found, from), pointAt(found, to)];
    return { x: b[0] - a[0], y: b[1] - a[1], z: b[2] - a[2] };
  };
  return { spin: between(3, 4), steering: between(0, 1) };
}

describe("refusals", () => {
  const [joint, washers, rod] = exampleAdjusters;

  test.each([
    [{ ...joint, axis: { x: 0, y: 0, z: 0 } }, "it needs a direction"],
    [{ ...joint, pitch: 0 }, "its pitch must not be 0 m"],
    [{ ...joint, step: 0 }, "its step must be above 0 turns"],
    [{ ...joint, lowest: 1 }, "its turns must run from 0 or less to 0 or more, but run from 1 to 4"],
    [{ ...washers, thickness: -0.001 }, "thicker than 0 m, but are -0.001"],
    [{ ...washers, fitted: 2.5 }, "whole shims are wanted"],
    [{ ...washers, most: 1 }, "3 are fitted of 1"],
    [{ ...rod, highest: Number.NaN }, "run from -6 to NaN"],
    [{ ...exampleArmAdjusters[0], eccentricity: 0 }, "its eccentricity must be above 0 m"],
    [{ ...exampleArmAdjusters[0], setting: 2 }, "its setting must lie within ±90°, but is 2 rad"],
    [{ ...exampleArmAdjusters[0], step: 0 }, "its step must be above 0 rad"],
  ])("%o", (adjuster, words) => {
    expect(() => settable(adjuster as Adjuster<WishbonePoint>)).toThrow(CalcRefusal);
    expect(() => settable(adjuster as Adjuster<WishbonePoint>)).toThrow(words);
  });
});
