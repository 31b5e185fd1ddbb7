import { describe, expect, test } from "vitest";
import type { Dimension } from "./dimension";
import { NotationError } from "./notation-error";
import { parseQuantity } from "./parse";

const inch = 0.0254;
const lb = 0.45359237;
const minute = Math.PI / 10_800;
const degree = Math.PI / 180;
const lbf = 4.4482216152605;

describe("what the trade writes", () => {
  test.each<readonly [string, Dimension, number, number, string]>([
    ["16 mm", "length", 0.016, 0.001, "mm"],
    ["16.0 mm", "length", 0.016, 0.0001, "mm"],
    ["16mm", "length", 0.016, 0.001, "mm"],
    [" 16  mm ", "length", 0.016, 0.001, "mm"],
    ["16 MM.", "length", 0.016, 0.001, "mm"],
    ["9/16 in", "length", (9 / 16) * inch, inch / 16, "in"],
    ["9/16in.", "length", (9 / 16) * inch, inch / 16, "in"],
    ["9 / 16 in", "length", (9 / 16) * inch, inch / 16, "in"],
    ["9⁄16 in", "length", (9 / 16) * inch, inch / 16, "in"],
    ["9/8 in", "length", 1.125 * inch, inch / 8, "in"],
    ['1 1/8"', "length", 1.125 * inch, inch / 8, "in"],
    ["1-1/8 in", "length", 1.125 * inch, inch / 8, "in"],
    ["1 - 1/8 in", "length", 1.125 * inch, inch / 8, "in"],
    ["1⅛″", "length", 1.125 * inch, inch / 8, "in"],
    ["1 ⅛ in", "length", 1.125 * inch, inch / 8, "in"],
    ["½ in", "length", 0.5 * inch, inch / 2, "in"],
    ["10½''", "length", 10.5 * inch, inch / 2, "in"],
    ["1.25 in", "length", 1.25 * inch, inch / 100, "in"],
    [".5 in", "length", 0.5 * inch, inch / 10, "in"],
    ["1,5 mm", "length", 0.0015, 0.0001, "mm"],
    ["0,125 in", "length", 0.125 * inch, inch / 1000, "in"],
    ["1234,567 mm", "length", 1.234567, 1e-6, "mm"],
    ["1,2345 mm", "length", 0.0012345, 1e-7, "mm"],
    [`5' 6"`, "length", 66 * inch, inch, "ft in"],
    [`5'-6 1/2"`, "length", 66.5 * inch, inch / 2, "ft in"],
    ["5 ft 6.5 in", "length", 66.5 * inch, inch / 10, "ft in"],
    ["5'½\"", "length", 60.5 * inch, inch / 2, "ft in"],
    ["7 thou", "length", 7e-3 * inch, 1e-3 * inch, "thou"],
    ["-3 mm", "length", -0.003, 0.001, "mm"],
    ["−3 mm", "length", -0.003, 0.001, "mm"],
    ["+ 3 mm", "length", 0.003, 0.001, "mm"],
    ["minus 3 mm", "length", -0.003, 0.001, "mm"],
    ["plus 3 mm", "length", 0.003, 0.001, "mm"],
    ["0°12'", "angle", 12 * minute, minute, "°'"],
    ["0º 12’", "angle", 12 * minute, minute, "°'"],
    ["-0°45'", "angle", -45 * minute, minute, "°'"],
    ["neg 45'", "angle", -45 * minute, minute, "'"],
    ["Neg. 45'", "angle", -45 * minute, minute, "'"],
    ["pos 45'", "angle", 45 * minute, minute, "'"],
    ["1° neg", "angle", -degree, degree, "°"],
    ["1°30' negative", "angle", -90 * minute, minute, "°'"],
    ["1°30' pos.", "angle", 90 * minute, minute, "°'"],
    [`1°30'20"`, "angle", 90 * minute + minute / 3, minute / 60, `°'"`],
    ["1 deg 30 min 20 sec", "angle", 90 * minute + minute / 3, minute / 60, `°'"`],
    ["1.5 deg", "angle", 1.5 * degree, degree / 10, "°"],
    ["1½°", "angle", 1.5 * degree, degree / 2, "°"],
    ["45 min", "angle", 45 * minute, minute, "'"],
    ["90 min", "angle", 90 * minute, minute, "'"],
    ["20 seconds", "angle", minute / 3, minute / 60, '"'],
    ["0°12.5'", "angle", 12.5 * minute, minute / 10, "°'"],
    ["28 psi", "pressure", (28 * lbf) / inch ** 2, lbf / inch ** 2, "psi"],
    ["28 lb/in²", "pressure", (28 * lbf) / inch ** 2, lbf / inch ** 2, "psi"],
    ["1.9 bar", "pressure", 190_000, 10_000, "bar"],
    ["190 kPa", "pressure", 190_000, 1000, "kPa"],
    ["2 kgf/cm²", "pressure", 196_133, 98_066.5, "kgf/cm²"],
    ["2 kg/cm2", "pressure", 196_133, 98_066.5, "kgf/cm²"],
    ["95 lb/in", "rate", (95 * lbf) / inch, lbf / inch, "lb/in"],
    ["16.6 N/mm", "rate", 16_600, 100, "N/mm"],
    ["2 kg/mm", "rate", 19_613.3, 9806.65, "kgf/mm"],
    ["30 lbf ft", "torque", 30 * lbf * 12 * inch, lbf * 12 * inch, "lbf ft"],
    ["30 ft lb", "torque", 30 * lbf * 12 * inch, lbf * 12 * inch, "lbf ft"],
    ["30 ft-lbs", "torque", 30 * lbf * 12 * inch, lbf * 12 * inch, "lbf ft"],
    ["60 lbf in", "torque", 60 * lbf * inch, lbf * inch, "lbf in"],
    ["40 Nm", "torque", 40, 1, "N·m"],
    ["40 N·m", "torque", 40, 1, "N·m"],
    ["4.1 kgf m", "torque", 40.207265, 0.980665, "kgf m"],
    ["15 cwt 2 qr", "mass", (15 * 112 + 56) * lb, 28 * lb, "cwt qr"],
    ["15 cwt 2 qr 7 lb", "mass", (15 * 112 + 63) * lb, lb, "cwt qr lb"],
    ["15 cwt 63 lb", "mass", (15 * 112 + 63) * lb, lb, "cwt lb"],
    ["1 ton 3 cwt", "mass", 23 * 112 * lb, 112 * lb, "ton cwt"],
    ["12 st 7 lb", "mass", 175 * lb, lb, "st lb"],
    ["790 kg", "mass", 790, 1, "kg"],
    ["60 kW", "power", 60_000, 1000, "kW"],
    ["82 PS", "power", 82 * 735.49875, 735.49875, "PS"],
    ["90 °C", "temperature", 363.15, 1, "°C"],
    ["-10°C", "temperature", 263.15, 1, "°C"],
    ["-40 °F", "temperature", 233.15, 5 / 9, "°F"],
    ["0 K", "temperature", 0, 1, "K"],
    ["40 °F", "temperatureDifference", 40 / 1.8, 1 / 1.8, "°F"],
    ["62 mph", "speed", (62 * 1609.344) / 3600, 1609.344 / 3600, "mph"],
    ["6 gal 4 pints", "volume", 6.5 * 0.00454609, 0.00454609 / 8, "gal pint"],
    ["98 dB(A)", "soundLevel", 98, 1, "dB(A)"],
    ["4500 rev/min", "angularSpeed", 150 * Math.PI, Math.PI / 30, "rev/min"],
    ["1 h 20 min", "time", 4800, 60, "h min"],
    ["47 %", "ratio", 0.47, 0.01, "%"],
    ["0.47", "ratio", 0.47, 0.01, ""],
    ["3.9:1", "ratio", 3.9, 0.1, ":1"],
    ["3.9 to 1", "ratio", 3.9, 0.1, ":1"],
    ["6½", "count", 6.5, 0.5, ""],
    [
      "26.5 km/h per 1000 rev/min",
      "lengthPerAngle",
      26_500 / 3600 / ((1000 * Math.PI) / 30),
      0.1 / 3.6 / ((1000 * Math.PI) / 30),
      "km/h per 1000 rev/min",
    ],
  ])("%s as %s", (entered, dimension, si, resolution, unit) => {
    const quantity = parseQuantity(entered, dimension);
    expect(quantity.si).toBeCloseTo(si, 12 - Math.max(0, Math.ceil(Math.log10(Math.abs(si) + 1))));
    expect(quantity.resolution / resolution).toBeCloseTo(1, 12);
    expect(quantity).toMatchObject({ dimension, unit, entered });
  });

  test("a mark of feet or of minutes is told by the kind that is wanted", () => {
    expect(parseQuantity("6'", "length").unit).toBe("ft");
    expect(parseQuantity("6'", "angle").unit).toBe("'");
    expect(parseQuantity("6 min", "time").si).toBe(360);
  });

  test("minus nought is nought", () => {
    expect(Object.is(parseQuantity("-0°0'", "angle").si, 0)).toBe(true);
    expect(Object.is(parseQuantity("neg 0 mm", "length").si, 0)).toBe(true);
  });

  test("a figure without a unit takes the one the caller gives, and only then", () => {
    expect(parseQuantity("16", "length", { defaultUnit: "mm" })).toMatchObject({ si: 0.016, unit: "mm" });
    expect(parseQuantity("-1 1/2", "angle", { defaultUnit: "deg" }).si).toBeCloseTo(-1.5 * degree, 15);
    expect(parseQuantity("16 in", "length", { defaultUnit: "mm" }).unit).toBe("in");
    expect(parseQuantity("50", "ratio", { defaultUnit: "%" }).si).toBe(0.5);
    expect(() => parseQuantity("16", "length", { defaultUnit: "psi" })).toThrow(RangeError);
    expect(() => parseQuantity("5 ft 6", "length", { defaultUnit: "in" })).toThrow(NotationError);
  });

  test("an entry of 80 characters is read, one of 81 is not", () => {
    const entry = `${" ".repeat(75)}16 mm`;
    expect(parseQuantity(entry, "length").si).toBe(0.016);
    expect(() => parseQuantity(` ${entry}`, "length")).toThrow(/at most 80 characters, this one 81/);
  });

  test("a text is no quantity", () => {
    expect(() => parseQuantity("16 mm", "text")).toThrow(new RangeError("a text is no quantity"));
  });
});
