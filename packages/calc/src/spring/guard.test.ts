import { describe, expect, test } from "vitest";
import { finite, notNegative, positive, wholeNumber, written } from "./guard";
import { carbonSteel, moduliOrSteel } from "./material";

describe("guards hand a good number through and refuse a bad one, quoting it", () => {
  test.each([Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])("%d is not finite", (bad) => {
    for (const guard of [finite, positive, notNegative, wholeNumber])
      expect(() => guard(bad, "rate")).toThrow(`rate must be a finite number, but is ${bad}`);
  });

  test("zero is not positive, but not negative either", () => {
    expect(() => positive(0, "track")).toThrow("track must be greater than zero, but is 0");
    expect(notNegative(0, "track")).toBe(0);
    expect(positive(1e-9, "track")).toBe(1e-9);
    expect(() => notNegative(-1e-9, "track")).toThrow("track must not be negative, but is -1e-9");
    expect(finite(-2, "x")).toBe(-2);
  });

  test("whole numbers are 0, 1, 2, …", () => {
    expect(wholeNumber(0, "n")).toBe(0);
    expect(wholeNumber(3, "n")).toBe(3);
    expect(() => wholeNumber(2.5, "n")).toThrow("n must be a whole number, but is 2.5");
    expect(() => wholeNumber(-1, "n")).toThrow("n must not be negative");
  });

  test("a refusal carries code and place", () => {
    expect(() => positive(-1, "front.track")).toThrow(
      expect.objectContaining({ code: "NOT_POSITIVE", place: "front.track" }),
    );
  });
});

test("quantities in messages are written as the trade does", () => {
  expect(written(0.0123, "length")).toBe("12.3 mm");
  expect(written(0.0254, "length", "in")).toBe("1 in");
});

describe("moduli", () => {
  test("are steel's unless given (Shigley Table A-5: 207 and 79.3 GPa)", () => {
    expect(carbonSteel).toEqual({ young: 207e9, shear: 79.3e9 });
    expect(moduliOrSteel({})).toEqual(carbonSteel);
    expect(moduliOrSteel({ young: 1, shear: 2 })).toEqual({ young: 1, shear: 2 });
    expect(() => moduliOrSteel({ young: 0 })).toThrow(/youngModulus/);
    expect(() => moduliOrSteel({ shear: -1 })).toThrow(/shearModulus/);
  });

  test("BAR-24: steel's G from E 207 GPa and ν 0.292 is within 1.5 % of the table's 79.3 (Shigley Table A-5; plausibility)", () => {
    expect(Math.abs(carbonSteel.young / (2 * 1.292) / carbonSteel.shear - 1)).toBeLessThanOrEqual(0.015);
  });
});
