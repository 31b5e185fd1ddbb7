import { describe, expect, test } from "vitest";
import type { Dimension } from "./dimension";
import { NotationError } from "./notation-error";
import { parseQuantity } from "./parse";

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
      `"-1°60'": after ° less than 60' can follow; understood would be -2°00'`,
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
