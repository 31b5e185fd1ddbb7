import { describe, expect, test } from "vitest";
import { ZodError, z } from "zod";
import {
  type AnyComputation,
  CalcRefusal,
  defineComputation,
  type OutputValue,
  quantity,
} from "./computation";
import { listComputation } from "./list";
import { answerComputation, printStep, runComputation } from "./run";

/** Hooke's law: enough to try the machinery on. */
const stretch = defineComputation({
  name: "trial.stretch",
  title: "Stretch of a spring",
  summary: "How far a spring gives under a load.",
  input: z.object({
    force: quantity("force", { label: "Load", min: 0 }),
    rate: quantity("rate", { label: "Rate", above: 0, max: 1e6 }),
    fade: quantity("ratio", { label: "Fade" }).prefault(1),
  }),
  outputs: {
    stretch: { label: "Stretch", dimension: "length", unit: "in", decimals: 3 },
    verdict: { label: "Verdict", dimension: "text" },
    linear: { label: "Linear", dimension: "text" },
    sag: { label: "Sag", dimension: "length" },
  },
  source: [{ title: "Hooke's law", status: "common practice, no source" }],
  validity: "A linear spring.",
  caution: "A loaded spring bites.",
  example: { force: "100 lbf", rate: "100 lb/in" },
  compute({ force, rate, fade }) {
    if (force > 1e5) throw new RangeError(`a load of at most 100 kN is meant, not ${force} N`);
    const x = force / (rate * fade);
    return {
      outputs: { stretch: x, verdict: "holds", linear: true, sag: null },
      working: () => [
        { symbol: "x", label: "stretch", formula: "F / k", value: x, dimension: "length", unit: "mm" },
      ],
      warnings: [],
    };
  },
});
const any: AnyComputation = stretch;

/** The same with whatever outputs a test wants. */
function answering(outputs: Record<string, OutputValue>): AnyComputation {
  return { ...any, compute: () => ({ outputs, working: () => [], warnings: [] }) };
}
const whole = { stretch: 0.01, verdict: "holds", linear: false, sag: null };

describe("running a computation", () => {
  test("takes trade notation and prints every answer in its unit", () => {
    const { outputs, working, warnings, caution } = runComputation(stretch, {
      force: "100 lbf",
      rate: "100 lb/in",
    });
    expect(outputs.stretch?.si).toBeCloseTo(0.0254, 15);
    expect(outputs.stretch).toMatchObject({ unit: "in", text: "1.000 in" });
    expect(outputs.verdict).toEqual({ si: "holds", unit: "", text: "holds" });
    expect(outputs.linear).toEqual({ si: "yes", unit: "", text: "yes" });
    expect(outputs.sag).toEqual({ si: null, unit: "mm", text: "no value" });
    expect(working[0]).toMatchObject({ symbol: "x", text: "25.4 mm" });
    expect(warnings).toEqual([]);
    expect(caution).toBe("A loaded spring bites.");
  });

  test("takes SI numbers as well, and gives the same", () => {
    const notation = runComputation(stretch, { force: "1 kN", rate: "50 N/mm" });
    expect(runComputation(stretch, { force: 1000, rate: 50_000 })).toEqual(notation);
  });

  test("answers a bad field with its path and a message that quotes the entry", () => {
    const run = () => runComputation(stretch, { force: "16 mm", rate: 2e6 });
    expect(run).toThrow(ZodError);
    expect(run).toThrow(/\\"16 mm\\" is a length; a force is wanted/);
    expect(run).toThrow(/2000000: Rate must be at most 1000 N\/mm, but is 2000 N\/mm/);
  });

  test("refuses a field it does not know instead of dropping it", () => {
    expect(() => runComputation(stretch, { force: 1, rate: 1, fead: 2 })).toThrow(/fead/);
  });

  test("keeps the input's own rules when it closes it", () => {
    const input = z
      .object({ a: z.number(), b: z.number() })
      .refine(({ a, b }) => a < b, { error: "a must be below b", path: ["a"] });
    const outputs = { sum: { label: "Sum", dimension: "count" } } as const;
    const ordered = defineComputation({
      ...stretch,
      input,
      outputs,
      example: { a: 1, b: 2 },
      compute: ({ a, b }) => ({ outputs: { sum: a + b }, working: () => [], warnings: [] }),
    });
    expect(runComputation(ordered, { a: 1, b: 2 }).outputs.sum?.text).toBe("3");
    expect(() => runComputation(ordered, { a: 2, b: 1 })).toThrow("a must be below b");
    expect(() => runComputation(ordered, { a: 1, b: 2, c: 3 })).toThrow(/"c"/);
  });

  test("a guard's RangeError becomes a refusal with the same words", () => {
    const run = () => runComputation(stretch, { force: 2e5, rate: 1 });
    expect(run).toThrow(CalcRefusal);
    expect(run).toThrow("a load of at most 100 kN is meant, not 200000 N");
    expect(run).toThrow(
      expect.objectContaining({ name: "CalcRefusal", code: "OUT_OF_RANGE", cause: expect.any(RangeError) }),
    );
  });

  test("never hands out a number that is not finite", () => {
    for (const bad of [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]) {
      expect(() => runComputation(answering({ ...whole, stretch: bad }), any.example)).toThrow(CalcRefusal);
    }
    expect(() => runComputation(stretch, { force: 1, rate: 1, fade: 0 })).toThrow(
      /Stretch \(stretch\) comes out as Infinity/,
    );
    expect(() => printStep({ symbol: "x", label: "stretch", value: Number.NaN })).toThrow(CalcRefusal);
  });

  test("a number too large to print is refused, not a bug", () => {
    expect(() => runComputation(answering({ ...whole, stretch: 1e16 }), any.example)).toThrow(CalcRefusal);
  });

  test("prints a quantity whose kind only the input knows, and never one that is not finite", () => {
    const outputs = { camber: { label: "Camber", dimension: "asEntered" } } as const;
    const giving = (camber: OutputValue): AnyComputation => ({
      ...any,
      outputs,
      compute: () => ({ outputs: { camber }, working: () => [], warnings: [] }),
    });
    const run = (camber: OutputValue) => runComputation(giving(camber), any.example).outputs.camber;
    const quarter = { si: Math.PI / 720, dimension: "angle", unit: "°'", decimals: 1 } as const;
    expect(run(quarter)).toEqual({ si: Math.PI / 720, unit: "°'", text: "0°15.0'" });
    expect(run(null)).toEqual({ si: null, unit: "", text: "no value" });
    expect(() => run({ ...quarter, si: Number.NaN })).toThrow(CalcRefusal);
    expect(() => run(1)).toThrow("camber is a number without a unit");
    expect(() => runComputation(answering({ ...whole, stretch: quarter }), any.example)).toThrow(
      "stretch is declared as length, not as entered",
    );
  });

  test("an answer missing or undeclared is a bug, not a refusal", () => {
    const { sag: _, ...less } = whole;
    expect(() => runComputation(answering(less), any.example)).toThrow("leaves sag unanswered");
    expect(() => runComputation(answering({ ...whole, extra: 1 }), any.example)).toThrow("undeclared extra");
  });
});

