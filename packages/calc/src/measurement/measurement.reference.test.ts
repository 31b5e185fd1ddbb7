import { describe, expect, test } from "vitest";
import { conformityProbability } from "./conformity";
import {
  arcsineUncertainty,
  combinedUncertainty,
  effectiveDegreesOfFreedom,
  rectangularUncertainty,
  resolutionUncertainty,
} from "./uncertainty";

const near = (value: number, expected: number, tolerance: number) =>
  expect(Math.abs(value - expected), `${value} against ${expected}`).toBeLessThanOrEqual(tolerance);
const of = (...standards: readonly number[]) => standards.map((standard) => ({ standard }));

describe("GUM example H.1, end gauge (JCGM 100:2008, through the documentation of an open uncertainty library)", () => {
  /** nm; the 50 mm gauge: l_s, three of the comparison, difference of temperature, difference of expansion. */
  const contributions = [25, 5.8, 3.9, 6.7, 2.88675, 16.599];

  test("MEA-01: combined uncertainty 32 nm (31.66 before rounding)", () => {
    near(combinedUncertainty(of(...contributions)), 32, 0.5);
    near(combinedUncertainty(of(...contributions)), 31.66, 0.005);
  });

  test("MEA-03: ±0.05 °C rectangular on 50 mm of 11.5 ppm/K is 16.599 nm", () => {
    const sensitivity = 50e6 * 1.15e-5;
    near(combinedUncertainty([{ standard: rectangularUncertainty(0.05), sensitivity }]), 16.599, 0.002);
  });

  test("MEA-04: ±1e-6 /K rectangular at 0.1 K is 2.88679 nm", () => {
    const sensitivity = 50e6 * -0.1;
    near(combinedUncertainty([{ standard: rectangularUncertainty(1e-6), sensitivity }]), 2.88679, 1e-4);
  });

  test("MEA-05: ±0.5 °C swinging in sine is 0.354 °C (function named there, number worked out)", () => {
    near(arcsineUncertainty(0.5), 0.354, 0.0005);
  });

  test("MEA-06 (from memory): 16.7 effective degrees of freedom", () => {
    const printed = [
      { standard: 25, degreesOfFreedom: 18 },
      { standard: 9.7, degreesOfFreedom: 25.6 },
      { standard: 2.9, degreesOfFreedom: 50 },
      { standard: 16.6, degreesOfFreedom: 2 },
    ];
    // The row puts the unrounded u_c = 31.66 over contributions that are rounded; ours takes u_c from the same ones.
    const asPrinted = effectiveDegreesOfFreedom(printed) * (31.66 / combinedUncertainty(printed)) ** 4;
    near(asPrinted, 16.7, 0.05);
    expect(Math.floor(effectiveDegreesOfFreedom(printed)), "GUM truncates to 16").toBe(16);
  });

  test("MEA-08 (from memory): expanded with k = 2.92 it is 93 nm", () => {
    near(2.92 * combinedUncertainty(of(32)), 93, 0.6);
  });
});

describe("single contributions (JCGM 100:2008, from memory)", () => {
  test("MEA-09: copper between 16.40 and 16.92 ppm/K, GUM 4.3.7 example 1", () => {
    near(rectangularUncertainty((16.92 - 16.4) / 2), 0.15, 0.0005);
  });

  test("MEA-10: a digital display, GUM F.2.2.1", () => near(resolutionUncertainty(1), 0.29, 0.002));
  test("MEA-11: a camber gauge of 0.1°", () => near(resolutionUncertainty(0.1), 0.0289, 0.0001));
});

describe("conformity probability (JCGM 106:2012, 7.3 and 7.4, from memory)", () => {
  test.each([
    ["MEA-13, upper limit", { value: -5.47, standardUncertainty: 0.05, limits: { upper: -5.4 } }, 0.92],
    ["MEA-14, lower limit", { value: 509.7, standardUncertainty: 8.6, limits: { lower: 490 } }, 0.99],
    ["MEA-15, both", { value: 13.6, standardUncertainty: 1.8, limits: { lower: 12.5, upper: 16.3 } }, 0.66],
  ])("%s", (_title, input, expected) => {
    near(conformityProbability(input), expected, 0.005);
  });
});
