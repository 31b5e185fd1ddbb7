import { describe, expect, test } from "vitest";
import { cgHeight, cgHeightUncertainty, shortcutAboveHubs } from "./centre";
import { cornerSums, crossShareChange, unwarpedCorners } from "./corner";

const near = (value: number, expected: number, tolerance: number) =>
  expect(Math.abs(value - expected), `${value} against ${expected}`).toBeLessThanOrEqual(tolerance);

describe("corner weights, lb (spring supplier's article, worked example, read)", () => {
  const corners = { leftFront: 694, rightFront: 606, leftRear: 670, rightRear: 585 };
  const sums = cornerSums(corners);

  test("CWT-01: diagonal sums 1279 and 1276", () =>
    expect([sums.otherCross, sums.cross]).toEqual([1279, 1276]));
  test("CWT-02: cross weight, right front and left rear, 49.94 % (percentage worked out)", () =>
    near(100 * sums.crossShare, 49.94, 0.005));

  test("CWT-04, CWT-05: targets 694 left front and 585 right rear, from side totals and the axle shares 50.9 and 49.1 %", () => {
    near(1364 * 0.509, 694, 0.5);
    near(1191 * 0.491, 585, 0.5);
    const unwarped = unwarpedCorners(corners);
    near(unwarped.leftFront, 694, 0.5);
    near(unwarped.rightRear, 585, 0.5);
    near(sums.left, 1364, 0);
    near(sums.right, 1191, 0);
  });

  test("CWT-06: left 53.39 %, rear 49.12 % (magazine article's definitions, numbers worked out)", () => {
    near(100 * sums.leftShare, 53.39, 0.01);
    near(100 * sums.rearShare, 49.12, 0.01);
  });

  test("CWT-08: 12 lb on each end of one diagonal moves the cross weight by 0.939 points (first principles, from memory)", () => {
    near(100 * crossShareChange(12, corners), 0.939, 0.001);
    const moved = { leftFront: 682, rightFront: 618, leftRear: 682, rightRear: 573 };
    near(100 * (cornerSums(moved).crossShare - sums.crossShare), 0.939, 0.001);
  });

  test("CWT-09: a symmetric car has 50 % (first principles, from memory)", () => {
    expect(cornerSums({ leftFront: 250, rightFront: 250, leftRear: 280, rightRear: 280 }).crossShare).toBe(
      0.5,
    );
  });
});

describe("height of the centre of gravity from a raised rear axle", () => {
  const weighing = {
    frontMass: 430,
    rearMass: 470,
    wheelbase: 2.4,
    frontRadius: 0.29,
    rearRadius: 0.29,
    raised: "rear",
    lift: 0.5,
    lowMass: 450,
  } as const;
  const of = cgHeight(weighing);

  test("CWT-11: 0.2504 m above the axles (forum derivation L·ΔW/(W·tan θ), formula read, numbers worked out)", () =>
    near(of.aboveHubs, 0.2504, 0.0002));
  test("CWT-12: 0.5404 m above the ground with wheels of 0.29 m (derivation of 1997, equations 1 to 9)", () =>
    near(of.height, 0.5404, 0.0002));

  test("CWT-13: the shortcut L²·ΔW/(m·H) gives 0.256 m, 2.2 % too high (equation 9 of the same)", () => {
    near(shortcutAboveHubs(weighing, of.gain), 0.256, 0.0002);
    near(shortcutAboveHubs(weighing, of.gain) / of.aboveHubs - 1, 0.022, 0.001);
  });

  test("CWT-14: 1 kg on the change and 2 mm on the lift are 0.0126 m (first principles, from memory)", () => {
    near(cgHeightUncertainty(weighing, { gain: 1, lift: 0.002 }), 0.0126, 0.0002);
  });
});
