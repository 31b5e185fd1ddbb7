import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { canonicalJson } from "./canonical";

describe("canonical JSON", () => {
  // RFC 8785, 3.2.2 and 3.2.3: the example of serializing, numbers and escapes among it.
  test("is what RFC 8785 gives as its example", () => {
    const input = `{
      "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
      "string": "\\u20ac$\\u000F\\u000aA'\\u0042\\u0022\\u005c\\\\\\"\\/",
      "literals": [null, true, false]
    }`;
    expect(canonicalJson(JSON.parse(input))).toBe(
      `{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\\u000f\\nA'B\\"\\\\\\\\\\"/"}`,
    );
  });

  // RFC 8785, 3.2.3: names sorted as arrays of UTF-16 code units.
  test("sorts names as RFC 8785 does, surrogates and numerals among them", () => {
    const input = {
      "\u20ac": "Euro Sign",
      "\r": "Carriage Return",
      "\ufb33": "Hebrew Letter Dalet With Dagesh",
      "1": "One",
      "\ud83d\ude00": "Emoji: Grinning Face",
      "\u0080": "Control",
      "\u00f6": "Latin Small Letter O With Diaeresis",
    };
    const said = [...canonicalJson(input).matchAll(/:"([^"]*)"/g)].map(([, value]) => value);
    expect(said).toEqual([
      "Carriage Return",
      "One",
      "Control",
      "Latin Small Letter O With Diaeresis",
      "Euro Sign",
      "Emoji: Grinning Face",
      "Hebrew Letter Dalet With Dagesh",
    ]);
  });

  test("sorts numerals as texts, not as numbers", () => {
    expect(canonicalJson({ 9: 1, 10: 2 })).toBe('{"10":2,"9":1}');
  });

  test("says the same value, and has one form only", () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        const written = canonicalJson(value);
        expect(JSON.parse(written)).toEqual(JSON.parse(JSON.stringify(value)));
        expect(canonicalJson(JSON.parse(written))).toBe(written);
      }),
    );
  });

  test.each([
    ["a number that is not finite", { x: Number.NaN }, /NaN/],
    ["nothing at all", [undefined], /undefined/],
  ])("refuses %s", (_, value, said) => {
    expect(() => canonicalJson(value)).toThrow(said);
  });

  test("refuses what is nested without end", () => {
    let deep: unknown = 1;
    for (let level = 0; level < 500; level++) deep = [deep];
    expect(() => canonicalJson(deep)).toThrow(/200 levels/);
  });
});
