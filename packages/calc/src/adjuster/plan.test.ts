import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { exampleSemiTrailing, exampleStrut, exampleWishbone } from "../linkage/example";
import {
  type CornerReading,
  doubleWishbone,
  mirrorHardpoints,
  mirrorPoint,
  readCorner,
  semiTrailingArm,
  strut,
  type WishbonePoint,
} from "../linkage/index";
import { atMost } from "../property-runs.fixture";
import { type Adjuster, combine, settable } from "./adjuster";
import { exampleAdjusters, exampleArmAdjusters } from "./example";
import { type Plan, planAdjustment } from "./plan";
import type { Target } from "./setting";

const degree = Math.PI / 180;
const minute = degree / 60;
const tolerance = { camber: 5 * minute, castor: 15 * minute, toeIn: 2 * minute };
const { spring: _spring, damper: _damper, bar: _bar, ...bare } = exampleWishbone;
const assemble = (adjustment: Parameters<typeof doubleWishbone>[1]) => doubleWishbone(bare, adjustment);

const plan = (target: Target, adjusters = exampleAdjusters) =>
  planAdjustment({ assemble, adjusters, target, tolerance });
const stepsOf = (made: Plan, adjusters: readonly Adjuster<WishbonePoint>[] = exampleAdjusters) =>
  adjusters.map((adjuster) => {
    const change = made.moves.find((move) => move.adjuster === adjuster.name)?.change ?? 0;
    return adjuster.kind === "shims" ? change : Math.round(change / adjuster.step);
  });
const now = readCorner(doubleWishbone(exampleWishbone));
const wanted = fc.record({
  camber: fc.double({ min: -1.2, max: 0.2, noNaN: true }).map((value) => value * degree),
  castor: fc.double({ min: -0.6, max: 0.6, noNaN: true }).map((value) => (now.castor ?? 0) + value * degree),
  toeIn: fc.double({ min: -10, max: 20, noNaN: true }).map((value) => value * minute),
});

/** Errors in tolerances, squared and summed. */
function misfitOf({ camber, castor, toeIn }: CornerReading, target: Target): number {
  const errors = [
    (camber - (target.camber ?? camber)) / tolerance.camber,
    ((castor ?? 0) - (target.castor ?? castor ?? 0)) / tolerance.castor,
    (toeIn - (target.toeIn ?? toeIn)) / tolerance.toeIn,
  ];
  return errors.reduce((sum, error) => sum + error * error, 0);
}

function misfit(steps: readonly number[], target: Target, adjusters = exampleAdjusters): number {
  return misfitOf(readCorner(assemble(combine(adjusters.map(settable), steps))), target);
}

