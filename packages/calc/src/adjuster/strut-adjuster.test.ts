import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { coordinates, leastSquares, pointAt, separation } from "../../bench/generic-solver";
import { camberOf, toeInOf, type Vector } from "../alignment/index";
import { runComputation } from "../catalogue/run";
import { exampleStrut, exampleWishbone } from "../linkage/example";
import { doubleWishbone, mirrorHardpoints, readCorner, type StrutPoint, strut } from "../linkage/index";
import { atMost } from "../property-runs.fixture";
import { type Adjuster, combine, settable } from "./adjuster";
import type { CamberBolt } from "./camber-bolt";
import { adjusterEffectComputation } from "./effect.entry";
import { adjusterPlanComputation } from "./plan.entry";

const degree = Math.PI / 180;
const { bar: _bar, ...bare } = exampleStrut;
/** Invented, as the example's hardpoints are. */
const slot: Adjuster<"strutTop"> = {
  kind: "slot",
  name: "top mount",
  points: ["strutTop"],
  axis: { x: 0, y: 1, z: 0 },
  step: 0.001,
  lowest: -0.008,
  highest: 0.008,
};
const bolt: CamberBolt = {
  kind: "camberBolt",
  name: "upper clamp bolt",
  pivot: { x: -8, y: 596, z: 300 },
  bolt: { x: -12, y: 590, z: 360 },
  axis: { x: 0, y: 1, z: 0 },
  eccentricity: 0.0015,
  setting: 0,
  step: Math.PI / 12,
};
const millimetres = ({ x, y, z }: Vector): Vector => ({ x: x / 1000, y: y / 1000, z: z / 1000 });
const clamp: CamberBolt = { ...bolt, pivot: millimetres(bolt.pivot), bolt: millimetres(bolt.bolt) };
/** Height of the top mount above the clamp's pivot, over its height above the lower joint. */
const lever = (790 - 300) / (790 - 182);
const spacing = Math.hypot(4, 6, 60) / 1000;

const read = (adjuster: Adjuster<StrutPoint>, steps: number) =>
  readCorner(strut(bare, settable(adjuster).effect(steps)));
const now = readCorner(strut(bare));

describe("a strut's top mount in its slots", () => {
  test("outboard adds positive camber, about the shift over its height above the lower joint", () => {
    const moved = read(slot, 5);
    const change = moved.camber - now.camber;
    expect(change).toBeGreaterThan(0);
    // 5 mm at 608 mm; the wheel centre's height is held, so the arm turns a little too.
    expect(Math.abs(change - Math.atan(0.005 / 0.608))).toBeLessThan(0.04 * change);
    expect(read(slot, -5).camber).toBeLessThan(now.camber);
  });

  test("leaves the included angle, camber and kingpin together, as it is (workshop manuals; common practice, no source)", () => {
    const included = ({ camber, kingpin }: typeof now) => camber + (kingpin ?? Number.NaN);
    const moved = read(slot, 8);
    expect(Math.abs(moved.camber - now.camber)).toBeGreaterThan(0.5 * degree);
    expect(included(moved)).toBeCloseTo(included(now), 3);
  });

  test("keeps to its ends and its marks, and says so where it cannot be", () => {
    expect(settable(slot)).toMatchObject({ lowest: -8, highest: 8 });
    expect(settable({ ...slot, step: 0.003 })).toMatchObject({ lowest: -2, highest: 2 });
    expect(() => settable({ ...slot, step: 0 })).toThrow('"top mount" cannot be: its step must be above 0 m');
    expect(() => settable({ ...slot, lowest: 0.001 })).toThrow(
      "run from 0 or less to 0 or more, but runs from 0.001",
    );
  });
});

