import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  activeCoils,
  activeCoilsForRate,
  type CoilEnds,
  coilRate,
  coilStress,
  directShearFactor,
  solidHeight,
  springForce,
  springIndex,
  wahlFactor,
} from "./coil";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const coils = fc.record({
  wire: between(0.005, 0.02),
  meanDiameter: between(0.05, 0.2),
  activeCoils: between(2, 15),
  shear: fc.constant(79.3e9),
});

describe("rate", () => {
  test("goes with d⁴, with 1/D³ and with 1/n", () => {
    fc.assert(
      fc.property(coils, between(1.05, 2), (coil, factor) => {
        const rate = coilRate(coil);
        const scaled = { ...coil, meanDiameter: coil.meanDiameter * factor };
        expect(coilRate({ ...scaled, wire: coil.wire * factor }) / coilRate(scaled)).toBeCloseTo(
          factor ** 4,
          6,
        );
        expect(rate / coilRate(scaled)).toBeCloseTo(factor ** 3, 6);
        expect(rate / coilRate({ ...coil, activeCoils: coil.activeCoils * factor })).toBeCloseTo(factor, 9);
        expect(coilRate({ ...coil, shear: coil.shear * factor }) / rate).toBeCloseTo(factor, 9);
      }),
    );
  });

  test("and the coils for a rate give that rate", () => {
    fc.assert(
      fc.property(coils, between(1000, 200_000), ({ activeCoils: _, ...wire }, wanted) => {
        expect(coilRate({ ...wire, activeCoils: activeCoilsForRate(wanted, wire) }) / wanted).toBeCloseTo(
          1,
          12,
        );
      }),
    );
    expect(() => activeCoilsForRate(0, { wire: 0.01, meanDiameter: 0.1, shear: 8e10 })).toThrow(/wantedRate/);
  });

  test("is the energy of the twisted wire: ½·T²·l/(GJ) with T = F·D/2 over l = π·D·n", () => {
    fc.assert(
      fc.property(coils, (coil) => {
        const polar = (Math.PI * coil.wire ** 4) / 32;
        const wireLength = Math.PI * coil.meanDiameter * coil.activeCoils;
        const compliance = ((coil.meanDiameter / 2) ** 2 * wireLength) / (coil.shear * polar);
        expect(coilRate(coil) * compliance).toBeCloseTo(1, 12);
      }),
    );
  });

  test("is refused for a spring nobody can wind", () => {
    const coil = { wire: 0.01, meanDiameter: 0.1, activeCoils: 6, shear: 8e10 };
    expect(() => coilRate({ ...coil, meanDiameter: 0.01 })).toThrow(
      /mean coil diameter 10 mm must exceed the wire's 10 mm/,
    );
    expect(() => coilRate({ ...coil, wire: 0 })).toThrow(/wire must be greater/);
    expect(() => coilRate({ ...coil, meanDiameter: -1 })).toThrow(/meanDiameter/);
    expect(() => coilRate({ ...coil, activeCoils: 0 })).toThrow(/activeCoils/);
    expect(() => coilRate({ ...coil, shear: 0 })).toThrow(/shearModulus/);
  });
});

describe("ends (Shigley Table 10-1)", () => {
  test.each<[CoilEnds, number, number]>([
    ["plain", 8, 0.09],
    ["plain ground", 7, 0.08],
    ["closed", 6, 0.09],
    ["closed ground", 6, 0.08],
  ])(
    "of eight coils of 10 mm with %s ends %d give, and they stand %d m high closed",
    (ends, active, solid) => {
      expect(activeCoils(8, ends)).toBe(active);
      expect(solidHeight(0.01, 8, ends)).toBeCloseTo(solid, 12);
    },
  );

  test("a spring without a coil that gives is refused", () => {
    expect(() => activeCoils(2, "closed ground")).toThrow(
      /2 coils with closed ground ends leave none that gives: more than 2/,
    );
    expect(() => activeCoils(0, "plain")).toThrow(/totalCoils/);
    expect(() => solidHeight(0, 8, "plain")).toThrow(/wire/);
    expect(() => solidHeight(0.01, -8, "plain")).toThrow(/totalCoils/);
  });
});

describe("stress", () => {
  test("Wahl's factor is above the direct-shear factor and falls towards 1 with the index", () => {
    fc.assert(
      fc.property(between(2, 20), (index) => {
        expect(wahlFactor(index)).toBeGreaterThan(directShearFactor(index));
        expect(wahlFactor(index)).toBeGreaterThan(wahlFactor(index * 1.01));
        expect(directShearFactor(index)).toBeGreaterThan(1);
      }),
    );
    expect(() => wahlFactor(1)).toThrow(/spring index must exceed 1, but is 1/);
    expect(() => wahlFactor(Number.NaN)).toThrow(/springIndex/);
    expect(() => directShearFactor(0)).toThrow(/springIndex/);
    expect(springIndex({ wire: 0.01, meanDiameter: 0.08 })).toBeCloseTo(8, 12);
  });

  test("is linear in the force and in the factor", () => {
    const coil = { wire: 0.01, meanDiameter: 0.1 };
    const one = coilStress(coil, { force: 1000, factor: 1 });
    expect(one).toBeCloseTo((8 * 1000 * 0.1) / (Math.PI * 1e-6), 3);
    expect(coilStress(coil, { force: 2000, factor: 1.2 }) / one).toBeCloseTo(2.4, 12);
    expect(coilStress(coil, { force: 0, factor: 1 })).toBe(0);
    expect(() => coilStress(coil, { force: -1, factor: 1 })).toThrow(/force must not be negative/);
    expect(() => coilStress(coil, { force: 1, factor: 0 })).toThrow(/factor/);
    expect(() => coilStress({ ...coil, wire: 0 }, { force: 1, factor: 1 })).toThrow(/wire/);
    expect(() => coilStress({ ...coil, meanDiameter: 0 }, { force: 1, factor: 1 })).toThrow(/meanDiameter/);
  });
});

test("a spring longer than free pushes with nothing", () => {
  expect(springForce(20_000, 0.3, 0.25)).toBeCloseTo(1000, 9);
  expect(springForce(20_000, 0.3, 0.31)).toBe(0);
  expect(() => springForce(0, 0.3, 0.25)).toThrow(/rate/);
  expect(() => springForce(1, 0, 0.25)).toThrow(/freeLength/);
  expect(() => springForce(1, 0.3, -0.1)).toThrow(/length must not be negative/);
});
