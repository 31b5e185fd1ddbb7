import { describe, expect, test } from "vitest";
import { ZodError } from "zod";
import { CalcRefusal } from "../catalogue/refusal";
import { runComputation } from "../catalogue/run";
import { exampleSemiTrailing, exampleStrut, exampleSwingAxle } from "../linkage/example";
import { adjusterComputations } from "./catalogue";
import { adjusterEffectComputation } from "./effect.entry";
import { adjusterPlanComputation } from "./plan.entry";

type Run = ReturnType<typeof runComputation>;
const si = (run: Run, name: string): number => Number(run.outputs[name]?.si);
const { example } = adjusterPlanComputation;
const plan = (change: object) => runComputation(adjusterPlanComputation, { ...example, ...change });

test.each(adjusterComputations.map((one) => [one.name, one] as const))(
  "%s runs its own example",
  (name, one) => {
    expect(name).toMatch(/^adjuster\.[a-zA-Z]+$/);
    const run = runComputation(one, one.example);
    expect(run.warnings).toEqual([]);
    expect(run.caution).toMatch(/engagement/);
  },
);

describe("the plan", () => {
  test("is told in words, in the order of work, with the reading to expect after each step", () => {
    const run = plan({});
    expect(run.outputs.plan?.text).toMatch(
      /^add 2 shims at upper arm washers \(5 in all\); screw upper ball joint \S+ turns? inboard; make track rod end \S+ turns? (?:longer|shorter)$/,
    );
    expect(run.outputs.verdict?.text).toBe("every angle within its tolerance");
    const readings = run.working.filter(({ symbol }) => /^\d$/.test(symbol)).map(({ text }) => text);
    expect(readings).toHaveLength(4);
    expect(readings[0]).toBe("camber -0.50°, castor 4.07°, 6' toe-in per side");
    for (const reading of readings)
      expect(reading).toMatch(/^camber -?\d\.\d\d°, castor \d\.\d\d°, [\d.]+' toe-(?:in|out) per side$/);
  });

  test("reaches what was asked, and its errors are what is left", () => {
    const run = plan({});
    const degree = Math.PI / 180;
    expect(si(run, "camber") - si(run, "camberError")).toBeCloseTo(-1 * degree, 12);
    expect(si(run, "castor") - si(run, "castorError")).toBeCloseTo((4 + 40 / 60) * degree, 12);
    expect(si(run, "toeIn") - si(run, "toeInError")).toBeCloseTo((8 / 60) * degree, 12);
  });

  test("says what is held, what is at its limit and what is too coarse", () => {
    expect(plan({ target: { camber: "-1°" } }).warnings).toEqual([
      "Not asked for, so held where it stands: castor, toe.",
    ]);
    const far = plan({ target: { ...example.target, camber: "-8°" } });
    expect(far.outputs.verdict?.text).toBe("the nearest that can be set, outside tolerance");
    expect(far.warnings).toContain("The target lies beyond the limit of upper ball joint.");
    const strict = plan({ tolerance: { camber: "0.01'", castor: "0.01'", toeIn: "0.01'" } });
    expect(strict.warnings[0]).toMatch(/too coarse/);
  });

  test("has nothing to move where nothing is wrong", () => {
    const run = plan({ target: { camber: -0.5 * (Math.PI / 180) } });
    expect(run.outputs.plan?.text).toBe("nothing to move");
    expect(si(run, "trackChange")).toBeCloseTo(0, 9);
  });

  test("refuses a hardpoint or a tie rod that the layout does not have, and a target without an adjuster for it", () => {
    const { side: _, spring: __, ...arm } = exampleSemiTrailing;
    const trailing = { corner: { layout: "semi-trailing arm", ...arm } };
    expect(() => plan(trailing)).toThrow(CalcRefusal);
    expect(() => plan(trailing)).toThrow(
      'the adjuster "upper ball joint" moves upperJoint, which a semi-trailing arm does not have; its points are pivotInner, pivotOuter',
    );
    expect(() => plan({ ...trailing, adjusters: [example.adjusters[2]] })).toThrow(
      "moves a tie rod, which a semi-trailing arm does not have",
    );
    expect(() => plan({ target: {} })).toThrow("camber, castor or toe must be asked for");
    expect(() => plan({ adjusters: [] })).toThrow(ZodError);
  });

  test("sets a semi-trailing arm by an eccentric and shims, without a word on castor", () => {
    const { side: _, spring: __, ...arm } = exampleSemiTrailing;
    const run = plan({
      corner: { layout: "semi-trailing arm", ...arm },
      adjusters: [
        {
          kind: "eccentric",
          name: "outer eccentric",
          points: ["pivotOuter"],
          axis: { x: 0, y: 0, z: 1 },
          eccentricity: "5 mm",
          setting: "0°",
          step: "7.5°",
        },
        {
          kind: "shims",
          name: "inner shims",
          points: ["pivotInner"],
          axis: { x: 1, y: 0, z: 0 },
          thickness: "1 mm",
          fitted: 2,
          most: 8,
        },
      ],
      target: { camber: "-1°15'", toeIn: "0°10' toe-in per side" },
    });
    expect(run.outputs.plan?.text).toMatch(/outer eccentric from 0° to -?[\d.]+°/);
    expect(run.outputs.castor?.si).toBeNull();
    expect(run.working.some(({ text }) => /castor/.test(text))).toBe(false);
  });
});

describe("the effect of one adjuster", () => {
  test("moving the upper joint outwards adds positive camber (common practice, no source)", () => {
    const run = runComputation(adjusterEffectComputation, { ...adjusterEffectComputation.example, steps: 2 });
    expect(run.outputs.action?.text).toBe("screw upper ball joint 1 turn outboard");
    expect(si(run, "camberChange")).toBeGreaterThan(0);
    const back = runComputation(adjusterEffectComputation, {
      ...adjusterEffectComputation.example,
      steps: -2,
    });
    expect(back.outputs.action?.text).toBe("screw upper ball joint 1 turn inboard");
    expect(si(back, "camberChange")).toBeLessThan(0);
    const none = runComputation(adjusterEffectComputation, {
      ...adjusterEffectComputation.example,
      steps: 0,
    });
    expect([none.outputs.action?.text, si(none, "camberChange")]).toEqual(["nothing", 0]);
  });

  test("works on every layout", () => {
    const shims = (point: string) => ({
      kind: "shims",
      name: "packing",
      points: [point],
      axis: { x: 0, y: 1, z: 0 },
      thickness: "1 mm",
      fitted: 0,
      most: 5,
    });
    const { side: _a, bar: _b, ...sprung } = exampleStrut;
    const { side: _c, spring: _d, ...swing } = exampleSwingAxle;
    const strut = runComputation(adjusterEffectComputation, {
      corner: { layout: "strut", ...sprung },
      adjuster: shims("strutTop"),
      steps: 2,
    });
    expect(strut.outputs.action?.text).toBe("add 2 shims at packing (2 in all)");
    // The top mount outboard leans the wheel out.
    expect(si(strut, "camberChange")).toBeGreaterThan(0);
    const half = runComputation(adjusterEffectComputation, {
      corner: { layout: "swing axle", ...swing },
      adjuster: shims("radiusArm"),
      steps: 1,
    });
    expect(half.outputs.action?.text).toBe("add 1 shim at packing (1 in all)");
    expect(si(half, "toeInChange")).not.toBe(0);
  });
});
