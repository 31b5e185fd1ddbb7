import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { CalcRefusal } from "../catalogue/refusal";
import { exampleSemiTrailing, exampleSwingAxle } from "./example";
import { mirrorHardpoints, readCorner, semiTrailingArm, sweepBump, swingAxle } from "./index";

const travel = fc.double({ min: -0.1, max: 0.1, noNaN: true });
const wheel = {
  side: "left" as const,
  wheelCentre: { x: -2.3, y: 0.65, z: 0.29 },
  camber: 0,
  toeIn: 0,
  loadedRadius: 0.29,
};

describe("swing axle", () => {
  test("on a longitudinal pivot, camber changes by the arm's own angle and nothing steers", () => {
    const corner = swingAxle({
      ...wheel,
      joint: { x: -2.3, y: 0.1, z: 0.29 },
      radiusArm: { x: -1.9, y: 0.1, z: 0.29 },
    });
    fc.assert(
      fc.property(travel, (bump) => {
        corner.moveTo(bump);
        const reading = readCorner(corner);
        expect(reading.camber).toBeCloseTo(-Math.asin(bump / 0.55), 12);
        expect(reading.toeIn).toBeCloseTo(0, 12);
        expect(reading.instantCentre?.y).toBeCloseTo(0.1, 12);
        expect(reading.instantCentre?.z).toBeCloseTo(0.29, 12);
        expect(reading.forwardShift).toBeCloseTo(0, 12);
      }),
    );
  });

  test("its roll centre lies on the line from the contact point through the joint", () => {
    const corner = swingAxle({
      ...wheel,
      joint: { x: -2.3, y: 0.1, z: 0.29 },
      radiusArm: { x: -1.9, y: 0.1, z: 0.29 },
    });
    // Joint 290 mm up and 550 mm in from the contact point, so the line stands 290·650/550 high in the middle.
    expect(readCorner(corner).rollCentreHeight).toBeCloseTo((0.29 * 0.65) / 0.55, 12);
  });

  test("with a radius arm the wheel steers as well", () => {
    const corner = swingAxle(exampleSwingAxle);
    corner.moveTo(0.05);
    expect(Math.abs(readCorner(corner).toeIn)).toBeGreaterThan(1e-4);
  });
});

describe("semi-trailing arm", () => {
  test("with pivots square across the car camber and toe stay and the instant centre is at infinity", () => {
    const corner = semiTrailingArm({
      ...wheel,
      pivotInner: { x: -1.9, y: 0.2, z: 0.3 },
      pivotOuter: { x: -1.9, y: 0.6, z: 0.3 },
    });
    fc.assert(
      fc.property(travel, (bump) => {
        corner.moveTo(bump);
        const reading = readCorner(corner);
        expect(reading.camber).toBeCloseTo(0, 12);
        expect(reading.toeIn).toBeCloseTo(0, 12);
        expect(reading.instantCentre).toBeNull();
        expect(reading.swingArm).toBeNull();
        // Level pivots: the line to infinity runs along the ground, so the roll centre lies in it.
        expect(reading.rollCentreHeight).toBeCloseTo(0, 12);
        expect(reading.trackChange).toBeCloseTo(0, 12);
      }),
    );
  });

  test("in bump a raked arm gains negative camber and toes in", () => {
    const corner = semiTrailingArm({
      ...exampleSemiTrailing,
      pivotInner: { ...exampleSemiTrailing.pivotInner, z: 0.295 },
      pivotOuter: { ...exampleSemiTrailing.pivotOuter, z: 0.295 },
    });
    corner.moveTo(0.06);
    const reading = readCorner(corner);
    expect(reading.camber).toBeLessThan(exampleSemiTrailing.camber);
    expect(reading.toeIn).toBeGreaterThan(exampleSemiTrailing.toeIn);
  });
});

test.each([
  [
    "swing axle",
    swingAxle(exampleSwingAxle),
    exampleSwingAxle.wheelCentre,
    [exampleSwingAxle.joint, exampleSwingAxle.radiusArm],
  ],
  [
    "semi-trailing arm",
    semiTrailingArm(exampleSemiTrailing),
    exampleSemiTrailing.wheelCentre,
    [exampleSemiTrailing.pivotInner, exampleSemiTrailing.pivotOuter],
  ],
] as const)(
  "%s: distances are kept and derivatives equal finite differences",
  (_, corner, centre, pivots) => {
    const step = 1e-5;
    fc.assert(
      fc.property(travel, (bump) => {
        const [before, here, after] = sweepBump(corner, { from: bump - step, to: bump + step, positions: 3 });
        if (before === undefined || here === undefined || after === undefined)
          throw new Error("three readings wanted");
        const rate = (a: number | undefined, b: number | undefined) =>
          ((b ?? Number.NaN) - (a ?? Number.NaN)) / (2 * step);
        for (const pivot of pivots) {
          const apart = (p: { x: number; y: number; z: number }) =>
            Math.hypot(p.x - pivot.x, p.y - pivot.y, p.z - pivot.z);
          expect(apart(here.wheelCentre)).toBeCloseTo(apart(centre), 11);
        }
        expect(here.wheelCentre.z).toBeCloseTo(centre.z + bump, 11);
        expect(here.camberGain).toBeCloseTo(rate(before.camber, after.camber), 6);
        expect(here.toeGain).toBeCloseTo(rate(before.toeIn, after.toeIn), 6);
        expect(here.trackGain).toBeCloseTo(rate(before.trackChange, after.trackChange), 6);
        expect(here.spring?.ratio).toBeCloseTo(-rate(before.spring?.length, after.spring?.length), 6);
      }),
    );
  },
);

