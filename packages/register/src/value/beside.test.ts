import { describe, expect, test } from "vitest";
import { enteredBeside, limitsBeside, printBeside } from "./beside";
import { sampleCharacteristic, sampleValue } from "./sample";

const printed = (key: string, entered: string) =>
  printBeside(sampleCharacteristic(key), sampleValue(key, entered), "metric");

describe("values beside each other", () => {
  test.each([
    ["-0.9°", "-0°54'"],
    ["neg 48'", "-0°48'"],
    ["-1.0°", "-1°00'"],
    ["-1°05'", "-1°05'"],
  ])("have every camber in degrees and minutes: %s is %s", (entered, expected) => {
    expect(printed("front.camber", entered)).toBe(expected);
    expect(enteredBeside(sampleCharacteristic("front.camber"), entered, "metric")).toBe(expected);
  });

  // Conversions by the exact inch.
  test.each([
    ["front.antiRollBar.diameter", "9/16 in", "14.3 mm"],
    ["front.antiRollBar.diameter", "none", "not fitted"],
    ["front.toe", "10' toe-out per side", "0°10' toe-out per side"],
    ["front.disc.face", "drilled", "Cross-drilled"],
  ])("have %s, entered as %s, as %s", (key, entered, expected) => {
    expect(printed(key, entered)).toBe(expected);
  });

  // 1 psi = 6894.757 Pa (NIST SP 811, appendix B.8).
  test.each([
    ["front.camber", { lower: -Math.PI / 360, upper: Math.PI / 360 }, "-0°30' to 0°30'"],
    ["tyres.front.pressure", { lower: 20 * 6894.757, upper: 26 * 6894.757 }, "1.379 bar to 1.793 bar"],
    ["front.disc.thickness", { lower: 0.0108 }, "at least 10.8 mm"],
  ])("have the limits of %s in the same notation", (key, limits, expected) => {
    expect(limitsBeside(sampleCharacteristic(key), limits, "metric")).toBe(expected);
  });

  test("leave a value of another kind than the characteristic's as it was entered", () => {
    const value = sampleValue("front.antiRollBar.diameter", "16 mm");
    expect(printBeside(sampleCharacteristic("front.disc.face"), value, "metric")).toBe("16 mm");
  });

  test("leave an entry that no longer reads as it is", () => {
    expect(enteredBeside(sampleCharacteristic("front.camber"), "much", "metric")).toBe("much");
  });
});
