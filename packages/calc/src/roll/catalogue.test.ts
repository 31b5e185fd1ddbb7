import { describe, expect, test } from "vitest";
import { runComputation } from "../catalogue/run";
import { rollAxleComputation } from "./axle.entry";
import { rollBarsComputation } from "./bars.entry";
import { rollComputations } from "./catalogue";
import { compareBars } from "./compare";
import { rollCorneringComputation } from "./cornering.entry";
import { rollGradient } from "./gradient";
import { rollAxleLoadsComputation } from "./longitudinal.entry";
import { sampleCar } from "./sample-car.fixture";
import { rollTargetComputation } from "./target.entry";
import { rollAt } from "./transfer";

type Run = ReturnType<typeof runComputation>;
const si = (run: Run, name: string): number => Number(run.outputs[name]?.si);
const step = (run: Run, symbol: string) => run.working.find((line) => line.symbol === symbol);
const { front, rear, cgHeight } = sampleCar;

test.each(rollComputations.map((one) => [one.name, one] as const))("%s runs its own example", (name, one) => {
  expect(name).toMatch(/^roll\.[a-zA-Z]+$/);
  const run = runComputation(one, one.example);
  expect(run.working.length).toBeGreaterThan(5);
  expect(run.working.every(({ text }) => text !== "")).toBe(true);
  expect(run.warnings).toEqual([]);
});

describe("roll.axle", () => {
  const axle = { track: "1300 mm", springWheelRate: "20 N/mm" };
  test("springs alone, with a bar, and on tyres", () => {
    const bare = runComputation(rollAxleComputation, axle);
    expect(si(bare, "rollRate")).toBeCloseTo(16_900, 9);
    expect([si(bare, "barRollRate"), si(bare, "barShare"), bare.outputs.onTyres?.si]).toEqual([0, 0, null]);
    expect(step(bare, "k_b")?.text).toBe("not given: taken as not fitted");
    expect(step(bare, "k_t")?.text).toBe("not given: taken as rigid");
    const full = runComputation(rollAxleComputation, {
      ...axle,
      barWheelRate: "20 N/mm",
      tyreRate: "40 N/mm",
    });
    expect(si(full, "barShare")).toBeCloseTo(0.5, 12);
    expect(si(full, "onTyres")).toBeCloseTo(16_900, 6);
    expect(full.working.some(({ text }) => text.startsWith("not given"))).toBe(false);
  });
});

describe("roll.cornering", () => {
  const car = { front, rear, cgHeight };
  test("answers what the functions answer", () => {
    const run = runComputation(rollCorneringComputation, { ...car, acceleration: 6 });
    const state = rollAt(sampleCar, 6);
    expect(si(run, "angle")).toBe(state.angle);
    expect(si(run, "gradient")).toBe(rollGradient(sampleCar).gradient);
    expect(si(run, "frontTransferShare")).toBe(state.frontTransferShare);
    expect(si(run, "frontOuter") - si(run, "frontInner")).toBeCloseTo(2 * si(run, "frontTransfer"), 9);
    expect(si(run, "rearOuter") - si(run, "rearInner")).toBeCloseTo(2 * si(run, "rearTransfer"), 9);
    expect(si(run, "frontOuter") + si(run, "frontInner")).toBeCloseTo(400 * 9.80665, 6);
    expect(si(run, "rearOuter") + si(run, "rearInner")).toBeCloseTo(420 * 9.80665, 6);
    expect(si(run, "liftAt")).toBeGreaterThan(6);
    expect(["front", "rear"]).toContain(run.outputs.liftAxle?.text);
    expect(Number(step(run, "φ′₀")?.value)).toBeLessThan(Number(step(run, "φ′")?.value));
  });

  test("the parts of each axle's transfer in the working add up", () => {
    const run = runComputation(rollCorneringComputation, { ...car, acceleration: 6 });
    for (const index of ["f", "r"]) {
      const parts = ["e", "g", "u", "t"].map((part) => Number(step(run, `ΔW_${part}${index}`)?.value));
      expect(parts.reduce((sum, part) => sum + part, 0)).toBeCloseTo(
        Number(step(run, `ΔW_${index}`)?.value),
        6,
      );
    }
  });

  test("a car so wide that no wheel lifts says so; large roll and more than tyres hold are warned of", () => {
    const wide = { front: { ...front, track: 3 }, rear: { ...rear, track: 3 }, cgHeight: 0.35 };
    const run = runComputation(rollCorneringComputation, { ...wide, acceleration: 1.2 * 9.80665 + 0.01 });
    expect(run.outputs.liftAt?.si).toBeNull();
    expect(run.outputs.liftAxle?.text).toBe("neither below 3 g");
    expect(run.warnings).toEqual(["More than 1.2 g: beyond what road tyres hold."]);
    const soft = { ...front, springWheelRate: 6000, barWheelRate: 0 };
    const leaning = { front: soft, rear: { ...rear, springWheelRate: 6000, barWheelRate: 0 }, cgHeight };
    expect(runComputation(rollCorneringComputation, { ...leaning, acceleration: 6 }).warnings[0]).toContain(
      "More than 10° of roll",
    );
  });

  test("names the field of an axle that is wrong, and refuses one it does not know", () => {
    const bad = { ...car, front: { ...front, track: "-1 mm" }, acceleration: 5 };
    expect(() => runComputation(rollCorneringComputation, bad)).toThrow(/Track must be more than 0 mm/);
    const unknown = { ...car, rear: { ...rear, tarck: 1 }, acceleration: 5 };
    expect(() => runComputation(rollCorneringComputation, unknown)).toThrow(/tarck/);
  });
});

