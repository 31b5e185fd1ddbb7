import { describe, expect, test } from "vitest";
import { runComputation } from "../catalogue/run";
import { ballastComputation } from "./ballast.entry";
import { weightComputations } from "./catalogue";
import { centreOfGravityComputation } from "./centre.entry";
import { cornerWeightComputation } from "./corner.entry";
import { crossWeightComputation } from "./cross.entry";

type Run = ReturnType<typeof runComputation>;
const si = (run: Run, name: string): number => Number(run.outputs[name]?.si);

test.each(weightComputations.map((one) => [one.name, one] as const))("%s runs its example", (name, one) => {
  expect(name).toMatch(/^weight\.[a-zA-Z]+$/);
  const run = runComputation(one, one.example);
  expect(run.working.length).toBeGreaterThan(4);
  expect(run.working.every((step) => step.text !== "")).toBe(true);
  expect(run.warnings).toEqual([]);
});

test("CWT-01, CWT-02 and CWT-06 in the trade's own units; unwarped corners keep the total", () => {
  const run = runComputation(cornerWeightComputation, cornerWeightComputation.example);
  const pound = 0.45359237;
  expect(si(run, "otherCross") / pound).toBeCloseTo(1279, 9);
  expect(si(run, "cross") / pound).toBeCloseTo(1276, 9);
  expect(run.outputs.crossShare?.text).toBe("49.94 %");
  expect(run.outputs.leftShare?.text).toBe("53.39 %");
  const unwarped = ["unwarpedLeftFront", "unwarpedRightFront", "unwarpedLeftRear", "unwarpedRightRear"];
  expect(unwarped.reduce((sum, name) => sum + si(run, name), 0)).toBeCloseTo(si(run, "total"), 9);
  expect(run.working.find(({ symbol }) => symbol === "m_x")?.note).toContain("other diagonal");
});

test("weight.cross reaches the cross weight wanted; turns need a thread", () => {
  const run = runComputation(crossWeightComputation, crossWeightComputation.example);
  expect(si(run, "crossShare")).toBeCloseTo(0.5, 12);
  expect(si(run, "turns") * 0.002).toBeCloseTo(si(run, "seatMovement"), 12);
  const corners = ["leftFront", "rightFront", "leftRear", "rightRear"];
  expect(corners.reduce((sum, name) => sum + si(run, name), 0)).toBeCloseTo(980, 9);
  const { pitch: _pitch, ...plain } = crossWeightComputation.example;
  expect(runComputation(crossWeightComputation, plain).outputs.turns?.si).toBeNull();
  const other = runComputation(crossWeightComputation, {
    ...crossWeightComputation.example,
    corner: "rightRear",
  });
  expect(Math.sign(si(other, "seatMovement"))).toBe(-Math.sign(si(run, "seatMovement")));
});

describe("weight.centreOfGravity", () => {
  const { example } = centreOfGravityComputation;
  const run = (change: object) => runComputation(centreOfGravityComputation, { ...example, ...change });

  test("CWT-11 to CWT-14 through the catalogue", () => {
    const of = run({});
    expect(Math.abs(si(of, "aboveHubs") - 0.2504)).toBeLessThanOrEqual(0.0002);
    expect(Math.abs(si(of, "height") - 0.5404)).toBeLessThanOrEqual(0.0002);
    expect(Math.abs(si(of, "heightUncertainty") / 2 - 0.0126)).toBeLessThanOrEqual(0.0002);
    expect(of.working.find(({ symbol }) => symbol === "c′")?.note).toContain("not used");
  });

  test("in the plan alone without a raised axle; half of one is refused by name", () => {
    const bare = {
      raised: undefined,
      lift: undefined,
      lowMass: undefined,
      frontRadius: undefined,
      rearRadius: undefined,
    };
    const plan = run(bare);
    expect(plan.outputs.height?.si).toBeNull();
    expect(si(plan, "left")).toBeCloseTo((2 * 1.25 + 4 * 1.26) / 2 / 900, 12);
    expect(() => run({ rearRadius: undefined })).toThrow(/rearRadius not given/);
  });

  test("an unknown uncertainty is not nought, and little tilt is warned of", () => {
    const unknown = run({ gainUncertainty: undefined, liftUncertainty: undefined });
    expect(unknown.outputs.heightUncertainty?.si).toBeNull();
    expect(unknown.warnings.join()).toContain("No uncertainty");
    expect(run({ gainUncertainty: undefined }).warnings.join()).toContain("the one that matters");
    expect(run({ lift: "200 mm", lowMass: "438 kg" }).warnings.join()).toContain("8°");
    expect(run({ lowMass: "425 kg" }).warnings.join()).toContain("Below the hubs");
  });
});

describe("weight.ballast", () => {
  const { example } = ballastComputation;
  const run = (change: object) => runComputation(ballastComputation, { ...example, ...change });

  test("reaches the front share with ballast at a place, and the place for a total", () => {
    expect(si(run({}), "frontShare")).toBeCloseTo(0.48, 12);
    const placed = run({ ballastAt: undefined, total: "830 kg" });
    expect(si(placed, "frontShare")).toBeCloseTo(0.48, 12);
    expect(si(placed, "total")).toBe(830);
    const filled = run({ frontShare: undefined, total: "830 kg" });
    expect(si(filled, "ballast")).toBe(30);
    expect(si(filled, "front") + si(filled, "rear")).toBeCloseTo(830, 9);
  });

  test("wants two of three, and refuses a total that is passed already", () => {
    expect(() => run({ total: "830 kg" })).toThrow(/give two of/);
    expect(() => run({ ballastAt: undefined })).toThrow(/give two of/);
    expect(() => run({ ballastAt: undefined, total: "790 kg" })).toThrow(/has 800.0 kg already/);
    expect(() => run({ ballastAt: "2 m" })).toThrow(/must lie beyond/);
  });

  test("warns of a place outside the car and of much ballast", () => {
    expect(run({ ballastAt: undefined, total: "801 kg" }).warnings.join()).toContain("outside most cars");
    expect(run({ frontShare: "60 %", ballastAt: "100 mm" }).warnings.join()).toContain("a tenth");
  });
});
