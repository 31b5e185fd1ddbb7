import { describe, expect, test } from "vitest";
import type { Dimension } from "./dimension";
import { type PrintOptions, printQuantity } from "./print";

const inch = 0.0254;
const minute = Math.PI / 10_800;

describe("with a resolution, as many decimals as the step needs", () => {
  test.each<readonly [number, Dimension, Omit<PrintOptions, "dimension">, string]>([
    [0.016, "length", { resolution: 0.001 }, "16 mm"],
    [0.016, "length", { resolution: 0.0001 }, "16.0 mm"],
    [0.016, "length", { resolution: 0.0005 }, "16.0 mm"],
    [0.016, "length", { resolution: 0.01 }, "16 mm"],
    [0.016, "length", { resolution: 0.001, unit: "in" }, "0.63 in"],
    [193_053.2, "pressure", { unit: "psi", resolution: 6894.757293168361 }, "28 psi"],
    [193_053.2, "pressure", { unit: "bar", resolution: 6894.757293168361 }, "1.93 bar"],
    [363.15, "temperature", { resolution: 1 }, "90 °C"],
    [363.15, "temperature", { resolution: 5 / 9, unit: "°F" }, "194 °F"],
    [-0.0004, "length", { resolution: 0.001 }, "0 mm"],
    [-0.00001, "length", { resolution: 0.0001 }, "0.0 mm"],
    [-0.0006, "length", { resolution: 0.001 }, "-1 mm"],
    [1e-9, "length", { resolution: 1e-30, unit: "m" }, "0.000000001000 m"],
  ])("%s %s with %j is %s", (si, dimension, options, text) => {
    expect(printQuantity(si, { dimension, ...options })).toBe(text);
  });
});

describe("fractions, in lowest terms, no finer than the step needs", () => {
  test.each([
    [9 / 16, 1 / 16, "9/16 in"],
    [1.125, 1 / 8, "1 1/8 in"],
    [1.125, 1 / 64, "1 1/8 in"],
    [-1.125, 1 / 8, "-1 1/8 in"],
    [2, 1 / 16, "2 in"],
    [0, 1 / 16, "0 in"],
    [-1 / 64, 1 / 16, "0 in"],
    [0.99, 1 / 16, "1 in"],
    [0.55, 0.1, "9/16 in"],
    [3.4, 1, "3 in"],
    [1 / 128, 1 / 128, "1/128 in"],
    [1 / 128, 1 / 256, "0.008 in"],
  ])("%s in by %s is %s", (inches, step, text) => {
    const options = { dimension: "length", unit: "in", resolution: step * inch, fractions: true } as const;
    expect(printQuantity(inches * inch, options)).toBe(text);
  });
});

describe("compounds", () => {
  test.each<readonly [number, Dimension, Omit<PrintOptions, "dimension">, string]>([
    [12 * minute, "angle", { unit: "°'" }, "0°12'"],
    [12 * minute, "angle", { unit: "deg min" }, "0°12'"],
    [-45 * minute, "angle", { unit: "°'" }, "-0°45'"],
    [59.7 * minute, "angle", { unit: "°'" }, "1°00'"],
    [-66 * minute, "angle", { unit: "°'" }, "-1°06'"],
    [59.7 * minute, "angle", { unit: "°'", resolution: 0.1 * minute }, "0°59.7'"],
    [-0.4 * minute, "angle", { unit: "°'" }, "0°00'"],
    [90.5 * minute, "angle", { unit: "°'\"" }, "1°30'30\""],
    [66.5 * inch, "length", { unit: "ft in", resolution: inch / 2, fractions: true }, "5 ft 6 1/2 in"],
    [71.9 * inch, "length", { unit: "ft in", resolution: inch / 4, fractions: true }, "6 ft 0 in"],
    [790.61150091, "mass", { unit: "cwt qr lb" }, "15 cwt 2 qr 7 lb"],
    [787.43635432, "mass", { unit: "cwt qr", resolution: 12.70058636 }, "15 cwt 2 qr"],
    [4800, "time", { unit: "h min" }, "1 h 20 min"],
    [66.54 * inch, "length", { unit: "ft in", decimals: 1 }, "5 ft 6.5 in"],
    [66.54 * inch, "length", { unit: "ft in", decimals: 1, fractions: true }, "5 ft 6.5 in"],
    [66.004 * inch, "length", { unit: "ft in", resolution: inch / 256, fractions: true }, "5 ft 6.004 in"],
    [66.004 * inch, "length", { unit: "ft in", resolution: inch / 128, fractions: true }, "5 ft 6 1/128 in"],
  ])("%s %s with %j is %s", (si, dimension, options, text) => {
    expect(printQuantity(si, { dimension, ...options })).toBe(text);
  });
});

describe("with neither, four significant figures that claim no more", () => {
  test.each<readonly [number, Dimension, string | undefined, string]>([
    [0.016, "length", undefined, "16 mm"],
    [0.0158765, "length", undefined, "15.88 mm"],
    [12.3456, "length", undefined, "12346 mm"],
    [0.1, "length", undefined, "100 mm"],
    [0, "length", undefined, "0 mm"],
    [-0.00000123456, "length", undefined, "-0.001235 mm"],
    [0.00000009996, "length", undefined, "0.00009996 mm"],
    [0.5, "ratio", undefined, "0.5"],
    [0.4712, "ratio", "%", "47.12 %"],
    [3.9, "ratio", ":1", "3.9:1"],
    [Math.PI / 6, "angle", undefined, "30°"],
    [16_637.05, "rate", "lb/in", "95 lb/in"],
    [16_637.05, "rate", "lbf/in", "95 lb/in"],
  ])("%s %s in %s is %s", (si, dimension, unit, text) => {
    expect(printQuantity(si, { dimension, unit })).toBe(text);
  });

  test("decimals that are asked for are kept", () => {
    expect(printQuantity(0.016, { dimension: "length", decimals: 2 })).toBe("16.00 mm");
    expect(printQuantity(0.0166, { dimension: "length", decimals: 0 })).toBe("17 mm");
  });
});

describe("refuses", () => {
  test("what is not finite", () => {
    for (const si of [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]) {
      expect(() => printQuantity(si, { dimension: "length" })).toThrow(`a finite value is wanted, not ${si}`);
    }
  });
  test("a resolution that is no step", () => {
    for (const resolution of [0, -1, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(() => printQuantity(1, { dimension: "length", resolution })).toThrow(
        `a resolution greater than zero is wanted, not ${resolution}`,
      );
    }
  });
  test("a unit of another dimension, and text", () => {
    expect(() => printQuantity(1, { dimension: "length", unit: "psi" })).toThrow(
      /"psi" is no unit of length/,
    );
    expect(() => printQuantity(1, { dimension: "angle", unit: "ft in" })).toThrow(RangeError);
    expect(() => printQuantity(1, { dimension: "text" })).toThrow("a text is no quantity");
  });
  test("numbers too large to have exact digits", () => {
    expect(() => printQuantity(1e15, { dimension: "force" })).toThrow("too large to print");
    expect(printQuantity(999_999_999_999_999, { dimension: "force" })).toBe("999999999999999 N");
  });
});
