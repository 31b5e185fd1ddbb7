import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Verdict } from "../measurement/verdict";
import {
  backgroundCorrection,
  distanceDrop,
  levelAtDistance,
  levelWithoutBackground,
  sumOfLevels,
} from "./level";
import { judgeLevel, levelUncertainty } from "./margin";
import { stationaryTestSpeed } from "./test-speed";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const levels = fc.array(between(30, 140), { minLength: 1, maxLength: 8 });

test("a level far above the rest swallows them instead of overflowing", () => {
  expect(sumOfLevels([4000, 0])).toBe(4000);
  expect(sumOfLevels([0, 4000])).toBe(4000);
});

describe("distance", () => {
  test("there and back is where it was; further is quieter", () => {
    fc.assert(
      fc.property(between(40, 130), between(0.3, 50), between(0.3, 50), (level, from, to) => {
        fc.pre(Math.abs(to / from - 1) > 1e-9);
        const there = levelAtDistance({ level, from, to });
        expect(levelAtDistance({ level: there, from: to, to: from })).toBeCloseTo(level, 9);
        expect(Math.sign(level - there)).toBe(Math.sign(to - from));
      }),
    );
    expect(distanceDrop(1, 10)).toBeCloseTo(20, 12);
    expect(() => distanceDrop(0, 1)).toThrow(/from must be greater/);
    expect(() => distanceDrop(1, 0)).toThrow(/to must be greater/);
    expect(() => levelAtDistance({ level: Number.NaN, from: 1, to: 2 })).toThrow(/level/);
  });
});

describe("sum", () => {
  test("is at least the loudest, at most 10·log n above it, whatever the order", () => {
    fc.assert(
      fc.property(levels, (each) => {
        const [sum, loudest] = [sumOfLevels(each), Math.max(...each)];
        expect(sum).toBeGreaterThanOrEqual(loudest);
        expect(sum).toBeLessThanOrEqual(loudest + 10 * Math.log10(each.length) + 1e-9);
        expect(sumOfLevels([...each].reverse())).toBeCloseTo(sum, 9);
        expect(sumOfLevels(each.map((level) => level + 10))).toBeCloseTo(sum + 10, 9);
      }),
    );
  });

  test("n alike are 10·log n louder; none is refused, and so is what is no number", () => {
    expect(sumOfLevels(Array.from({ length: 10 }, () => 70))).toBeCloseTo(80, 12);
    expect(sumOfLevels([94])).toBe(94);
    expect(() => sumOfLevels([])).toThrow(/at least one level/);
    expect(() => sumOfLevels([80, Number.NaN])).toThrow(/levels\.1/);
  });
});

describe("background", () => {
  test("taken off and put back gives the reading", () => {
    fc.assert(
      fc.property(between(60, 130), between(3, 40), (reading, margin) => {
        const background = reading - margin;
        fc.pre(reading - background >= 3);
        const source = levelWithoutBackground(reading, background);
        expect(sumOfLevels([source, background])).toBeCloseTo(reading, 9);
        expect(source).toBeLessThan(reading);
      }),
    );
  });

  test("less than 3 dB below the reading is refused", () => {
    expect(backgroundCorrection(3)).toBeCloseTo(3.0206, 3);
    expect(() => backgroundCorrection(2.9)).toThrow(
      /must be at least 3 dB above the background to be corrected, but is 2\.9 dB/,
    );
    expect(() => backgroundCorrection(Number.NaN)).toThrow(/margin must be a finite number/);
    expect(() => levelWithoutBackground(80, Number.NaN)).toThrow(/background/);
    expect(() => levelWithoutBackground(Number.NaN, 80)).toThrow(/reading/);
  });
});

describe("against a limit", () => {
  test("U is 2·√(a²/3 + u²), and not known without the meter", () => {
    expect(levelUncertainty({ meterAccuracy: 1.5 })).toBeCloseTo((2 * 1.5) / Math.sqrt(3), 12);
    expect(levelUncertainty({ meterAccuracy: 0, otherUncertainty: 0.7 })).toBeCloseTo(1.4, 12);
    expect(levelUncertainty({ meterAccuracy: 1.5, otherUncertainty: 0.7 })).toBeCloseTo(
      2 * Math.sqrt(0.75 + 0.49),
      12,
    );
    expect(levelUncertainty({ otherUncertainty: 0.7 })).toBeNull();
    expect(() => levelUncertainty({ meterAccuracy: -1 })).toThrow(/meterAccuracy/);
    expect(() => levelUncertainty({ otherUncertainty: -1 })).toThrow(/otherUncertainty/);
  });

  test.each<[number, number | null, Verdict, string]>([
    [98.5, 1.5, "inside", "exactly U below is proven inside"],
    [98.6, 1.5, "cannotTell", "less than U below is not"],
    [101.5, 1.5, "cannotTell", "exactly U above is not proven outside"],
    [101.6, 1.5, "outside", "more than U above is"],
    [100, 0, "inside", "the limit itself is allowed"],
    [60, null, "cannotTell", "nothing is proven with a meter nobody knows"],
  ])("%d dB with U = %s at a limit of 100 is %s: %s", (level, expandedUncertainty, expected, _why) => {
    expect(judgeLevel({ level, limit: 100, expandedUncertainty })).toBe(expected);
  });

  test("refuses levels that are no numbers even when the uncertainty is unknown", () => {
    expect(() => judgeLevel({ level: Number.NaN, limit: 100, expandedUncertainty: null })).toThrow(/level/);
    expect(() => judgeLevel({ level: 100, limit: Number.NaN, expandedUncertainty: null })).toThrow(/limit/);
  });
});

test("the test speed never falls with the rated speed and has no jumps at 5000 and 7500 rev/min", () => {
  const rpm = Math.PI / 30;
  const at = (rated: number): number => stationaryTestSpeed(rated * rpm) / rpm;
  expect([at(5000), at(5001), at(7499), at(7500), at(7600)].map((n) => Number(n.toFixed(6)))).toEqual([
    3750, 3750, 3750, 3750, 3800,
  ]);
  for (let rated = 1000; rated < 12_000; rated += 250)
    expect(at(rated + 250)).toBeGreaterThanOrEqual(at(rated) - 1e-9);
  expect(() => stationaryTestSpeed(0)).toThrow(/ratedSpeed/);
});
