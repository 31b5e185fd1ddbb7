import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { criticalDamping, damperForce, dampingCoefficient, dampingRatio } from "./damping";

const points = [
  { speed: 0.3, force: 900 },
  { speed: 0.1, force: 500 },
];
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe("a damper's curve", () => {
  test.each([
    [0, 0, "starts at the origin"],
    [0.05, 250, "is straight from the origin to the first point"],
    [0.1, 500, "goes through its points, whatever their order"],
    [0.2, 700, "is straight between points"],
    [0.3, 900, "ends at its last point"],
  ])("at %d m/s it gives %d N: it %s", (speed, force) => {
    expect(damperForce(points, speed)).toBeCloseTo(force, 9);
  });

  test("is not carried on beyond its last point", () => {
    expect(() => damperForce(points, 0.301)).toThrow(
      "the curve ends at 300 mm/s; nothing is known at 301 mm/s",
    );
  });

  test("is refused without points, with two forces at one speed, or with a point that is none", () => {
    expect(() => damperForce([], 0.1)).toThrow(/at least one point/);
    expect(() => damperForce([...points, { speed: 0.1, force: 600 }], 0.1)).toThrow(
      /two forces are given at 100 mm\/s/,
    );
    expect(() => damperForce([{ speed: 0, force: 10 }], 0)).toThrow(/speed must be greater than zero/);
    expect(() => damperForce([{ speed: 0.1, force: -10 }], 0.1)).toThrow(/force must not be negative/);
    expect(() => damperForce(points, -0.1)).toThrow(/speed must not be negative/);
    expect(() => dampingCoefficient(points, 0)).toThrow(/speed must be greater than zero/);
  });

  test("its coefficient is force over speed", () => {
    expect(dampingCoefficient(points, 0.2)).toBeCloseTo(3500, 9);
  });
});

describe("damping ratio", () => {
  test("is 1 at the critical coefficient, and goes with the square of the damper's motion ratio", () => {
    fc.assert(
      fc.property(
        between(5000, 60_000),
        between(80, 500),
        between(0.3, 1.2),
        (wheelRate, sprungMass, damperMotionRatio) => {
          const corner = { wheelRate, sprungMass, damperMotionRatio };
          const critical = criticalDamping(corner) / damperMotionRatio ** 2;
          expect(dampingRatio(critical, corner)).toBeCloseTo(1, 12);
          const half = { ...corner, damperMotionRatio: damperMotionRatio / 2 };
          expect(dampingRatio(critical, half)).toBeCloseTo(0.25, 12);
        },
      ),
    );
  });

  test("decides how a released corner settles: peaks fall by exp(−2πζ/√(1−ζ²)) a cycle (integrated step by step)", () => {
    const corner = { wheelRate: 14_500, sprungMass: 185, damperMotionRatio: 0.8 };
    const coefficient = 1500;
    const ratio = dampingRatio(coefficient, corner);
    const acceleration = (x: number, v: number) =>
      -(corner.wheelRate * x + coefficient * corner.damperMotionRatio ** 2 * v) / corner.sprungMass;
    let [x, v, peak] = [0.05, 0, 0];
    const step = 1e-5;
    for (let i = 0; i < 200_000 && peak === 0; i++) {
      const [before, middle] = [v, v + (acceleration(x, v) * step) / 2];
      x += middle * step;
      v = middle + (acceleration(x, middle) * step) / 2;
      if (before > 0 && v <= 0) peak = x;
    }
    expect(peak / 0.05).toBeCloseTo(Math.exp((-2 * Math.PI * ratio) / Math.sqrt(1 - ratio ** 2)), 4);
  });

  test("refuses what is no corner", () => {
    const corner = { wheelRate: 1, sprungMass: 1, damperMotionRatio: 1 };
    expect(() => dampingRatio(-1, corner)).toThrow(/coefficient must not be negative/);
    expect(() => dampingRatio(1, { ...corner, damperMotionRatio: 0 })).toThrow(/damperMotionRatio/);
    expect(() => criticalDamping({ wheelRate: 0, sprungMass: 1 })).toThrow(/wheelRate/);
    expect(() => criticalDamping({ wheelRate: 1, sprungMass: 0 })).toThrow(/sprungMass/);
    expect(dampingRatio(0, corner)).toBe(0);
  });
});