test("a listed computation carries a JSON Schema of the input as sent", () => {
  const listed = listComputation(stretch);
  expect(listed.input).toMatchObject({
    type: "object",
    required: ["force", "rate"],
    additionalProperties: false,
  });
  expect(listed.input.properties).toMatchObject({
    force: { type: ["number", "string"], title: "Load", dimension: "force", unit: "N" },
    fade: { default: 1 },
  });
  expect(listed.outputs).toContainEqual({
    name: "stretch",
    label: "Stretch",
    dimension: "length",
    unit: "in",
  });
  expect(listed.outputs).toContainEqual({ name: "verdict", label: "Verdict", dimension: "text", unit: "" });
  expect(JSON.parse(JSON.stringify(listed))).toEqual(listed);
});

describe("answers by name", () => {
  const given = { force: "100 lbf", rate: "100 lb/in" };

  test("are those asked for and no others, printed, with the caution", () => {
    expect(answerComputation(stretch, given, ["stretch"])).toEqual({
      outputs: { stretch: runComputation(stretch, given).outputs.stretch },
      warnings: [],
      caution: "A loaded spring bites.",
    });
  });

  test("have no caution where the computation has none", () => {
    const { caution: _, ...calm } = any;
    expect(answerComputation(calm, given, [])).toEqual({ outputs: {}, warnings: [] });
    expect(Object.keys(runComputation(calm, given))).not.toContain("caution");
    expect(Object.keys(listComputation(calm))).not.toContain("caution");
    expect(listComputation(any)).toMatchObject({ caution: "A loaded spring bites." });
  });

  test("refuse a name that is no output, and an input out of range, as refusals", () => {
    const refusal = expect.objectContaining({ code: "OUT_OF_RANGE" });
    expect(() => answerComputation(stretch, given, ["colour"])).toThrow("trial.stretch has no output colour");
    expect(() => answerComputation(stretch, { ...given, force: 2e5 }, ["stretch"])).toThrow(refusal);
  });

  test("left out by the computation itself are a bug, not a refusal", () => {
    const run = () => answerComputation(answering({}), given, ["sag"]);
    expect(run).toThrow("trial.stretch leaves sag unanswered");
    expect(run).not.toThrow(CalcRefusal);
  });
});
