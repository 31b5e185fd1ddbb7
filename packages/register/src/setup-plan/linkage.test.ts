import { type Adjuster, type Adjustment, readCorner, type Vector } from "@trunnion/calc";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { builtInBook } from "../characteristic/book";
import { plannedCorners as corners, type Texts } from "./corner.fixture";
import { layoutOf, planFields, planLayout } from "./field";
import type { PlanAxle } from "./layout";
import { makeSetupPlan, type PlanForm, planTolerance, readPlan } from "./plan";

function formOf(axle: PlanAxle, code: string): PlanForm {
  const layout = layoutOf(axle, code);
  if (layout === undefined) throw new Error(`${code} is not planned with`);
  const fields = planFields(new Map(), builtInBook, { axle, side: "left", code });
  return { layout, fields };
}

function read(form: PlanForm, typed: Texts) {
  const { plan, problems, lacking } = readPlan(form, typed);
  if (plan === undefined) throw new Error(JSON.stringify({ problems, lacking }));
  return plan;
}

const vulgar: Texts = { "⅙": "1/6", "¼": "1/4", "⅓": "1/3", "½": "1/2", "⅔": "2/3", "¾": "3/4", "⅚": "5/6" };
function turnsOf(text: string): number {
  const [, whole = "", part = ""] = /^(\d*\.?\d*)([⅙¼⅓½⅔¾⅚]?)$/.exec(text) ?? [];
  const [over = 0, under = 1] = (vulgar[part] ?? "0/1").split("/").map(Number);
  return Number(whole || 0) + over / under;
}
const unit = ({ x, y, z }: Vector): Vector => {
  const size = Math.hypot(x, y, z);
  return { x: x / size, y: y / size, z: z / size };
};
const times = ({ x, y, z }: Vector, by: number): Vector => ({ x: x * by, y: y * by, z: z * by });

/** What a mechanic does at one adjuster for the words of one step, worked out here from the words alone. */
function done(adjuster: Adjuster<string>, words: string): Adjustment<string> {
  const moved = (points: readonly string[], by: Vector) => ({
    shift: Object.fromEntries(points.map((one) => [one, by])),
  });
  const back = /inboard|rearwards|down|shorter/.test(words) ? -1 : 1;
  switch (adjuster.kind) {
    case "tieRod":
    case "screwedJoint": {
      const by = turnsOf(/(\S+) turns?/.exec(words)?.[1] ?? "") * back * adjuster.pitch;
      return adjuster.kind === "tieRod"
        ? { tieRod: by }
        : moved([adjuster.point], times(unit(adjuster.axis), by));
    }
    case "shims": {
      const [, add, take] = /^(?:Add (\d+)|Take (\d+))/.exec(words) ?? [];
      const number = Number(add ?? 0) - Number(take ?? 0);
      return moved(adjuster.points, times(unit(adjuster.axis), number * adjuster.thickness));
    }
    case "slot": {
      const mm = Number(/ ([\d.]+) mm/.exec(words)?.[1]);
      return moved(adjuster.points, times(unit(adjuster.axis), (back * mm) / 1000));
    }
    case "eccentric":
    case "camberBolt": {
      const [, from, to] = /from (-?[\d.]+)° to (-?[\d.]+)°/.exec(words) ?? [];
      const sine = (degrees: string | undefined) => Math.sin((Number(degrees) * Math.PI) / 180);
      const push = adjuster.eccentricity * (sine(to) - sine(from));
      if (adjuster.kind === "eccentric") return moved(adjuster.points, times(unit(adjuster.axis), push));
      // Both bolts lie fore and aft, so the upright turns about x; pushed outboard above its pivot, by the right hand.
      const [dy, dz] = [adjuster.bolt.y - adjuster.pivot.y, adjuster.bolt.z - adjuster.pivot.z];
      const turn = -Math.sign(dz) * Math.asin(push / Math.hypot(dy, dz));
      return { lean: { about: adjuster.pivot, turn: { x: turn, y: 0, z: 0 } } };
    }
  }
}

function together(all: readonly Adjustment<string>[]): Adjustment<string> {
  const shift: Record<string, Vector> = {};
  for (const one of all)
    for (const [name, by] of Object.entries(one.shift ?? {})) {
      const sum = shift[name] ?? { x: 0, y: 0, z: 0 };
      if (by !== undefined) shift[name] = { x: sum.x + by.x, y: sum.y + by.y, z: sum.z + by.z };
    }
  const lean = all.find((one) => one.lean !== undefined)?.lean;
  const tieRod = all.reduce((sum, one) => sum + (one.tieRod ?? 0), 0);
  return { shift, tieRod, ...(lean === undefined ? {} : { lean }) };
}

/** One adjuster's words for a number of its steps, as the planner would say it. */
function stepped(adjuster: Adjuster<string>, steps: number): Adjustment<string> {
  if (steps === 0) return {};
  const ways = steps > 0 ? "outboard longer" : "inboard shorter";
  const size = Math.abs(steps);
  const degrees = (angle: number) => `${(angle * 180) / Math.PI}`;
  switch (adjuster.kind) {
    case "tieRod":
    case "screwedJoint":
      return done(adjuster, `${size * adjuster.step} turns ${ways}`);
    case "shims":
      return done(adjuster, steps > 0 ? `Add ${size}` : `Take ${size}`);
    case "slot":
      return done(adjuster, `slide it ${size * adjuster.step * 1000} mm ${ways}`);
    case "eccentric":
    case "camberBolt":
      return done(
        adjuster,
        `from ${degrees(adjuster.setting)}° to ${degrees(adjuster.setting + steps * adjuster.step)}°`,
      );
  }
}

