import { describe, expect, test } from "vitest";
import type { QuantityCharacteristic } from "../characteristic/characteristic";
import { builtInCharacteristics } from "../characteristic/dictionary/index";
import { valueAxis } from "./axis";

const quantities = builtInCharacteristics.filter((one) => one.kind === "quantity");
const named = (key: string) => quantities.find((one) => one.key === key) as QuantityCharacteristic;

describe("the axis of a quantity", () => {
  test.each(quantities.map((one) => [one.key, one] as const))(
    "of %s gives each value back, in either system",
    (_, one) => {
      for (const system of ["metric", "imperial"] as const) {
        const { toAxis, fromAxis, say } = valueAxis(one, system);
        expect(fromAxis(toAxis(0.123_4))).toBeCloseTo(0.123_4, 12);
        expect(say(10, 1)).toMatch(/\d/);
      }
    },
  );

  test("says as many decimals as the step needs, in the club's unit", () => {
    const bar = named("front.antiRollBar.diameter");
    expect(valueAxis(bar, "metric").say(14.5, 0.5)).toBe("14.5 mm");
    expect(valueAxis(bar, "metric").say(14, 2)).toBe("14 mm");
    expect(valueAxis(bar, "imperial").say(0.55, 0.05)).toBe("0.55 in");
  });

  test("goes by minutes for an angle, and says toe by its direction", () => {
    expect(valueAxis(named("front.camber"), "metric").say(-75, 15)).toBe("-1°15'");
    expect(valueAxis(named("front.toe"), "metric").say(-5, 5)).toMatch(/^0°05' toe-out per side$/);
  });
});