describe("an eccentric bolt in the strut's clamp", () => {
  test("leans the upright by the cam's throw over the distance of both bolts, kingpin all but as it was", () => {
    const lean = Math.asin((clamp.eccentricity * Math.sin(6 * clamp.step)) / spacing);
    const moved = read(clamp, 6);
    const change = moved.camber - now.camber;
    // Seen from the upright the top mount swings about the pivot, and the kingpin is the line from the lower joint to it.
    const included = change + ((moved.kingpin ?? 0) - (now.kingpin ?? 0));
    expect(Math.abs(included / lean - lever)).toBeLessThan(0.04);
    expect(change).toBeGreaterThan(0.7 * lean);
    expect(read(clamp, -6).camber).toBeLessThan(now.camber);
  });

  test("steps from where the bolt stands, to a quarter turn either way and no further", () => {
    expect(settable(clamp)).toMatchObject({ lowest: -6, highest: 6 });
    const set = { ...clamp, setting: Math.PI / 6 };
    expect(settable(set)).toMatchObject({ lowest: -8, highest: 4 });
    expect(read(set, 0).camber).toBeCloseTo(now.camber, 12);
    // From 30° back to 0° undoes half the throw.
    const half = Math.asin(clamp.eccentricity / 2 / spacing);
    const back = read(set, -2);
    const included = back.camber - now.camber + ((back.kingpin ?? 0) - (now.kingpin ?? 0));
    expect(Math.abs(included / half + lever)).toBeLessThan(0.04);
  });

  test("left and right are mirror images", () => {
    const mirrored = (point: Vector): Vector => ({ ...point, y: -point.y });
    const right = mirrorHardpoints(bare);
    const other = {
      ...clamp,
      pivot: mirrored(clamp.pivot),
      bolt: mirrored(clamp.bolt),
      axis: mirrored(clamp.axis),
    };
    const there = readCorner(strut(right, settable<StrutPoint>(other).effect(4)));
    const here = read(clamp, 4);
    for (const name of ["camber", "toeIn", "castor", "kingpin"] as const)
      expect(there[name]).toBeCloseTo(Number(here[name]), 10);
  });

  test("the leant strut is what a generic solver makes of the turned axis (ml-levenberg-marquardt)", () => {
    fc.assert(
      fc.property(fc.integer({ min: -6, max: 6 }), fc.integer({ min: -8, max: 8 }), (turns, marks) => {
        const set = combine([settable<StrutPoint>(clamp), settable<StrutPoint>(slot)], [turns, marks]);
        const ours = readCorner(strut(bare, set));
        const theirs = genericStrut(clamp.eccentricity * Math.sin(turns * clamp.step), marks / 1000);
        expect(camberOf(theirs)).toBeCloseTo(ours.camber, 7);
        expect(toeInOf(theirs, "left")).toBeCloseTo(ours.toeIn, 7);
      }),
      atMost(12),
    );
  });

  test.each([
    [{ eccentricity: 0 }, "its eccentricity must be above 0 m, but is 0"],
    [{ setting: 2 }, "its setting must lie within ±90°, but is 2 rad"],
    [{ step: 0 }, "its step must be above 0 rad, but is 0"],
    [{ eccentricity: 0.05 }, "too close for a cam of 0.05 m"],
    [{ axis: { x: 0, y: 0, z: 1 } }, "its direction runs along the line of both bolts"],
    [{ axis: { x: 0, y: 0, z: 0 } }, "it needs a direction"],
  ])("%o is refused", (change, words) => {
    expect(() => settable({ ...clamp, ...change })).toThrow(words);
  });

  test("two of them on one clamp are refused, and so is one where nothing is clamped to a strut", () => {
    const part = settable<StrutPoint>(clamp);
    expect(() => combine([part, part], [1, 1])).toThrow("leans about one bolt, not two");
    const lean = settable<never>(clamp).effect(1);
    expect(() => doubleWishbone(exampleWishbone, lean)).toThrow(
      "only a strut carries its upright in a clamp",
    );
  });
});

/**
 * The wheel's spin axis with the upright leant by a push at the clamp's bolt and the top mount shifted outboard: lower
 * joint, tie rod end, wheel centre, a point on its axle and two points of the strut's tube as unknowns, every distance a
 * residual, and the top mount on the line of the tube.
 */
