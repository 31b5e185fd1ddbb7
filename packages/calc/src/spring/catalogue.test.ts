import { describe, expect, test } from "vitest";
import { runComputation } from "../catalogue/run";
import { springComputations } from "./catalogue";
import { springCoilComputation } from "./coil.entry";
import { springCombinationComputation } from "./combination.entry";
import { springDampingComputation } from "./damping.entry";
import { springHeightComputation } from "./height.entry";
import { springLeafComputation } from "./leaf.entry";
import { springRideComputation } from "./ride.entry";
import { springTorsionBarComputation } from "./torsion-bar.entry";

type Run = ReturnType<typeof runComputation>;
const si = (run: Run, name: string): number => Number(run.outputs[name]?.si);
const step = (run: Run, symbol: string) => run.working.find((line) => line.symbol === symbol);

test.each(springComputations.map((one) => [one.name, one] as const))(
  "%s runs its own example",
  (name, one) => {
    expect(name).toMatch(/^spring\.[a-zA-Z]+$/);
    const run = runComputation(one, one.example);
    expect(run.working.length).toBeGreaterThan(2);
    expect(run.working.every(({ text }) => text !== "")).toBe(true);
    expect(run.warnings).toEqual([]);
  },
);

describe("spring.coil", () => {
  const coil = { wire: "10 mm", meanDiameter: "100 mm", totalCoils: 8, ends: "closed ground" };
  test("answers rate and index from the wire alone, stress and travel where load and length are known", () => {
    const bare = runComputation(springCoilComputation, coil);
    expect(si(bare, "rate")).toBeCloseTo((79.3e9 * 0.01 ** 4) / (8 * 0.1 ** 3 * 6), 6);
    expect([si(bare, "index"), si(bare, "activeCoils")]).toEqual([10, 6]);
    for (const name of ["travel", "stress", "solidStress"]) expect(bare.outputs[name]?.si).toBeNull();
    const full = runComputation(springCoilComputation, { ...coil, freeLength: "300 mm", load: "2000 N" });
    expect(si(full, "travel")).toBeCloseTo(0.22, 12);
    expect(si(full, "solidStress") / si(full, "stress")).toBeCloseTo((si(full, "rate") * 0.22) / 2000, 9);
    expect(full.warnings).toEqual([]);
    expect(step(full, "G")?.formula).toContain("Shigley");
    expect(step(runComputation(springCoilComputation, { ...coil, shearModulus: "80 GPa" }), "G")?.text).toBe(
      "80 GPa",
    );
  });

  test("warns of an odd index, a load that closes it and a spring that may buckle", () => {
    const warned = (change: object) =>
      runComputation(springCoilComputation, { ...coil, ...change }).warnings.join(" ");
    expect(warned({ meanDiameter: "39 mm" })).toContain("index 3.9");
    expect(warned({ meanDiameter: "121 mm" })).toContain("index 12.1");
    expect(warned({ meanDiameter: "120 mm" })).toBe("");
    expect(warned({ meanDiameter: "40 mm" })).toBe("");
    expect(warned({ freeLength: "300 mm", load: "8000 N" })).toContain("closes the spring solid");
    expect(warned({ load: "8000 N" })).toBe("");
    expect(warned({ freeLength: "527 mm" })).toContain("buckle");
    expect(() => runComputation(springCoilComputation, { ...coil, freeLength: "80 mm" })).toThrow(
      "free length 80 mm must exceed the solid height 80 mm",
    );
  });
});

describe("spring.combination", () => {
  test("in series and side by side", () => {
    const rates = ["20 N/mm", "20 N/mm"];
    const run = (arrangement: string) => runComputation(springCombinationComputation, { rates, arrangement });
    expect(si(run("series"), "rate")).toBeCloseTo(10_000, 9);
    expect(si(run("parallel"), "rate")).toBe(40_000);
    expect(run("series").working.map(({ symbol }) => symbol)).toEqual(["k1", "k2", "k"]);
    expect(() =>
      runComputation(springCombinationComputation, { rates: [], arrangement: "series" }),
    ).toThrow();
    expect(() =>
      runComputation(springCombinationComputation, { rates: Array(11).fill(1000), arrangement: "series" }),
    ).toThrow();
  });
});

