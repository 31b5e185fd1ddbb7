import { describe, expect, test } from "vitest";
import { rollRateOfWheelRate } from "../bar/rate";
import {
  coilRate,
  coilStress,
  directShearFactor,
  solidHeight,
  springForce,
  springIndex,
  wahlFactor,
} from "./coil";
import { ratesInSeries } from "./combine";
import { frequencyOfDeflection, naturalFrequency, wheelRate } from "./wheel";

const inch = 0.0254;
const psi = 6894.757293168361;
const lbf = 4.4482216152605;

const within = (found: number, expected: number, tolerance: number): void =>
  expect(Math.abs(found - expected)).toBeLessThanOrEqual(tolerance);

describe("coil springs: a spring sheet 'based on method of Mechanical Engineering Design, Shigley' (Tables 10-2, A-5), v1.000", () => {
  const coil = { wire: 0.0025, meanDiameter: 0.02225, activeCoils: 16, shear: 79300e6 };
  test("BAR-13: rate 2197 N/m", () => within(coilRate(coil), 2197, 0.5));
  test("BAR-14: direct-shear factor 1.056 at index 8.9", () => {
    within(springIndex(coil), 8.9, 1e-9);
    within(directShearFactor(8.9), 1.056, 0.0005);
  });
  test("BAR-15: shear stress 378.6 MPa under 98.9 N", () =>
    within(coilStress(coil, { force: 98.9, factor: 1.0562 }) / 1e6, 378.6, 0.3));
});

describe("coil springs: Mott, Machine Elements in Mechanical Design, 4th ed., sec. 19-6, p. 751", () => {
  test("BAR-17: solid length of 12.36 active coils of 0.0625 in, squared and ground: 0.898 in", () =>
    within(solidHeight(0.0625 * inch, 12.36 + 2, "closed ground") / inch, 0.898, 0.0006));
  test("BAR-18: 8 lbf/in from 2.75 in to 0.898 in is 14.8 lbf", () =>
    within(springForce((8 * lbf) / inch, 2.75 * inch, 0.898 * inch) / lbf, 14.8, 0.05));
  test("BAR-19: stress goes with the force: 86450 psi at 12 lbf is 106750 psi at 14.8 (printed value carries rounding)", () => {
    const coil = { wire: 0.0625 * inch, meanDiameter: 0.5 * inch };
    const factor = (86450 * psi) / coilStress(coil, { force: 12 * lbf, factor: 1 });
    const solid = coilStress(coil, { force: 14.8 * lbf, factor }) / psi;
    within(solid / 106750, 1, 0.002);
  });
});

test("BAR-21: eleven coils of 0.0915 in are 1 in high (Machinery's Handbook 31st ed., pp. 318-319)", () =>
  within(solidHeight(0.0915 * inch, 11, "closed ground") / inch, 1, 0.01));

test("BAR-22: Shigley Example 10-1 (from memory): 4.13 lbf/in, which needs D rounded to 0.400 in", () => {
  const coil = { wire: 0.037 * inch, meanDiameter: 0.4 * inch, activeCoils: 10.5, shear: 11850000 * psi };
  within((coilRate(coil) * inch) / lbf, 4.13, 0.005);
});

test("BAR-23: Wahl factor 1.151 at index 9.6 (Wahl, Mechanical Springs, 1963; from memory)", () =>
  within(wahlFactor(9.6), 1.151, 0.001));

describe("at the wheel (first principles, from memory)", () => {
  test("BAR-25: 50 N/mm at a motion ratio of 0.75 is 28.125 N/mm", () =>
    within(wheelRate(50_000, { motionRatio: 0.75 }) / 1000, 28.125, 0.001));
  test("BAR-26: 28.125 in series with a tyre of 180 is 24.324 N/mm", () =>
    within(ratesInSeries([28_125, 180_000]) / 1000, 24.324, 0.001));
  test("LDT-19: roll stiffness of 28.125 N/mm on a track of 1350 mm is 447.3 N·m/°", () =>
    within((rollRateOfWheelRate(28_125, 1.35) * Math.PI) / 180, 447.3, 0.1));
});

describe("ride frequency", () => {
  test("LDT-16: 250 kg on 1 kgf/mm sinks 250 mm and bounces at 1 Hz (magazine article, 2007; inputs read)", () => {
    within(frequencyOfDeflection(0.25), 1, 0.01);
    within(naturalFrequency(9806.65, 250), frequencyOfDeflection(0.25), 1e-12);
  });
  test("LDT-17: f = 3.127/√δ with δ in inches, 187.6 cycles a minute (first principles, from memory)", () => {
    within(frequencyOfDeflection(inch), 3.127, 0.001);
    within(frequencyOfDeflection(inch) * 60, 187.6, 0.06);
  });
});
