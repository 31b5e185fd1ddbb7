import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { CalcRefusal } from "../catalogue/refusal";
import { exampleSemiTrailing, exampleStrut, exampleWishbone } from "./example";
import { doubleWishbone, mirrorHardpoints, readAckermann, readAxle, semiTrailingArm, strut } from "./index";

const axles = {
  "double wishbone": {
    left: doubleWishbone(exampleWishbone),
    right: doubleWishbone(mirrorHardpoints(exampleWishbone)),
  },
  strut: { left: strut(exampleStrut), right: strut(mirrorHardpoints(exampleStrut)) },
  "semi-trailing arm": {
    left: semiTrailingArm(exampleSemiTrailing),
    right: semiTrailingArm(mirrorHardpoints(exampleSemiTrailing)),
  },
};
const roll = fc.double({ min: -0.08, max: 0.08, noNaN: true });
const heave = fc.double({ min: -0.03, max: 0.03, noNaN: true });

describe.each(Object.entries(axles))("%s axle", (_, axle) => {
  test("the ground under both contact points slopes by exactly the roll", () => {
    fc.assert(
      fc.property(roll, heave, (angle, rise) => {
        const { left, right, track } = readAxle(axle, { roll: angle, heave: rise });
        const slope = Math.atan2(right.contact.z - left.contact.z, left.contact.y - right.contact.y);
        expect(slope).toBeCloseTo(angle, 11);
        expect((left.bump + right.bump) / 2).toBeCloseTo(rise, 11);
        expect(track).toBeCloseTo(
          Math.hypot(left.contact.y - right.contact.y, left.contact.z - right.contact.z),
          11,
        );
      }),
    );
  });

  test("rolled the other way, left and right change places", () => {
    fc.assert(
      fc.property(roll, heave, (angle, rise) => {
        const one = readAxle(axle, { roll: angle, heave: rise });
        const other = readAxle(axle, { roll: -angle, heave: rise });
        expect(one.left.camber).toBeCloseTo(other.right.camber, 9);
        expect(one.left.toeIn).toBeCloseTo(other.right.toeIn, 9);
        expect(one.leftCamberToGround).toBeCloseTo(other.rightCamberToGround, 9);
        expect(one.rollCentre?.height).toBeCloseTo(other.rollCentre?.height ?? Number.NaN, 6);
        expect(one.rollCentre?.y).toBeCloseTo(-(other.rollCentre?.y ?? Number.NaN), 6);
      }),
    );
  });

  test("camber against the ground is camber against the car less or plus the roll, when nothing toes", () => {
    const { left, right, leftCamberToGround, rightCamberToGround } = readAxle(axle, { roll: 0.04 });
    // Left side up: the car leans to the right, the left wheel's top inwards.
    expect(leftCamberToGround).toBeCloseTo(left.camber - 0.04, 4);
    expect(rightCamberToGround).toBeCloseTo(right.camber + 0.04, 4);
  });

  test("on a level car both corners put the roll centre where the lines meet", () => {
    const { left, right, rollCentre } = readAxle(axle);
    expect(rollCentre?.y).toBeCloseTo(0, 9);
    expect(rollCentre?.height).toBeCloseTo(left.rollCentreHeight ?? Number.NaN, 9);
    expect(rollCentre?.height).toBeCloseTo(right.rollCentreHeight ?? Number.NaN, 9);
  });
});

test("the height of one corner's roll centre in roll is measured square to the ground", () => {
  const { left, right } = readAxle(axles["double wishbone"], { roll: 0.05 });
  const up = { y: Math.sin(0.05), z: Math.cos(0.05) };
  const centre = left.instantCentre;
  if (centre === null) throw new Error("the example's arms are not parallel");
  const z =
    left.contact.z + ((centre.z - left.contact.z) * (0 - left.contact.y)) / (centre.y - left.contact.y);
  expect(left.rollCentreHeight).toBeCloseTo((0 - right.contact.y) * up.y + (z - right.contact.z) * up.z, 10);
});

describe("steered", () => {
  const axle = axles["double wishbone"];

  test("the inner wheel is the one on the side of the turn, and the other way round gives the same", () => {
    // The rack lies behind the axle: moved to the left it steers to the right.
    const right = readAckermann(axle, { rack: 0.03, wheelbase: 2.3 });
    const left = readAckermann(axle, { rack: -0.03, wheelbase: 2.3 });
    expect(right.inner).toBeCloseTo(left.inner, 10);
    expect(right.outer).toBeCloseTo(left.outer, 10);
    expect(left.inner).toBeCloseTo(-readAxle(axle, { rack: -0.03 }).left.toeIn, 12);
    expect(left.idealOuter).toBeLessThan(left.inner);
    expect(left.ratio).toBeCloseTo((left.inner - left.outer) / (left.inner - left.idealOuter), 12);
    expect(left.turnRadius).toBeCloseTo(2.3 / Math.tan(left.inner) + left.kingpinTrack / 2, 12);
  });

  test("the kingpin track is the track less both scrub radii, straight ahead", () => {
    const { left, right } = readAxle(axle);
    const { kingpinTrack } = readAckermann(axle, { rack: 0.03, wheelbase: 2.3 });
    const track = left.contact.y - right.contact.y;
    // Scrub and trail lie along the wheel's own axes, which toe.
    const inboard = (side: typeof left) =>
      (side.scrub ?? Number.NaN) * Math.cos(side.toeIn) + (side.trail ?? Number.NaN) * Math.sin(side.toeIn);
    expect(kingpinTrack).toBeCloseTo(track - inboard(left) - inboard(right), 11);
  });

  test("steered on level ground, castor lifts one wheel and drops the other, and the car still stands level", () => {
    const { left, right } = readAxle(axle, { rack: 0.04 });
    expect(left.contact.z).toBeCloseTo(right.contact.z, 11);
    expect(left.bump + right.bump).toBeCloseTo(0, 12);
    expect(left.bump).not.toBe(0);
  });

  test("straight ahead there is no turn to judge, and a rear axle has none at all", () => {
    expect(() => readAckermann(axle, { wheelbase: 2.3 })).toThrow(CalcRefusal);
    expect(() => readAckermann(axles["semi-trailing arm"], { rack: 0.03, wheelbase: 2.3 })).toThrow(
      "this axle does not steer",
    );
  });
});

test("a roll that the suspension cannot take is refused", () => {
  expect(() => readAxle(axles.strut, { roll: 0.7 })).toThrow(CalcRefusal);
  expect(() => readAxle(axles.strut, { roll: 1 })).toThrow("roll must lie within ±45°, but is 1 rad");
});