describe("spring.ride", () => {
  const corner = { springRate: "20 N/mm", motionRatio: 0.5 };
  test("answers as far as the inputs go", () => {
    const bare = runComputation(springRideComputation, corner);
    expect([si(bare, "wheelRate"), si(bare, "rideRate")]).toEqual([5000, 5000]);
    for (const name of ["frequency", "deflection", "hopFrequency"]) expect(bare.outputs[name]?.si).toBeNull();
    expect(step(bare, "k_t")?.text).toBe("not given: taken as rigid");
    const known = { ...corner, sprungMass: "150 kg", tyreRate: "180 N/mm", unsprungMass: "25 kg" };
    const full = runComputation(springRideComputation, known);
    expect(si(full, "frequency")).toBeCloseTo(Math.sqrt(si(full, "rideRate") / 150) / (2 * Math.PI), 12);
    expect(si(full, "deflection")).toBeCloseTo((150 * 9.80665) / si(full, "rideRate"), 12);
    expect(si(full, "hopFrequency")).toBeCloseTo(Math.sqrt(185_000 / 25) / (2 * Math.PI), 12);
    for (const missing of ["tyreRate", "unsprungMass"]) {
      const less = runComputation(springRideComputation, { ...known, [missing]: undefined });
      expect(less.outputs.hopFrequency?.si).toBeNull();
    }
  });

  test("adds the term of a changing ratio, and doubts a ratio that looks upside down", () => {
    const changing = { ...corner, motionRatioChange: 1, springForce: "2000 N" };
    expect(si(runComputation(springRideComputation, changing), "wheelRate")).toBe(7000);
    expect(runComputation(springRideComputation, { ...corner, motionRatio: 1.2 }).warnings).toEqual([]);
    expect(runComputation(springRideComputation, { ...corner, motionRatio: 1.21 }).warnings[0]).toContain(
      "other way round",
    );
  });
});

describe("spring.rideHeight", () => {
  const change = {
    before: { rate: "20 N/mm", freeLength: "300 mm" },
    after: { rate: "25 N/mm", freeLength: "300 mm" },
    sprungMass: 100,
    motionRatio: 0.5,
  };
  const force = (100 * 9.80665) / 0.5;

  test("the height, the seat lift that undoes it, and nothing about travel it does not know", () => {
    const run = runComputation(springHeightComputation, change);
    expect(si(run, "force")).toBeCloseTo(force, 9);
    expect(si(run, "heightChange")).toBeCloseTo(force * (1 / 20_000 - 1 / 25_000) * 2, 12);
    const seatLift = si(run, "seatLiftToRestore");
    expect(seatLift).toBeLessThan(0);
    expect(si(runComputation(springHeightComputation, { ...change, seatLift }), "heightChange")).toBeCloseTo(
      0,
      12,
    );
    for (const name of ["bumpTravel", "preload", "droopTravel"]) expect(run.outputs[name]?.si).toBeNull();
    expect(runComputation(springHeightComputation, { ...change, motionRatio: 1.3 }).warnings).toHaveLength(1);
  });

  test("travel to coil-bind and to droop, and the preload there", () => {
    const after = { ...change.after, solidLength: "150 mm" };
    const run = runComputation(springHeightComputation, { ...change, after, droopLength: "280 mm" });
    const loaded = 0.3 - force / 25_000;
    expect(si(run, "bumpTravel")).toBeCloseTo((loaded - 0.15) / 0.5, 12);
    expect(si(run, "preload")).toBeCloseTo(500, 9);
    expect(si(run, "droopTravel")).toBeCloseTo((0.28 - loaded) / 0.5, 12);
    expect(run.warnings).toEqual([]);
  });

  test("warns of a spring loose at droop, and of one that never lets the car down", () => {
    const loose = runComputation(springHeightComputation, { ...change, droopLength: "301 mm" });
    expect(loose.warnings.join()).toContain("loose in its seats");
    expect(si(loose, "preload")).toBe(0);
    const topped = runComputation(springHeightComputation, { ...change, droopLength: "200 mm" });
    expect(topped.warnings.join()).toContain("extension stop");
    expect(si(topped, "droopTravel")).toBe(0);
  });
});

