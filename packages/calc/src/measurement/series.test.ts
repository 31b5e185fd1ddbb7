import fc from "fast-check";
import {
  cumulativeStdNormalProbability,
  errorFunction,
  mean,
  median,
  sampleStandardDeviation,
  medianAbsoluteDeviation as theirMad,
} from "simple-statistics";
import { describe, expect, test } from "vitest";
import { conformityProbability, normalProbability } from "./conformity";
import { medianAbsoluteDeviation, medianOf, robustSummary } from "./robust";
import { meanOf, repeatability, seriesLimit } from "./series";
import { combinedUncertainty, effectiveDegreesOfFreedom, expandedUncertainty } from "./uncertainty";

const readings = fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), { minLength: 2, maxLength: 60 });
const close = (a: number, b: number, size: number) =>
  expect(Math.abs(a - b), `${a} against ${b}`).toBeLessThanOrEqual(1e-12 * Math.max(size, 1e-6));
const sizeOf = (values: readonly number[]) => Math.max(...values.map(Math.abs));

describe("ten bolts at 90 N·m (Shigley, Mechanical Engineering Design, 9th ed., table 8-14)", () => {
  const preloads = [30.3, 32.5, 32.5, 32.9, 32.9, 33.8, 34.3, 34.7, 37.4, 40.5];
  const of = repeatability(preloads);
  test("FAS-59: mean preload 34.18 kN", () => expect(Math.abs(of.mean - 34.18)).toBeLessThanOrEqual(0.005));
  test("FAS-60: standard deviation 2.88 kN, which only the n − 1 form gives", () =>
    expect(Math.abs(of.standardDeviation - 2.88)).toBeLessThanOrEqual(0.005));
  test("FAS-61: ±2s is 16.9 % of the mean", () =>
    expect(Math.abs((200 * of.standardDeviation) / of.mean - 16.9)).toBeLessThanOrEqual(0.1));
});

describe("second opinion: simple-statistics", () => {
  test("mean, standard deviation, median and MAD agree over generated series", () => {
    fc.assert(
      fc.property(readings, (values) => {
        const size = sizeOf(values);
        const own = repeatability(values);
        close(own.mean, mean(values), size);
        close(own.standardDeviation, sampleStandardDeviation(values), 1e3 * size);
        close(medianOf(values), median(values), size);
        close(medianAbsoluteDeviation(values), theirMad(values), size);
      }),
    );
  });

  test("the normal distribution agrees to what their error function gives", () => {
    for (let hundredth = -300; hundredth <= 300; hundredth += 7) {
      const z = hundredth / 100;
      expect(Math.abs(normalProbability(z) - (1 + errorFunction(z / Math.SQRT2)) / 2)).toBeLessThan(2e-7);
      expect(Math.abs(normalProbability(z) - cumulativeStdNormalProbability(z))).toBeLessThan(1e-4);
    }
  });
});

describe("the normal distribution", () => {
  test.each([
    [0, 0.5],
    [1, 0.8413447460685429],
    [1.959963984540054, 0.975],
    [2.9999999, 0.9986501015234],
    [3.0000001, 0.9986501024099],
    [-6, 9.865876450376946e-10],
  ])("Φ(%d) (Abramowitz and Stegun table 26.1, from memory)", (z, expected) => {
    expect(Math.abs(normalProbability(z) / expected - 1)).toBeLessThan(1e-9);
  });

  test("is monotone, mirrored, and never leaves 0 to 1", () => {
    const z = fc.double({ min: -40, max: 40, noNaN: true });
    fc.assert(
      fc.property(z, z, (a, b) => {
        const [low, high] = [normalProbability(Math.min(a, b)), normalProbability(Math.max(a, b))];
        expect(low).toBeLessThanOrEqual(high + 1e-15);
        expect(low).toBeGreaterThanOrEqual(0);
        expect(high).toBeLessThanOrEqual(1);
        expect(normalProbability(a) + normalProbability(-a)).toBeCloseTo(1, 14);
      }),
    );
  });

  test("a probability far out in either tail keeps its digits", () => {
    const zone = { standardUncertainty: 1, limits: { lower: 6, upper: 100 } };
    expect(conformityProbability({ ...zone, value: 0 }) / 9.865876450376946e-10).toBeCloseTo(1, 9);
    const mirrored = { standardUncertainty: 1, limits: { lower: -100, upper: -6 } };
    expect(conformityProbability({ ...mirrored, value: 0 })).toBe(
      conformityProbability({ ...zone, value: 0 }),
    );
  });

  test("no probability without a known uncertainty", () => {
    const given = { value: 1, limits: { upper: 2 } };
    expect(() => conformityProbability({ ...given, standardUncertainty: 0 })).toThrow(/greater than zero/);
    expect(() => conformityProbability({ ...given, standardUncertainty: Number.NaN })).toThrow(/finite/);
    expect(() => conformityProbability({ ...given, standardUncertainty: 1, value: Number.NaN })).toThrow(
      /value/,
    );
  });
});

