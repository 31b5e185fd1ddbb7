import { describe, expect, test } from "vitest";
import { figureParts, nominalAndLimits } from "./figure";

describe("taking a figure apart", () => {
  test.each([
    ["16 mm", "16", "", "mm"],
    ["19.05 mm", "19", ".05", "mm"],
    ["−0.5°", "−0", ".5", "°"],
    ["+1,250.5 N/mm", "+1,250", ".5", "N/mm"],
    ["9/16 in", "9/16", "", "in"],
    ["0°12′", "0°12′", "", ""],
    ["30 lbf ft", "30", "", "lbf ft"],
    ["28", "28", "", ""],
    ["3.89:1", "3", ".89", ":1"],
    ["-1°30'", "-1°30'", "", ""],
  ])("%s", (text, whole, fraction, unit) => {
    expect(figureParts(text)).toEqual({ whole, fraction, unit });
  });

  test.each(["175/70 R 13", "Rubber bush", "1.5 mm to 2.5 mm", "0°10' toe-out per side", ""])(
    "%s is left as it stands",
    (text) => {
      expect(figureParts(text)).toBeUndefined();
    },
  );
});

test("a nominal is told from the limits after it, and from words in brackets", () => {
  expect(nominalAndLimits("16 mm (15.5 mm to 16.5 mm)")).toEqual({
    nominal: "16 mm",
    limits: "15.5 mm to 16.5 mm",
  });
  expect(nominalAndLimits("type 14 (donor saloon)")).toBeUndefined();
  expect(nominalAndLimits("16 mm")).toBeUndefined();
});
