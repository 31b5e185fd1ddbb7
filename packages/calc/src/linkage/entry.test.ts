import { describe, expect, test } from "vitest";
import type { Vector } from "../alignment/index";
import { runComputation } from "../catalogue/run";
import { doubleWishboneComputation, strutComputation, swingAxleComputation } from "./corner.entry";
import { exampleWishbone } from "./example";
import { type BarMount, doubleWishbone } from "./index";
import { axleRollComputation } from "./roll.entry";

// What the entries say around the geometry: their figures against one another, their working, their warnings, and the
// mounts that cannot work.

type Run = ReturnType<typeof runComputation>;
const si = (run: Run, name: string) => Number(run.outputs[name]?.si);
const step = (run: Run, symbol: string) => run.working.find((each) => each.symbol === symbol);

describe("a corner's answer", () => {
  const at = (over: object) =>
    runComputation(doubleWishboneComputation, { ...doubleWishboneComputation.example, ...over });
  const moved = { bump: "40 mm", rack: "8 mm" };

  test("the changes in the working are the reading less that of the design position", () => {
    const [design, now] = [at({ bump: 0, rack: 0 }), at(moved)];
    expect(step(now, "Δγ")?.value).toBeCloseTo(si(now, "camber") - si(design, "camber"), 12);
    expect(step(now, "Δθ")?.value).toBeCloseTo(si(now, "toeIn") - si(design, "toeIn"), 12);
    expect(step(now, "Δτ")?.value).toBeCloseTo(si(now, "castor") - si(design, "castor"), 12);
    expect(step(now, "γ₀")?.value).toBeCloseTo(si(design, "camber"), 12);
    expect(Number(step(now, "z_min")?.value)).toBeLessThan(0);
    expect(Number(step(now, "z_max")?.value)).toBeGreaterThan(0.04);
  });

  test("a shift forwards lengthens the wheelbase at the front and shortens it at the rear", () => {
    const [front, rear] = [at({ ...moved, axle: "front" }), at({ ...moved, axle: "rear" })];
    expect(si(front, "wheelbaseChange")).not.toBe(0);
    expect(si(rear, "wheelbaseChange")).toBe(-si(front, "wheelbaseChange"));
  });

  test("names what was not given and therefore has no motion ratio, and nothing where all was", () => {
    const { spring, damper, bar } = exampleWishbone;
    expect(at({ spring, damper, bar }).warnings).toEqual([]);
    expect(at({ spring, damper: undefined, bar: undefined }).warnings).toEqual([
      "Not given, so without a motion ratio: damper, bar.",
    ]);
    expect(at({ spring: undefined, damper, bar }).warnings).toEqual([
      "Not given, so without a motion ratio: spring.",
    ]);
  });

  test("a swing axle has no steering axis, so its working tells no change of castor", () => {
    const run = runComputation(swingAxleComputation, swingAxleComputation.example);
    expect(step(run, "Δτ")).toBeUndefined();
    expect(step(runComputation(strutComputation, strutComputation.example), "Δτ")).toBeDefined();
  });
});

describe("the roll of an axle", () => {
  const rolled = (over: object) =>
    runComputation(axleRollComputation, { ...axleRollComputation.example, ...over });

  test("upright, its roll centre is that of either corner, in the centre plane, and nothing is warned of", () => {
    const run = rolled({ roll: 0 });
    expect(si(run, "rollCentreY")).toBeCloseTo(0, 9);
    expect(si(run, "rollCentreHeight")).toBeCloseTo(Number(step(run, "h_l")?.value), 9);
    expect(run.warnings).toEqual([]);
  });

  test("rolled one way and the other, left and right change places (mirror)", () => {
    const [one, other] = [rolled({ roll: "2°" }), rolled({ roll: "-2°" })];
    expect(si(one, "leftCamber")).toBeCloseTo(si(other, "rightCamber"), 9);
    expect(si(one, "rollCentreHeight")).toBeCloseTo(si(other, "rollCentreHeight"), 9);
    expect(si(one, "rollCentreY")).toBeCloseTo(-si(other, "rollCentreY"), 9);
  });
});

describe("mounts that cannot work are refused by their place", () => {
  const bar = exampleWishbone.bar as BarMount<"lowerArm">;
  const spring = exampleWishbone.spring;
  const withBar = (over: Partial<BarMount<"lowerArm">>) => () =>
    doubleWishbone({ ...exampleWishbone, bar: { ...bar, ...over } });
  const { from, to } = bar.axis;

  /** Half as far again from the axis, in line. */
  const beyond = (end: Vector, axis: Vector): Vector => ({
    x: end.x + (end.x - axis.x) / 2,
    y: end.y,
    z: end.z + (end.z - axis.z) / 2,
  });

  test.each<[string, () => unknown, RegExp]>([
    [
      "an axis of one point",
      withBar({ axis: { from, to: from } }),
      /the bar cannot work: the two points of its axis/,
    ],
    ["an arm that ends on the axis", withBar({ armEnd: from }), /the bar cannot work: its arm has no length/],
    [
      "a drop link in line with its arm",
      withBar({ moving: beyond(bar.armEnd, from) }),
      /the bar cannot work: its drop link stands at a dead centre/,
    ],
    ["a point that is no number", withBar({ armEnd: { ...bar.armEnd, x: Number.NaN } }), /bar\.armEnd/],
    ["an axis that is no number", withBar({ axis: { from, to: { ...to, z: Number.NaN } } }), /bar\.axis\.to/],
    [
      "a spring with both ends on one spot",
      () => doubleWishbone({ ...exampleWishbone, spring: spring && { ...spring, chassis: spring.moving } }),
      /spring/,
    ],
    [
      "a spring's end that is no number",
      () =>
        doubleWishbone({
          ...exampleWishbone,
          spring: spring && { ...spring, chassis: { ...spring.chassis, y: Number.NaN } },
        }),
      /spring\.chassis/,
    ],
  ])("%s", (_, make, words) => {
    expect(make).toThrow(words);
  });
});
