import { expect, test } from "vitest";
import { runComputation } from "../catalogue/run";
import { rollShareComputation } from "./share.entry";

const run = (front: number, rear: number) =>
  runComputation(rollShareComputation, { frontRollRate: front, rearRollRate: rear });

test("the shares are what each axle holds of both, and a hundredth more at the front shifts the share as said", () => {
  const { outputs, working } = run(300, 100);
  expect([outputs.frontShare?.si, outputs.rearShare?.si, outputs.total?.si]).toEqual([0.75, 0.25, 400]);
  const value = (symbol: string) => Number(working.find((step) => step.symbol === symbol)?.value);
  expect(value("1 − ε")).toBe(0.25);
  const more = Number(run(303, 100).outputs.frontShare?.si) - 0.75;
  expect(value("Δε")).toBeCloseTo(more, 4);
  expect(Math.abs(value("Δε") / more - 1)).toBeLessThan(0.01);
});

test("where nothing holds the car there is no share, and that is said", () => {
  const { outputs, working, warnings } = run(0, 0);
  expect([outputs.frontShare?.si, outputs.rearShare?.si]).toEqual([null, null]);
  expect(working.map(({ symbol }) => symbol)).toEqual(["K_f", "K_r", "K"]);
  expect(warnings).toEqual(["Nothing holds the car against roll: there is no share."]);
});
