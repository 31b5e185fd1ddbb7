import { describe, expect, test } from "vitest";
import { runComputation } from "../catalogue/run";
import { backgroundCorrection, distanceDrop, sumOfLevels } from "./level";
import { noiseMarginComputation } from "./margin.entry";
import { stationaryTestSpeed } from "./test-speed";
import { noiseTestSpeedComputation } from "./test-speed.entry";

const within = (found: number, expected: number, tolerance: number): void =>
  expect(Math.abs(found - expected)).toBeLessThanOrEqual(tolerance);
const revPerMinute = Math.PI / 30;

describe("levels (first principles, from memory)", () => {
  test("NOI-01: from 0.5 to 2 m it falls by 12.04 dB", () => within(distanceDrop(0.5, 2), 12.04, 0.005));
  test("NOI-02: from 0.5 to 7.5 m by 23.52 dB", () => within(distanceDrop(0.5, 7.5), 23.52, 0.005));
  test("NOI-03: 6 dB for each doubling of the distance (forum post; read)", () =>
    within(distanceDrop(1, 2), 6, 0.03));
  test("NOI-04: two sources alike are 3.01 dB louder than one", () =>
    within(sumOfLevels([80, 80]) - 80, 3.01, 0.005));
  test("NOI-05: a background 10 dB below adds 0.46 dB, which is why the rule asks for 10", () =>
    within(backgroundCorrection(10), 0.46, 0.005));
});

test.each([
  [4800, 3600],
  [6000, 3750],
  [8000, 4000],
])(
  "NOI-12: an engine rated at %d rev/min is tested at %d (ISO 5130:2007 + A1:2012; UN R51 Annex 3; from memory)",
  (rated, expected) =>
    expect(stationaryTestSpeed(rated * revPerMinute) / revPerMinute).toBeCloseTo(expected, 9),
);

describe("rules of static tests", () => {
  const judged = (change: object) =>
    runComputation(noiseMarginComputation, {
      readings: [97, 97, 97],
      limit: 105,
      meterAccuracy: 1,
      ...change,
    });

  test("NOI-06: of several outlets the highest reading counts (national competition rules 2025, app. 8; read)", () => {
    expect(judged({ readings: ["96 dB(A)", "99 dB(A)", "97 dB(A)"] }).outputs.level?.si).toBe(99);
  });

  test("NOI-07: at 2 m instead of 0.5 m the same car shows 12 dB less, so limits of one are no limits of the other (same rules; read)", () =>
    within(distanceDrop(0.5, 2), 12, 0.05));

  test("NOI-08: a background 10 dB(A) below is quiet enough, one less is not (same rules; read)", () => {
    expect(judged({ background: 87 }).warnings).toEqual([]);
    expect(judged({ background: 88 }).warnings).toHaveLength(1);
  });

  test.each([
    ["NOI-09", 118, "three named race series"],
    ["NOI-10", 101, "individual approval"],
    ["NOI-11", 105, "a usual track-day limit"],
  ])("%s: %d dB(A), %s (read): proven within it 2 dB below, not at it", (_id, limit) => {
    const at = (level: number) => judged({ limit, readings: [level, level, level] }).outputs.verdict?.text;
    expect(at(limit - 2)).toBe("inside");
    expect(at(limit)).toBe("cannot tell");
    expect(at(limit + 2)).toBe("outside");
  });

  test("NOI-09, NOI-10: 3/4, and 2/3 to 3/4, of an engine's highest speed (read)", () => {
    const { outputs } = runComputation(noiseTestSpeedComputation, { ratedSpeed: "6600 rev/min" });
    expect(outputs.threeQuarters?.text).toBe("4950 rev/min");
    expect(outputs.twoThirds?.text).toBe("4400 rev/min");
  });

  test("NOI-13: three readings within 2 dB, 2 dB itself allowed (ISO 5130:2007, from memory)", () => {
    expect(judged({ readings: [95, 97, 96] }).warnings).toEqual([]);
    expect(judged({ readings: [94.9, 97, 96] }).warnings.join()).toContain("more than 2 dB");
    expect(judged({ readings: [96, 97] }).warnings.join()).toContain("ISO 5130 takes three");
  });
});
