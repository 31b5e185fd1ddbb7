import { describe, expect, test } from "vitest";
import { builtInBook } from "../characteristic/book";
import { sampleValue } from "../value/sample";
import { type SeriesFacts, sayApplicability } from "./applicability";
import { checkSpecification } from "./check";
import type { Source, SpecificationEntry } from "./specification";

const source: Source = { title: "Works manual", locus: "p. 12", trust: "documented" };

function entry(
  parts: Partial<SpecificationEntry> & { readonly characteristic?: string } = {},
): SpecificationEntry {
  const characteristic = parts.characteristic ?? "front.antiRollBar.diameter";
  return {
    id: "one",
    characteristic,
    side: "whole",
    ...(characteristic === "front.antiRollBar.diameter"
      ? { nominal: sampleValue(characteristic, "16 mm") }
      : {}),
    alternatives: [],
    applicability: {},
    source,
    ...parts,
  };
}

const check = (...entries: SpecificationEntry[]) => checkSpecification({ entries }, builtInBook);
const codes = (...entries: SpecificationEntry[]) => check(...entries).map(({ code }) => code);
const bar = (entered: string) => sampleValue("front.antiRollBar.diameter", entered);

describe("a specification", () => {
  test("without contradictions has no problems", () => {
    const early = entry({ id: "a", applicability: { serialTo: 200 } });
    const late = entry({ id: "b", nominal: bar("18 mm"), applicability: { serialFrom: 201 } });
    const sport = entry({ id: "c", nominal: bar("20 mm"), applicability: { option: "SPORT" } });
    expect(check(early, late, sport)).toEqual([]);
  });

  test("names a characteristic that is not in the dictionary", () => {
    expect(check(entry({ characteristic: "front.wing.angle", limits: { lower: 0 } }))).toEqual([
      {
        code: "UNKNOWN_CHARACTERISTIC",
        message: 'there is no characteristic "front.wing.angle" in the dictionary',
        characteristic: "front.wing.angle",
        entries: ["one"],
        field: "characteristic",
      },
    ]);
  });

  test.each([
    ["the lower limit above the upper one", { limits: { lower: 0.02, upper: 0.01 } }, "LIMITS_INVERTED"],
    ["a limit that is no number", { limits: { lower: Number.NaN } }, "LIMITS_INVERTED"],
    ["limits that say nothing", { limits: {} }, "SAYS_NOTHING"],
    ["the nominal outside its limits", { limits: { lower: 0.017 } }, "NOMINAL_OUTSIDE_LIMITS"],
    ["a side of what a car has once", { side: "left" as const }, "WRONG_SIDE"],
    ["a nominal of another kind", { nominal: sampleValue("body.style", "coupe") }, "WRONG_KIND"],
    ["serials that run backwards", { applicability: { serialFrom: 9, serialTo: 8 } }, "NEVER_APPLIES"],
    [
      "days that run backwards",
      { applicability: { builtFrom: "1971-01-02", builtTo: "1971-01-01" } },
      "NEVER_APPLIES",
    ],
  ])("is refused for %s", (_, parts, code) => {
    expect(codes(entry(parts))).toEqual([code]);
  });

  test("is refused for a part that is its own substitute, or one given twice", () => {
    const alternative = (entered: string) => ({
      role: "acceptedSubstitute" as const,
      value: bar(entered),
      source,
    });
    expect(codes(entry({ alternatives: [alternative("16.0 mm")] }))).toEqual(["SUBSTITUTE_IS_NOMINAL"]);
    expect(codes(entry({ alternatives: [alternative("18 mm"), alternative("18.0 mm")] }))).toEqual([
      "SUBSTITUTE_TWICE",
    ]);
    expect(codes(entry({ alternatives: [alternative("18 mm"), alternative("20 mm")] }))).toEqual([]);
  });

  test("is refused for a choice that is none, absence of what every car has, limits of a choice, and no content", () => {
    const style = (parts: Partial<SpecificationEntry>) =>
      codes(entry({ characteristic: "body.style", ...parts }));
    expect(style({ nominal: { kind: "choice", code: "bus", entered: "bus" } })).toEqual(["UNKNOWN_CHOICE"]);
    expect(style({ nominal: { kind: "absent", entered: "none" } })).toEqual(["WRONG_KIND"]);
    expect(style({ nominal: sampleValue("body.style", "coupe"), limits: { lower: 1 } })).toEqual([
      "LIMITS_NOT_FOR_KIND",
    ]);
    expect(style({})).toEqual(["SAYS_NOTHING"]);
  });

  test("is refused for two entries of one id", () => {
    const camber = entry({ characteristic: "front.camber", limits: { upper: 0 } });
    expect(codes(entry(), camber)).toEqual(["ID_TWICE"]);
  });
});

