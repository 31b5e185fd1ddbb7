import { describe, expect, test } from "vitest";
import { ZodError } from "zod";
import { CalcRefusal } from "../catalogue/refusal";
import { runComputation } from "../catalogue/run";
import { linkageComputations } from "./catalogue";
import {
  doubleWishboneComputation,
  semiTrailingComputation,
  strutComputation,
  swingAxleComputation,
} from "./corner.entry";
import { exampleWishbone } from "./example";
import { doubleWishbone, mirrorHardpoints, readCorner } from "./index";
import { liveAxleComputation } from "./live-axle.entry";
import { axleRollComputation, linkageAckermannComputation } from "./roll.entry";

type Run = ReturnType<typeof runComputation>;
const si = (run: Run, name: string): number => Number(run.outputs[name]?.si);
const step = (run: Run, symbol: string) => run.working.find((each) => each.symbol === symbol);

test.each(linkageComputations.map((one) => [one.name, one] as const))(
  "%s runs its own example",
  (name, one) => {
    expect(name).toMatch(/^linkage\.[a-zA-Z]+$/);
    expect(runComputation(one, one.example).working.length).toBeGreaterThan(4);
  },
);

describe("a corner", () => {
  const right = doubleWishbone(mirrorHardpoints(exampleWishbone));
  const run = runComputation(doubleWishboneComputation, doubleWishboneComputation.example);

  test("counts y outboard and the rack towards the wheel, so that the right-hand corner is the same entry", () => {
    right.moveTo(0.025, -0.01);
    const reading = readCorner(right);
    for (const name of ["camber", "toeIn", "castor", "kingpin", "scrub", "trail", "trackChange"] as const) {
      expect(si(run, name), name).toBeCloseTo(Number(reading[name]), 9);
    }
    // The rack towards this wheel is to the right here, and so is the steer.
    expect(si(run, "steerGain")).toBeCloseTo(reading.steerGain ?? Number.NaN, 7);
    expect(si(run, "springRatio")).toBeCloseTo(reading.spring?.ratio ?? Number.NaN, 9);
    expect(si(run, "barRatio")).toBeCloseTo(reading.bar?.ratio ?? Number.NaN, 9);
  });

  test("shows in its working what was asked, what changed, how far it could go and where the joints are", () => {
    expect(step(run, "z")?.text).toBe("25 mm");
    expect(Number(step(run, "Δγ")?.value)).toBeCloseTo(si(run, "camber") - exampleWishbone.camber, 12);
    expect(Number(step(run, "z_max")?.value)).toBeGreaterThan(0.1);
    expect(Number(step(run, "z_min")?.value)).toBeLessThan(-0.1);
    expect(step(run, "wheelCentre")?.text).toMatch(/^x -?\d+\.\d, y \d+\.\d, z 310\.0 mm$/);
  });

  test("a shift forwards lengthens the wheelbase at the front and shortens it at the rear", () => {
    const rear = runComputation(doubleWishboneComputation, {
      ...doubleWishboneComputation.example,
      axle: "rear",
    });
    expect(si(rear, "wheelbaseChange")).toBe(0 - si(run, "wheelbaseChange"));
  });

  test("stands in the design position where no travel is asked for", () => {
    const { bump: _, rack: __, ...example } = doubleWishboneComputation.example;
    const still = runComputation(doubleWishboneComputation, example);
    expect(si(still, "camber")).toBeCloseTo(exampleWishbone.camber, 12);
    expect(si(still, "trackChange")).toBeCloseTo(0, 12);
  });

  test("takes trade notation down to a single coordinate", () => {
    const inches = {
      ...doubleWishboneComputation.example,
      wheelCentre: { x: 0, y: "25.59 in", z: "11 7/32 in" },
    };
    expect(si(runComputation(doubleWishboneComputation, inches), "camber")).toBeCloseTo(si(run, "camber"), 3);
  });

  test("says what it cannot reach and by how much, and names a bad field", () => {
    const far = () =>
      runComputation(doubleWishboneComputation, { ...doubleWishboneComputation.example, bump: "400 mm" });
    expect(far).toThrow(CalcRefusal);
    expect(far).toThrow(
      /cannot reach 400\.0 mm of travel with the rack at 10\.0 mm: it reaches -\d+\.\d mm to \d+\.\d mm there/,
    );
    const bad = () =>
      runComputation(doubleWishboneComputation, {
        ...doubleWishboneComputation.example,
        lowerJoint: { x: 0, y: "600", z: 0.1 },
      });
    expect(bad).toThrow(ZodError);
    expect(bad).toThrow(/lowerJoint/);
  });

  test("tells in words what has no value", () => {
    const { spring: _, damper: __, bar: ___, ...bare } = doubleWishboneComputation.example;
    const run = runComputation(doubleWishboneComputation, bare);
    expect(run.outputs.springRatio?.si).toBeNull();
    expect(run.warnings).toEqual(["Not given, so without a motion ratio: spring, damper, bar."]);
    const level = {
      ...semiTrailingComputation.example,
      pivotInner: { x: -2, y: 0.2, z: 0.3 },
      pivotOuter: { x: -2, y: 0.6, z: 0.3 },
    };
    const trailing = runComputation(semiTrailingComputation, level);
    expect(trailing.outputs.swingArm?.si).toBeNull();
    expect(trailing.warnings[0]).toMatch(/^The instant centre lies at infinity/);
  });

  test("a strut's spring and damper act along it unless they are given", () => {
    const run = runComputation(strutComputation, strutComputation.example);
    expect(si(run, "springRatio")).toBeGreaterThan(0.9);
    expect(si(run, "springRatio")).toBe(si(run, "damperRatio"));
    expect(runComputation(swingAxleComputation, swingAxleComputation.example).outputs.castor).toBeUndefined();
  });
});

