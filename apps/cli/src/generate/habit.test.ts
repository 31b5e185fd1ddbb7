import { builtInCharacteristics, characteristicBook, parsePartialDate, parseValue } from "@trunnion/register";
import { describe, expect, test } from "vitest";
import { drawFrom, written } from "./draw";
import { type Drawn, habits, measured, worksCard } from "./habit";

const book = characteristicBook([]);
const all: readonly (readonly [string, Drawn])[] = [
  ...Object.entries(worksCard),
  ...Object.entries(measured),
  ...habits.flatMap(({ changes }) => Object.entries(changes)),
];

describe("what invented owners do", () => {
  test.each(all)("%s is written so that it can be read", (key, drawn) => {
    const characteristic = book.find(key);
    if (!characteristic) throw new Error(`no characteristic ${key} of ${builtInCharacteristics.length}`);
    const draw = drawFrom(key);
    const texts = Array.isArray(drawn) ? drawn : Array.from({ length: 200 }, () => written(draw, drawn));
    for (const text of texts) expect(parseValue(characteristic, text), text).toMatchObject({ ok: true });
  });

  test("touches every assembly that can be changed", () => {
    const keys = habits.flatMap(({ changes }) => Object.keys(changes));
    const assemblies = new Set(keys.map((key) => book.find(key)?.assembly));
    expect([...assemblies].sort()).toEqual(
      [...new Set(builtInCharacteristics.map(({ assembly }) => assembly))]
        .filter((assembly) => assembly !== "settings")
        .sort(),
    );
  });

  test("makes some ten modifications of an ordinary car", () => {
    const expected = habits.reduce((sum, { percent }) => sum + percent / 100, 0);
    expect(expected).toBeGreaterThan(12);
    expect(expected).toBeLessThan(15);
  });

  test("is dated in words that can be read", () => {
    for (const text of ["1987", "May 1994", "1994-05-12"])
      expect(parsePartialDate(text, { today: "2026-01-01" })).toMatchObject({ ok: true });
  });
});
