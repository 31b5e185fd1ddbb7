import { describe, expect, test } from "vitest";
import { dueStanding, monthWeeks, shiftMonth } from "./due";

describe("what falls due", () => {
  test.each([
    [undefined, "unknown"],
    ["2026-11-28", "past"],
    ["2026-11-29", "soon"],
    ["2027-02-27", "soon"],
    ["2027-02-28", "later"],
  ] as const)("valid to %s is %s on 29 November 2026", (validTo, standing) => {
    expect(dueStanding(validTo, "2026-11-29")).toBe(standing);
  });
});

describe("the weeks of a month", () => {
  test("begin on Monday, and hold every day once (February 2026 begins on a Sunday)", () => {
    const weeks = monthWeeks("2026-02");
    expect(weeks.map((week) => week.length)).toEqual([7, 7, 7, 7, 7]);
    expect(weeks[0]).toEqual([
      undefined,
      undefined,
      undefined,
      undefined,
      undefined,
      undefined,
      "2026-02-01",
    ]);
    expect(weeks.flat().filter((day) => day !== undefined)).toHaveLength(28);
    expect(monthWeeks("2028-02").flat().filter(Boolean).at(-1)).toBe("2028-02-29");
  });

  test("of what is no month are refused", () => {
    for (const odd of ["2026-13", "2026-00", "26-01", "2026-1", "x"])
      expect(() => monthWeeks(odd)).toThrow("is no month");
  });

  test("go on over the turn of the year", () => {
    expect(shiftMonth("2026-12", 1)).toBe("2027-01");
    expect(shiftMonth("2026-01", -1)).toBe("2025-12");
  });
});
