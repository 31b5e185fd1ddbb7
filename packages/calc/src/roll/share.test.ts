import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import { runComputation } from "../catalogue/run";
import { rollAxleComputation } from "./axle.entry";
import { rollCorneringComputation } from "./cornering.entry";
import { sampleCar } from "./sample-car.fixture";
import { rollShareComputation } from "./share.entry";

const si = (run: ReturnType<typeof runComputation>, name: string) => Number(run.outputs[name]?.si);

describe("roll.share", () => {
  test("is the share of roll.cornering for the same car: one by stiffnesses alone, one on the whole car", () => {
    const rates = ([sampleCar.front, sampleCar.rear] as const).map(
      ({ track, springWheelRate, barWheelRate }) =>
        si(
          runComputation(rollAxleComputation, {
            track,
            springWheelRate,
            ...(barWheelRate === undefined ? {} : { barWheelRate }),
          }),
          "rollRate",
        ),
    );
    const share = runComputation(rollShareComputation, { frontRollRate: rates[0], rearRollRate: rates[1] });
    const { front, rear, cgHeight } = sampleCar;
    const whole = runComputation(rollCorneringComputation, { front, rear, cgHeight, acceleration: "0.5 g" });
    expect(si(share, "frontShare")).toBeCloseTo(si(whole, "frontRollRateShare"), 12);
  });

  test("both shares make one, and a stiffer front takes more", () => {
    const rate = fc.double({ min: 1, max: 1e5, noNaN: true });
    fc.assert(
      fc.property(rate, rate, fc.double({ min: 1.01, max: 3, noNaN: true }), (front, rear, stiffer) => {
        const run = runComputation(rollShareComputation, { frontRollRate: front, rearRollRate: rear });
        const after = runComputation(rollShareComputation, {
          frontRollRate: front * stiffer,
          rearRollRate: rear,
        });
        expect(si(run, "frontShare") + si(run, "rearShare")).toBeCloseTo(1, 12);
        expect(si(after, "frontShare")).toBeGreaterThan(si(run, "frontShare"));
      }),
    );
  });

  test("has no answer for a car that nothing holds", () => {
    const run = runComputation(rollShareComputation, { frontRollRate: 0, rearRollRate: 0 });
    expect(run.outputs.frontShare?.si).toBeNull();
    expect(run.warnings).toHaveLength(1);
  });
});
