import { describe, expect, test } from "vitest";
import { bracketMarks, bracketScale, isBeyond } from "./bracket-scale";

const scaleOf = (model: Parameters<typeof bracketMarks>[0], others: number[] = []) =>
  bracketScale(bracketMarks(model), others);

describe("the bracket's scale", () => {
  test("two limits fill the middle half, whatever the value", () => {
    const scale = scaleOf({ lower: 2, upper: 4, value: 100 });
    expect([2, 3, 4].map(scale)).toEqual([0.25, 0.5, 0.75]);
    expect(scale(100)).toBeGreaterThan(1);
  });

  test("with one limit the value and its uncertainty are always on the drawing", () => {
    for (const value of [9, 9.39, 9.4, 12, 90]) {
      const scale = scaleOf({ lower: 9.4, nominal: 10, value, expandedUncertainty: 0.05 });
      expect(scale(9.4)).toBeCloseTo(0.25, 12);
      expect(scale(value - 0.05)).toBeGreaterThanOrEqual(0);
      expect(scale(value + 0.05)).toBeLessThanOrEqual(1);
    }
  });

  test("an upper limit alone stands on the right, and more is still further right", () => {
    const scale = scaleOf({ upper: 100, value: 104 });
    expect(scale(100)).toBeCloseTo(0.75, 12);
    expect(scale(104)).toBeGreaterThan(scale(100));
    expect(scale(104)).toBeLessThanOrEqual(1);
  });

  test("without limits the nominal is in the middle", () => {
    const scale = scaleOf({ nominal: 16, value: 20 });
    expect(scale(16)).toBe(0.5);
    expect(scale(20)).toBeCloseTo(0.8, 12);
  });

  test("a fleet's values are all on the drawing", () => {
    const scale = scaleOf({ nominal: 16 }, [12, 16, 22]);
    for (const value of [12, 16, 22]) expect(scale(value)).toBeGreaterThan(0.1);
  });

  test("a value that is no number is no value", () => {
    expect(bracketMarks({ value: Number.NaN, lower: Number.POSITIVE_INFINITY })).toMatchObject({
      value: undefined,
      lower: undefined,
    });
    expect(isBeyond(bracketMarks({ value: Number.NaN, lower: 1 }))).toBe(false);
  });

  test("limits themselves are still inside", () => {
    expect(isBeyond(bracketMarks({ lower: 1, upper: 2, value: 2 }))).toBe(false);
    expect(isBeyond(bracketMarks({ lower: 1, upper: 2, value: 2.001 }))).toBe(true);
  });
});
