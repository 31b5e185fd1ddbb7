import { computationNamed, runComputation } from "@trunnion/calc";
import { describe, expect, test } from "vitest";
import { builtInBook } from "../characteristic/book";
import { fullCar, stateWith } from "../consequence/sample-state.fixture";
import { type ChangeDraft, emptyModification, emptySubmission } from "./content";
import { consequencesOfSubmission } from "./proposal";
import { readSubmission } from "./read";
import { sayConsequenceFigure } from "./words";

/** Five modifications worked through as an owner would hand them in, on a car with everything recorded. */
const now = stateWith(fullCar);
const basis = { book: builtInBook, today: "2026-11-25", stateOn: () => now };

function handIn(changes: Readonly<Record<string, string>>, stateOn = basis.stateOn) {
  const lines = Object.entries(changes).map(([place, after]): ChangeDraft => {
    const [characteristic = "", side = "whole"] = place.split(" ");
    return { characteristic, side: side as ChangeDraft["side"], before: "", after };
  });
  const modifications = [{ ...emptyModification, fitted: "14 Nov 2026", changes: lines }];
  const with_ = { ...basis, stateOn };
  const read = readSubmission({ ...emptySubmission("metric"), modifications }, with_);
  expect(read.problems).toEqual([]);
  const { consequences, lacking } = consequencesOfSubmission(read, with_);
  return { consequences, lacking };
}

type Told = ReturnType<typeof handIn>["consequences"];

function figure(told: Told, id: string, output: string) {
  const found = told.find((one) => one.id === id)?.figures.find((one) => one.output === output);
  if (!found) throw new Error(`${id} tells no ${output}; told: ${told.map((one) => one.id).join(", ")}`);
  return found;
}

/** What the calculator itself gives for an input, in SI. */
function calculated(name: string, input: object, output: string): number {
  const si = runComputation(computationNamed(name), input).outputs[output]?.si;
  if (typeof si !== "number") throw new Error(`${name} gives no number ${output}`);
  return si;
}

const bar = { middleLength: 0.82, leverLength: 0.21, armLength: 0.22, motionRatio: 0.7, track: 1.29 };

describe("a rear bar of 16 mm for one of 14", () => {
  const { consequences } = handIn({ "rear.antiRollBar.diameter": "16 mm" });

  test("equals the calculator's bar on both sides", () => {
    const rate = figure(consequences, "rear.bar.rate", "wheelRate");
    expect(rate.numberBefore).toBeCloseTo(
      calculated("bar.rate", { diameter: 0.014, ...bar }, "wheelRate"),
      6,
    );
    expect(rate.numberAfter).toBeCloseTo(calculated("bar.rate", { diameter: 0.016, ...bar }, "wheelRate"), 6);
  });

  // Torsion and bending of a round bar go with the fourth power of its diameter (second moments of area of a circle).
  test("is said as a multiple, (16/14)⁴", () => {
    expect(sayConsequenceFigure(figure(consequences, "rear.bar.rate", "wheelRate"))).toMatch(
      /^Rear bar at the wheel: 1\.71 times what it was, .+ instead of .+$/,
    );
  });

  test("takes roll from the front", () => {
    const share = figure(consequences, "roll.share", "frontShare");
    expect(share.numberAfter).toBeLessThan(share.numberBefore ?? 0);
    expect(sayConsequenceFigure(share)).toMatch(/^Front share of the roll rate: .+ % down, /);
  });
});

test("front springs of 35 N/mm for 28 are a quarter stiffer at the wheel, as the calculator has them", () => {
  const { consequences } = handIn({ "front.spring.rate": "35 N/mm" });
  const rate = figure(consequences, "front.spring.ride", "wheelRate");
  expect(rate.numberAfter).toBeCloseTo(
    calculated("spring.ride", { springRate: 35_000, motionRatio: 0.72 }, "wheelRate"),
    6,
  );
  expect(sayConsequenceFigure(rate)).toMatch(/^Front wheel rate: 1\.25 times what it was, /);
  // Ride frequency goes with the root of the rate: √1.25 is 11.8 % up.
  expect(sayConsequenceFigure(figure(consequences, "front.spring.ride", "frequency"))).toMatch(
    /^Front ride frequency: 11\.8 % up, /,
  );
});