// A plan solves the linkage some hundred times, and properties make many plans: slow on a busy machine, not stuck.
describe("the plan", { timeout: 30_000 }, () => {
  test("fed into the solver, reaches what it says it reaches", () => {
    fc.assert(
      fc.property(wanted, (target) => {
        const made = plan(target);
        const reached = readCorner(assemble(combine(exampleAdjusters.map(settable), stepsOf(made))));
        expect(reached.camber).toBeCloseTo(made.after.camber, 12);
        expect(reached.toeIn).toBeCloseTo(made.after.toeIn, 12);
        expect(reached.camber - target.camber).toBeCloseTo(made.error.camber ?? Number.NaN, 12);
        expect((reached.castor ?? 0) - target.castor).toBeCloseTo(made.error.castor ?? Number.NaN, 12);
        expect(reached.toeIn - target.toeIn).toBeCloseTo(made.error.toeIn ?? Number.NaN, 12);
        expect(reached.wheelCentre.z).toBeCloseTo(exampleWishbone.wheelCentre.z, 11);
      }),
      atMost(30),
    );
  });

  test("without steps it reaches the target exactly where three adjusters work on three angles", () => {
    const fine = exampleAdjusters.map((adjuster) =>
      adjuster.kind === "shims"
        ? { ...adjuster, thickness: 1e-6, fitted: 5000, most: 10_000 }
        : { ...adjuster, step: 1e-4, ...(adjuster.kind === "eccentric" ? {} : { lowest: -12, highest: 12 }) },
    ) as readonly Adjuster<WishbonePoint>[];
    fc.assert(
      fc.property(wanted, (target) => {
        const { error } = plan(target, fine);
        // A thousandth of a minute of arc: what is left is the fine step itself.
        for (const name of ["camber", "castor", "toeIn"] as const)
          expect(Math.abs(error[name] ?? 1)).toBeLessThan(0.02 * minute);
      }),
      atMost(15),
    );
  });

  test("is as good as the best of all settings there are", () => {
    const few = exampleAdjusters.map((adjuster) =>
      adjuster.kind === "shims"
        ? { ...adjuster, fitted: 1, most: 4 }
        : { ...adjuster, lowest: -1.5, highest: 1.5, ...(adjuster.kind === "tieRod" ? { step: 1 / 6 } : {}) },
    ) as readonly Adjuster<WishbonePoint>[];
    const ranges = few
      .map(settable)
      .map(({ lowest, highest }) => Array.from({ length: highest - lowest + 1 }, (_, at) => lowest + at));
    const every = (ranges[0] ?? []).flatMap((a) =>
      (ranges[1] ?? []).flatMap((b) => (ranges[2] ?? []).map((c) => [a, b, c])),
    );
    expect(every.length).toBe(7 * 5 * 19);
    const read = every.map((steps) => readCorner(assemble(combine(few.map(settable), steps))));
    fc.assert(
      fc.property(wanted, (target) => {
        const best = Math.min(...read.map((reading) => misfitOf(reading, target)));
        const made = plan(target, few);
        expect(misfitOf(made.after, target)).toBeLessThanOrEqual(best + 1e-3);
      }),
      atMost(12),
    );
  });

  test("is never worse than rounding each adjuster by itself, and mostly better where two work on the same angles", () => {
    const bracket = (name: string, point: WishbonePoint): Adjuster<WishbonePoint> => ({
      kind: "shims",
      name,
      points: [point],
      axis: { x: 0, y: 1, z: 0 },
      thickness: 0.0016,
      fitted: 4,
      most: 8,
    });
    const [joint, , rod] = exampleAdjusters;
    if (joint === undefined || rod === undefined) throw new Error("the example has three adjusters");
    const shimmed = [
      joint,
      bracket("front shims", "upperArmFront"),
      bracket("rear shims", "upperArmRear"),
      rod,
    ];
    let better = 0;
    let tried = 0;
    fc.assert(
      fc.property(wanted, (target) => {
        tried += 1;
        const made = plan(target, shimmed);
        const naive = shimmed.map((adjuster) => {
          const ideal = made.ideal[adjuster.name] ?? Number.NaN;
          return Math.round(adjuster.kind === "shims" ? ideal : ideal / adjuster.step);
        });
        const planned = misfit(stepsOf(made, shimmed), target, shimmed);
        const rounded = misfit(naive, target, shimmed);
        expect(planned).toBeLessThanOrEqual(rounded + 1e-3);
        if (planned < rounded / 2) better += 1;
      }),
      atMost(30),
    );
    expect(better).toBeGreaterThan(tried / 2);
  });

  test("keeps to whole steps and to the limits", () => {
    fc.assert(
      fc.property(wanted, (target) => {
        for (const move of plan(target).moves) {
          const adjuster = exampleAdjusters.find(({ name }) => name === move.adjuster);
          if (adjuster === undefined) throw new Error(`no adjuster ${move.adjuster}`);
          const { lowest, highest } = settable(adjuster);
          const steps = adjuster.kind === "shims" ? move.change : move.change / adjuster.step;
          expect(steps).toBeCloseTo(Math.round(steps), 9);
          expect(steps).toBeGreaterThanOrEqual(lowest - 1e-9);
          expect(steps).toBeLessThanOrEqual(highest + 1e-9);
        }
      }),
      atMost(20),
    );
  });

  test("does the tie rod last, and the reading after the last move is the one reached", () => {
    const made = plan({ camber: -1 * degree, castor: (now.castor ?? 0) + 0.7 * degree, toeIn: 8 * minute });
    expect(made.moves.map(({ adjuster }) => adjuster)).toEqual([
      "upper arm washers",
      "upper ball joint",
      "track rod end",
    ]);
    const last = made.moves[made.moves.length - 1];
    expect(last?.after.camber).toBeCloseTo(made.after.camber, 12);
    expect(last?.after.castor).toBeCloseTo(made.after.castor ?? Number.NaN, 12);
    expect(last?.after.toeIn).toBeCloseTo(made.after.toeIn, 12);
    expect(made.withinTolerance).toBe(true);
    expect(made.moves[0]?.words).toBe("add 2 shims at upper arm washers (5 in all)");
    expect(made.moves[1]?.words).toMatch(/^screw upper ball joint \S+ turns? inboard$/);
    expect(made.moves[2]?.words).toMatch(/^make track rod end \S+ turns? (?:longer|shorter)$/);
  });

  test("has nothing to do where the car is right already", () => {
    const made = plan({ camber: now.camber, castor: now.castor ?? 0, toeIn: now.toeIn });
    expect(made.moves).toEqual([]);
    expect(made.atLimit).toEqual([]);
    expect(made.withinTolerance).toBe(true);
  });

  test("holds the angles nobody asked for where an adjuster is meant for them", () => {
    const made = plan({ camber: -1.2 * degree });
    expect(made.held).toEqual(["castor", "toeIn"]);
    expect(made.moves.map(({ adjuster }) => adjuster)).toContain("track rod end");
    expect(made.after.toeIn - made.before.toeIn).toBeCloseTo(made.error.toeIn ?? Number.NaN, 12);
    expect(Math.abs(made.error.toeIn ?? 1)).toBeLessThan(tolerance.toeIn);
    expect(plan({ toeIn: 12 * minute }).moves.map(({ adjuster }) => adjuster)).toEqual(["track rod end"]);
  });

  test("lets the other angles go where they will if nothing is there to hold them, and tells where they went", () => {
    const made = plan({ camber: -1.2 * degree }, exampleAdjusters.slice(0, 1));
    expect(made.held).toEqual([]);
    expect(made.error).toMatchObject({ castor: null, toeIn: null });
    expect(Math.abs(made.error.camber ?? 1)).toBeLessThan(tolerance.camber);
    expect(made.after.toeIn).not.toBeCloseTo(made.before.toeIn, 4);
  });

  test("names what stands at its limit where the target is out of reach", () => {
    const made = plan({ camber: -6 * degree });
    expect(made.withinTolerance).toBe(false);
    expect(made.atLimit).toContain("upper ball joint");
    expect(made.moves.find(({ adjuster }) => adjuster === "upper ball joint")?.change).toBe(-4);
  });

  test("of the mirrored corner is the same plan", () => {
    const right = mirrorHardpoints(exampleWishbone);
    const adjusters = exampleAdjusters.map((adjuster) =>
      adjuster.kind === "tieRod" ? adjuster : { ...adjuster, axis: mirrorPoint(adjuster.axis) },
    );
    const target = { camber: -1.1 * degree, castor: (now.castor ?? 0) - 0.3 * degree, toeIn: 3 * minute };
    const mirrored = planAdjustment({
      assemble: (by) => doubleWishbone(right, by),
      adjusters,
      target,
      tolerance,
    });
    expect(mirrored.moves.map(({ words }) => words)).toEqual(plan(target).moves.map(({ words }) => words));
  });
});

