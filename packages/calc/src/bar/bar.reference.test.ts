import { describe, expect, test } from "vitest";
import { carbonSteel } from "../spring/material";
import type { Bar } from "./compliance";
import { barRate, leverMotionRatio } from "./rate";
import { barSecondMoment, barStiffnessRatio, torsionalStiffness } from "./section";

const inch = 0.0254;
const psi = 6894.757293168361;
const lbfPerInch = 4.4482216152605 / inch;
const puhn = { young: 30e6 * psi, shear: 12e6 * psi };

/** The constructed bar of BAR-03 to BAR-05: 3/4 in, lever 8 in, middle 36 in, arm 9 in. */
const constructed = (moduli: Bar["moduli"]): Bar => ({
  section: { diameter: 0.75 * inch },
  leverLength: 8 * inch,
  middleLength: 36 * inch,
  armLength: 9 * inch,
  moduli,
});

/** Puhn and the rows below hold one end; ours moves both ends oppositely, which is twice the rate. */
const oneEndHeld = (bar: Bar): number => barRate(bar) / 2;

describe("bar rate against Puhn's formula (How to Make Your Car Handle, 1976/81; formula read in a public note)", () => {
  test("BAR-01: the constant 0.4244 is the torsion term of our formula at G = 12e6 psi", () => {
    // 500000 d⁴/(0.4244 A² B): all of the compliance but the arm's, taken alone.
    const bar: Bar = {
      ...constructed(puhn),
      leverLength: inch,
      middleLength: inch,
      armLength: inch,
      section: { diameter: inch },
    };
    const torsionOnly =
      1 / (inch ** 2 / torsionalStiffness(bar.section, { shear: puhn.shear, length: inch }));
    expect(500000 / (torsionOnly / lbfPerInch)).toBeCloseTo(0.4244, 4);
  });

  test("BAR-03: 500000 D⁴/(0.4244 A² B + 0.2264 C³) gives 138.43 lbf/in with one end held", () => {
    expect(Math.abs(oneEndHeld(constructed(puhn)) / lbfPerInch - 138.43)).toBeLessThanOrEqual(0.05);
  });

  test("BAR-04 (first principles, from memory): 1/(A²B/GJ + 2C³/3EI)", () => {
    const expected = 138.42700071189623;
    expect(Math.abs(oneEndHeld(constructed(puhn)) / lbfPerInch / expected - 1)).toBeLessThanOrEqual(0.0005);
  });

  test("BAR-05 (first principles, from memory): the same bar in SI with G 79.3 and E 207 GPa", () => {
    expect(Math.abs(oneEndHeld(constructed(carbonSteel)) / 1000 - 23.378)).toBeLessThanOrEqual(0.001);
  });
});

describe("stiffness against section", () => {
  const ratios = [
    [
      "BAR-06: 18 to 19 mm (owner-forum article quoting the same book)",
      { diameter: 0.018 },
      { diameter: 0.019 },
      1.24,
      0.005,
    ],
    [
      "BAR-07: doubling the diameter (article on bar design)",
      { diameter: 0.01 },
      { diameter: 0.02 },
      16,
      1e-9,
    ],
    [
      "BAR-08: tube 1.4375 in with 0.25 in wall against a 30 mm bar (article on bar design; result worked out)",
      { diameter: 1.1811023622047245 * inch },
      { diameter: 1.4375 * inch, bore: (1.4375 - 0.5) * inch },
      1.797,
      0.002,
    ],
  ] as const;
  test.each(ratios)("%s", (_title, before, after, expected, tolerance) => {
    expect(Math.abs(barStiffnessRatio(before, after) - expected)).toBeLessThanOrEqual(tolerance);
  });

  test("11/16 in against 5/8 in is (11/16 ÷ 5/8)⁴ as stiff (common practice, no source)", () => {
    const ratio = barStiffnessRatio({ diameter: (5 / 8) * inch }, { diameter: (11 / 16) * inch });
    expect(ratio).toBeCloseTo(1.4641, 10);
  });

  test("SCR-40: section moduli of 45 x 2.5 and 50 x 2.0 mm tubes are 3361.1 and 3480.4 mm³ (first principles, from memory)", () => {
    const modulus = (diameter: number, wall: number) =>
      (2 * barSecondMoment({ diameter, bore: diameter - 2 * wall })) / diameter;
    expect(Math.abs(modulus(0.045, 0.0025) * 1e9 - 3361.1)).toBeLessThanOrEqual(0.1);
    expect(Math.abs(modulus(0.05, 0.002) * 1e9 - 3480.4)).toBeLessThanOrEqual(0.1);
  });

  test("BAR-09: GJ/L of a 22 mm bar 1 m long with G of Shigley Table A-5 is 31.83 N·m/°", () => {
    const perRadian = torsionalStiffness({ diameter: 0.022 }, { shear: 79.3e9, length: 1 });
    expect(Math.abs((perRadian * Math.PI) / 180 - 31.83)).toBeLessThanOrEqual(0.02);
  });

  test("BAR-10: 1,120,000 d⁴/(L l²) is our torsion term with a G of 11.408e6 psi (forum formula; G worked out)", () => {
    const [d, length, lever] = [0.9, 40, 12];
    const forum = (1120000 * d ** 4) / (length * lever ** 2);
    const ours = torsionalStiffness({ diameter: d * inch }, { shear: 11408000 * psi, length: length * inch });
    expect(Math.abs(ours / (lever * inch) ** 2 / lbfPerInch / forum - 1)).toBeLessThanOrEqual(0.0002);
  });
});

test("BAR-11: a pick-up 3 in from the ball joint of a 19 in arm moves 0.84211 of the wheel (magazine article, April 2010)", () => {
  expect(Math.abs(leverMotionRatio(19 * inch, 3 * inch) - 0.84211)).toBeLessThanOrEqual(1e-5);
});
