import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { CalcRefusal } from "../catalogue/refusal";
import { atMost } from "../property-runs.fixture";
import {
  ackermannOuter,
  ackermannRatio,
  angleFromRim,
  camberOf,
  castorFromSwing,
  castorOf,
  distanceAtRim,
  inclinationOf,
  kingpinOf,
  setBack,
  spinAxisOf,
  steeringAxisFromSwing,
  steeringAxisOf,
  steerOf,
  thrustAngle,
  toeInOf,
  totalDistanceAtRim,
  totalToeFromRim,
  turnRadius,
} from "./index";

const side = fc.constantFrom("left" as const, "right" as const);
const angle = (limit: number) => fc.double({ min: -limit, max: limit, noNaN: true });

describe("axes and angles", () => {
  test("camber and toe-in come back from the spin axis they gave", () => {
    fc.assert(
      fc.property(angle(1), angle(1), side, (camber, toeIn, of) => {
        const spin = spinAxisOf({ camber, toeIn, side: of });
        expect(Math.hypot(spin.x, spin.y, spin.z)).toBeCloseTo(1, 12);
        expect(camberOf(spin)).toBeCloseTo(camber, 12);
        expect(toeInOf(spin, of)).toBeCloseTo(toeIn, 12);
      }),
    );
  });

  test("castor and kingpin come back from the steering axis they gave", () => {
    fc.assert(
      fc.property(angle(1), angle(1), side, (castor, kingpin, of) => {
        const axis = steeringAxisOf({ castor, kingpin, side: of });
        expect(castorOf(axis)).toBeCloseTo(castor, 12);
        expect(kingpinOf(axis, of)).toBeCloseTo(kingpin, 12);
      }),
    );
  });

  test("a mirrored axis shows the same trade angles and opposite ISO angles", () => {
    fc.assert(
      fc.property(angle(1), angle(1), (camber, toeIn) => {
        const left = spinAxisOf({ camber, toeIn, side: "left" });
        const right = spinAxisOf({ camber, toeIn, side: "right" });
        expect(right).toEqual({ x: left.x, y: -left.y, z: left.z });
        expect(inclinationOf(camber, "left") + inclinationOf(camber, "right")).toBe(0);
        expect(steerOf(toeIn, "left") + steerOf(toeIn, "right")).toBe(0);
      }),
    );
  });

  test("the length of an axis does not matter, its absence does", () => {
    expect(camberOf({ x: 0, y: 3, z: -4 })).toBeCloseTo(Math.asin(0.8), 12);
    expect(() => camberOf({ x: 0, y: 0, z: 0 })).toThrow("an axis needs a finite length");
    expect(() => castorOf({ x: 0, y: Number.NaN, z: 1 })).toThrow(RangeError);
    expect(() => steeringAxisOf({ castor: 2, kingpin: 0, side: "left" })).toThrow(
      "castor must lie within ±90°, but is 2",
    );
    expect(() => spinAxisOf({ camber: Number.NaN, toeIn: 0, side: "left" })).toThrow(
      "camber must be a finite number",
    );
  });
});

describe("angle and rim distance", () => {
  test("undo each other", () => {
    fc.assert(
      fc.property(angle(1.5), fc.double({ min: 0.2, max: 1, noNaN: true }), (toe, diameter) => {
        expect(angleFromRim(distanceAtRim(toe, diameter), diameter)).toBeCloseTo(toe, 9);
        const total = totalDistanceAtRim({ left: toe / 2, right: toe / 2 }, diameter);
        expect(totalToeFromRim(total, diameter)).toBeCloseTo(toe, 9);
      }),
    );
  });

  test("camber does not disturb toe at the rim: the horizontal diameter of a leaning wheel shows it whole", () => {
    const spin = spinAxisOf({ camber: 0.2, toeIn: 0.05, side: "left" });
    // The horizontal line in the wheel's plane, of one diameter's length.
    const across = Math.hypot(spin.x, spin.y);
    expect((0.381 * spin.x) / across).toBeCloseTo(distanceAtRim(0.05, 0.381), 12);
  });

  test("a distance greater than the rim is refused and quoted", () => {
    expect(() => angleFromRim(0.5, 0.4)).toThrow(CalcRefusal);
    expect(() => angleFromRim(0.5, 0.4)).toThrow(
      "a difference of 0.5 m cannot be measured over a diameter of 0.4 m",
    );
    expect(() => angleFromRim(Number.NaN, 0.4)).toThrow(CalcRefusal);
    expect(() => distanceAtRim(0.1, 0)).toThrow("the diameter must be above 0 m, but is 0");
    expect(() => distanceAtRim(2, 0.4)).toThrow("the angle must lie within ±90°, but is 2 rad");
  });
});

