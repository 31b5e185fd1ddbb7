import { describe, expect, test } from "vitest";
import { dimensions } from "./dimension";
import { examplesOf } from "./explain";
import { NotationError, notationErrorCodes } from "./notation-error";
import { readNumber } from "./number";
import { parseQuantity } from "./parse";
import { vulgarCharacters, vulgarFractions } from "./vulgar-fraction";

describe("Unicode's fractions", () => {
  test.each(Object.entries(vulgarFractions))(
    "%s is what the Unicode Standard decomposes it into",
    (character, parts) => {
      expect(character.normalize("NFKC")).toBe(parts.join("⁄"));
      const written = readNumber({ text: `3${character}`, at: 0 });
      expect(written).toEqual({ value: 3 + parts[0] / parts[1], step: 1 / parts[1], end: 2, broken: true });
    },
  );

  test("none is missing from those that are looked for", () => {
    expect([...vulgarCharacters].sort()).toEqual(Object.keys(vulgarFractions).sort());
  });
});

describe("a number read from a place in a text", () => {
  test.each([
    ["a 16 mm", 2, { value: 16, step: 1, end: 4, broken: false }],
    ["16.50", 0, { value: 16.5, step: 0.01, end: 5, broken: true }],
    ["16,5", 0, { value: 16.5, step: 0.1, end: 4, broken: true }],
    [",5", 0, { value: 0.5, step: 0.1, end: 2, broken: true }],
    ["007", 0, { value: 7, step: 1, end: 3, broken: false }],
    ["3/4x", 0, { value: 0.75, step: 0.25, end: 3, broken: true }],
    ["2 3/4", 0, { value: 2.75, step: 0.25, end: 5, broken: true }],
    ["1/3", 0, { value: 1 / 3, step: 1 / 3, end: 3, broken: true }],
    ["123456789012345", 0, { value: 123_456_789_012_345, step: 1, end: 15, broken: false }],
    ["0.00000123456789012345", 0, { value: 0.00000123456789012345, step: 1e-20, end: 22, broken: true }],
    ["15 100/128", 0, { value: 15.78125, step: 1 / 128, end: 10, broken: true }],
    ["1 5000 mm", 0, { value: 1, step: 1, end: 1, broken: false }],
  ])("%s from %d", (text, at, written) => {
    expect(readNumber({ text, at })).toEqual(written);
  });

  test("more than fifteen digits are refused in a fraction as well", () => {
    expect(() => readNumber({ text: "1 1234567/12345678", at: 0 })).toThrow("more than 15 digits");
    expect(readNumber({ text: "1234567/1234567", at: 0 }).value).toBe(1);
  });
});

test("the examples shown for each dimension are read as that dimension", () => {
  for (const dimension of dimensions) {
    if (dimension === "text") continue;
    const examples = examplesOf(dimension);
    expect(examples.length).toBeGreaterThan(0);
    for (const example of examples) expect(parseQuantity(example, dimension).dimension).toBe(dimension);
  }
});

test("an error quotes eighty characters at most, and every code has a name of its own", () => {
  const about = (entered: string) =>
    new NotationError({ entered, code: "EMPTY", place: 0, problem: "is odd", understood: [] }).message;
  expect(about("x".repeat(80))).toBe(`"${"x".repeat(80)}" is odd`);
  expect(about("x".repeat(81))).toBe(`"${"x".repeat(80)}…" is odd`);
  expect(new Set(notationErrorCodes).size).toBe(notationErrorCodes.length);
  for (const code of notationErrorCodes) expect(code).toMatch(/^[A-Z]+(?:_[A-Z]+)*$/);
});
