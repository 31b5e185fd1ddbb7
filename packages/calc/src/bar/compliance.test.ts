import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { CalcRefusal } from "../catalogue/refusal";
import { atMost } from "../property-runs.fixture";
import { carbonSteel } from "../spring/material";
import { armOutset, type Bar, type BarFlexibility, barCompliance, loadReach } from "./compliance";
import { barRate } from "./rate";
import { barSecondMoment } from "./section";

const bar: Bar = {
  section: { diameter: 0.02 },
  middleLength: 0.9,
  leverLength: 0.2,
  armLength: 0.25,
  bushSpacing: 0.6,
  moduli: carbonSteel,
};

const length = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const bars: fc.Arbitrary<Bar> = fc
  .record({ d: length(0.01, 0.04), wall: length(0.2, 1), middle: length(0.4, 1.3), lever: length(0.08, 0.4) })
  .chain(({ d, wall, middle, lever }) =>
    fc
      .record({ arm: length(lever, lever * 1.5), spacing: length(middle * 0.4, middle) })
      .map(({ arm, spacing }) => ({
        section: { diameter: d, bore: d * (1 - wall) },
        middleLength: middle,
        leverLength: lever,
        armLength: arm,
        bushSpacing: spacing,
        moduli: carbonSteel,
      })),
  );

/**
 * The same bar by statics and numerical integration: the moment vector at each point of one half is r × F of the
 * end load (and of the bush's reaction, inboard of it), split along and across the tangent; compliance = 2U/F².
 */
function integrated(one: Bar, steps = 4000): number {
  const { middleLength: middle, leverLength: lever, armLength: arm, bushSpacing: spacing = middle } = one;
  const outset = Math.sqrt(arm ** 2 - lever ** 2);
  const end = { x: lever, y: middle / 2 + outset };
  const bush = spacing / 2;
  const reaction = end.y / bush; // moments about the centre line: end load × its arm = reaction × half the spacing
  const bendStiffness = one.moduli.young * barSecondMoment(one.section);
  const twistStiffness = one.moduli.shear * 2 * barSecondMoment(one.section);
  const energy = (point: { x: number; y: number }, tangent: { x: number; y: number }): number => {
    const inboard = point.x === 0 && point.y < bush;
    const mx = end.y - point.y - (inboard ? reaction * (bush - point.y) : 0);
    const my = -(end.x - point.x);
    const along = mx * tangent.x + my * tangent.y;
    const across = mx * tangent.y - my * tangent.x;
    return along ** 2 / twistStiffness + across ** 2 / bendStiffness;
  };
  let sum = 0;
  for (let i = 0; i < steps; i++) {
    const part = (i + 0.5) / steps;
    const onArm = { x: lever * part, y: middle / 2 + outset * part };
    sum += (energy(onArm, { x: lever / arm, y: outset / arm }) * arm) / steps;
    sum += (energy({ x: 0, y: (middle / 2) * part }, { x: 0, y: 1 }) * middle) / 2 / steps;
  }
  return sum;
}

