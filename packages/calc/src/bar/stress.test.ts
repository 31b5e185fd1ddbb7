import fc from "fast-check";
import { expect, test } from "vitest";
import { carbonSteel } from "../spring/material";
import type { Bar } from "./compliance";
import { barStress } from "./stress";

const bar: Bar = {
  section: { diameter: 0.02 },
  middleLength: 0.9,
  leverLength: 0.2,
  armLength: 0.2,
  bushSpacing: 0.9,
  moduli: carbonSteel,
};

test("a square bar mounted at its bends: 16T/πd³ in the middle, 32M/πd³ in the arm", () => {
  const stress = barStress(bar, 1000);
  expect(stress.torque).toBeCloseTo(200, 9);
  expect(stress.shear).toBeCloseTo((16 * 200) / (Math.PI * 0.02 ** 3), 0);
  expect(stress.middleMoment).toBe(0);
  expect(stress.middle).toBeCloseTo(Math.sqrt(3) * stress.shear, 0);
  expect(stress.arm).toBeCloseTo((32 * 200) / (Math.PI * 0.02 ** 3), 0);
  expect(stress.place).toBe("arm");
  expect(stress.greatest).toBe(stress.arm);
});

test("a wide overhang makes the middle at the bush govern", () => {
  const overhung = { ...bar, bushSpacing: 0.3 };
  const { middle, arm, place, greatest, middleMoment } = barStress(overhung, 1000);
  expect(middleMoment).toBeCloseTo(300, 9);
  expect(middle).toBeGreaterThan(arm);
  expect(place).toBe("middle");
  expect(greatest).toBe(middle);
});

test("stress goes with the force, whichever way it points, and with 1/d³ for a solid bar", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1, max: 5000, noNaN: true }),
      fc.double({ min: 0.5, max: 2, noNaN: true }),
      (force, factor) => {
        const base = barStress(bar, force).greatest;
        expect(barStress(bar, -force).greatest).toBe(base);
        expect(barStress(bar, 2 * force).greatest / base).toBeCloseTo(2, 9);
        const scaled = { ...bar, section: { diameter: 0.02 * factor } };
        expect(base / barStress(scaled, force).greatest).toBeCloseTo(factor ** 3, 6);
      },
    ),
  );
});

test("a tube of the same outside diameter is stressed more", () => {
  const tube = { ...bar, section: { diameter: 0.02, bore: 0.014 } };
  expect(barStress(tube, 500).greatest / barStress(bar, 500).greatest).toBeCloseTo(1 / (1 - 0.7 ** 4), 9);
});

test("a force that is no number is refused", () => {
  expect(() => barStress(bar, Number.POSITIVE_INFINITY)).toThrow(
    /force must be a finite number, but is Infinity/,
  );
});