describe("spring.damping", () => {
  const corner = { speed: 0.1, damperMotionRatio: 0.5, wheelRate: 20_000, sprungMass: 200 };
  const curve = (force: number) => [{ speed: 0.2, force }];
  test("bump, rebound, their mean and their relation", () => {
    const run = runComputation(springDampingComputation, {
      ...corner,
      bump: curve(200),
      rebound: curve(600),
    });
    expect([si(run, "bumpCoefficient"), si(run, "reboundCoefficient")]).toEqual([1000, 3000]);
    expect(si(run, "critical")).toBe(4000);
    expect(si(run, "bumpRatio")).toBeCloseTo(0.0625, 12);
    expect(si(run, "reboundRatio")).toBeCloseTo(0.1875, 12);
    expect(si(run, "meanRatio")).toBeCloseTo(0.125, 12);
    expect(si(run, "reboundOverBump")).toBeCloseTo(3, 12);
    expect(run.warnings).toEqual([]);
  });

  test("no relation to a damper without bump force; a warning above critical", () => {
    const free = runComputation(springDampingComputation, { ...corner, bump: curve(0), rebound: curve(600) });
    expect(free.outputs.reboundOverBump?.si).toBeNull();
    const hard = runComputation(springDampingComputation, {
      ...corner,
      bump: curve(3200),
      rebound: curve(3201),
    });
    expect(hard.warnings[0]).toContain("More than critical");
    const critical = runComputation(springDampingComputation, {
      ...corner,
      bump: curve(3200),
      rebound: curve(3200),
    });
    expect(critical.warnings).toEqual([]);
  });
});

test("spring.leaf: nothing of a load that was not given, nothing of leaves that are not there", () => {
  const { load: _, ...unloaded } = springLeafComputation.example;
  const bare = runComputation(springLeafComputation, unloaded);
  for (const name of ["deflection", "graduatedStress", "fullStress"])
    expect(bare.outputs[name]?.si).toBeNull();
  const loaded = runComputation(springLeafComputation, springLeafComputation.example);
  expect(si(loaded, "deflection")).toBeCloseTo(1900 / si(loaded, "rate"), 12);
  expect(loaded.outputs.fullStress?.si).toBeNull();
  const mixed = runComputation(springLeafComputation, { ...springLeafComputation.example, fullLeaves: 1 });
  expect(si(mixed, "fullStress") / si(mixed, "graduatedStress")).toBeCloseTo(1.5, 12);
  const beam = runComputation(springLeafComputation, {
    ...springLeafComputation.example,
    fullLeaves: 1,
    graduatedLeaves: 0,
  });
  expect(beam.outputs.graduatedStress?.si).toBeNull();
  expect(
    step(runComputation(springLeafComputation, { ...unloaded, youngModulus: "200 GPa" }), "E")?.text,
  ).toBe("200 GPa");
  expect(step(bare, "E")?.formula).toContain("Shigley");
  expect(step(bare, "a")?.value).toBeCloseTo(0.515, 12);
  expect(step(bare, "b")?.value).toBeCloseTo(0.565, 12);
});

test("spring.torsionBar: stress is 16·T/(π·d³); a tilted lever without a load is warned of", () => {
  const bar = { diameter: "22 mm", length: "1 m", leverLength: "330 mm", load: "2000 N" };
  const run = runComputation(springTorsionBarComputation, bar);
  expect(si(run, "stress")).toBeCloseTo((16 * 660) / (Math.PI * 0.022 ** 3), -1);
  expect(run.warnings).toEqual([]);
  const bare = runComputation(springTorsionBarComputation, { ...bar, load: undefined, leverAngle: "5°" });
  expect(bare.warnings).toHaveLength(1);
  expect([bare.outputs.twist?.si, bare.outputs.stress?.si]).toEqual([null, null]);
  expect(runComputation(springTorsionBarComputation, { ...bar, load: undefined }).warnings).toEqual([]);
  expect(step(run, "G")?.formula).toContain("Shigley");
  expect(
    step(runComputation(springTorsionBarComputation, { ...bar, shearModulus: "80 GPa" }), "G")?.text,
  ).toBe("80 GPa");
});
