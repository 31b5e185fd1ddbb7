import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { loadFaces, textWidth } from "../font/face";
import { fitSize, shorten, wrap, wrapSpans } from "./wrap";

const { regular, bold } = loadFaces();
const words = fc
  .array(fc.stringMatching(/^[A-Za-zæøåÞ0-9/–-]{1,30}$/), { maxLength: 40 })
  .map((some) => some.join(" "));

describe("breaking lines", () => {
  test("no line is wider than asked, and no character is lost but the spaces at the breaks", () => {
    fc.assert(
      fc.property(words, fc.double({ min: 30, max: 400, noNaN: true }), (text, width) => {
        const lines = wrap(regular, 9, text, width);
        for (const line of lines) expect(textWidth(regular, 9, line)).toBeLessThanOrEqual(width + 0.02);
        expect(lines.join("").replaceAll(" ", "")).toBe(text.replaceAll(" ", ""));
      }),
    );
  });

  test("a fraction is never broken at its slash, a compound may be at its hyphen", () => {
    const narrow = textWidth(regular, 9, "thread 5/1");
    expect(wrap(regular, 9, "thread 5/16 UNF", narrow)).toEqual(["thread", "5/16 UNF"]);
    const hyphen = textWidth(regular, 9, "the anti-ro");
    expect(wrap(regular, 9, "the anti-roll bar", hyphen)).toEqual(["the anti-", "roll bar"]);
  });

  test("a line break in the text is kept, an empty line too", () => {
    expect(wrap(regular, 9, "one\n\ntwo", 400)).toEqual(["one", "", "two"]);
  });

  test("spans run on, and a line holds both faces", () => {
    const lines = wrapSpans(
      [
        { face: bold, size: 9, text: "Castor " },
        { face: regular, size: 7, text: "degrees" },
      ],
      200,
    );
    expect(lines.map((line) => line.map((span) => [span.face.name, span.text]))).toEqual([
      [
        ["F2", "Castor "],
        ["F1", "degrees"],
      ],
    ]);
  });
});

describe("fitting", () => {
  test("a size fits the width, between its bounds", () => {
    expect(fitSize(bold, "7", { width: 140, largest: 104, smallest: 12 })).toBe(104);
    const size = fitSize(bold, "12345", { width: 140, largest: 104, smallest: 12 });
    expect(textWidth(bold, size, "12345")).toBeLessThanOrEqual(140);
    expect(textWidth(bold, size + 0.1, "12345")).toBeGreaterThan(140);
    expect(fitSize(bold, "1".repeat(90), { width: 140, largest: 104, smallest: 12 })).toBe(12);
  });

  test("a shortened text ends in an ellipsis and fits; one that fits is left alone", () => {
    expect(shorten(regular, 9, "short", 100)).toBe("short");
    const cut = shorten(regular, 9, "a name that is much too long for its place", 80);
    expect(cut).toMatch(/^a name .*…$/);
    expect(textWidth(regular, 9, cut)).toBeLessThanOrEqual(80);
  });
});