describe("a live axle", () => {
  test("stands on ground that slopes by the roll", () => {
    const run = runComputation(liveAxleComputation, liveAxleComputation.example);
    expect(si(run, "leftCamber")).toBeCloseTo((2 * Math.PI) / 180, 4);
    expect(Number(step(run, "z_r")?.value) + Number(step(run, "z_l")?.value)).toBeCloseTo(0.04, 12);
  });

  test("takes a Watt linkage and a torque tube, and says what was not given", () => {
    const { spring: _, damper: __, bar: ___, ...example } = liveAxleComputation.example;
    const at = (x: number, y: number, z: number) => ({ x, y, z });
    const run = runComputation(liveAxleComputation, {
      ...example,
      heave: "0 mm",
      roll: "0°",
      location: { kind: "torque-tube", ball: at(-1.4, 0, 0.3) },
      lateral: {
        kind: "watt",
        pivotOn: "axle",
        pivot: at(-2.25, 0, 0.3),
        firstArm: at(-2.25, 0, 0.36),
        firstEnd: at(-2.25, 0.42, 0.36),
        secondArm: at(-2.25, 0, 0.24),
        secondEnd: at(-2.25, -0.42, 0.24),
      },
    });
    expect(si(run, "rollCentreHeight")).toBeCloseTo(0.3, 9);
    expect(run.outputs.springBumpRatio?.si).toBeNull();
    expect(run.warnings).toEqual(["Not given, so without a motion ratio: spring, damper, anti-roll bar."]);
  });

  test("the bar's ratio in roll is how far its arm's end goes over how far the wheel does (finite difference)", () => {
    const at = (roll: number) =>
      runComputation(liveAxleComputation, { ...liveAxleComputation.example, heave: 0, roll });
    const value = (of: Run, symbol: string) => Number(step(of, symbol)?.value);
    const arm = Math.hypot(0.25, 0.01);
    const [low, high] = [at(0.0199), at(0.0201)];
    const turned = (value(high, "α") - value(low, "α")) * arm;
    expect(Math.abs(turned / (value(high, "z_l") - value(low, "z_l")))).toBeCloseTo(
      si(at(0.02), "barRollRatio"),
      5,
    );
    // Linked at 425 mm of a half track of 640 mm, and all but upright: in roll about that share, in bump about all of it.
    expect(si(at(0), "barRollRatio")).toBeCloseTo(425 / 640, 1);
    expect(si(at(0), "barBumpRatio")).toBeCloseTo(1, 1);
  });

  test("is refused where it cannot roll so far", () => {
    const run = () =>
      runComputation(liveAxleComputation, { ...liveAxleComputation.example, roll: 0.49, heave: "450 mm" });
    expect(run).toThrow(CalcRefusal);
  });
});

describe("a whole axle", () => {
  test.each([
    ["double wishbone", axleRollComputation.example.corner],
    ["strut", { layout: "strut", ...strutPoints() }],
    ["swing axle", { layout: "swing axle", ...without(swingAxleComputation.example) }],
    ["semi-trailing arm", { layout: "semi-trailing arm", ...without(semiTrailingComputation.example) }],
  ])("of the layout %s rolls, and both ways alike", (_, corner) => {
    const one = runComputation(axleRollComputation, { corner, roll: "2°" });
    const other = runComputation(axleRollComputation, { corner, roll: "-2°" });
    expect(si(one, "leftCamberToGround")).toBeCloseTo(si(other, "rightCamberToGround"), 9);
    expect(si(one, "leftBump")).toBeCloseTo(-si(one, "rightBump"), 12);
    expect(si(one, "rollCentreY")).toBeCloseTo(-si(other, "rollCentreY"), 7);
    // Left side up: the left wheel droops.
    expect(si(one, "leftBump")).toBeLessThan(0);
  });

  test("steers by as much either way", () => {
    const { example } = linkageAckermannComputation;
    const one = runComputation(linkageAckermannComputation, example);
    const other = runComputation(linkageAckermannComputation, { ...example, rack: "-45 mm" });
    for (const name of ["inner", "outer", "ratio", "radius"])
      expect(si(one, name)).toBeCloseTo(si(other, name), 9);
    expect(() => runComputation(linkageAckermannComputation, { ...example, rack: "0 mm" })).toThrow(
      "which is no turn",
    );
  });
});

/** An example's hardpoints without the position it asks for. */
function without<T extends { bump?: unknown; axle?: unknown }>({
  bump: _,
  axle: __,
  ...points
}: T): Omit<T, "bump" | "axle"> {
  return points;
}

function strutPoints() {
  const { rack: _, ...points } = without(strutComputation.example);
  return points;
}
