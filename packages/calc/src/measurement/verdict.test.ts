import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { acceptanceZone, type Verdict, verdict } from "./verdict";

const zone = { lower: 5, upper: 15 };
const judge = (value: number, expandedUncertainty = 1.5) =>
  verdict({ value, expandedUncertainty, limits: zone });

// MEA-17: the rule as told by summary pages of ISO 14253-1:2017; the standard itself was not seen.
describe("the verdict of ISO 14253-1 (MEA-17)", () => {
  test.each<[number, Verdict, string]>([
    [10, "inside", "well within"],
    [6.5, "inside", "on the lower guard, which counts as inside"],
    [13.5, "inside", "on the upper guard, which counts as inside"],
    [6.4999, "cannotTell", "just short of the lower guard"],
    [5.8, "cannotTell", "MEA-19: within the limits, but nearer to one than the uncertainty"],
    [5, "cannotTell", "on a limit"],
    [4.2, "cannotTell", "outside the limits, but by less than the uncertainty"],
    [3.5, "cannotTell", "on the outer guard, which is not yet outside"],
    [16.5, "cannotTell", "on the other outer guard"],
    [3.4999, "outside", "proven below"],
    [16.5001, "outside", "proven above"],
  ])("%d is %s: %s", (value, expected) => {
    expect(judge(value)).toBe(expected);
  });

  test("a zone with one limit has one guard", () => {
    const lower = (value: number) => verdict({ value, expandedUncertainty: 1, limits: { lower: 5 } });
    const upper = (value: number) => verdict({ value, expandedUncertainty: 1, limits: { upper: 5 } });
    expect([3.9, 4, 5.9, 6, 1e9].map(lower)).toEqual([
      "outside",
      "cannotTell",
      "cannotTell",
      "inside",
      "inside",
    ]);
    expect([6.1, 6, 4.1, 4, -1e9].map(upper)).toEqual([
      "outside",
      "cannotTell",
      "cannotTell",
      "inside",
      "inside",
    ]);
  });

  test("a zone narrower than twice the uncertainty is never proven inside", () => {
    expect(judge(10, 5)).toBe("inside");
    expect(judge(10, 5.001)).toBe("cannotTell");
    expect(acceptanceZone(zone, 5.001).empty).toBe(true);
    expect(acceptanceZone(zone, 5).empty).toBe(false);
  });

  test("without uncertainty the limits themselves are inside, and nothing is left untold", () => {
    expect([4.999999, 5, 15, 15.000001].map((value) => judge(value, 0))).toEqual([
      "outside",
      "inside",
      "inside",
      "outside",
    ]);
    expect(verdict({ value: 0, expandedUncertainty: 0, limits: { lower: 0, upper: 0 } })).toBe("inside");
  });

  test("a reading on a guard is on it in every unit", () => {
    const minute = Math.PI / 180 / 60;
    for (const scale of [1, minute, 0.0254, 1e-9, 1e9, 1 / 3]) {
      const limits = { lower: 0.1 * scale, upper: 5 * scale };
      const at = (value: number) =>
        verdict({ value: value * scale, expandedUncertainty: 0.2 * scale, limits });
      expect(at(0.3), String(scale)).toBe("inside");
      expect(at(0.3 - 1e-9), String(scale)).toBe("cannotTell");
      expect(at(-0.1), String(scale)).toBe("cannotTell");
      expect(at(-0.1 - 1e-9), String(scale)).toBe("outside");
    }
  });

  test("MEA-18: limits 5' and 15' with U = 1.5' leave 6.5' to 13.5'", () => {
    expect(acceptanceZone(zone, 1.5)).toEqual({ lower: 6.5, upper: 13.5, empty: false });
    expect(acceptanceZone({ upper: 15 }, 1.5)).toEqual({ upper: 13.5, empty: false });
    expect(acceptanceZone({ lower: 5 }, 99)).toEqual({ lower: 104, empty: false });
  });
});

describe("no verdict without knowing", () => {
  const bad = fc.constantFrom(Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY);
  const good = { value: 10, expandedUncertainty: 1, limits: zone };

  test("NaN or an infinity anywhere is refused", () => {
    fc.assert(
      fc.property(bad, (number) => {
        expect(() => verdict({ ...good, value: number })).toThrow(/^value must be a finite number/);
        expect(() => verdict({ ...good, expandedUncertainty: number })).toThrow(/^expandedUncertainty must/);
        expect(() => verdict({ ...good, limits: { lower: number } })).toThrow(/^limits.lower must/);
        expect(() => verdict({ ...good, limits: { ...zone, upper: number } })).toThrow(/^limits.upper must/);
        expect(() => acceptanceZone(zone, number)).toThrow(/finite/);
      }),
    );
  });

  test("no limit, inverted limits and a negative uncertainty are refused", () => {
    expect(() => verdict({ ...good, limits: {} })).toThrow(/neither is given/);
    expect(() => verdict({ ...good, limits: { lower: 2, upper: 1 } })).toThrow(/2 > 1/);
    expect(() => verdict({ ...good, expandedUncertainty: -1 })).toThrow(/negative, but is -1/);
  });
});

describe("the verdict is monotone", () => {
  const number = fc.double({ min: -1e6, max: 1e6, noNaN: true });
  const cases = fc
    .record({
      a: number,
      b: number,
      value: number,
      uncertainty: fc.double({ min: 0, max: 1e6, noNaN: true }),
    })
    .map(({ a, b, value, uncertainty }) => ({
      value,
      expandedUncertainty: uncertainty,
      limits: { lower: Math.min(a, b), upper: Math.max(a, b) },
    }));

  test("more uncertainty proves nothing that less did not", () => {
    fc.assert(
      fc.property(cases, fc.double({ min: 0, max: 1, noNaN: true }), (given, share) => {
        const wide = verdict(given);
        if (wide === "cannotTell") return;
        expect(verdict({ ...given, expandedUncertainty: given.expandedUncertainty * share })).toBe(wide);
      }),
    );
  });

  test("a value nearer to the middle of the zone is never judged worse", () => {
    const rank: Record<Verdict, number> = { outside: 0, cannotTell: 1, inside: 2 };
    fc.assert(
      fc.property(cases, fc.double({ min: 0, max: 1, noNaN: true }), (given, share) => {
        const middle = (given.limits.lower + given.limits.upper) / 2;
        const nearer = middle + (given.value - middle) * share;
        expect(rank[verdict({ ...given, value: nearer })]).toBeGreaterThanOrEqual(rank[verdict(given)]);
      }),
    );
  });

  test("a wider zone is never judged worse", () => {
    const rank: Record<Verdict, number> = { outside: 0, cannotTell: 1, inside: 2 };
    fc.assert(
      fc.property(cases, fc.double({ min: 0, max: 1e6, noNaN: true }), (given, more) => {
        const wider = { ...given.limits, upper: given.limits.upper + more };
        expect(rank[verdict({ ...given, limits: wider })]).toBeGreaterThanOrEqual(rank[verdict(given)]);
      }),
    );
  });
});
