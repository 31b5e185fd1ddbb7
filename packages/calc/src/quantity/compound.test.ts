import { describe, expect, test } from "vitest";
import { compoundNamed, compoundsOf, mayFollow, nextInChain, perLarger, symbolNamed } from "./compound";
import type { MeasuredDimension } from "./dimension";
import { unitNamed } from "./unit";

describe("compounds of a dimension", () => {
  test.each<readonly [MeasuredDimension, number, readonly string[]]>([
    ["length", 1, ["ft in"]],
    ["angle", 8, ["°'", `°'"`, `'"`, "deg min", "deg min sec"]],
    ["mass", 29, ["cwt qr", "cwt qr lb", "ton cwt", "st lb", "lb oz"]],
    ["time", 4, ["h min", "h min s", "min s"]],
    ["volume", 4, ["gal pint", "pint fl oz"]],
    ["pressure", 0, []],
  ])("%s has %d, among them %j", (dimension, count, some) => {
    const all = compoundsOf(dimension);
    expect(all).toHaveLength(count);
    for (const symbol of some) {
      expect(all).toContain(symbol);
      expect(compoundNamed(dimension, symbol)?.length).toBeGreaterThan(1);
    }
  });

  test("the names of angles stand for the marks, and what names none is undefined", () => {
    expect(compoundNamed("angle", "deg min")).toEqual(compoundNamed("angle", "°'"));
    expect(compoundNamed("length", "in ft")).toBeUndefined();
    expect(compoundNamed("mass", "°'")).toBeUndefined();
  });
});

test.each<readonly [MeasuredDimension, string, string, number]>([
  ["length", "ft", "in", 12],
  ["angle", "°", "'", 60],
  ["angle", "°", '"', 3600],
  ["mass", "ton", "cwt", 20],
  ["mass", "cwt", "qr", 4],
  ["mass", "qr", "lb", 28],
  ["mass", "cwt", "lb", 112],
  ["mass", "st", "lb", 14],
  ["mass", "lb", "oz", 16],
  ["time", "h", "s", 3600],
  ["volume", "gal", "pint", 8],
  ["volume", "pint", "fl oz", 20],
])("%s: %s, then %s, of which it holds %d", (dimension, larger, smaller, count) => {
  const [large, small] = [unitNamed(dimension, larger), unitNamed(dimension, smaller)];
  expect(perLarger(large, small)).toBe(count);
  expect(mayFollow(dimension, large, small)).toBe(true);
  expect(mayFollow(dimension, small, large)).toBe(false);
  expect(mayFollow(dimension, small, small)).toBe(false);
});

test("stones go with pounds, not with hundredweights; a kilogram goes with nothing", () => {
  const of = (symbol: string) => unitNamed("mass", symbol);
  expect(mayFollow("mass", of("st"), of("qr"))).toBe(false);
  expect(mayFollow("mass", of("cwt"), of("st"))).toBe(false);
  expect(mayFollow("mass", of("kg"), of("lb"))).toBe(false);
  expect(nextInChain("mass", of("kg"))).toBeUndefined();
  expect(nextInChain("mass", of("cwt"))?.symbol).toBe("qr");
  expect(nextInChain("mass", of("st"))?.symbol).toBe("lb");
  expect(nextInChain("length", unitNamed("length", "in"))).toBeUndefined();
  expect(nextInChain("pressure", unitNamed("pressure", "psi"))).toBeUndefined();
});

test("a quantity is shown in the unit or compound named, else in the default unit", () => {
  expect(symbolNamed("length")).toBe("mm");
  expect(symbolNamed("length", "inches")).toBe("in");
  expect(symbolNamed("angle", "deg")).toBe("°");
  expect(symbolNamed("angle", "deg min")).toBe("°'");
  expect(symbolNamed("mass", "cwt qr lb")).toBe("cwt qr lb");
  expect(() => symbolNamed("mass", "psi")).toThrow(RangeError);
});