describe("a specification held against its series", () => {
  const series: SeriesFacts = {
    name: "Mark 1",
    options: ["H"],
    firstSerial: 1,
    lastSerial: 120,
    builtFrom: "1970-01-01",
    builtTo: "1973-12-31",
  };
  const against = (applicability: SpecificationEntry["applicability"]) =>
    checkSpecification({ entries: [entry({ applicability })] }, builtInBook, series).map(
      ({ code, field, message }) => [code, field, message.replace(/^.*?: /, "")],
    );

  test.each([
    [{ serialFrom: 121 }, "NEVER_APPLIES", "serialFrom", "Mark 1 has numbers 1 to 120, none from 121"],
    [{ serialTo: 0 }, "NEVER_APPLIES", "serialTo", "Mark 1 has numbers 1 to 120, none up to 0"],
    [
      { builtFrom: "1974-01-01" },
      "NEVER_APPLIES",
      "builtFrom",
      "Mark 1 was built 1970-01-01 to 1973-12-31, none from 1974-01-01",
    ],
    [
      { builtTo: "1969-12-31" },
      "NEVER_APPLIES",
      "builtTo",
      "Mark 1 was built 1970-01-01 to 1973-12-31, none up to 1969-12-31",
    ],
    [{ option: "GT" }, "UNKNOWN_OPTION", "option", 'Mark 1 has no option "GT"; it has H'],
    [{ serialFrom: 9, serialTo: 8 }, "NEVER_APPLIES", "serialTo", "from number 9 to 8 there is none"],
  ])("is refused for %o", (applicability, code, field, message) => {
    expect(against(applicability)).toEqual([[code, field, message]]);
  });

  test("may reach beyond the series as long as some car falls under it", () => {
    expect(against({ serialFrom: 120, serialTo: 500, option: "H" })).toEqual([]);
    expect(against({ builtFrom: "1960-01-01", builtTo: "1970-01-01" })).toEqual([]);
  });

  test("tells limits that cross in the notation of the nominal", () => {
    const crossed = entry({ nominal: bar("9/16 in"), limits: { lower: 0.0254, upper: 0.0127 } });
    expect(check(crossed)[0]?.message).toBe(
      "Front anti-roll bar diameter: the lower limit 1 in lies above the upper one 1/2 in",
    );
  });
});

describe("overlapping applicability", () => {
  const pair = (a: SpecificationEntry["applicability"], b: SpecificationEntry["applicability"]) =>
    codes(entry({ id: "a", applicability: a }), entry({ id: "b", applicability: b }));

  test.each([
    ["the same cars", {}, {}],
    ["spans that cross", { serialTo: 200 }, { serialFrom: 200 }],
    ["a span of numbers and a span of days", { serialFrom: 100 }, { builtFrom: "1971-01-01" }],
    ["one option and spans that cross", { option: "S", serialTo: 9 }, { option: "S", serialFrom: 5 }],
  ])("of equal specificity is a contradiction: %s", (_, a, b) => {
    expect(pair(a, b)).toEqual(["OVERLAP"]);
  });

  test.each([
    ["spans that only touch", { serialTo: 199 }, { serialFrom: 200 }],
    ["a span within another", { serialFrom: 100, serialTo: 300 }, { serialFrom: 150, serialTo: 160 }],
    ["a span within every car", {}, { builtTo: "1971-06-30" }],
    ["an option against a span", { option: "S" }, { serialFrom: 100 }],
    ["two options, which may exclude each other", { option: "S" }, { option: "T" }],
  ])("is none for %s", (_, a, b) => {
    expect(pair(a, b)).toEqual([]);
  });

  test("a side against both sides is none, one side twice is", () => {
    const camber = (id: string, side: "whole" | "left") =>
      entry({ id, characteristic: "front.camber", side, limits: { upper: 0 } });
    expect(codes(camber("a", "whole"), camber("b", "left"))).toEqual([]);
    expect(codes(camber("a", "left"), camber("b", "left"))).toEqual(["OVERLAP"]);
  });

  test("is told with both entries and the cars they speak of", () => {
    const [problem] = check(
      entry({ id: "a", applicability: { serialFrom: 1, serialTo: 200 } }),
      entry({ id: "b", applicability: { serialFrom: 200 } }),
    );
    expect(problem?.entries).toEqual(["a", "b"]);
    expect(problem?.message).toBe(
      "Front anti-roll bar diameter: it is specified twice, for numbers 1 to 200 and for numbers from 200, and neither is the narrower",
    );
    expect(sayApplicability({ builtTo: "1971-06-30", option: "S" })).toBe("built up to 1971-06-30, option S");
  });
});
