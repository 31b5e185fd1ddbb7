import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { carbonSteel } from "../spring/material";
import type { Bar } from "./compliance";
import {
  barDiameterForRate,
  barRate,
  barWheelRate,
  leverMotionRatio,
  rollRateOfWheelRate,
  wheelRateOfRollRate,
} from "./rate";
import { barPolarSecondMoment, barSecondMoment, torsionalStiffness } from "./section";

const bar: Bar = {
  section: { diameter: 0.022, bore: 0.011 },
  middleLength: 0.8,
  leverLength: 0.21,
  armLength: 0.23,
  bushSpacing: 0.7,
  moduli: carbonSteel,
};
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe("section", () => {
  test("π d⁴/32 and half of it in bending; a tube is the difference of two bars", () => {
    expect(barPolarSecondMoment({ diameter: 0.02 })).toBeCloseTo(Math.PI * 5e-9, 20);
    expect(barSecondMoment({ diameter: 0.02 })).toBeCloseTo(Math.PI * 2.5e-9, 20);
    const tube = barPolarSecondMoment({ diameter: 0.02, bore: 0.012 });
    expect(tube).toBeCloseTo(
      barPolarSecondMoment({ diameter: 0.02 }) - barPolarSecondMoment({ diameter: 0.012 }),
      20,
    );
  });

  test("torsional stiffness refuses a bar of no length", () => {
    expect(() => torsionalStiffness({ diameter: 0.02 }, { shear: 8e10, length: 0 })).toThrow(
      /length must be greater/,
    );
    expect(() => torsionalStiffness({ diameter: 0.02 }, { shear: -1, length: 1 })).toThrow(/shearModulus/);
  });
});

describe("rate at the wheel and in roll", () => {
  test("goes with the square of the motion ratio", () => {
    expect(barWheelRate(20_000, 0.5)).toBe(5000);
    expect(barWheelRate(0, 0.5)).toBe(0);
    expect(() => barWheelRate(20_000, 0)).toThrow(/motionRatio must be greater than zero, but is 0/);
    expect(() => barWheelRate(-1, 0.5)).toThrow(/rate must not be negative, but is -1/);
  });

  test("k t²/2 per radian is the work of two wheels moving ± half a track × angle", () => {
    fc.assert(
      fc.property(between(0, 1e5), between(0.9, 1.8), between(0.001, 0.1), (k, track, angle) => {
        const energy = 2 * (0.5 * k * ((track / 2) * angle) ** 2);
        expect(0.5 * rollRateOfWheelRate(k, track) * angle ** 2).toBeCloseTo(energy, 6);
      }),
    );
  });

  test("and back again", () => {
    fc.assert(
      fc.property(between(0, 1e5), between(0.9, 1.8), (k, track) => {
        expect(wheelRateOfRollRate(rollRateOfWheelRate(k, track), track)).toBeCloseTo(k, 6);
      }),
    );
    expect(() => rollRateOfWheelRate(-1, 1.3)).toThrow(/wheelRate/);
    expect(() => rollRateOfWheelRate(1, 0)).toThrow(/track/);
    expect(() => wheelRateOfRollRate(-1, 1.3)).toThrow(/rollRate/);
    expect(() => wheelRateOfRollRate(1, 0)).toThrow(/track/);
  });

  test("a lever's ratio runs from 1 at the joint towards 0 at the pivot, which is refused", () => {
    expect(leverMotionRatio(0.4, 0)).toBe(1);
    expect(leverMotionRatio(0.4, 0.3)).toBeCloseTo(0.25, 12);
    expect(() => leverMotionRatio(0.4, 0.4)).toThrow(/must lie on the lever of 400 mm/);
    expect(() => leverMotionRatio(0.4, -0.01)).toThrow(/fromOuterJoint must not be negative/);
    expect(() => leverMotionRatio(0, 0)).toThrow(/leverLength/);
  });
});

describe("the diameter for a wanted rate", () => {
  test("gives that rate, whatever links and bushes give", () => {
    fc.assert(
      fc.property(
        between(3000, 60_000),
        between(1e5, 1e6),
        between(2e6, 2e7),
        (wanted, linkRate, bushRate) => {
          const flexibility = { linkRate, bushRate };
          const diameter = barDiameterForRate(wanted, bar, flexibility);
          const sized = { ...bar, section: { diameter, bore: diameter / 2 } };
          expect(barRate(sized, flexibility) / wanted).toBeCloseTo(1, 9);
        },
      ),
    );
  });

  test("is refused when links and bushes alone are softer, quoting how far they go", () => {
    expect(() => barDiameterForRate(50_000, bar, { linkRate: 50_000 })).toThrow(
      /50 N\/mm at its end: links and bushes alone allow less than 50 N\/mm/,
    );
    expect(barDiameterForRate(49_000, bar, { linkRate: 50_000 })).toBeGreaterThan(bar.section.diameter);
    expect(() => barDiameterForRate(0, bar)).toThrow(/wantedRate/);
  });
});
