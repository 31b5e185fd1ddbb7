import { readCorner } from "@trunnion/calc";
import { describe, expect, test } from "vitest";
import { builtInBook } from "../characteristic/book";
import { layoutOf, planFields } from "./field";
import type { PlanForm } from "./plan";
import { makeSetupPlan, planTolerance, readPlan } from "./plan";

/** An invented small sports car's front corner, millimetres: x, y outboard, z. */
const points = {
  lowerArmFront: [135, 240, 190],
  lowerArmRear: [-125, 245, 184],
  lowerJoint: [6, 600, 165],
  upperArmFront: [80, 310, 402],
  upperArmRear: [-110, 312, 395],
  upperJoint: [-12, 568, 418],
  tieRodInner: [-118, 258, 213],
  tieRodOuter: [-128, 584, 201],
};
const corner = {
  track: "1300 mm",
  radius: "285 mm",
  camber: "-0°30'",
  toe: "toe-in 6' per side",
  ...Object.fromEntries(
    Object.entries(points).flatMap(([name, [x, y, z]]) => [
      [`${name}-x`, `${x}`],
      [`${name}-y`, `${y}`],
      [`${name}-z`, `${z}`],
    ]),
  ),
};
const adjusters = {
  "upperJoint-pitch": "1.5 mm",
  "upperJoint-step": "0.5",
  "upperJoint-in": "4",
  "upperJoint-out": "4",
  "upperShim-thickness": "1.6 mm",
  "upperShim-fitted": "3",
  "upperShim-most": "6",
  "upperShim-direction": "rearwards",
  "tieRod-pitch": "1/14 in",
  "tieRod-step": "1/12",
  "tieRod-in": "6",
  "tieRod-out": "6",
};
const wanted = { wantedCamber: "-1°0'", wantedCastor: "4°40'", wantedToe: "toe-in 8' per side" };
const layout = layoutOf("front", "doubleWishbone");
if (layout === undefined) throw new Error("double wishbones are planned with");
const code = layout.code;
const fields = planFields(new Map(), builtInBook, { axle: "front", side: "left", code });
const empty: PlanForm = { layout, fields };

function planned(typed: Record<string, string>) {
  const { plan, problems, lacking } = readPlan(empty, typed);
  if (plan === undefined) throw new Error(JSON.stringify({ problems, lacking }));
  const result = makeSetupPlan(plan);
  if (!result.ok) throw new Error(result.because);
  return { read: plan, plan: result.plan };
}

describe("a set-up plan", () => {
  test("fed back into the linkage solver reaches the target within its tolerances", () => {
    const { read, plan } = planned({ ...corner, ...adjusters, ...wanted });
    expect(plan.withinTolerance).toBe(true);
    // The moves are read out of their words, as a mechanic does, and done on the linkage one by one.
    const figure = (text: string) => {
      const vulgar: Record<string, number> = {
        "¼": 0.25,
        "½": 0.5,
        "¾": 0.75,
        "⅓": 1 / 3,
        "⅔": 2 / 3,
        "⅙": 1 / 6,
        "⅚": 5 / 6,
      };
      const [, whole = "", part = ""] = /^(\d+(?:\.\d+)?)?([¼½¾⅓⅔⅙⅚])?$/.exec(text) ?? [];
      return (whole === "" ? 0 : Number(whole)) + (vulgar[part] ?? 0);
    };
    const [upper] = read.adjusters;
    if (upper?.kind !== "screwedJoint") throw new Error("the upper joint comes first");
    const size = Math.hypot(upper.axis.x, upper.axis.y, upper.axis.z);
    const shift: Record<string, { x: number; y: number; z: number }> = {};
    let tieRod = 0;
    for (const { words } of plan.steps) {
      const [, turns = "", way] = /(\S+) turns? (outboard|inboard|longer|shorter)$/.exec(words) ?? [];
      const [, more, less] = /^(?:Add (\d+)|Take (\d+))/.exec(words) ?? [];
      if (/ball joint/.test(words)) {
        const by = (figure(turns) * 0.0015 * (way === "outboard" ? 1 : -1)) / size;
        shift.upperJoint = { x: upper.axis.x * by, y: upper.axis.y * by, z: upper.axis.z * by };
      } else if (/track rod/.test(words))
        tieRod = figure(turns) * (0.0254 / 14) * (way === "longer" ? 1 : -1);
      else {
        const by = { x: -0.0016 * (Number(more ?? 0) - Number(less ?? 0)), y: 0, z: 0 };
        shift.upperArmFront = by;
        shift.upperArmRear = by;
      }
    }
    const reached = readCorner(read.assemble({ shift, tieRod }));
    const degree = Math.PI / 180;
    expect(Math.abs(reached.camber + degree)).toBeLessThan(planTolerance.camber);
    expect(Math.abs((reached.castor ?? 0) - (4 + 40 / 60) * degree)).toBeLessThan(planTolerance.castor);
    expect(Math.abs(reached.toeIn - (8 / 60) * degree)).toBeLessThan(planTolerance.toeIn);
    expect(reached.camber).toBeCloseTo(plan.after.camber, 6);
  });

  test("says of each step what it does to the others, and its steps add up", () => {
    const { plan } = planned({ ...corner, ...adjusters, ...wanted });
    expect(plan.steps.length).toBeGreaterThan(1);
    const sum = (of: "camber" | "toeIn") => plan.steps.reduce((total, { change }) => total + change[of], 0);
    expect(sum("camber")).toBeCloseTo(plan.after.camber - plan.before.camber, 12);
    expect(sum("toeIn")).toBeCloseTo(plan.after.toeIn - plan.before.toeIn, 12);
    // Shims for castor move toe too: why the track rod comes last (common practice, no source).
    expect(plan.steps[0]?.words).toMatch(/shim/);
    expect(plan.steps.at(-1)?.words).toMatch(/track rod/);
    expect(plan.steps[0]?.change.toeIn).not.toBe(0);
  });

  test("beyond what an adjuster allows says which one, and is no pass", () => {
    const { plan } = planned({ ...corner, ...adjusters, wantedCamber: "-7°" });
    expect(plan.withinTolerance).toBe(false);
    expect(plan.atLimit).toContain("upper ball joint");
  });

  test("of an opened form complains of nothing yet, and says what the record lacks", () => {
    const { asked, problems, lacking } = readPlan(empty, {});
    expect([asked, problems]).toEqual([false, []]);
    expect(lacking).toHaveLength(fields.length);
  });

  test.each([
    [{ "upperJoint-x": "far" }, "upperJoint-x", /far/],
    [{ toe: "toe-in 2 mm per side" }, "toe", /rim/],
    [{ wantedCamber: "40°" }, "wantedCamber", /too large to be believed/],
    [{ "upperJoint-step": "" }, "upperJoint-step", /needed too/],
    [{ "upperShim-direction": "" }, "upperShim-direction", /which way/],
  ])("with %o is told at its field", (typed, field, message) => {
    const { plan, problems } = readPlan(empty, { ...corner, ...adjusters, ...wanted, ...typed });
    expect(plan).toBeUndefined();
    expect(problems).toContainEqual({ field, message: expect.stringMatching(message) });
  });

  test("of a linkage that cannot be is refused in words", () => {
    const { plan } = readPlan(empty, { ...corner, ...adjusters, ...wanted, "upperShim-most": "1" });
    expect(plan && makeSetupPlan(plan)).toMatchObject({
      ok: false,
      because: expect.stringMatching(/3 are fitted of 1/),
    });
  });
});