describe("an axle's line", () => {
  test("the thrust angle is the bisector of the headings", () => {
    fc.assert(
      fc.property(angle(0.3), angle(0.3), (left, right) => {
        const heading = (x: number, y: number) => Math.atan2(y, x);
        // Each wheel's heading as a unit vector; their sum points along the bisector. Positive thrust is to the right.
        const sum = heading(Math.cos(left) + Math.cos(right), -Math.sin(left) + Math.sin(right));
        expect(thrustAngle({ left, right })).toBeCloseTo(-sum, 12);
      }),
    );
  });

  test("set-back is positive with the right wheel behind", () => {
    const back = setBack({ x: 0.004, y: 0.65, z: 0.3 }, { x: -0.004, y: -0.65, z: 0.3 });
    expect(back.distance).toBeCloseTo(0.008, 15);
    expect(back.angle).toBeCloseTo(Math.atan(0.008 / 1.3), 15);
    expect(() => setBack({ x: 0, y: -1, z: 0 }, { x: 0, y: 1, z: 0 })).toThrow(
      "must lie left of the right one",
    );
  });
});

describe("Ackermann", () => {
  const plan = { wheelbase: 2.3, kingpinTrack: 1.2 };

  test("the ideal outer angle obeys cot(outer) − cot(inner) = w/L and never exceeds the inner", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 1.4, noNaN: true }), (inner) => {
        const outer = ackermannOuter(inner, plan);
        expect(outer).toBeLessThan(inner);
        expect(1 / Math.tan(outer) - 1 / Math.tan(inner)).toBeCloseTo(plan.kingpinTrack / plan.wheelbase, 9);
        expect(ackermannRatio(inner, outer, plan)).toBeCloseTo(1, 9);
        expect(ackermannRatio(inner, inner, plan)).toBeCloseTo(0, 12);
        expect(Math.atan(plan.wheelbase / (turnRadius(inner, plan) + plan.kingpinTrack / 2))).toBeCloseTo(
          outer,
          12,
        );
      }),
    );
  });

  test("straight ahead has no turn to judge", () => {
    expect(ackermannOuter(0, plan)).toBe(0);
    expect(() => ackermannRatio(0, 0, plan)).toThrow(CalcRefusal);
    expect(() => turnRadius(0, plan)).toThrow("a turn centre needs an inner angle above 0");
    expect(() => ackermannOuter(-0.1, plan)).toThrow("must be from 0 to below 90°, but is -0.1 rad");
    expect(() => ackermannOuter(0.1, { ...plan, wheelbase: 0 })).toThrow(
      "the wheelbase must be above 0 m, but is 0",
    );
  });
});

describe("castor from the swing of camber", () => {
  test("the exact axis gives back any upright steering axis", () => {
    fc.assert(
      fc.property(angle(0.3), angle(0.3), angle(0.08), (castor, kingpin, straight) => {
        const read = lockReader(steeringAxisOf({ castor, kingpin, side: "left" }), straight);
        const swing = { outward: read(0.35), inward: read(-0.35), straight, steer: 0.35 };
        const axis = steeringAxisFromSwing(swing);
        expect(axis.castor).toBeCloseTo(castor, 8);
        expect(axis.kingpin).toBeCloseTo(kingpin, 8);
        expect(Math.abs(castorFromSwing(swing) - castor)).toBeLessThan(0.03);
      }),
      atMost(60),
    );
  });

  test("readings that no steering axis gives are refused, and so is no steer at all", () => {
    const impossible = { outward: -0.5, inward: -0.5, straight: 0.5, steer: 0.1 };
    expect(() => steeringAxisFromSwing(impossible)).toThrow(CalcRefusal);
    expect(() => castorFromSwing({ outward: 0, inward: 0, steer: 0 })).toThrow(
      "more than 0 and less than 90°",
    );
  });
});

/** Camber at a turntable reading by bisection over the turn about `k` (the reading grows with it). */
function lockReader(k: { x: number; y: number; z: number }, straight: number): (reading: number) => number {
  const n = spinAxisOf({ camber: straight, toeIn: 0, side: "left" });
  const along = k.x * n.x + k.y * n.y + k.z * n.z;
  const turned = (angle: number) => {
    const c = Math.cos(angle);
    const s = Math.sin(angle);
    return {
      x: n.x * c + (k.y * n.z - k.z * n.y) * s + k.x * along * (1 - c),
      y: n.y * c + (k.z * n.x - k.x * n.z) * s + k.y * along * (1 - c),
      z: n.z * c + (k.x * n.y - k.y * n.x) * s + k.z * along * (1 - c),
    };
  };
  return (reading) => {
    let low = -1;
    let high = 1;
    for (let step = 0; step < 80; step += 1) {
      const middle = (low + high) / 2;
      if (-toeInOf(turned(middle), "left") < reading) low = middle;
      else high = middle;
    }
    return camberOf(turned((low + high) / 2));
  };
}
