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

/** Reads an entry that must not be read. */
function errorOf(entered: string, dimension: Dimension): NotationError {
  try {
    parseQuantity(entered, dimension);
  } catch (error) {
    if (error instanceof NotationError) return error;
    throw error;
  }
  throw new Error(`"${entered}" was read`);
}

describe("what is not understood says where, what, and what would be", () => {
  test.each<readonly [string, Dimension, string, number, string]>([
    ["", "length", "EMPTY", 0, `"": nothing is entered; understood would be 16 mm or 5/8 in`],
    ["   ", "pressure", "EMPTY", 0, `"   ": nothing is entered; understood would be 28 psi or 1.9 bar`],
    ["mm", "length", "NO_NUMBER", 0, `"mm": a number is missing; understood would be 16 mm or 5/8 in`],
    ["abc", "ratio", "NO_NUMBER", 0, `"abc": a number is missing; understood would be 0.47 or 47 %`],
    ["- mm", "length", "NO_NUMBER", 2, `"- mm": a number is missing; understood would be 16 mm or 5/8 in`],
    ["16 psi", "length", "WRONG_KIND", 3, `"16 psi" is a pressure; a length is wanted, e.g. 16 mm or 5/8 in`],
    ["16 mm2", "length", "WRONG_KIND", 3, `"16 mm2" is an area; a length is wanted, e.g. 16 mm or 5/8 in`],
    ["5 ft2", "length", "WRONG_KIND", 2, `"5 ft2" is an area; a length is wanted, e.g. 16 mm or 5/8 in`],
    [
      "60 lb",
      "force",
      "WRONG_KIND",
      3,
      `"60 lb" is a mass; a force is wanted, e.g. 250 N or 56 lbf or 25 kgf`,
    ],
    [
      "45'",
      "pressure",
      "WRONG_KIND",
      2,
      `"45'" is a length or an angle; a pressure is wanted, e.g. 28 psi or 1.9 bar`,
    ],
    [
      "5 kW",
      "force",
      "WRONG_KIND",
      2,
      `"5 kW" is a power; a force is wanted, e.g. 250 N or 56 lbf or 25 kgf`,
    ],
    [
      "16 foo",
      "angle",
      "UNKNOWN_UNIT",
      3,
      `"16 foo": "foo" is no unit of angle (°, ', ", rad, mrad); understood would be 0°12' or -1.5° or 45 min`,
    ],
    [
      "16 foo",
      "count",
      "UNKNOWN_UNIT",
      3,
      `"16 foo": "foo" is no unit of number; understood would be 6 or 6.5`,
    ],
    [
      "16",
      "length",
      "NO_UNIT",
      2,
      `"16": a unit is missing (mm, in, cm, m, ft, thou, µm, yd, km, mile); a length is wanted, e.g. 16 mm or 16 in`,
    ],
    [
      "-2",
      "angle",
      "NO_UNIT",
      2,
      `"-2": a unit is missing (°, ', ", rad, mrad); an angle is wanted, e.g. -2° or -2'`,
    ],
    [
      "5 ft 6",
      "length",
      "NO_UNIT",
      6,
      `"5 ft 6": a unit is missing (mm, in, cm, m, ft, thou, µm, yd, km, mile); a length is wanted, e.g. 5 ft 6 in`,
    ],
    [
      "12°30",
      "angle",
      "NO_UNIT",
      5,
      `"12°30": a unit is missing (°, ', ", rad, mrad); an angle is wanted, e.g. 12°30'`,
    ],
    [
      "9/0 in",
      "length",
      "BAD_FRACTION",
      0,
      `"9/0 in": a fraction over zero is no number; understood would be 9/16 in`,
    ],
    [
      "1 9/8 in",
      "length",
      "BAD_FRACTION",
      0,
      `"1 9/8 in": after a whole number a fraction below one can follow, not 9/8; understood would be 2 1/8 in`,
    ],
    [
      "1 8/8 in",
      "length",
      "BAD_FRACTION",
      0,
      `"1 8/8 in": after a whole number a fraction below one can follow, not 8/8; understood would be 2 in`,
    ],
    [
      "1.5/8 in",
      "length",
      "BAD_FRACTION",
      3,
      `"1.5/8 in": a fraction is two whole numbers and one stroke; understood would be 9/16 in or 1 1/8 in or 1.125 in`,
    ],
    [
      "1/2/3 in",
      "length",
      "BAD_FRACTION",
      3,
      `"1/2/3 in": a fraction is two whole numbers and one stroke; understood would be 9/16 in or 1 1/8 in or 1.125 in`,
    ],
    [
      "1.5 1/8 in",
      "length",
      "BAD_FRACTION",
      3,
      `"1.5 1/8 in": a fraction follows a number that has a fraction or decimals already; understood would be 9/16 in or 1 1/8 in or 1.125 in`,
    ],
    [
      "1.5½ in",
      "length",
      "BAD_FRACTION",
      3,
      `"1.5½ in": a fraction follows a number that has a fraction or decimals already; understood would be 9/16 in or 1 1/8 in or 1.125 in`,
    ],
    [
      "1,500 mm",
      "length",
      "DECIMAL_COMMA",
      1,
      `"1,500 mm": the comma in 1,500 may mark decimals or thousands; understood would be 1.500 mm or 1500 mm`,
    ],
    [
      "-12,345 kg",
      "mass",
      "DECIMAL_COMMA",
      3,
      `"-12,345 kg": the comma in 12,345 may mark decimals or thousands; understood would be -12.345 kg or -12345 kg`,
    ],
    [
      "1,2,3 mm",
      "length",
      "DECIMAL_COMMA",
      3,
      `"1,2,3 mm": a comma stands where no decimals can follow; understood would be 16 mm or 5/8 in`,
    ],
    [
      "12, mm",
      "length",
      "DECIMAL_COMMA",
      2,
      `"12, mm": a comma stands where no decimals can follow; understood would be 12 mm`,
    ],
    [
      "5. mm",
      "length",
      "BAD_NUMBER",
      1,
      `"5. mm": a decimal point stands where no decimals can follow; understood would be 5 mm`,
    ],
    [
      "1.2.3 mm",
      "length",
      "BAD_NUMBER",
      3,
      `"1.2.3 mm": a decimal point stands where no decimals can follow; understood would be 16 mm or 5/8 in`,
    ],
    [
      "1 500 mm",
      "length",
      "THOUSANDS_SEPARATOR",
      0,
      `"1 500 mm": thousands are written without a separator; understood would be 1500 mm`,
    ],
    [
      "1'500 mm",
      "length",
      "THOUSANDS_SEPARATOR",
      0,
      `"1'500 mm": thousands are written without a separator; understood would be 1500 mm`,
    ],
    [
      "1,500.5 mm",
      "length",
      "THOUSANDS_SEPARATOR",
      0,
      `"1,500.5 mm": thousands are written without a separator; understood would be 1500.5 mm`,
    ],
    [
      "1.500,5 mm",
      "length",
      "THOUSANDS_SEPARATOR",
      0,
      `"1.500,5 mm": thousands are written without a separator; understood would be 1500.5 mm`,
    ],
    [
      "1,234,567 N",
      "force",
      "THOUSANDS_SEPARATOR",
      0,
      `"1,234,567 N": thousands are written without a separator; understood would be 1234567 N`,
    ],
    [
      "1.234.567,8 N",
      "force",
      "THOUSANDS_SEPARATOR",
      0,
      `"1.234.567,8 N": thousands are written without a separator; understood would be 1234567.8 N`,
    ],
    [
      "12 345,6 N",
      "force",
      "THOUSANDS_SEPARATOR",
      0,
      `"12 345,6 N": thousands are written without a separator; understood would be 12345.6 N`,
    ],
    [
      "1e3 N",
      "force",
      "BAD_NUMBER",
      1,
      `"1e3 N": powers of ten are not read, only the number written out; understood would be 250 N or 56 lbf or 25 kgf`,
    ],
    [
      "1234567890123456 N",
      "force",
      "BAD_NUMBER",
      0,
      `"1234567890123456 N": a number of more than 15 digits cannot be kept exactly; understood would be 250 N or 56 lbf or 25 kgf`,
    ],
    [
      "20-22 mm",
      "length",
      "RANGE_OR_LIMITS",
      2,
      `"20-22 mm": one value is wanted, not a range or a value with limits; understood would be 16 mm or 5/8 in`,
    ],
    [
      "20 mm - 22 mm",
      "length",
      "RANGE_OR_LIMITS",
      6,
      `"20 mm - 22 mm": one value is wanted, not a range or a value with limits; understood would be 16 mm or 5/8 in`,
    ],
    [
      "20mm-22mm",
      "length",
      "RANGE_OR_LIMITS",
      4,
      `"20mm-22mm": one value is wanted, not a range or a value with limits; understood would be 16 mm or 5/8 in`,
    ],
    [
      "20..22 mm",
      "length",
      "RANGE_OR_LIMITS",
      2,
      `"20..22 mm": one value is wanted, not a range or a value with limits; understood would be 16 mm or 5/8 in`,
    ],
    [
      "20 to 22 mm",
      "length",
      "RANGE_OR_LIMITS",
      3,
      `"20 to 22 mm": one value is wanted, not a range or a value with limits; understood would be 16 mm or 5/8 in`,
    ],
    [
      "28 ± 2 psi",
      "pressure",
      "RANGE_OR_LIMITS",
      3,
      `"28 ± 2 psi": one value is wanted, not a range or a value with limits; understood would be 28 psi or 1.9 bar`,
    ],
    [
      "28 +/- 2 psi",
      "pressure",
      "RANGE_OR_LIMITS",
      3,
      `"28 +/- 2 psi": one value is wanted, not a range or a value with limits; understood would be 28 psi or 1.9 bar`,
    ],
    [
      "0°75'",
      "angle",
      "BAD_COMPOUND",
      2,
      `"0°75'": after ° less than 60' can follow; understood would be 1°15'`,
    ],
    [
      "-1°60'",
      "angle",
      "BAD_COMPOUND",
      3,
      `"-1°60'": after ° less than 60' can follow; understood would be -2°0'`,
    ],
    [
      "5 ft 14 in",
      "length",
      "BAD_COMPOUND",
      5,
      `"5 ft 14 in": after ft less than 12 in can follow; understood would be 6 ft 2 in`,
    ],
    [
      "15 cwt 4 qr",
      "mass",
      "BAD_COMPOUND",
      7,
      `"15 cwt 4 qr": after cwt less than 4 qr can follow; understood would be 16 cwt 0 qr`,
    ],
    [
      "12'3°",
      "angle",
      "BAD_COMPOUND",
      3,
      `"12'3°": ° cannot follow ' in one entry; understood would be 0°12' or -1.5° or 45 min`,
    ],
    [
      "2 lb 3 lb",
      "mass",
      "BAD_COMPOUND",
      5,
      `"2 lb 3 lb": lb cannot follow lb in one entry; understood would be 790 kg or 15 cwt 2 qr`,
    ],
    [
      "1.5°12'",
      "angle",
      "BAD_COMPOUND",
      0,
      `"1.5°12'": only the last part may have decimals or a fraction, not the part in °; understood would be 0°12' or -1.5° or 45 min`,
    ],
    [
      "- -5 mm",
      "length",
      "TWO_SIGNS",
      2,
      `"- -5 mm": there are two signs; understood would be -0°45' or 0°45' neg`,
    ],
    [
      "-5' neg",
      "angle",
      "TWO_SIGNS",
      3,
      `"-5' neg": there are two signs; understood would be -0°45' or 0°45' neg`,
    ],
    [
      "-300 °C",
      "temperature",
      "OUT_OF_RANGE",
      0,
      `"-300 °C": nothing is colder than absolute zero; understood would be -20 °C`,
    ],
  ])("%s as %s", (entered, dimension, code, place, message) => {
    const error = errorOf(entered, dimension);
    expect(error.message).toBe(message);
    expect(error).toMatchObject({ name: "NotationError", entered, code, place });
    for (const entry of error.understood) expect(message).toContain(entry);
  });

  test("what would be understood is understood", () => {
    for (const [entered, dimension] of [
      ["16 psi", "length"],
      ["0°75'", "angle"],
      ["1,500 mm", "length"],
      ["16", "rate"],
      ["5 ft 6", "length"],
      ["1 9/8 in", "length"],
      ["1 500 mm", "length"],
    ] as const) {
      for (const entry of errorOf(entered, dimension).understood)
        expect(parseQuantity(entry, dimension).entered).toBe(entry);
    }
  });

  test("a long entry is quoted in part only", () => {
    expect(errorOf("x".repeat(200), "length").message.length).toBeLessThan(220);
  });
});
