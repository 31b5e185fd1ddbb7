import { describe, expect, test } from "vitest";
import { builtInCharacteristics } from "../characteristic/dictionary/index";
import { parseLimit, parseValue } from "./parse";
import { sampleCharacteristic, sampleValue } from "./sample";

function problemOf(key: string, entered: string, options = {}) {
  const parsed = parseValue(sampleCharacteristic(key), entered, options);
  if (parsed.ok) throw new Error(`"${entered}" was read as ${JSON.stringify(parsed.value)}`);
  return parsed.problem;
}

describe("a quantity", () => {
  test("keeps the entry to the letter beside its SI value and step", () => {
    // 9/16 in = 9 × 25.4 / 16 mm, by the definition of the inch (1959 agreement).
    expect(sampleValue("front.antiRollBar.diameter", " 9/16 in ")).toEqual({
      kind: "quantity",
      si: 0.0142875,
      resolution: 0.0015875,
      entered: "9/16 in",
    });
  });

  test.each([
    ["-16 mm", "must be above 0"],
    ["0 mm", "must be above 0"],
    ["1.6 mm", "is too small to be believed"],
    ["160 mm", "is too large to be believed"],
  ])("refuses a bar of %s, which %s", (entered, is) => {
    const problem = problemOf("front.antiRollBar.diameter", entered);
    expect(problem).toMatchObject({
      code: "OUT_OF_RANGE",
      entered,
      expected: '6 mm to 50 mm, or "not fitted"',
    });
    expect(problem.message).toBe(
      `Front anti-roll bar diameter: "${entered}" ${is}; expected 6 mm to 50 mm, or "not fitted"`,
    );
  });

  test("may be negative where the trade's sign says so, up to the believable limit itself", () => {
    expect(sampleValue("front.camber", "-8°")).toMatchObject({ kind: "quantity", entered: "-8°" });
    expect(problemOf("front.camber", "-8.1°").code).toBe("OUT_OF_RANGE");
  });

  test("takes a missing unit from the heading, and keeps it with the entry", () => {
    expect(sampleValue("front.antiRollBar.diameter", "16", { defaultUnit: "mm" })).toMatchObject({
      si: 0.016,
      entered: "16 mm",
    });
    expect(sampleValue("front.antiRollBar.diameter", "5/8 in", { defaultUnit: "mm" })).toMatchObject({
      si: 0.015875,
      entered: "5/8 in",
    });
  });

  test("that is a bare number means the heading's unit, even where it could stand without one", () => {
    expect(sampleValue("brakes.bias", "62", { defaultUnit: "%" })).toMatchObject({
      si: 0.62,
      entered: "62 %",
    });
    expect(sampleValue("front.camber", "-1", { defaultUnit: "deg" })).toMatchObject({ entered: "-1°" });
    expect(sampleValue("front.caliper.pistons", "4", { defaultUnit: "" })).toMatchObject({
      si: 4,
      entered: "4",
    });
  });

  test("is refused without any unit, with proposals", () => {
    const problem = problemOf("front.antiRollBar.diameter", "16");
    expect(problem).toMatchObject({ code: "NOTATION", expected: "16 mm or 16 in" });
    expect(problemOf("front.antiRollBar.diameter", "16", { defaultUnit: "furlong" }).message).toContain(
      `the heading's "furlong" is no unit of length`,
    );
  });

  test("of another kind is refused by name", () => {
    expect(problemOf("front.antiRollBar.diameter", "28 psi").message).toContain(
      "is a pressure; a length is wanted",
    );
  });
});

describe("toe", () => {
  test("is one wheel's toe-in, toe-out negative, whatever was entered", () => {
    const minute = Math.PI / 10_800;
    expect(sampleValue("front.toe", "10' toe-out per side")).toMatchObject({ kind: "quantity" });
    const total = sampleValue("front.toe", "20' toe-in total");
    expect(total.kind === "quantity" && total.si / minute).toBeCloseTo(10, 9);
    // asin(1/16 in over a 13 in rim), by hand: 1.5875 / 330.2 = 0.0048077, asin 0.0048077 rad.
    const atRim = sampleValue("front.toe", `1/16" toe-out per side on 13 in rim`);
    expect(atRim.kind === "quantity" && atRim.si).toBeCloseTo(-0.0048077, 6);
  });

  test("asks for what an entry leaves out instead of guessing", () => {
    expect(problemOf("front.toe", "-10", { defaultUnit: "'" }).message).toContain("per side or total?");
    expect(sampleValue("front.toe", "-10", { defaultUnit: "min per side" })).toMatchObject({
      entered: "-10 min per side",
    });
    expect(problemOf("front.toe", `1/16" toe-out per side`).message).toContain("diameter of the rim");
  });
});

