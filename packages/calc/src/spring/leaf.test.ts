import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type LeafSpring, leafRate, leafStress } from "./leaf";

const leaf: LeafSpring = {
  frontLength: 0.5,
  rearLength: 0.5,
  clampLength: 0,
  width: 0.05,
  thickness: 0.006,
  fullLeaves: 0,
  graduatedLeaves: 5,
  young: 207e9,
};
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe("rate", () => {
  test("graduated leaves alone: 8·E·n·b·t³/(3·L³) (laminated-spring formula of machine-design handbooks, from memory)", () => {
    expect(leafRate(leaf)).toBeCloseTo((8 * 207e9 * 5 * 0.05 * 0.006 ** 3) / 3, 6);
  });

  test("full-length leaves alone: a beam on two supports, 48·E·I/L³", () => {
    const inertia = (5 * 0.05 * 0.006 ** 3) / 12;
    expect(leafRate({ ...leaf, fullLeaves: 5, graduatedLeaves: 0 })).toBeCloseTo(48 * 207e9 * inertia, 6);
  });

  test("unequal halves of one uniform leaf: a beam loaded off its middle, 3·E·I·L/(a²b²)", () => {
    fc.assert(
      fc.property(between(0.3, 0.8), between(0.3, 0.8), (a, b) => {
        const one = { ...leaf, frontLength: a, rearLength: b, fullLeaves: 1, graduatedLeaves: 0 };
        const beam = (3 * 207e9 * ((0.05 * 0.006 ** 3) / 12) * (a + b)) / (a * b) ** 2;
        expect(leafRate(one) / beam).toBeCloseTo(1, 9);
        expect(leafRate({ ...one, frontLength: b, rearLength: a }) / beam).toBeCloseTo(1, 9);
      }),
    );
  });

  test("goes with t³, b and E, and a clamp of length c is a spring shorter by c", () => {
    fc.assert(
      fc.property(between(1.05, 2), between(0, 0.2), (factor, clampLength) => {
        const rate = leafRate(leaf);
        expect(leafRate({ ...leaf, thickness: 0.006 * factor }) / rate).toBeCloseTo(factor ** 3, 9);
        expect(leafRate({ ...leaf, width: 0.05 * factor }) / rate).toBeCloseTo(factor, 9);
        expect(leafRate({ ...leaf, young: 207e9 * factor }) / rate).toBeCloseTo(factor, 9);
        const clamped = leafRate({ ...leaf, clampLength });
        const half = 0.5 - clampLength / 2;
        expect(clamped / leafRate({ ...leaf, frontLength: half, rearLength: half })).toBeCloseTo(1, 12);
      }),
    );
  });

  test("refuses what is no leaf spring", () => {
    expect(() => leafRate({ ...leaf, graduatedLeaves: 0 })).toThrow(/at least one leaf/);
    expect(() => leafRate({ ...leaf, graduatedLeaves: 4.5 })).toThrow(
      /graduatedLeaves must be a whole number, but is 4.5/,
    );
    expect(() => leafRate({ ...leaf, fullLeaves: -1 })).toThrow(/fullLeaves/);
    expect(() => leafRate({ ...leaf, clampLength: 1 })).toThrow(/half the clamp, 500 mm, must be shorter/);
    expect(() => leafRate({ ...leaf, clampLength: -0.1 })).toThrow(/clampLength/);
    for (const place of ["frontLength", "rearLength", "width", "thickness"] as const)
      expect(() => leafRate({ ...leaf, [place]: 0 })).toThrow(place);
    expect(() => leafRate({ ...leaf, young: 0 })).toThrow(/youngModulus/);
  });
});

describe("stress at the clamp", () => {
  test("graduated leaves alone are plates in bending, 6·P·l/(n·b·t²)", () => {
    const { graduated, full } = leafStress(leaf, 2000);
    expect(graduated).toBeCloseTo((6 * 1000 * 0.5) / (5 * 0.05 * 0.006 ** 2), 3);
    expect(full).toBe(0);
  });

  test("full-length leaves beside them are stressed half as much again, and together they carry the moment", () => {
    const mixed = { ...leaf, fullLeaves: 2, graduatedLeaves: 4 };
    const { graduated, full } = leafStress(mixed, 2000);
    expect(full / graduated).toBeCloseTo(1.5, 12);
    const modulus = (0.05 * 0.006 ** 2) / 6;
    expect((2 * full + 4 * graduated) * modulus).toBeCloseTo(500, 9);
    expect(leafStress({ ...leaf, fullLeaves: 2, graduatedLeaves: 0 }, 2000).graduated).toBe(0);
    expect(() => leafStress(leaf, -1)).toThrow(/load/);
  });
});
