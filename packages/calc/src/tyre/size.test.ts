import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  rollingCircumference,
  sectionWidthOnRim,
  tyreOverallDiameter,
  tyreSectionHeight,
  tyreTableDiameter,
} from "./size";

const section = { sectionWidth: 0.175, aspect: 0.7, rimDiameter: 0.3302 };
const sections = fc.record({
  sectionWidth: fc.integer({ min: 25, max: 60 }).map((n) => n * 0.005),
  aspect: fc.integer({ min: 5, max: 19 }).map((n) => n * 0.05),
  rimDiameter: fc.integer({ min: 10, max: 18 }).map((n) => n * 0.0254),
});

describe("diameter", () => {
  test("is the rim and two section heights; the table's rounding moves it by at most 1.5 mm", () => {
    fc.assert(
      fc.property(sections, (one) => {
        const exact = tyreOverallDiameter(one);
        expect(exact).toBeCloseTo(one.rimDiameter + 2 * tyreSectionHeight(one), 12);
        expect(Math.abs(tyreTableDiameter(one) - exact)).toBeLessThanOrEqual(0.0015 + 1e-9);
        expect(tyreOverallDiameter({ ...one, aspect: one.aspect + 0.05 })).toBeGreaterThan(exact);
        expect(tyreOverallDiameter({ ...one, sectionWidth: one.sectionWidth + 0.01 })).toBeGreaterThan(exact);
      }),
    );
  });

  test("refuses what is no section", () => {
    for (const place of ["sectionWidth", "aspect", "rimDiameter"] as const) {
      expect(() => tyreOverallDiameter({ ...section, [place]: 0 })).toThrow(place);
      expect(() => tyreTableDiameter({ ...section, [place]: -1 })).toThrow(place);
    }
  });
});

test("a cross-ply rolls 2.99 and a radial 3.05 of its diameter, both less than π", () => {
  expect(rollingCircumference(0.6, "crossPly")).toBeCloseTo(1.794, 12);
  expect(rollingCircumference(0.6, "radial")).toBeCloseTo(1.83, 12);
  expect(() => rollingCircumference(0, "radial")).toThrow(/overallDiameter/);
});

describe("section width on a rim", () => {
  test("changes by about 5 mm for half an inch (a tyre importer's data page; read), from nominal on the measuring rim", () => {
    const fit = { sectionWidth: 0.175, rimWidth: 5 * 0.0254, measuringRimWidth: 5 * 0.0254 };
    expect(sectionWidthOnRim(fit)).toBeCloseTo(0.175, 12);
    expect(sectionWidthOnRim({ ...fit, rimWidth: 5.5 * 0.0254 }) - 0.175).toBeCloseTo(0.00508, 9);
    expect(sectionWidthOnRim({ ...fit, rimWidth: 4.5 * 0.0254 })).toBeLessThan(0.175);
    for (const place of ["sectionWidth", "rimWidth", "measuringRimWidth"] as const)
      expect(() => sectionWidthOnRim({ ...fit, [place]: 0 })).toThrow(place);
  });
});