describe("a choice", () => {
  test.each([
    ["COUPE", "coupe"],
    ["coupé", "coupe"],
    ["Fixed-Head", "coupe"],
    ["D.H.C", undefined],
    ["DHC", "roadster"],
  ])("%s is %s", (entered, code) => {
    if (code === undefined) expect(problemOf("body.style", entered).code).toBe("NOT_A_CHOICE");
    else expect(sampleValue("body.style", entered)).toEqual({ kind: "choice", code, entered });
  });

  test("that is none of the list is told the list", () => {
    expect(problemOf("body.style", "bus").expected).toBe("one of: Coupé; Roadster; Estate; Saloon");
  });

  test("every code, label and spelling of the dictionary reads as its own choice", () => {
    for (const one of builtInCharacteristics) {
      if (one.kind !== "choice") continue;
      for (const { code, label, also = [] } of one.choices) {
        for (const spelling of [code, label, ...also]) {
          expect(sampleValue(one.key, spelling), `${one.key} ${spelling}`).toMatchObject({
            kind: "choice",
            code,
          });
        }
      }
    }
  });
});

describe("absence", () => {
  test.each(["none", "Not fitted", "REMOVED", "–", "-", "without"])(
    "%s says a bar is not fitted",
    (entered) => {
      expect(sampleValue("rear.antiRollBar.diameter", entered)).toEqual({ kind: "absent", entered });
    },
  );

  test("is refused for what every car has", () => {
    expect(problemOf("chassis.wheelbase", "none")).toMatchObject({ code: "NOT_REMOVABLE" });
  });

  test("is not said by an empty entry, which is no value at all", () => {
    expect(problemOf("rear.antiRollBar.diameter", "  ")).toMatchObject({ code: "EMPTY" });
  });

  test("is not meant where a choice is itself called none", () => {
    expect(sampleValue("front.upperArm.adjustment", "none")).toMatchObject({ kind: "choice", code: "none" });
  });
});

describe("designation, text and date", () => {
  test("a designation is kept as one canonical text", () => {
    expect(sampleValue("front.caliper.boltThread", "7/16 UNF")).toMatchObject({ canonical: "7/16-20 UNF" });
    expect(problemOf("front.caliper.boltThread", "M11x2").message).toContain("ISO 261");
  });

  test("a text loses double blanks and line breaks, not its capitals", () => {
    expect(sampleValue("body.colour", "Skagen\n  Blue")).toMatchObject({
      text: "Skagen Blue",
      entered: "Skagen\n  Blue",
    });
    expect(problemOf("body.colour", "x".repeat(61))).toMatchObject({
      code: "NOT_A_TEXT",
      expected: "at most 60",
    });
    expect(problemOf("body.colour", "blue\u0007").message).toContain("control characters");
  });

  test.each([
    ["2027-06-30", "2027-06-30"],
    ["30.6.2027", "2027-06-30"],
    ["6/2027", "2027-06-30"],
    ["2/28", "2028-02-29"],
    ["2027", "2027-12-31"],
  ])("a label's %s is good until %s", (entered, date) => {
    expect(sampleValue("safety.harness.expires", entered)).toEqual({ kind: "date", date, entered });
  });

  // Weeks by ISO 8601: 2019-W12 begins on 18 March, 2020-W53 on 28 December 2020, 2021-W01 on 4 January 2021.
  test.each([
    ["DOT 1219", "2019-03-18"],
    ["dot 5320", "2020-12-28"],
    ["week 01/2021", "2021-01-04"],
  ])("a tyre's %s is of the week from %s", (entered, date) => {
    expect(sampleValue("tyres.front.manufactured", entered)).toMatchObject({ date });
  });

  test.each(["c. 2027", "after 2020", "DOT 6019", "31.2.2027", "soon"])(
    "a due date of %s is refused",
    (entered) => {
      expect(problemOf("safety.harness.expires", entered).code).toBe("NOT_A_DATE");
    },
  );
});

describe("a limit", () => {
  test("reads in the characteristic's notation and range", () => {
    const camber = sampleCharacteristic("front.camber");
    const read = parseLimit(camber, "-1°30'");
    expect(read.ok && read.si).toBeCloseTo((-1.5 * Math.PI) / 180, 12);
    expect(parseLimit(camber, "")).toMatchObject({ ok: false, problem: { code: "EMPTY" } });
    expect(parseLimit(camber, "-20°")).toMatchObject({ ok: false, problem: { code: "OUT_OF_RANGE" } });
  });

  test("is refused for what is no quantity", () => {
    expect(parseLimit(sampleCharacteristic("body.style"), "5 mm")).toMatchObject({ ok: false });
  });
});
