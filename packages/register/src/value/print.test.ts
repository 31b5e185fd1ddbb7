import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { builtInCharacteristics } from "../characteristic/dictionary/index";
import { parseValue } from "./parse";
import { printValue, type UnitSystem } from "./print";
import { sameValue } from "./same";
import { sampleCharacteristic, sampleValue } from "./sample";
import { valueSchema } from "./schema";

const printed = (key: string, entered: string, system: UnitSystem | "asEntered") =>
  printValue(sampleCharacteristic(key), sampleValue(key, entered), { system });

describe("a printed value", () => {
  // Conversions by the exact inch and pound-force; 28 psi = 1.9305 bar.
  test.each([
    ["front.antiRollBar.diameter", "9/16 in", "14.3 mm", "9/16 in"],
    ["front.antiRollBar.diameter", "16 mm", "16 mm", "0.63 in"],
    ["front.antiRollBar.diameter", "none", "not fitted", "not fitted"],
    ["tyres.front.pressure", "28 psi", "1.93 bar", "28 psi"],
    ["front.camber", "-1°30'", "-1°30'", "-1°30'"],
    ["front.camber", "-1.5°", "-1.5°", "-1.5°"],
    ["front.toe", "10' toe-out per side", "0°10' toe-out per side", "0°10' toe-out per side"],
    ["driveline.finalDrive.ratio", "3.89", "3.89:1", "3.89:1"],
    ["brakes.bias", "62 %", "62 %", "62 %"],
    ["body.style", "FHC", "Coupé", "Coupé"],
    ["wheels.front.size", "5.5J x 13", "5½J x 13", "5½J x 13"],
    ["safety.harness.expires", "6/2027", "30 Jun 2027", "30 Jun 2027"],
  ])("%s of %s is %s or %s", (key, entered, metric, imperial) => {
    expect(printed(key, entered, "metric")).toBe(metric);
    expect(printed(key, entered, "imperial")).toBe(imperial);
    expect(printed(key, entered, "asEntered")).toBe(entered);
  });

  test("of another kind than its characteristic is a bug, not a text", () => {
    const value = sampleValue("body.style", "FHC");
    expect(() => printValue(sampleCharacteristic("front.camber"), value, { system: "metric" })).toThrow(
      RangeError,
    );
  });

  test("reads back as the same value, for every quantity of the dictionary", () => {
    const quantities = builtInCharacteristics.filter(
      (one) => one.kind === "quantity" && one.minimum !== undefined && one.maximum !== undefined,
    );
    const system = fc.constantFrom<UnitSystem>("metric", "imperial");
    const property = fc.property(
      fc.constantFrom(...quantities),
      fc.double({ min: 0.02, max: 0.98, noNaN: true }),
      system,
      system,
      (one, share, first, second) => {
        if (one.kind !== "quantity" || one.minimum === undefined || one.maximum === undefined) return;
        const si = one.minimum + share * (one.maximum - one.minimum);
        const resolution = (one.maximum - one.minimum) / 1000;
        const value = { kind: "quantity", si, resolution, entered: "" } as const;
        const text = printValue(one, value, { system: first });
        const back = parseValue(one, text);
        expect(back, `${one.key} ${text}`).toMatchObject({ ok: true });
        if (!back.ok || back.value.kind !== "quantity") return;
        expect(Math.abs(back.value.si - si), `${one.key} ${text}`).toBeLessThanOrEqual(resolution);
        const again = parseValue(one, printValue(one, back.value, { system: second }));
        expect(again.ok && sameValue(again.value, back.value), `${one.key} ${text}`).toBe(true);
      },
    );
    fc.assert(property, { numRuns: 400 });
  });

  test("of a choice, in either label or code, reads back as that choice", () => {
    for (const one of builtInCharacteristics) {
      if (one.kind !== "choice") continue;
      for (const { code } of one.choices) {
        const text = printValue(one, { kind: "choice", code, entered: "" }, { system: "metric" });
        expect(parseValue(one, text)).toMatchObject({ ok: true, value: { code } });
      }
    }
  });
});

describe("same value", () => {
  test.each([
    ["16 mm", "15.9 mm", true],
    ["16 mm", "16.4 mm", true],
    ["16 mm", "16.5 mm", false],
    ["16 mm", "17 mm", false],
    ["9/16 in", "14.3 mm", true],
    ["9/16 in", "14 mm", true],
    ["9/16 in", "15 mm", false],
    ["5/8 in", "16 mm", true],
    ["5/8 in", "17 mm", false],
    ["5/8 in", "10/16 in", true],
    ["½ in", "12 mm", false],
    ["16 mm", "none", false],
    ["none", "–", true],
  ])("bars of %s and %s: %s", (one, other, same) => {
    const [a, b] = [one, other].map((entered) => sampleValue("front.antiRollBar.diameter", entered));
    if (!a || !b) throw new Error("two values");
    expect(sameValue(a, b)).toBe(same);
    expect(sameValue(b, a)).toBe(same);
  });

  test("texts differ neither by capitals nor by accents or dashes; designations by their canonical text", () => {
    const colour = (entered: string) => sampleValue("body.colour", entered);
    expect(sameValue(colour("Fjord-blue"), colour("FJORD BLUE"))).toBe(true);
    expect(sameValue(colour("Fjord blue"), colour("Fjord green"))).toBe(false);
    const thread = (entered: string) => sampleValue("wheels.stud.thread", entered);
    expect(sameValue(thread("M12"), thread("M12x1.75"))).toBe(true);
    expect(sameValue(thread("M12x1.5"), thread("1/2 UNF"))).toBe(false);
  });
});

describe("the schema of values", () => {
  test("takes what parsing makes, and refuses NaN, a step of nought and unknown fields", () => {
    const value = sampleValue("front.antiRollBar.diameter", "9/16 in");
    expect(valueSchema.parse(value)).toEqual(value);
    for (const wrong of [{ si: Number.NaN }, { resolution: 0 }, { unit: "in" }]) {
      expect(valueSchema.safeParse({ ...value, ...wrong }).success).toBe(false);
    }
    expect(valueSchema.safeParse({ kind: "date", date: "2027-02-30", entered: "" }).success).toBe(false);
  });
});