test("14 inch wheels and tyres move height, gearing and the speedometer, as the calculator has them", () => {
  const { consequences } = handIn({
    "tyres.rear.size": "175/70 R 14",
    "wheels.rear.size": "5½J x 14",
  });
  const before = calculated("tyre.size", { size: "155/80 R 13 79T" }, "overallDiameter");
  const after = calculated("tyre.size", { size: "175/70 R 14" }, "overallDiameter");
  expect(figure(consequences, "rear.tyre.size", "overallDiameter").ratio).toBeCloseTo(after / before, 9);
  expect(figure(consequences, "gearing", "speedPer1000").ratio).toBeCloseTo(after / before, 6);
  expect(sayConsequenceFigure(figure(consequences, "gearing", "speedPer1000"))).toMatch(
    /^Speed in top gear per 1000 rev\/min: 3(\.\d)? % up, /,
  );
});

test("a front disc of 10 1/2 in for 9 1/2 brakes harder for the same line pressure, told as a ratio alone", () => {
  const { consequences } = handIn({ "front.disc.diameter": "10 1/2 in" });
  const torque = (discDiameter: number) =>
    calculated(
      "brake.discTorque",
      { pressure: 50e5, pistonDiameters: [0.048], friction: 0.38, discDiameter, padHeight: 0.045 },
      "torque",
    );
  const told = figure(consequences, "front.brake.disc", "torque");
  expect(told.ratio).toBeCloseTo(torque(10.5 * 0.0254) / torque(9.5 * 0.0254), 9);
  expect(sayConsequenceFigure(told)).toMatch(
    /^Front brake torque for the same line pressure: \d+(\.\d)? % up$/,
  );
});

test("a rear link on a stack of 30 mm for 10 bends its bolt sooner, as the calculator has it, and says what is assumed", () => {
  const { consequences } = handIn({ "rear.dropLink.spacerStack": "30 mm" });
  const input = {
    thread: "M10x1.5",
    grade: "10.9",
    stackLength: 0.03,
    eyeWidth: 0.014,
    section: "thread",
    force: 1000,
  };
  const told = figure(consequences, "rear.link.bolt", "yieldForce");
  expect(told.numberAfter).toBeCloseTo(calculated("fastener.spacerStack", input, "yieldForce"), 6);
  expect(told.numberAfter).toBeLessThan(told.numberBefore ?? 0);
  expect(sayConsequenceFigure(told)).toMatch(
    /^Force at which the rear link's bolt takes a set: 0\.\d+ times what it was, /,
  );
  const assumed = consequences
    .find(({ id }) => id === "rear.link.bolt")
    ?.inputs.filter(({ origin }) => origin === "assumed");
  expect(assumed?.map(({ label }) => label)).toContain("link eye taken 14 mm wide");
});

describe("where only the two diameters are known", () => {
  const bare = stateWith({ "front.antiRollBar.diameter": "16 mm" });
  const { consequences } = handIn({ "front.antiRollBar.diameter": "20 mm" }, () => bare);

  test("the stiffness ratio is told all the same, (20/16)⁴ = 2.44", () => {
    const ratio = figure(consequences, "front.bar.ratio", "ratio");
    expect(sayConsequenceFigure(ratio)).toBe(
      "Front bar's stiffness, shape and mounting being the same: 2.44 times what it was",
    );
  });

  test("what is missing is named", () => {
    const missing = consequences.find(({ id }) => id === "front.bar.rate")?.missing.map(({ label }) => label);
    expect(missing).toContain("Front anti-roll bar lever");
  });
});