function genericStrut(push: number, outboard: number): Vector {
  const {
    lowerArmFront,
    lowerArmRear,
    lowerJoint,
    strutTop,
    strutFoot,
    tieRodInner,
    tieRodOuter,
    wheelCentre,
  } = bare;
  const spin = strut(bare).wheel.designSpin;
  const tip = { x: wheelCentre.x + spin.x, y: wheelCentre.y + spin.y, z: wheelCentre.z + spin.z };
  // The tube as it stands in the turned upright: turned back about the pivot, by plain matrix.
  const angle = -Math.asin(push / spacing);
  const along = between(clamp.pivot, clamp.bolt);
  const raw = { x: -along.z * clamp.axis.y, y: 0, z: along.x * clamp.axis.y };
  const size = Math.hypot(raw.x, raw.z);
  const [u, w] = [raw.x / size, raw.z / size];
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const turned = (point: Vector): Vector => {
    const { x, y, z } = between(clamp.pivot, point);
    return {
      x: clamp.pivot.x + (c + u * u * (1 - c)) * x - w * s * y + u * w * (1 - c) * z,
      y: clamp.pivot.y + w * s * x + c * y - u * s * z,
      z: clamp.pivot.z + u * w * (1 - c) * x + u * s * y + (c + w * w * (1 - c)) * z,
    };
  };
  const upright = [lowerJoint, tieRodOuter, wheelCentre, tip, turned(strutFoot), turned(strutTop)];
  const top = { ...strutTop, y: strutTop.y + outboard };
  const pairs = upright.flatMap((_, from) =>
    upright.slice(from + 1).map((__, to) => [from, from + 1 + to] as const),
  );
  const design = upright.map(coordinates);
  const rods: [number, Vector, number][] = [
    [0, lowerArmFront, separation(coordinates(lowerJoint), coordinates(lowerArmFront))],
    [0, lowerArmRear, separation(coordinates(lowerJoint), coordinates(lowerArmRear))],
    [1, tieRodInner, separation(coordinates(tieRodOuter), coordinates(tieRodInner))],
  ];
  const found = leastSquares((unknowns) => {
    const points = upright.map((_, index) => pointAt(unknowns, index));
    const apart = (from: number, to: number, of: typeof points) =>
      separation(of[from] ?? zero, of[to] ?? zero);
    const foot = points[4] ?? zero;
    const high = points[5] ?? zero;
    const line = high.map((value, axis) => value - (foot[axis] ?? 0));
    const mount = coordinates(top).map((value, axis) => value - (foot[axis] ?? 0));
    const across = (i: number, j: number) =>
      (line[i] ?? 0) * (mount[j] ?? 0) - (line[j] ?? 0) * (mount[i] ?? 0);
    return [
      ...pairs.map(([from, to]) => apart(from, to, points) - apart(from, to, design)),
      ...rods.map(([at, to, length]) => separation(points[at] ?? zero, coordinates(to)) - length),
      across(0, 1),
      across(1, 2),
      across(2, 0),
      (points[2] ?? zero)[2] - wheelCentre.z,
    ];
  }, upright.flatMap(coordinates));
  const [a, b] = [pointAt(found, 2), pointAt(found, 3)];
  return { x: b[0] - a[0], y: b[1] - a[1], z: b[2] - a[2] };
}
const zero = [0, 0, 0] as const;
function between(from: Vector, to: Vector): Vector {
  return { x: to.x - from.x, y: to.y - from.y, z: to.z - from.z };
}

describe("in the catalogue", () => {
  const { side: _side, ...points } = bare;
  const corner = { layout: "strut", ...points };
  const adjusters = [
    { ...slot, step: "1 mm", lowest: "-8 mm", highest: "8 mm" },
    { ...clamp, eccentricity: "1.5 mm", setting: "0°", step: "15°" },
    { kind: "tieRod", name: "track rod end", pitch: "1.5 mm", step: 1 / 12, lowest: -6, highest: 6 },
  ];
  const plan = (change: object = {}) =>
    runComputation(adjusterPlanComputation, {
      corner,
      adjusters,
      target: { camber: "-1°45'", toeIn: "0°5' toe-in per side" },
      ...change,
    });

  test("slot, bolt and tie rod reach camber and toe together, told in words", () => {
    const run = plan();
    expect(run.outputs.verdict?.text).toBe("every angle within its tolerance");
    expect(run.outputs.plan?.text).toMatch(
      /slide top mount \d mm inboard|turn upper clamp bolt from 0° to -\d+°/,
    );
    const ideals = run.working.filter(({ label }) => label.startsWith("Best without steps"));
    expect(ideals.map(({ text }) => text)).toEqual([
      expect.stringMatching(/ mm$/),
      expect.stringMatching(/°$/),
      expect.stringMatching(/ turns$/),
    ]);
  });

  test("one step of each is told as what is done at the car", () => {
    const action = (adjuster: object, steps: number) =>
      runComputation(adjusterEffectComputation, { corner, adjuster, steps }).outputs.action?.text;
    expect(action(adjusters[0] ?? {}, -3)).toBe("slide top mount 3 mm inboard");
    expect(action(adjusters[1] ?? {}, 2)).toBe("turn upper clamp bolt from 0° to 30° (outboard)");
  });

  test("a camber bolt is refused where no strut is", () => {
    const { side: _, spring: __, damper: ___, bar: ____, ...wishbone } = exampleWishbone;
    const run = () => plan({ corner: { layout: "double wishbone", ...wishbone }, adjusters: [adjusters[1]] });
    expect(run).toThrow("moves an upright clamped to a strut, which a double wishbone does not have");
  });
});
