import { describe, expect, test } from "vitest";
import { builtInBook } from "../characteristic/book";
import { blankEntry, type EntryText, entryText } from "./entry-text";
import { printLimit } from "./print-limit";
import { type EntryReading, readEntryText } from "./read-entry";
import { noSourceTitle } from "./specification";

const pattern = { series: "Mark 1", prefix: "M1-", digits: 3, first: 1, last: 120, suffixes: ["R"] };
const series: NonNullable<EntryReading["series"]> = {
  name: "Mark 1",
  pattern,
  options: ["H", "OD"],
  firstSerial: 1,
  lastSerial: 120,
  builtFrom: "1970-01-01",
  builtTo: "1973-12-31",
};

const read = (parts: Partial<EntryText>) =>
  readEntryText(
    { ...blankEntry, characteristic: "front.camber", ...parts },
    { id: "e", book: builtInBook, series },
  );

function problems(parts: Partial<EntryText>): readonly (readonly [string, string])[] {
  const result = read(parts);
  return result.ok ? [] : result.problems.map(({ field, message }) => [field, message]);
}

describe("an entry as it is written", () => {
  test("is read in the trade's notation, by the characteristic's key or label, whole chassis numbers and months", () => {
    const result = read({
      characteristic: "Front camber",
      side: "Nearside",
      nominal: "-1/2°",
      lower: "-1°",
      upper: "0°15'",
      serialFrom: "M1-061",
      serialTo: "99",
      builtFrom: "3/71",
      builtTo: "1972",
      option: "h",
      source: " Works manual ",
      locus: "p. 12",
      trust: "Documented",
      note: "settled",
    });
    expect(result).toMatchObject({
      ok: true,
      entry: {
        characteristic: "front.camber",
        side: "left",
        nominal: { kind: "quantity", entered: "-1/2°" },
        applicability: {
          serialFrom: 61,
          serialTo: 99,
          builtFrom: "1971-03-01",
          builtTo: "1972-12-31",
          option: "H",
        },
        source: { title: "Works manual", locus: "p. 12", trust: "documented" },
        note: "settled",
      },
    });
    expect(result.ok && result.entry.limits?.upper).toBeCloseTo(Math.PI / 720, 15);
  });

  test("says nothing that was not said: no source, no trust, no span", () => {
    const result = read({ upper: "0°" });
    expect(result).toMatchObject({
      ok: true,
      entry: { source: { title: noSourceTitle, trust: "unknown" }, applicability: {} },
    });
    expect(result.ok && "nominal" in result.entry).toBe(false);
  });

  test("gives an alternative the source of its entry, unless it has one of its own", () => {
    const alternative = { role: "periodOption" as const, note: "", source: "", locus: "", trust: "" };
    const result = read({
      characteristic: "front.antiRollBar.diameter",
      nominal: "16 mm",
      source: "Works manual",
      locus: "p. 12",
      trust: "documented",
      alternatives: [
        { ...alternative, role: "acceptedSubstitute", value: "17 mm", source: "Bulletin 4", trust: "stated" },
        { ...alternative, value: "18 mm" },
        { ...alternative, value: "20 mm", locus: "p. 40" },
      ],
    });
    expect(result.ok && result.entry.alternatives.map(({ role, source }) => [role, source])).toEqual([
      ["periodOption", { title: "Works manual", locus: "p. 12", trust: "documented" }],
      ["periodOption", { title: "Works manual", locus: "p. 40", trust: "documented" }],
      ["acceptedSubstitute", { title: "Bulletin 4", trust: "stated" }],
    ]);
  });

  test.each([
    [
      { characteristic: "front.wing" },
      "characteristic",
      'there is no characteristic "front.wing" in the dictionary',
    ],
    [{ characteristic: " " }, "characteristic", "name the characteristic by its key or its label"],
    [{ nominal: "steep" }, "nominal", /^Front camber: "steep" cannot be read/],
    [{ upper: "1 furlong" }, "upper", /"1 furlong"/],
    [
      { nominal: "0°", lower: "1°", upper: "-1°" },
      "lower",
      "Front camber: the lower limit 1° lies above the upper one -1°",
    ],
    [{ nominal: "2°", upper: "1°" }, "nominal", 'Front camber: the nominal "2°" lies outside its limits'],
    [{}, "nominal", "Front camber: neither a nominal nor limits are given"],
    [{ nominal: "0°", side: "middle" }, "side", '"middle" is no side; expected both, left or right'],
    [
      { nominal: "0°", serialFrom: "M1-500" },
      "serialFrom",
      "500 lies above the last of Mark 1, which is 120",
    ],
    [
      { nominal: "0°", serialFrom: "9", serialTo: "8" },
      "serialTo",
      "Front camber: from number 9 to 8 there is none",
    ],
    [{ nominal: "0°", builtFrom: "c. 1971" }, "builtFrom", /^"c. 1971" leaves open where the span ends/],
    [{ nominal: "0°", builtTo: "later" }, "builtTo", /^"later" is no date/],
    [{ nominal: "0°", option: "GT" }, "option", 'Front camber: Mark 1 has no option "GT"; it has H, OD'],
    [{ nominal: "0°", trust: "sure" }, "trust", '"sure" is none of documented, stated, inferred, unknown'],
    [{ nominal: "0°", note: "x".repeat(2001) }, "note", "2001 characters; at most 2000 are kept"],
    [{ nominal: "0°", source: "a\u0007b" }, "source", "holds control characters; write plain text"],
    [
      {
        characteristic: "front.antiRollBar.diameter",
        nominal: "9/16 in",
        alternatives: [
          { role: "acceptedSubstitute", value: "14.3 mm", note: "", source: "", locus: "", trust: "" },
        ],
      },
      "alternatives.0.value",
      'Front anti-roll bar diameter: the alternative "14.3 mm" is the nominal itself',
    ],
  ] as const)("is refused for %o", (parts, field, message) => {
    const found = problems(parts as Partial<EntryText>);
    expect(found.map(([at]) => at)).toEqual([field]);
    expect(found[0]?.[1]).toMatch(
      typeof message === "string"
        ? new RegExp(`^${message.replace(/[.*+?^${}()|[\]\\]/g, "\\$&")}`)
        : message,
    );
  });

  test("tells everything that cannot be read at once", () => {
    expect(
      problems({ nominal: "steep", lower: "low", trust: "sure", builtTo: "soon" }).map(([field]) => field),
    ).toEqual(["builtTo", "trust", "nominal", "lower"]);
  });
});

