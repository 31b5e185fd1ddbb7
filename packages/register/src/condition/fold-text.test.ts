import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { foldText } from "./fold-text";

describe("a folded text", () => {
  test.each([
    ["İSTANBUL ılgaz", "istanbul ilgaz", "both Turkish letters i"],
    ["Straße STRAẞE", "strasse strasse", "the sharp s, small and capital"],
    ["Grønnfjord ØRN", "gronnfjord orn", "a stroke through the letter"],
    ["Łódź, Đorđe, Þór, Ægir, Œuvre", "lodz, dorde, thor, aegir, oeuvre", "letters without a decomposition"],
    ["Cafe\u0301 Café", "cafe cafe", "an accent apart or within"],
    ["ΟΔΟΣ οδος Ὀδός", "οδοσ οδοσ οδοσ", "the final sigma, with and without accents"],
    ["ЗЕЛЁНЫЙ", "зеленыи", "Cyrillic"],
    ["ﬁne ½ ＡＢＣ", "fine 1/2 abc", "compatibility forms"],
    ["1½–2 “alloy” 5×13", '11/2-2 "alloy" 5x13', "dashes, quotes and the times sign"],
  ])("%s is %s: %s", (text, expected) => {
    expect(foldText(text)).toBe(expected);
  });

  test("is folded once and for all", () => {
    const text = fc.string({ unit: "grapheme" });
    fc.assert(
      fc.property(text, (one) => {
        expect(foldText(foldText(one))).toBe(foldText(one));
      }),
    );
  });

  test("of the letters of Europe depends on no case", () => {
    const letter = fc.integer({ min: 0x41, max: 0x17f }).map((code) => String.fromCodePoint(code));
    const text = fc.string({ unit: letter });
    fc.assert(
      fc.property(text, (one) => {
        expect(foldText(one.toUpperCase())).toBe(foldText(one.toLowerCase()));
      }),
    );
  });
});
