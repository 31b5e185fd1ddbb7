import { describe, expect, test } from "vitest";
import { z } from "zod";
import { designation } from "./designation-field";
import { type QuantityOptions, quantity } from "./field";

const diameter = quantity("length", { label: "Bar diameter", above: 0, max: 0.1, help: "Across the middle" });

/** The messages a field answers. */
function issuesOf(field: z.ZodType, value: unknown): readonly string[] {
  return field.safeParse(value).error?.issues.map(({ message }) => message) ?? [];
}

describe("a quantity field", () => {
  test("yields SI from a number and from notation alike", () => {
    expect(diameter.parse(0.016)).toBe(0.016);
    expect(diameter.parse("16 mm")).toBe(0.016);
    expect(diameter.parse("5/8 in")).toBeCloseTo(0.015875, 15);
  });

  test("answers text it cannot read in the words of the notation, with code, place and examples apart", () => {
    const [issue] = diameter.safeParse("16 psi").error?.issues ?? [];
    expect(issue).toMatchObject({
      code: "custom",
      message: `"16 psi" is a pressure; a length is wanted, e.g. 16 mm or 5/8 in`,
      params: { code: "WRONG_KIND", place: 3, understood: ["16 mm", "5/8 in"], entered: "16 psi" },
    });
  });

  test("takes text without a unit for ratios and counts only", () => {
    expect(issuesOf(diameter, "16")[0]).toContain("a unit is missing");
    expect(quantity("ratio", { label: "Share" }).parse("0.47")).toBe(0.47);
    expect(quantity("count", { label: "Coils" }).parse("6½")).toBe(6.5);
  });

  test("refuses what is neither number nor text, and numbers that are not finite", () => {
    for (const value of [true, null, undefined, {}, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(issuesOf(diameter, value)).toEqual(["a number (in m) or text with its unit is wanted"]);
    }
    expect(issuesOf(quantity("count", { label: "Coils" }), [])).toEqual([
      "a number (without unit) or text with its unit is wanted",
    ]);
  });

  const refused = (options: Omit<QuantityOptions, "label">, value: number | string) =>
    issuesOf(quantity("angle", { label: "Camber", ...options }), value);
  const degree = Math.PI / 180;
  test.each<readonly [Omit<QuantityOptions, "label">, string, string | undefined]>([
    [{ min: -2 * degree }, "-2°", undefined],
    [{ min: -2 * degree }, "-2.1°", `"-2.1°": Camber must be at least -2°, but is -2.1°`],
    [{ max: 2 * degree }, "2°", undefined],
    [{ max: 2 * degree }, "2.1°", `"2.1°": Camber must be at most 2°, but is 2.1°`],
    [{ above: 0 }, "0.1°", undefined],
    [{ above: 0 }, "0°", `"0°": Camber must be more than 0°, but is 0°`],
    [{ below: 2 * degree }, "1.9°", undefined],
    [{ below: 2 * degree }, "2°", `"2°": Camber must be less than 2°, but is 2°`],
    [{ max: 2 * degree, unit: "°'" }, "2°6'", `"2°6'": Camber must be at most 2°00', but is 2°06'`],
  ])("with %j, %s: %s", (options, value, message) => {
    expect(refused(options, value)).toEqual(message === undefined ? [] : [message]);
  });

  test("quotes a number out of bounds as it was given", () => {
    expect(issuesOf(diameter, 5)).toEqual(["5: Bar diameter must be at most 100 mm, but is 5000 mm"]);
  });

  test("describes itself in the JSON Schema of the input", () => {
    const shape = z.toJSONSchema(
      z.object({ diameter, turns: quantity("count", { label: "Turns" }).optional() }),
      { io: "input" },
    );
    expect(shape.required).toEqual(["diameter"]);
    expect(shape.properties?.diameter).toEqual({
      type: ["number", "string"],
      title: "Bar diameter",
      description: "Across the middle. A number in m, or text with its unit, at most 100 mm, more than 0 mm.",
      dimension: "length",
      unit: "mm",
    });
    expect(shape.properties?.turns).toMatchObject({
      description: "A number without unit, or text with its unit.",
      unit: "",
    });
  });

  test("names its help, and each limit in its unit, whichever are given", () => {
    const described = (options: Omit<QuantityOptions, "label">) =>
      z.toJSONSchema(z.object({ it: quantity("length", { label: "It", ...options }) }), { io: "input" })
        .properties?.it;
    expect(described({})).toMatchObject({ description: "A number in m, or text with its unit." });
    expect(described({ help: "Across", min: 0.0254, below: 0.0508, unit: "in" })).toMatchObject({
      description: "Across. A number in m, or text with its unit, at least 1 in, less than 2 in.",
      unit: "in",
    });
  });

  test("a text out of bounds has the code for it, and text that cannot be read is told once, not as a bound", () => {
    const field = quantity("length", { label: "It", max: 0.1 });
    expect(field.safeParse("200 mm").error?.issues).toMatchObject([{ params: { code: "OUT_OF_RANGE" } }]);
    expect(field.safeParse("16 psi").error?.issues).toMatchObject([{ params: { code: "WRONG_KIND" } }]);
  });

  test("a unit that is none of the dimension's is found when the field is made", () => {
    expect(() => quantity("length", { label: "Bar", unit: "psi" })).toThrow(RangeError);
    const { properties } = z.toJSONSchema(
      z.object({ bar: quantity("rate", { label: "Bar", unit: "lbf/in" }) }),
      { io: "input" },
    );
    expect(properties?.bar).toMatchObject({ unit: "lb/in" });
  });
});

describe("a designation field", () => {
  const thread = designation("thread", { label: "Thread", help: "Of the bolt" });

  test("yields the typed designation", () => {
    expect(thread.parse("3/8 UNF")).toMatchObject({
      kind: "thread",
      pitch: 0.0254 / 24,
      canonical: "3/8-24 UNF",
    });
    expect(designation("tyre", { label: "Tyre" }).parse("165sr13")).toMatchObject({
      kind: "tyre",
      speedSymbol: "S",
    });
  });

  test("answers text it cannot read in the words of the notation, and anything else with what is wanted", () => {
    expect(thread.safeParse("1/4-20").error?.issues[0]).toMatchObject({
      message: expect.stringContaining(`"1/4-20": the series is missing`),
      params: { code: "UNKNOWN_DESIGNATION", entered: "1/4-20", understood: ["1/4-20 UNC", "1/4-20 BSW"] },
    });
    expect(issuesOf(thread, 8)).toEqual(["A thread, e.g. M10x1.25 or 3/8-24 UNF is wanted"]);
    const messages = (["grade", "tyre", "wheel"] as const).map((kind) =>
      issuesOf(designation(kind, { label: "It" }), 8),
    );
    expect(messages.flat()).toEqual([
      "A strength class, e.g. class 8.8 or grade 8 is wanted",
      "A tyre size, e.g. 175/70 R 13 82T or 5.20-13 is wanted",
      "A wheel size, e.g. 5½J x 14 ET 20 is wanted",
    ]);
  });

  test("describes itself in the JSON Schema of the input", () => {
    const fields = {
      thread: designation("thread", { label: "Thread", help: "Of the bolt" }),
      tyre: designation("tyre", { label: "Tyre" }),
    };
    const { properties } = z.toJSONSchema(z.object(fields), { io: "input" });
    expect(properties?.thread).toEqual({
      type: "string",
      title: "Thread",
      description: "Of the bolt. A thread, e.g. M10x1.25 or 3/8-24 UNF.",
      designation: "thread",
    });
    expect(properties?.tyre).toMatchObject({
      description: "A tyre size, e.g. 175/70 R 13 82T or 5.20-13.",
    });
  });
});