describe("a series", () => {
  test("of equal readings has exactly that mean and no scatter", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e3, max: 1e3, noNaN: true }),
        fc.integer({ min: 2, max: 40 }),
        (x, n) => {
          const of = repeatability(Array.from({ length: n }, () => x));
          expect(of).toMatchObject({ standardDeviation: 0, range: 0, repeatabilityLimit: 0 });
          expect(of.mean === x).toBe(true);
        },
      ),
    );
  });

  test("moved moves its mean and keeps its scatter", () => {
    const of = repeatability([1, 2, 4]);
    const moved = repeatability([101, 102, 104]);
    expect(moved.mean - of.mean).toBeCloseTo(100, 12);
    expect(moved.standardDeviation).toBeCloseTo(of.standardDeviation, 12);
    expect(of).toMatchObject({ count: 3, degreesOfFreedom: 2, range: 3 });
    expect(of.uncertaintyOfMean).toBeCloseTo(of.standardDeviation / Math.sqrt(3), 14);
    expect(of.repeatabilityLimit / of.standardDeviation).toBeCloseTo(2.772, 3);
  });

  test("that is empty, too short, too long or holds NaN is refused", () => {
    expect(() => meanOf([])).toThrow(/no reading/);
    expect(() => repeatability([1])).toThrow(/at least two/);
    expect(() => repeatability([1, Number.NaN])).toThrow(/readings.1 must be a finite number, but is NaN/);
    expect(() => meanOf(new Array(seriesLimit + 1).fill(0))).toThrow(/100000 readings, but has 100001/);
  });
});

describe("robust outliers", () => {
  test("one wild value does not hide itself, as it does from mean and standard deviation", () => {
    const camber = [-1, -1.25, -0.75, -1.1, -1.15, -3.5, -0.9];
    const of = robustSummary(camber);
    expect(of.outliers).toEqual([5]);
    const { mean: average, standardDeviation } = repeatability(camber);
    expect(Math.abs((-3.5 - average) / standardDeviation)).toBeLessThan(3);
  });

  test("the scale is the standard deviation's: 1.4826 MAD (NIST e-Handbook 1.3.5.17, from memory)", () => {
    const of = robustSummary([1, 2, 3, 4, 5]);
    expect(of).toMatchObject({ median: 3, mad: 1, scaleFrom: "mad", outliers: [] });
    expect(of.scale).toBeCloseTo(1.4826, 4);
    expect(of.scores[4]).toBeCloseTo(2 * 0.6745, 4);
  });

  test("more than half equal: the mean deviation takes over, and a small spread is not called wild", () => {
    const of = robustSummary([14, 14, 14, 14, 15, 14, 13, 14]);
    expect(of).toMatchObject({ mad: 0, scaleFrom: "meanDeviation", outliers: [] });
    expect(of.scale).toBeCloseTo(Math.sqrt(Math.PI / 2) * 0.25, 12);
  });

  test("all equal: no scale, no outlier", () => {
    expect(robustSummary([7, 7, 7])).toMatchObject({
      scale: 0,
      scaleFrom: "none",
      outliers: [],
      scores: [0, 0, 0],
    });
  });

  test("moving and stretching all values changes no score's verdict", () => {
    const values = fc.array(fc.integer({ min: -1000, max: 1000 }), { minLength: 3, maxLength: 30 });
    fc.assert(
      fc.property(values, fc.integer({ min: -9, max: 9 }), (list, shift) => {
        const scaled = list.map((each) => 4 * each + shift);
        expect(robustSummary(scaled).outliers).toEqual(robustSummary(list).outliers);
      }),
    );
  });

  test("a threshold must be greater than zero", () =>
    expect(() => robustSummary([1, 2], 0)).toThrow(/threshold/));
});

describe("combination", () => {
  const standards = fc.array(fc.double({ min: 0, max: 1e3, noNaN: true }), { minLength: 1, maxLength: 12 });

  test("is at least its largest part, at most the sum, and order does not matter", () => {
    fc.assert(
      fc.property(standards, (list) => {
        const parts = list.map((standard) => ({ standard }));
        const combined = combinedUncertainty(parts);
        expect(combined).toBeGreaterThanOrEqual(Math.max(...list) * (1 - 1e-12));
        expect(combined).toBeLessThanOrEqual(list.reduce((a, b) => a + b, 0) * (1 + 1e-12) + 1e-300);
        expect(combinedUncertainty([...parts].reverse())).toBeCloseTo(combined, 9);
        expect(expandedUncertainty(parts)).toBe(2 * combined);
      }),
    );
  });

  test("data-sheet contributions have infinite degrees of freedom; one series has its own", () => {
    expect(effectiveDegreesOfFreedom([{ standard: 1 }, { standard: 2 }])).toBe(Number.POSITIVE_INFINITY);
    expect(effectiveDegreesOfFreedom([{ standard: 0, degreesOfFreedom: 3 }])).toBe(Number.POSITIVE_INFINITY);
    expect(effectiveDegreesOfFreedom([{ standard: 2, degreesOfFreedom: 4 }])).toBe(4);
    expect(effectiveDegreesOfFreedom([{ standard: 1, degreesOfFreedom: 4 }, { standard: 1 }])).toBeCloseTo(
      16,
      12,
    );
  });

  test("nothing, a negative or an unknown contribution is refused", () => {
    expect(() => combinedUncertainty([])).toThrow(/at least one/);
    expect(() => combinedUncertainty([{ standard: 1 }, { standard: -1 }])).toThrow(
      /contributions.1.standard/,
    );
    expect(() => combinedUncertainty([{ standard: Number.NaN }])).toThrow(/contributions.0.standard/);
    expect(() => combinedUncertainty([{ standard: 1, sensitivity: Number.NaN }])).toThrow(/sensitivity/);
    expect(() => effectiveDegreesOfFreedom([{ standard: 1, degreesOfFreedom: 0 }])).toThrow(
      /degreesOfFreedom/,
    );
  });
});