test("roll.bars: each pair is the car with those bars", () => {
  const run = runComputation(rollBarsComputation, { front, rear, cgHeight });
  const compared = compareBars(sampleCar);
  for (const fitting of ["both", "frontOnly", "rearOnly", "none"] as const) {
    expect(si(run, `${fitting}Gradient`)).toBe(compared[fitting].gradient);
    expect(si(run, `${fitting}Share`)).toBe(compared[fitting].frontTransferShare);
  }
});

describe("roll.target", () => {
  const car = { front, rear, cgHeight };
  test("bars: what it asks for, put on the car, reaches the aim", () => {
    const aim = { change: "bars", gradient: "4.5 °/g", frontTransferShare: 0.5 };
    const run = runComputation(rollTargetComputation, { ...car, ...aim });
    const fitted = {
      front: { ...front, barWheelRate: si(run, "frontBarWheelRate") },
      rear: { ...rear, barWheelRate: si(run, "rearBarWheelRate") },
      cgHeight,
    };
    const check = runComputation(rollBarsComputation, fitted);
    expect(check.outputs.bothGradient?.text).toBe("4.50 °/g");
    expect(check.outputs.bothShare?.text).toBe("50.0 %");
    expect(si(run, "gradient")).toBeCloseTo(si(check, "bothGradient"), 12);
    for (const name of ["frontBarDiameter", "rearBarDiameter", "frontSpringRate", "rearSpringRate"])
      expect(run.outputs[name]?.si).toBeNull();
  });

  test("the diameter goes with the fourth root of the rate; a diameter without a rate is warned of", () => {
    const sized = {
      ...car,
      front: { ...front, barDiameter: "16 mm" },
      rear: { ...rear, barDiameter: "12 mm" },
    };
    const run = runComputation(rollTargetComputation, { ...sized, change: "frontBar", gradient: "4.5 °/g" });
    expect(si(run, "frontBarDiameter")).toBeCloseTo(
      0.016 * (si(run, "frontBarWheelRate") / 8000) ** 0.25,
      12,
    );
    expect(si(run, "rearBarDiameter")).toBeCloseTo(0.012, 12);
    expect(step(run, "k_bf")).toBeDefined();
    expect(step(run, "k_br")).toBeUndefined();
    expect(run.warnings).toEqual([]);
    for (const barWheelRate of [undefined, 0]) {
      const nameless = { ...sized, rear: { ...sized.rear, barWheelRate } };
      const warned = runComputation(rollTargetComputation, {
        ...nameless,
        change: "frontBar",
        gradient: "4.5 °/g",
      });
      expect(warned.warnings[0]).toContain("without the bar's rate");
      expect(warned.outputs.rearBarDiameter?.si).toBeNull();
    }
  });

  test("springs: at the wheel and, with the motion ratio, themselves", () => {
    const ratios = {
      front: { ...front, springMotionRatio: 0.7 },
      rear: { ...rear, springMotionRatio: 0.9 },
      cgHeight,
    };
    const run = runComputation(rollTargetComputation, {
      ...ratios,
      change: "springs",
      gradient: "4.5 °/g",
      frontTransferShare: "52 %",
    });
    expect(si(run, "frontSpringRate")).toBeCloseTo(si(run, "frontSpringWheelRate") / 0.49, 6);
    expect(si(run, "rearSpringRate")).toBeCloseTo(si(run, "rearSpringWheelRate") / 0.81, 6);
    expect(si(run, "frontBarWheelRate")).toBe(8000);
    expect(si(run, "rearBarWheelRate")).toBe(3000);
    expect(run.outputs.gradient?.text).toBe("4.50 °/g");
    // Each axle's own lines, told by its own name.
    expect(step(run, "k_sf")).toMatchObject({
      label: "Front wheel rate",
      value: si(run, "frontSpringWheelRate"),
    });
    expect(step(run, "k_sr")).toMatchObject({
      label: "Rear wheel rate",
      value: si(run, "rearSpringWheelRate"),
    });
  });
});

test("roll.axleLoads: braking at 0.8 g moves load forward", () => {
  const run = runComputation(rollAxleLoadsComputation, rollAxleLoadsComputation.example);
  expect(si(run, "transfer")).toBeCloseTo((-820 * 0.8 * 9.80665 * 0.44) / 2.3, 6);
  expect(si(run, "front") + si(run, "rear")).toBeCloseTo(820 * 9.80665, 6);
  expect(si(run, "frontShare")).toBeCloseTo(si(run, "front") / (820 * 9.80665), 12);
});
