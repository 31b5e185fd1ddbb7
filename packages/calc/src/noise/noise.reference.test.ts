import { describe, expect, test } from "vitest";
import { backgroundCorrection, distanceDrop, sumOfLevels } from "./level";
import { stationaryTestSpeed } from "./test-speed";

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