describe("compliance of a bar", () => {
  test("equals the strain energy integrated numerically along the bar", () => {
    fc.assert(
      fc.property(bars, (one) => {
        expect(barCompliance(one).total / integrated(one)).toBeCloseTo(1, 5);
      }),
      atMost(40),
    );
  });

  test("is the SAE Spring Design Manual's stabiliser-bar formula where G = 3E/8 (from memory)", () => {
    fc.assert(
      fc.property(bars, (steel) => {
        const one = { ...steel, moduli: { young: 200e9, shear: 75e9 } };
        const [a, c] = [armOutset(one), (one.bushSpacing ?? 0) / 2];
        const b = one.middleLength / 2 - c;
        const span = 2 * (a + b + c);
        const shape =
          one.armLength ** 3 - a ** 3 + (span / 2) * (a + b) ** 2 + 4 * one.leverLength ** 2 * (b + c);
        const sae = shape / (3 * one.moduli.young * barSecondMoment(one.section));
        expect(barCompliance(one).total / sae).toBeCloseTo(1, 9);
      }),
    );
  });

  test("of the bar itself goes with 1/d⁴ and the parts add up to the total", () => {
    fc.assert(
      fc.property(bars, length(0.5, 2), (one, factor) => {
        const { diameter, bore = 0 } = one.section;
        const scaled = { ...one, section: { diameter: diameter * factor, bore: bore * factor } };
        const { total, ...parts } = barCompliance(one, { linkRate: 2e5, bushRate: 3e6 });
        expect(Object.values(parts).reduce((sum, part) => sum + part, 0)).toBeCloseTo(total, 15);
        expect(barCompliance(one).total / barCompliance(scaled).total).toBeCloseTo(factor ** 4, 6);
      }),
    );
  });

  test("only grows with a longer arm, a longer middle, softer links and softer bushes", () => {
    fc.assert(
      fc.property(bars, length(1.01, 1.3), (one, more) => {
        const flexibility: BarFlexibility = { linkRate: 2e5, bushRate: 3e6 };
        const base = barCompliance(one, flexibility).total;
        const longer = { ...one, armLength: one.armLength * more, leverLength: one.leverLength * more };
        expect(barCompliance(longer, flexibility).total).toBeGreaterThan(base);
        expect(
          barCompliance({ ...one, middleLength: one.middleLength * more }, flexibility).total,
        ).toBeGreaterThan(base);
        expect(barCompliance(one, { ...flexibility, linkRate: 2e5 / more }).total).toBeGreaterThan(base);
        expect(barCompliance(one, { ...flexibility, bushRate: 3e6 / more }).total).toBeGreaterThan(base);
      }),
    );
  });

  test("of a link is its own, and of a bush counts by the square of its lever", () => {
    const { links, bushes } = barCompliance(bar, { linkRate: 2e5, bushRate: 3e6 });
    expect(links).toBeCloseTo(1 / 2e5, 15);
    // ends 0.9 + 2 × 0.15 = 1.2 m apart on bushes 0.6 m apart: lever 2, so four times 1/3e6
    expect(bushes).toBeCloseTo(4 / 3e6, 15);
    expect(barRate(bar, { linkRate: 2e5, bushRate: 3e6 })).toBeLessThan(barRate(bar));
  });

  test("leaves the middle's bending out where the bush spacing is not known", () => {
    const { bushSpacing: _, ...unknown } = bar;
    expect(barCompliance(unknown).middleBending).toBe(0);
    expect(barCompliance(bar).middleBending).toBeGreaterThan(0);
    expect(loadReach(unknown)).toBeCloseTo(0.15, 12);
    expect(loadReach(bar)).toBeCloseTo(0.15 + 0.15, 12);
  });

  test("takes an arm square to the middle, mounted at its bends, as torsion and arm bending alone", () => {
    const square = { ...bar, armLength: bar.leverLength, bushSpacing: bar.middleLength };
    expect(armOutset(square)).toBe(0);
    expect(barCompliance(square).middleBending).toBe(0);
  });
});

describe("what is refused", () => {
  const refusals: [string, Bar, BarFlexibility, string, string][] = [
    [
      "an arm shorter than its lever",
      { ...bar, armLength: 0.199 },
      {},
      "ARM_SHORTER_THAN_LEVER",
      "armLength",
    ],
    [
      "bushes further apart than the middle",
      { ...bar, bushSpacing: 0.91 },
      {},
      "BUSHES_TOO_FAR_APART",
      "bushSpacing",
    ],
    [
      "a bush rate without spacing",
      { ...bar, bushSpacing: undefined },
      { bushRate: 1e6 },
      "BUSH_SPACING_NEEDED",
      "bushSpacing",
    ],
    ["no middle", { ...bar, middleLength: 0 }, {}, "NOT_POSITIVE", "middleLength"],
    ["no lever", { ...bar, leverLength: 0 }, {}, "NOT_POSITIVE", "leverLength"],
    ["a negative arm", { ...bar, armLength: -0.25 }, {}, "NOT_POSITIVE", "armLength"],
    ["a bush spacing of nothing", { ...bar, bushSpacing: 0 }, {}, "NOT_POSITIVE", "bushSpacing"],
    ["a link without stiffness", bar, { linkRate: 0 }, "NOT_POSITIVE", "linkRate"],
    ["a bush without stiffness", bar, { bushRate: 0 }, "NOT_POSITIVE", "bushRate"],
    [
      "a bore as large as the bar",
      { ...bar, section: { diameter: 0.02, bore: 0.02 } },
      {},
      "BORE_TOO_LARGE",
      "bore",
    ],
    ["a negative bore", { ...bar, section: { diameter: 0.02, bore: -0.001 } }, {}, "NEGATIVE", "bore"],
    [
      "a diameter that is no number",
      { ...bar, section: { diameter: Number.NaN } },
      {},
      "NOT_FINITE",
      "diameter",
    ],
    ["no shear modulus", { ...bar, moduli: { young: 2e11, shear: 0 } }, {}, "NOT_POSITIVE", "shearModulus"],
    ["no Young's modulus", { ...bar, moduli: { young: 0, shear: 8e10 } }, {}, "NOT_POSITIVE", "youngModulus"],
  ];
  test.each(refusals)("%s", (_title, one, flexibility, code, place) => {
    let caught: unknown;
    try {
      barCompliance(one, flexibility);
    } catch (error) {
      caught = error;
    }
    expect(caught).toBeInstanceOf(CalcRefusal);
    expect(caught).toMatchObject({ code, place });
  });
});