test("the mirrored corner shows the same angles", () => {
  const left = semiTrailingArm(exampleSemiTrailing);
  const right = semiTrailingArm(mirrorHardpoints(exampleSemiTrailing));
  fc.assert(
    fc.property(travel, (bump) => {
      left.moveTo(bump);
      right.moveTo(bump);
      const l = readCorner(left);
      const r = readCorner(right);
      for (const name of ["camber", "toeIn", "trackChange", "rollCentreHeight", "swingArm"] as const) {
        expect(r[name]).toBeCloseTo(l[name] ?? Number.NaN, 10);
      }
    }),
  );
});

describe("an eye screwed into the arm", () => {
  const semi = { ...exampleSemiTrailing, spring: undefined };
  const small = fc.double({ min: 0.0005, max: 0.004, noNaN: true });

  test("turns a swing axle in plan by its travel over the radius arm's length (plane geometry)", () => {
    // Joint and arm's pivot 400 mm apart along the car, eye screwed outboard: the axle toes by atan(4/400).
    const square = {
      ...wheel,
      joint: { x: -2.3, y: 0.1, z: 0.29 },
      radiusArm: { x: -1.9, y: 0.1, z: 0.29 },
    };
    const moved = swingAxle(square, { shift: { radiusArmEye: { x: 0, y: 0.004, z: 0 } } });
    expect(readCorner(moved).toeIn).toBeCloseTo(Math.atan(0.004 / 0.4), 12);
    expect(readCorner(moved).camber).toBeCloseTo(0, 12);
  });

  test("does what its pivot moved the other way on the chassis does, to the second order", () => {
    fc.assert(
      fc.property(small, small, (x, z) => {
        const eye = readCorner(semiTrailingArm(semi, { shift: { pivotOuterEye: { x, y: 0, z } } }));
        const pivot = readCorner(
          semiTrailingArm(semi, { shift: { pivotOuter: { x: 0 - x, y: 0, z: 0 - z } } }),
        );
        const far = Math.hypot(x, z) / Math.hypot(0.125, 0.38, 0.01);
        expect(Math.abs(eye.camber - pivot.camber)).toBeLessThan(2 * far * far);
        expect(Math.abs(eye.toeIn - pivot.toeIn)).toBeLessThan(2 * far * far);
        expect(Math.abs(eye.camber - readCorner(semiTrailingArm(semi)).camber)).toBeGreaterThan(0);
      }),
    );
  });

  test("leaves camber and toe alone where both go together along the level line of the pivots", () => {
    const level = { ...semi, pivotOuter: { ...semi.pivotOuter, z: semi.pivotInner.z } };
    const by = { x: 0.125 / 50, y: 0.38 / 50, z: 0 };
    const both = readCorner(semiTrailingArm(level, { shift: { pivotInnerEye: by, pivotOuterEye: by } }));
    expect(both.camber).toBeCloseTo(level.camber, 12);
    expect(both.toeIn).toBeCloseTo(level.toeIn, 12);
  });
});

describe("refusals", () => {
  test("beyond its circle, with the travel that can be reached in closed form", () => {
    const corner = swingAxle({
      ...wheel,
      joint: { x: -2.3, y: 0.1, z: 0.29 },
      radiusArm: { x: -1.9, y: 0.1, z: 0.29 },
    });
    expect(corner.reach()?.bump).toBeCloseTo(0.55, 12);
    expect(corner.reach()?.droop).toBeCloseTo(-0.55, 12);
    expect(() => corner.moveTo(0.6)).toThrow(
      "cannot reach 600.0 mm of travel: it reaches -550.0 mm to 550.0 mm there",
    );
  });

  test("has no rack, and no pivots on one spot or upright", () => {
    const corner = swingAxle(exampleSwingAxle);
    expect(() => corner.moveTo(0, 0.01)).toThrow(
      "this linkage does not steer, so the rack cannot be at 0.01 m",
    );
    expect(() => corner.moveTo(Number.NaN)).toThrow("travel must be a finite number of metres, but is NaN");
    expect(readCorner(corner)).toMatchObject({
      castor: null,
      kingpin: null,
      scrub: null,
      trail: null,
      steerGain: null,
    });
    expect(() => swingAxle({ ...exampleSwingAxle, radiusArm: exampleSwingAxle.joint })).toThrow(CalcRefusal);
    const upright = {
      ...exampleSwingAxle,
      joint: { x: -2.3, y: 0, z: 0.2 },
      radiusArm: { x: -2.3, y: 0, z: 0.6 },
    };
    expect(() => swingAxle(upright)).toThrow("its pivot line stands upright");
  });
});