describe("a limit as text", () => {
  const printed = (key: string, entered: string, unit?: string) => {
    const result = readEntryText(
      { ...blankEntry, characteristic: key, lower: entered },
      { id: "e", book: builtInBook },
    );
    const characteristic = builtInBook.find(key);
    if (!result.ok || characteristic?.kind !== "quantity") throw new Error(JSON.stringify(result));
    return printLimit(characteristic, result.entry.limits?.lower ?? Number.NaN, unit);
  };

  test.each([
    ["front.camber", "-0°30'", "°'", "-0°30'"],
    ["front.antiRollBar.diameter", "9/16 in", "in", "9/16 in"],
    ["front.antiRollBar.diameter", "0.333 in", "in", "0.333 in"],
    ["tyres.front.pressure", "22 psi", "psi", "22 psi"],
    ["brakes.bias", "62.5 %", undefined, "62.5 %"],
    ["front.toe", "10' in per side", undefined, "0°10' toe-in per side"],
    ["front.rideHeight", "5 5/64 in", "mm", "128.984375 mm"],
  ])("of %s, written %s, is %s%s", (key, entered, unit, expected) => {
    expect(printed(key, entered, unit)).toBe(expected);
  });

  test("stands beside the nominal in the nominal's own unit", () => {
    const result = read({
      characteristic: "tyres.front.pressure",
      nominal: "24 psi",
      lower: "1.5 bar",
      upper: "28 psi",
    });
    if (!result.ok) throw new Error(JSON.stringify(result));
    // 1.5 bar is 21.7556… psi, which no number of decimals says exactly: it stays in bar.
    expect(entryText(result.entry, builtInBook)).toMatchObject({ lower: "1.5 bar", upper: "28 psi" });
  });
});
