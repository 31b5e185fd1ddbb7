import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { loadedLength, rideHeightChange, seatLiftForHeight, springForceOfWheelLoad } from "./height";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const spring = (rate: number, freeLength: number) => ({ rate, freeLength });

describe("ride height", () => {
  test("a stiffer spring of the same free length raises the body by F(1/k₁ − 1/k₂)/MR", () => {
    const input = { before: spring(20_000, 0.3), after: spring(25_000, 0.3), force: 2500, motionRatio: 0.5 };
    expect(rideHeightChange(input)).toBeCloseTo(2500 * (1 / 20_000 - 1 / 25_000) * 2, 12);
    expect(rideHeightChange({ ...input, seatLift: -0.01 })).toBeCloseTo(0.05 - 0.02, 12);
  });

  test("the seat lift it asks for sets the height wanted", () => {
    fc.assert(
      fc.property(
        between(15_000, 60_000),
        between(0.25, 0.4),
        between(0.4, 1),
        between(-0.05, 0.05),
        (rate, free, motionRatio, wanted) => {
          const input = { before: spring(28_000, 0.31), after: spring(rate, free), force: 2600, motionRatio };
          const seatLift = seatLiftForHeight(wanted, input);
          expect(rideHeightChange({ ...input, seatLift })).toBeCloseTo(wanted, 12);
        },
      ),
    );
  });

  test("changing there and back leaves the car where it was", () => {
    const [one, other] = [spring(20_000, 0.3), spring(32_000, 0.27)];
    const there = rideHeightChange({ before: one, after: other, force: 2000, motionRatio: 0.7 });
    expect(rideHeightChange({ before: other, after: one, force: 2000, motionRatio: 0.7 })).toBeCloseTo(
      -there,
      12,
    );
    expect(() => rideHeightChange({ before: one, after: other, force: 2000, motionRatio: 0 })).toThrow(
      /motionRatio/,
    );
  });
});

test("the spring carries the wheel's load over the motion ratio", () => {
  expect(springForceOfWheelLoad(1800, 0.6)).toBeCloseTo(3000, 9);
  expect(() => springForceOfWheelLoad(0, 1)).toThrow(/wheelLoad/);
  expect(() => springForceOfWheelLoad(1, 0)).toThrow(/motionRatio/);
});

test("a spring pressed to its solid length is refused", () => {
  expect(loadedLength({ rate: 10_000, freeLength: 0.3, solidLength: 0.15 }, 1400)).toBeCloseTo(0.16, 12);
  expect(() => loadedLength({ rate: 10_000, freeLength: 0.3, solidLength: 0.15 }, 1600)).toThrow(
    "a spring of 10 N/mm, 300 mm free, is coil-bound under 1600 N: a stiffer or longer one is needed",
  );
  expect(() => loadedLength({ rate: 10_000, freeLength: 0.3 }, 3000)).toThrow(/coil-bound/);
  expect(() => loadedLength({ rate: 10_000, freeLength: 0 }, 1)).toThrow(/freeLength/);
  expect(() => loadedLength({ rate: 0, freeLength: 0.3 }, 1)).toThrow(/rate must/);
  expect(() => loadedLength({ rate: 1, freeLength: 0.3 }, 0)).toThrow(/force must/);
});
