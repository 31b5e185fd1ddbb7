import fc from "fast-check";
import { lusolve } from "mathjs";
import { describe, expect, test } from "vitest";
import { runComputation } from "../catalogue/run";
import { type BallastPlace, cornersWithBallast, placeForTarget, type SprungPlan } from "./ballast-corner";
import { ballastPlaceComputation } from "./ballast-corner.entry";
import { type CornerMasses, cornerNames, cornerSums } from "./corner";

const plan: SprungPlan = {
  wheelbase: 2.3,
  frontTrack: 1.25,
  rearTrack: 1.27,
  frontWheelRate: 18_000,
  rearWheelRate: 22_000,
};
const corners: CornerMasses = { leftFront: 212, rightFront: 198, leftRear: 224, rightRear: 206 };
const places = fc.record({
  behind: fc.double({ min: -0.8, max: 3.2, noNaN: true }),
  left: fc.double({ min: -0.7, max: 0.7, noNaN: true }),
});
const ballasts = fc.double({ min: 1, max: 80, noNaN: true });

/** Four springs under a rigid plate, all unknowns at once: sink, pitch and roll from the stiffness matrix. */
function plateGains({ behind, left }: BallastPlace, ballast: number): CornerMasses {
  const at = (name: keyof CornerMasses) => {
    const front = name.endsWith("Front");
    const half = (front ? plan.frontTrack : plan.rearTrack) / 2;
    const rate = front ? plan.frontWheelRate : plan.rearWheelRate;
    return { row: [1, front ? 0 : plan.wheelbase, name.startsWith("left") ? half : -half], rate };
  };
  const springs = cornerNames.map(at);
  const stiffness = [0, 1, 2].map((i) =>
    [0, 1, 2].map((j) =>
      springs.reduce((sum, { row, rate }) => sum + (row[i] ?? 0) * (row[j] ?? 0) * rate, 0),
    ),
  );
  const moved = lusolve(stiffness, [ballast, ballast * behind, ballast * left]).flat() as number[];
  const gain = (name: keyof CornerMasses) => {
    const { row, rate } = at(name);
    return rate * row.reduce((sum, lever, index) => sum + lever * (moved[index] ?? Number.NaN), 0);
  };
  return Object.fromEntries(cornerNames.map((name) => [name, gain(name)])) as unknown as CornerMasses;
}

describe("a ballast on four springs", () => {
  test("loads the corners as a general solver has it (mathjs, stiffness matrix of a rigid plate)", () => {
    fc.assert(
      fc.property(places, ballasts, (place, ballast) => {
        const after = cornersWithBallast(corners, { ballast, place, plan });
        const gains = plateGains(place, ballast);
        for (const name of cornerNames) expect(after[name] - corners[name]).toBeCloseTo(gains[name], 8);
      }),
    );
  });

  test("in the very middle of a car alike all round it adds a quarter to each (statics)", () => {
    const even = { ...plan, rearTrack: 1.25, rearWheelRate: 18_000 };
    const after = cornersWithBallast(corners, { ballast: 40, place: { behind: 1.15, left: 0 }, plan: even });
    for (const name of cornerNames) expect(after[name] - corners[name]).toBeCloseTo(10, 12);
  });

  test("the place for a target, with the ballast put there, gives the target", () => {
    const share = fc.double({ min: 0.47, max: 0.53, noNaN: true });
    fc.assert(
      fc.property(share, share, ballasts, (frontShare, other, ballast) => {
        for (const aim of [{ leftShare: other }, { crossShare: other }] as const) {
          const place = placeForTarget(corners, { ballast, frontShare, ...aim }, plan);
          // Plain sums: a place far off lifts a wheel on paper, which the scales' own sums would refuse.
          const { leftFront, rightFront, leftRear } = cornersWithBallast(corners, {
            ballast,
            place,
            plan,
          });
          const total = 840 + ballast;
          expect((leftFront + rightFront) / total).toBeCloseTo(frontShare, 9);
          const reached = "leftShare" in aim ? leftFront + leftRear : rightFront + leftRear;
          expect(reached / total).toBeCloseTo(other, 9);
        }
      }),
    );
  });

  test("where both axles share the roll alike, moving it sideways leaves the cross weight alone, and asking for one is refused", () => {
    const even = { ...plan, frontTrack: 1.25, rearTrack: 1.25, frontWheelRate: 2e4, rearWheelRate: 2e4 };
    const before = cornerSums(corners).cross;
    const after = cornersWithBallast(corners, { ballast: 50, place: { behind: 1, left: 0.6 }, plan: even });
    expect(cornerSums(after).cross).toBeCloseTo(before + 25, 9);
    const aim = { ballast: 20, frontShare: 0.5, crossShare: 0.5 };
    expect(() => placeForTarget(corners, aim, even)).toThrow(
      expect.objectContaining({ code: "CROSS_STAYS", place: "crossShare" }),
    );
  });

  test("both or neither of left share and cross weight is refused: one place cannot answer three shares", () => {
    const aim = { ballast: 20, frontShare: 0.5 };
    const refusal = expect.objectContaining({ code: "GIVE_ONE", place: "leftShare" });
    expect(() => placeForTarget(corners, aim, plan)).toThrow(refusal);
    expect(() => placeForTarget(corners, { ...aim, leftShare: 0.5, crossShare: 0.5 }, plan)).toThrow(refusal);
    expect(() => placeForTarget(corners, { ...aim, ballast: 0, leftShare: 0.5 }, plan)).toThrow(/ballast/);
  });
});

