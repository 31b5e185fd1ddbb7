import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { longitudinalAxleLoads } from "./longitudinal";

const car = { mass: 800, wheelbase: 2.3, cgFromFront: 1.1, cgHeight: 0.45 };

describe("axle loads under acceleration", () => {
  test("add up to the weight and balance about the rear contact", () => {
    fc.assert(
      fc.property(fc.double({ min: -12, max: 8, noNaN: true }), (acceleration) => {
        const { front, rear, transfer } = longitudinalAxleLoads({ ...car, acceleration });
        expect(front + rear).toBeCloseTo(800 * 9.80665, 6);
        expect(front * 2.3 - 800 * 9.80665 * 1.2 + 800 * acceleration * 0.45).toBeCloseTo(0, 6);
        expect(transfer).toBeCloseTo((800 * acceleration * 0.45) / 2.3, 9);
      }),
    );
  });

  test("may just leave an axle without load", () => {
    // 2 m long, centre in the middle and 1 m high: at 1 g one axle carries all, with no rounding in it.
    const square = { mass: 800, wheelbase: 2, cgFromFront: 1, cgHeight: 1 };
    expect(longitudinalAxleLoads({ ...square, acceleration: 9.80665 }).front).toBe(0);
    expect(longitudinalAxleLoads({ ...square, acceleration: -9.80665 }).rear).toBe(0);
  });

  test("are refused once an axle lifts, naming when", () => {
    const front = (9.80665 * 1.2) / 0.45;
    expect(longitudinalAxleLoads({ ...car, acceleration: front - 1e-6 }).front).toBeCloseTo(0, 2);
    expect(() => longitudinalAxleLoads({ ...car, acceleration: front + 1e-3 })).toThrow(
      "the front axle leaves the ground at 2.667 g",
    );
    const rear = (-9.80665 * 1.1) / 0.45;
    expect(longitudinalAxleLoads({ ...car, acceleration: rear + 1e-6 }).rear).toBeCloseTo(0, 2);
    expect(() => longitudinalAxleLoads({ ...car, acceleration: rear - 1e-3 })).toThrow(
      "the rear axle leaves the ground at -2.444 g",
    );
  });

  test("a centre of gravity outside the wheelbase, and what is no number, are refused", () => {
    const still = { ...car, acceleration: 0 };
    const behind = () => longitudinalAxleLoads({ ...still, cgFromFront: 2.3 });
    expect(behind).toThrow(/2300 mm behind the front axle must lie within the wheelbase of 2300 mm/);
    expect(behind).toThrow(expect.objectContaining({ code: "CG_BEHIND_REAR", place: "cgFromFront" }));
    for (const place of ["mass", "wheelbase", "cgFromFront", "cgHeight"] as const)
      expect(() => longitudinalAxleLoads({ ...still, [place]: 0 })).toThrow(place);
    expect(() => longitudinalAxleLoads({ ...car, acceleration: Number.NaN })).toThrow(/acceleration/);
  });
});
