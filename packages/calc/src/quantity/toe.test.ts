import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { NotationError } from "./notation-error";
import { parseToe, type ToeOptions } from "./toe";
import { printToe } from "./toe-print";

const minute = Math.PI / 10_800;
const rim13 = 13 * 0.0254;

describe("toe as an angle", () => {
  test.each<readonly [string, number, ToeOptions]>([
    ["0°20' toe-in total", 10, {}],
    ["0°20' toe-out total", -10, {}],
    ["toe-in 10' per side", 10, {}],
    ["Toe out, 10' each", -10, {}],
    ["10' in per wheel", 10, {}],
    ["10 min out each side", -10, {}],
    ["-10' per side", -10, {}],
    ["+10' per side", 10, {}],
    ["neg 10' per side", -10, {}],
    ["10' neg per side", -10, {}],
    ["20' in in total", 10, {}],
    ["20' in overall", 10, {}],
    ["0' per side", 0, {}],
    ["10'", 10, { share: "perSide", direction: "in" }],
    ["10'", -5, { share: "total", direction: "out" }],
    ["10' toe-in", 5, { share: "total", direction: "out" }],
    ["-10' total", -5, { direction: "in" }],
  ])("%s is %s minutes per wheel", (entered, minutes, options) => {
    const toe = parseToe(entered, options);
    expect(toe.perWheel / minute).toBeCloseTo(minutes, 10);
    expect(toe.total).toBe(2 * toe.perWheel);
    expect(toe).toMatchObject({ measure: "angle", rimDiameter: null, entered });
  });

  test("the step of a total is halved for one wheel", () => {
    expect(parseToe("0°20' toe-in total").resolution / minute).toBeCloseTo(0.5, 10);
    expect(parseToe("10' toe-in per side").resolution / minute).toBeCloseTo(1, 10);
  });
});

describe("toe as a distance at the rim", () => {
  test("20 minutes of total toe on a 15 in rim is about 2.2 mm (common practice, no source)", () => {
    const toe = parseToe("2.2 mm toe-in total on 15 in rim");
    expect(toe.total / minute).toBeCloseTo(20, 0);
    expect(toe).toMatchObject({ measure: "rimDistance", share: "total", unit: "mm", rimDiameter: 0.381 });
  });

  test.each<readonly [string, number, ToeOptions]>([
    [`1/16" toe-out per side`, -Math.asin(0.0015875 / rim13), { rimDiameter: rim13 }],
    ["1/16 in toe-out per side", -Math.asin(0.0015875 / rim13), { rimDiameter: rim13 }],
    ["toe-out 1/16 in per side", -Math.asin(0.0015875 / rim13), { rimDiameter: rim13 }],
    ["1/16 in out per side on a 13 in rim", -Math.asin(0.0015875 / rim13), {}],
    ["1/16 in in per side at 13 in wheels", Math.asin(0.0015875 / rim13), { rimDiameter: 0.4 }],
    ["2 mm in, total, over 330.2 mm rim", Math.asin(0.001 / rim13), {}],
    ["2,5 mm toe in total", Math.asin(0.00125 / rim13), { rimDiameter: rim13 }],
  ])("%s", (entered, perWheel, options) => {
    expect(parseToe(entered, options).perWheel).toBeCloseTo(perWheel, 14);
  });

  test("the step is the angle of the distance's step", () => {
    const { resolution } = parseToe(`1/16" toe-out per side`, { rimDiameter: rim13 });
    expect(resolution).toBeCloseTo(Math.asin(0.0015875 / rim13), 14);
  });
});