describe("weight.ballastPlace", () => {
  const { example } = ballastPlaceComputation;
  const run = (change: object = {}) => runComputation(ballastPlaceComputation, { ...example, ...change });
  const si = (of: ReturnType<typeof run>, name: string) => Number(of.outputs[name]?.si);

  test("moments about the front axle and the centre plane agree with the place it gives", () => {
    const of = run();
    const rear = si(of, "leftRear") + si(of, "rightRear");
    expect(rear * 2.3).toBeCloseTo(430 * 2.3 + 30 * si(of, "behind"), 9);
    const across =
      ((si(of, "leftFront") - si(of, "rightFront")) * 1.25) / 2 +
      ((si(of, "leftRear") - si(of, "rightRear")) * 1.26) / 2;
    expect(across).toBeCloseTo((14 * 1.25) / 2 + (18 * 1.26) / 2 + 30 * si(of, "left"), 9);
    expect(of.outputs.frontShare?.text).toBe("49.00 %");
    expect(of.outputs.leftShare?.text).toBe("51.00 %");
    expect(of.warnings).toEqual([]);
  });

  test.each([
    [-0.5, 0, true],
    [-0.3, 0, false],
    [1.3, 0, false],
    [1.5, 0, true],
    [0.5, 0.6, false],
    [0.5, -0.6, false],
    [0.5, 0.7, true],
    [0.5, -0.7, true],
  ])("%d wheelbases behind the front axle and %d m to the left: warned of %s", (behind, left, warned) => {
    // The shares that put 30 kg there, by moments about the front axle and the centre plane.
    const roll = (18 * 1.25 ** 2) / (18 * 1.25 ** 2 + 22 * 1.26 ** 2);
    const frontShare = (410 + 30 * (1 - behind)) / 870;
    const leftShare = (436 + 15 + 30 * left * (roll / 1.25 + (1 - roll) / 1.26)) / 870;
    const of = run({ frontShare, leftShare });
    expect(si(of, "behind")).toBeCloseTo(behind * 2.3, 9);
    expect(si(of, "left")).toBeCloseTo(left, 9);
    expect(of.warnings.join().includes("outside most cars")).toBe(warned);
    expect(of.warnings.join()).not.toContain("lift");
  });

  test("a place that would lift a wheel is refused, naming the wheel", () => {
    expect(() => run({ leftShare: "99 %" })).toThrow(
      expect.objectContaining({ code: "NEGATIVE", place: expect.stringMatching(/^right/) }),
    );
  });

  test("a cross weight may be asked for instead; a place beyond the car is warned of", () => {
    const of = run({ leftShare: undefined, crossShare: "50.2 %" });
    expect(of.outputs.crossShare?.text).toBe("50.20 %");
    expect(of.working.find(({ symbol }) => symbol === "y")?.formula).toContain("m_x");
    expect(run({ frontShare: "70 %" }).warnings.join()).toContain("outside most cars");
    expect(run({ leftShare: "70 %" }).warnings.join()).toContain("outside most cars");
  });
});