describe("other linkages", () => {
  test("a semi-trailing arm is set by its eccentric and shims, and has no castor", () => {
    const request = {
      assemble: (by: Parameters<typeof semiTrailingArm>[1]) => semiTrailingArm(exampleSemiTrailing, by),
      adjusters: exampleArmAdjusters,
      tolerance,
    };
    const made = planAdjustment({ ...request, target: { camber: -1.4 * degree, toeIn: 15 * minute } });
    expect(Math.abs(made.error.camber ?? 1)).toBeLessThan(
      Math.abs(-1.4 * degree - exampleSemiTrailing.camber),
    );
    expect(made.moves.map(({ words }) => words).join("; ")).toMatch(
      /turn outer pivot eccentric from 0° to -?[\d.]+°/,
    );
    expect(() => planAdjustment({ ...request, target: { castor: 0 } })).toThrow(
      "does not steer, so it has no castor to set",
    );
  });

  test("a strut is set by its top mount in a slot and its tie rod", () => {
    const slot: Adjuster<"strutTop"> = {
      kind: "shims",
      name: "top mount marks",
      points: ["strutTop"],
      axis: { x: 0, y: -1, z: 0 },
      thickness: 0.002,
      fitted: 5,
      most: 10,
    };
    const rod: Adjuster<never> = {
      kind: "tieRod",
      name: "track rod end",
      pitch: 0.0015,
      step: 1 / 12,
      lowest: -6,
      highest: 6,
    };
    const made = planAdjustment<"strutTop">({
      assemble: (by) => strut(exampleStrut, by),
      adjusters: [slot, rod],
      target: { camber: -1.5 * degree, toeIn: 5 * minute },
      tolerance: { ...tolerance, camber: 10 * minute },
    });
    expect(made.moves[0]?.change).toBeGreaterThan(0);
    expect(made.withinTolerance).toBe(true);
  });
});

describe("refusals", () => {
  const [joint] = exampleAdjusters;
  test("nothing asked for, nothing to turn, two of one name", () => {
    expect(() => plan({})).toThrow("camber, castor or toe must be asked for");
    expect(() => plan({ camber: 0 }, [])).toThrow("from 1 to 8 adjusters are planned with, not 0");
    expect(() => plan({ camber: 0 }, joint === undefined ? [] : [joint, joint])).toThrow(
      'two adjusters are called "upper ball joint"',
    );
    expect(() => plan({ camber: Number.NaN })).toThrow("the target camber must be finite, but is NaN");
    const loose = { ...tolerance, camber: 0 };
    expect(() =>
      planAdjustment({ assemble, adjusters: exampleAdjusters, target: { camber: 0 }, tolerance: loose }),
    ).toThrow("the tolerance of camber must be above 0 rad, but is 0");
  });
});
