import { describe, expect, test } from "vitest";
import { runComputation } from "../catalogue/run";
import { brakeBalanceComputation } from "./balance.entry";
import { brakeChangeComputation } from "./change.entry";
import { discTorqueComputation } from "./disc.entry";
import { brakeSystemComputation } from "./system.entry";

// What the entries say around the arithmetic: their figures against statics by hand, their working, their warnings.

const g = 9.80665;
type Run = ReturnType<typeof runComputation>;
const si = (run: Run, name: string) => Number(run.outputs[name]?.si);
const step = (run: Run, symbol: string) => run.working.find((each) => each.symbol === symbol);
const steps = (run: Run, symbol: string) => run.working.filter((each) => each.symbol === symbol);

describe("the torque of a disc, worked by hand", () => {
  const input = { ...discTorqueComputation.example, discDiameter: "260 mm", padHeight: "40 mm" };
  const run = runComputation(discTorqueComputation, input);
  const area = (Math.PI * 0.054 ** 2) / 4;

  test("pad force, torque and force at the road follow from pressure and piston (statics)", () => {
    expect(si(run, "effectiveRadius")).toBeCloseTo(0.11, 12);
    expect(si(run, "clampForce")).toBeCloseTo(70e5 * area, 6);
    expect(si(run, "torque")).toBeCloseTo(2 * 0.38 * 70e5 * area * 0.11, 6);
    expect(si(run, "roadForce")).toBeCloseTo(si(run, "torque") / 0.29, 9);
    expect(
      runComputation(discTorqueComputation, { ...input, tyreRadius: undefined }).outputs.roadForce?.si,
    ).toBeNull();
  });

  test("the working gives the radius were the pad pressed evenly, where disc and pad are known, and what was given", () => {
    const [R, r] = [0.13, 0.09];
    expect(step(run, "r_p")?.value).toBeCloseTo(((2 / 3) * (R ** 3 - r ** 3)) / (R ** 2 - r ** 2), 12);
    expect(step(run, "r_e")?.formula).toBe("D/2 − h_p/2");
    expect(step(run, "p")).toMatchObject({ value: 7e6, text: "70 bar" });
    const { discDiameter: _d, padHeight: _h, ...bare } = input;
    const measured = runComputation(discTorqueComputation, { ...bare, effectiveRadius: "110 mm" });
    expect(step(measured, "r_p")).toBeUndefined();
    expect(steps(measured, "r_e").map(({ formula }) => formula)).toContain("given");
    expect(si(measured, "torque")).toBeCloseTo(si(run, "torque"), 9);
  });
});

describe("the balance, worked by hand", () => {
  const balance = (over: object) =>
    runComputation(brakeBalanceComputation, { ...brakeBalanceComputation.example, ...over });
  const [m, L, h] = [980, 2.3, 0.46];
  const b = (L * 470) / m;

  test("critical deceleration, ideal share and first lock are in m/s² and as the formulas say (Limpert)", () => {
    const run = balance({});
    const [share, k] = [0.7, 0.9];
    expect(si(run, "criticalDeceleration")).toBeCloseTo(((share * L - b) / h) * g, 9);
    expect(step(run, "z_c")?.value).toBeCloseTo(((share * L - b) / h) * g, 9);
    expect(si(run, "idealFrontShare")).toBeCloseTo((b + k * h) / L, 12);
    const z = (k * b) / (share * L - k * h);
    const rear = (k * (L - b)) / ((1 - share) * L + k * h);
    expect(si(run, "deceleration")).toBeCloseTo(Math.min(z, rear) * g, 9);
    expect(step(run, "z")?.value).toBeCloseTo(Math.min(z, rear) * g, 9);
    expect(si(run, "efficiency")).toBeCloseTo(Math.min(z, rear) / k, 12);
    expect(Number(step(run, "N_f")?.value) + Number(step(run, "N_r")?.value)).toBeCloseTo(m * g, 6);
    expect(step(run, "β")).toMatchObject({ text: "70 %" });
    expect(step(run, "k")?.value).toBe(0.9);
  });

  test("with too little at the front the rear locks first on every road, and there is no critical deceleration", () => {
    const run = balance({ frontShare: 0.3 });
    expect(run.outputs.criticalDeceleration?.si).toBeNull();
    expect(run.warnings).toContain("The rear locks first on every road.");
    expect(balance({}).warnings).not.toContain("The rear locks first on every road.");
  });

  test("the regulation's least use of adhesion is asked for from 0.2 to 0.8, and only there (UN R13-H Annex 5, from memory)", () => {
    const asks = (adhesion: number, frontShare: number) =>
      balance({ adhesion, frontShare }).warnings.some((text) => text.startsWith("Uses less of the adhesion"));
    // All braking at the front: z = k·b/(L − k·h), far less than asked.
    expect([0.2, 0.5, 0.8].map((k) => asks(k, 1))).toEqual(
      [0.2, 0.5, 0.8].map((k) => (k * b) / (L - k * h) < 0.1 + 0.7 * (k - 0.2)),
    );
    expect(asks(0.8, 1)).toBe(true);
    expect(asks(0.81, 1)).toBe(false);
    expect(asks(0.19, 1)).toBe(false);
    expect(asks(0.5, 0.65)).toBe(false);
  });
});