const inDegrees = (si: number) => `${((si * 180) / Math.PI).toFixed(7)}°`;

describe.each(corners)("%s %s with %s", { timeout: 60_000 }, (axle, code, _what, typed) => {
  const form = formOf(axle, code);
  const { assemble, adjusters } = read(form, { ...typed, wantedToe: "0' per side" });
  const steps = fc.tuple(...adjusters.map(() => fc.integer({ min: -3, max: 3 })));

  test("reaches every setting that can be set, its words done on the linkage by hand", () => {
    fc.assert(
      fc.property(steps, (wanted) => {
        const target = readCorner(
          assemble(together(adjusters.map((adjuster, at) => stepped(adjuster, wanted[at] ?? 0)))),
        );
        const plan = makeSetupPlan(
          read(form, {
            ...typed,
            wantedCamber: inDegrees(target.camber),
            wantedToe: `${target.toeIn < 0 ? "toe-out" : "toe-in"} ${inDegrees(Math.abs(target.toeIn))} per side`,
            ...(form.layout.steers ? { wantedCastor: inDegrees(target.castor ?? 0) } : {}),
          }),
        );
        if (!plan.ok) throw new Error(plan.because);
        const said = plan.plan.steps.map(({ words }) => {
          const adjuster = adjusters.find(({ name }) => words.includes(name));
          if (adjuster === undefined) throw new Error(`nobody knows what "${words}" is done at`);
          return done(adjuster, words);
        });
        const reached = readCorner(assemble(together(said)));
        expect(plan.plan.withinTolerance).toBe(true);
        expect(Math.abs(reached.camber - target.camber)).toBeLessThan(planTolerance.camber);
        expect(Math.abs(reached.toeIn - target.toeIn)).toBeLessThan(planTolerance.toeIn);
        expect(reached.camber).toBeCloseTo(plan.plan.after.camber, 7);
        expect(reached.toeIn).toBeCloseTo(plan.plan.after.toeIn, 7);
        if (target.castor !== null && reached.castor !== null)
          expect(Math.abs(reached.castor - target.castor)).toBeLessThan(planTolerance.castor);
      }),
      { numRuns: 12 },
    );
  });

  test("asks for its own hardpoints and for castor only where it steers", () => {
    const pointed = form.fields.filter(({ point }) => point).map(({ name }) => name.replace(/-[xyz]$/, ""));
    expect(new Set(pointed)).toEqual(new Set(form.layout.points));
    for (const name of form.layout.points)
      expect(builtInBook.find(`${axle}.hardpoint.${name}.x`)?.label).toBeDefined();
    const castor = read(form, { ...typed, wantedToe: "0' per side", wantedCastor: "9°" }).target.castor;
    expect(castor !== undefined).toBe(axle === "front");
  });
});

describe("what a car is specified to", () => {
  const known = (origin: string) =>
    new Map(
      ["rear.camber left", "rear.track whole"].map((at) => [
        at,
        { origin, value: { kind: "quantity", si: 0.5, entered: "as written" } },
      ]),
    ) as never;
  const of = (origin: string) =>
    Object.fromEntries(
      planFields(known(origin), builtInBook, { axle: "rear", side: "left", code: "swingAxle" }).map(
        (field) => [field.name, field],
      ),
    );

  test("is no reading of what it is set to, and said where it stands in for a part not measured", () => {
    expect(of("specification").camber).toMatchObject({ specified: "as written" });
    expect(of("specification").camber?.si).toBeUndefined();
    expect(of("specification").track).toMatchObject({ si: 0.5, specified: "as written" });
    expect(of("reading").camber).toMatchObject({ si: 0.5, from: "as written" });
    expect(of("reading").camber?.specified).toBeUndefined();
  });
});

describe("how the wheels are guided", () => {
  const state = (key: string, code: string) =>
    new Map([[`${key} whole`, { value: { kind: "choice", code, entered: code } }]]) as never;
  const layout = (axle: PlanAxle, code: string, said = "") =>
    planLayout(code === "" ? new Map() : state(`${axle}.layout`, code), builtInBook, { axle, said });

  test("is as the record says, else as was said for the day, and never taken for granted", () => {
    expect(layout("rear", "swingAxle", "semiTrailingArms")).toMatchObject({
      code: "swingAxle",
      typed: false,
    });
    expect(layout("rear", "", "semiTrailingArms")).toMatchObject({ code: "semiTrailingArms", typed: true });
    expect(layout("front", "")).toMatchObject({
      known: "unknown",
      choices: [
        expect.objectContaining({ code: "doubleWishbone" }),
        expect.objectContaining({ code: "strut" }),
      ],
    });
    expect(layout("front", "", "no such thing").known).toBe("unknown");
  });

  test.each([
    ["rear", "liveAxleLinks", /made with it and cannot be set/],
    ["front", "beamAxle", /wedges/],
    ["front", "slidingPillar", /no pivots for it yet/],
  ] as const)("%s %s is not planned with, and why is said", (axle, code, why) => {
    expect(layout(axle, code)).toMatchObject({ known: "notPlanned", why: expect.stringMatching(why) });
  });
});