describe("what is missing is asked for", () => {
  test.each<readonly [string, ToeOptions, string, string]>([
    [
      '1/16" toe-out per side',
      {},
      "RIM_NEEDED",
      `"1/16" toe-out per side": a distance becomes an angle only with the diameter of the rim it is measured at: add the rim, or write the angle; understood would be 1/16" toe-out per side on 13 in rim or 0°20' toe-in total`,
    ],
    [
      "10' per side",
      {},
      "DIRECTION_NEEDED",
      `"10' per side": toe-in or toe-out? Understood would be toe-in 10' per side or toe-out 10' per side`,
    ],
    [
      "2 mm in total",
      { rimDiameter: 0.33 },
      "DIRECTION_NEEDED",
      `"2 mm in total": toe-in or toe-out? Understood would be toe-in 2 mm in total or toe-out 2 mm in total`,
    ],
    [
      "1/16 in",
      { share: "total" },
      "DIRECTION_NEEDED",
      `"1/16 in": toe-in or toe-out? Understood would be toe-in 1/16 in or toe-out 1/16 in`,
    ],
    [
      "10' toe-in",
      {},
      "SHARE_NEEDED",
      `"10' toe-in": per side or total? Understood would be 10' toe-in per side or 10' toe-in total`,
    ],
    [
      "-10' out per side",
      {},
      "TWO_SIGNS",
      `"-10' out per side": a sign and a direction say the same thing twice; understood would be 1/16" toe-out per side or 0°20' toe-in total or 2 mm toe-in total on 13 in rim`,
    ],
    [
      "28 psi toe-in total",
      {},
      "WRONG_KIND",
      `"28 psi toe-in total": toe is an angle or a distance at the rim; understood would be 1/16" toe-out per side or 0°20' toe-in total or 2 mm toe-in total on 13 in rim`,
    ],
    [
      "parallel",
      {},
      "WRONG_KIND",
      `"parallel": toe is an angle or a distance at the rim; understood would be 1/16" toe-out per side or 0°20' toe-in total or 2 mm toe-in total on 13 in rim`,
    ],
    [
      "400 mm in per side",
      { rimDiameter: 0.33 },
      "OUT_OF_RANGE",
      `"400 mm in per side": the distance is greater than the rim; understood would be 1/16" toe-out per side or 0°20' toe-in total or 2 mm toe-in total on 13 in rim`,
    ],
    [
      "",
      {},
      "EMPTY",
      `"": nothing is entered; understood would be 1/16" toe-out per side or 0°20' toe-in total or 2 mm toe-in total on 13 in rim`,
    ],
  ])("%s", (entered, options, code, message) => {
    const read = () => parseToe(entered, options);
    expect(read).toThrow(NotationError);
    expect(read).toThrow(expect.objectContaining({ code, message, entered }));
  });
});

describe("printed toe", () => {
  test.each([
    [10 * minute, { share: "perSide" } as const, "0°10' toe-in per side"],
    [-10 * minute, { share: "total" } as const, "0°20' toe-out total"],
    [0, { share: "total" } as const, "0°00' total"],
    [
      -0.0048077,
      { share: "perSide", rimDiameter: rim13, unit: "in", resolution: 0.0048, fractions: true } as const,
      "1/16 in toe-out per side",
    ],
    [0.0026, { share: "total", rimDiameter: 0.381, resolution: 0.000132 } as const, "2.0 mm toe-in total"],
    [0.0026, { share: "total", unit: "°", resolution: 0.0005 } as const, "0.30° toe-in total"],
  ])("%s with %j is %s", (perWheel, options, text) => {
    expect(printToe(perWheel, options)).toBe(text);
  });

  test("reads back within half the step", () => {
    const share = fc.constantFrom("perSide" as const, "total" as const);
    fc.assert(
      fc.property(fc.integer({ min: -400, max: 400 }), share, fc.boolean(), (tenths, part, atRim) => {
        const perWheel = (tenths / 10) * minute;
        const resolution = 0.5 * minute;
        const rim = atRim ? { rimDiameter: rim13 } : {};
        const again = parseToe(printToe(perWheel, { share: part, resolution, ...rim }), rim);
        expect(Math.abs(again.perWheel - perWheel)).toBeLessThanOrEqual(resolution / 2 + 1e-12);
        expect(again.share).toBe(part);
      }),
    );
  });
});