describe("a whole system", () => {
  const system = (over: object) =>
    runComputation(brakeSystemComputation, { ...brakeSystemComputation.example, ...over });
  const run = system({});

  test("the working lists what was given, and the torque of one wheel at 1 bar of each axle", () => {
    expect(step(run, "k")?.value).toBe(0.9);
    expect(step(run, "i")?.label).toMatch(/pedal/i);
    const [front, rear] = steps(run, "T₁");
    const area = (Math.PI * 0.048 ** 2) / 4;
    expect(front?.value).toBeCloseTo(2 * 0.38 * 1e5 * area * (0.13335 - 0.0225), 6);
    expect(front?.formula).toMatch(/one side of the disc/);
    expect(rear?.formula).toMatch(/C\*·A·D\/2/);
    expect(rear?.value).toBeCloseTo((2.1 * 1e5 * ((Math.PI * 0.015875 ** 2) / 4) * 0.2032) / 2, 6);
    expect(steps(run, "A").map(({ value }) => Number(value))[0]).toBeCloseTo(area, 12);
  });

  test("stopping force at the road is mass times deceleration (Newton), and lock comes at the pedal force that reaches it", () => {
    const hard = system({ pedalForce: si(run, "lockPedalForce") * 0.999 });
    expect(hard.warnings.some((text) => /locks a wheel/.test(text))).toBe(false);
    expect(si(hard, "deceleration") / si(run, "lockDeceleration")).toBeCloseTo(1, 2);
    const beyond = system({ pedalForce: si(run, "lockPedalForce") * 1.001 });
    expect(beyond.warnings).toContain(
      "This pedal force locks a wheel on this road; figures are for the moment before.",
    );
    expect(run.outputs.firstAxle?.si).toBe("front");
  });

  test("more than 500 N at the pedal is said, less is not", () => {
    const heavy = system({ pedalRatio: 2, pedalForce: 100 });
    expect(si(heavy, "lockPedalForce")).toBeGreaterThan(500);
    expect(heavy.warnings.some((text) => /^More than 500 N/.test(text))).toBe(true);
    const light = system({ pedalRatio: 8, pedalForce: 100 });
    expect(si(light, "lockPedalForce")).toBeLessThan(500);
    expect(light.warnings).toEqual([]);
  });
});

describe("before against after", () => {
  const { example } = brakeChangeComputation;
  const { before } = example as { readonly before: object };

  test("the same brakes before and after differ in nothing, and nothing is said of balance or pedal", () => {
    const run = runComputation(brakeChangeComputation, { ...example, after: before });
    expect(si(run, "decelerationRatio")).toBeCloseTo(1, 12);
    expect(si(run, "pedalTravelRatio")).toBeCloseTo(1, 12);
    expect(run.warnings.filter((text) => /balance moves|pedal/i.test(text))).toEqual([]);
  });

  test("each side is what the system by itself says", () => {
    const run = runComputation(brakeChangeComputation, example);
    const { before: _b, after: _a, ...car } = example as Record<string, unknown>;
    const alone = runComputation(brakeSystemComputation, { ...car, ...before });
    for (const [name, twin] of [
      ["decelerationBefore", "deceleration"],
      ["lockPedalForceBefore", "lockPedalForce"],
      ["frontShareBefore", "frontShare"],
      ["distanceBefore", "distance"],
    ] as const)
      expect(si(run, name)).toBeCloseTo(si(alone, twin), 9);
    expect(steps(run, "T₁")).toHaveLength(4);
    expect(step(run, "F_p")?.value).toBe(180);
  });
});
