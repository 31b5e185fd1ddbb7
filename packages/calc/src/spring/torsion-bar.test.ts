import fc from "fast-check";
import { expect, test } from "vitest";
import { torsionalStiffness } from "../bar/section";
import { type TorsionBar, torsionBarRate, torsionBarTwist } from "./torsion-bar";

const bar: TorsionBar = {
  section: { diameter: 0.022 },
  length: 1,
  shear: 79.3e9,
  leverLength: 0.33,
  leverAngle: 0,
};
const stiffness = torsionalStiffness(bar.section, bar);
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

test("a level lever gives K/l², whatever the load", () => {
  expect(torsionBarRate(bar, 0)).toBeCloseTo(stiffness / 0.33 ** 2, 9);
  expect(torsionBarRate(bar, 3000)).toBeCloseTo(stiffness / 0.33 ** 2, 9);
  expect(torsionBarTwist(bar, 2000)).toBeCloseTo((2000 * 0.33) / stiffness, 12);
});

test("the rate is the derivative of the load along the lever's arc", () => {
  fc.assert(
    fc.property(between(-0.6, 0.6), between(0.1, 0.6), (angle, twist) => {
      const free = angle - twist; // where the lever stands unloaded
      const load = (at: number) => (stiffness * (at - free)) / (0.33 * Math.cos(at));
      const height = (at: number) => 0.33 * Math.sin(at);
      const step = 1e-6;
      const difference =
        (load(angle + step) - load(angle - step)) / (height(angle + step) - height(angle - step));
      const at = { ...bar, leverAngle: angle };
      expect(torsionBarRate(at, load(angle)) / difference).toBeCloseTo(1, 6);
      expect(torsionBarTwist(at, load(angle))).toBeCloseTo(twist, 9);
    }),
  );
});

test("an upright lever, no lever and a load that is no number are refused", () => {
  expect(() => torsionBarRate({ ...bar, leverAngle: Math.PI / 2 }, 1)).toThrow(
    /between −90° and 90°, but stands at 90°/,
  );
  expect(() => torsionBarTwist({ ...bar, leverAngle: Number.NaN }, 1)).toThrow(/leverAngle/);
  expect(() => torsionBarRate({ ...bar, leverLength: 0 }, 1)).toThrow(/leverLength/);
  expect(() => torsionBarTwist({ ...bar, leverLength: 0 }, 1)).toThrow(/leverLength/);
  expect(() => torsionBarRate(bar, Number.NaN)).toThrow(/load/);
  expect(() => torsionBarTwist(bar, Number.NaN)).toThrow(/load/);
});
