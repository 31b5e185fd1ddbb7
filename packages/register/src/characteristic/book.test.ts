import { type MeasuredDimension, unitNamed } from "@trunnion/calc";
import { describe, expect, test } from "vitest";
import { characteristicBook, characteristicClashes, findCharacteristic } from "./book";
import { assemblies, type Characteristic } from "./characteristic";
import { builtInCharacteristics } from "./dictionary/index";
import { usualRanges } from "./dictionary/usual";
import { foldName } from "./fold-name";

const own: Characteristic = {
  kind: "quantity",
  key: "club.hood.straps",
  label: "Hood straps",
  assembly: "body",
  sided: false,
  setting: false,
  removable: true,
  help: "How many leather straps hold the hood.",
  dimension: "count",
  units: { metric: "", imperial: "" },
};

describe("the built-in dictionary", () => {
  test("gives every assembly at least three characteristics", () => {
    for (const assembly of assemblies) {
      const count = builtInCharacteristics.filter((one) => one.assembly === assembly).length;
      expect(count, assembly).toBeGreaterThanOrEqual(3);
    }
  });

  test("has no two characteristics with one key or one name", () => {
    expect(characteristicClashes([])).toEqual([]);
  });

  test("writes keys as dotted words and labels in sentence case", () => {
    for (const { key, label, help } of builtInCharacteristics) {
      expect(key).toMatch(/^[a-z][A-Za-z0-9]*(\.[a-z][A-Za-z0-9]*)+$/);
      expect(label).toMatch(/^[A-Z][^.]*[^.\s]$/);
      expect(help, key).toMatch(/^[A-Z].{15,}[.]$/);
    }
  });

  test("shows every quantity in units of its dimension, within an ordered believable range", () => {
    for (const one of builtInCharacteristics) {
      if (one.kind !== "quantity") continue;
      for (const unit of [one.units.metric, one.units.imperial]) {
        expect(() => unitNamed(one.dimension as MeasuredDimension, unit), one.key).not.toThrow();
      }
      expect(one.minimum, one.key).toBeLessThan(one.maximum ?? Number.NaN);
    }
  });

  test("says what is usual only of quantities it has, within what can be believed of them", () => {
    for (const [key, { lowest, highest }] of usualRanges) {
      const one = findCharacteristic(key);
      if (one?.kind !== "quantity") throw new Error(`no quantity ${key}`);
      expect(one.usual, key).toEqual({ lowest, highest });
      expect(lowest, key).toBeLessThan(highest);
      expect(lowest, key).toBeGreaterThanOrEqual(one.minimum ?? Number.NaN);
      expect(highest, key).toBeLessThanOrEqual(one.maximum ?? Number.NaN);
    }
  });

  test("gives a choice no two codes or spellings that fold alike", () => {
    for (const one of builtInCharacteristics) {
      if (one.kind !== "choice") continue;
      const spellings = one.choices.flatMap(({ code, label, also = [] }) => [
        ...new Set([code, label, ...also].map(foldName)),
      ]);
      expect(new Set(spellings).size, one.key).toBe(spellings.length);
    }
  });

  test("records settings at the corners per side", () => {
    expect(findCharacteristic("front.camber")).toMatchObject({ sided: true, setting: true });
    expect(findCharacteristic("front.antiRollBar.diameter")).toMatchObject({ sided: false, setting: false });
  });
});

describe("a club's book", () => {
  test("finds its own characteristic as it finds a built-in one", () => {
    const book = characteristicBook([own]);
    expect(book.find("club.hood.straps")).toBe(own);
    expect(book.named("HOOD-STRAPS")).toBe(own);
    expect(book.named("front anti-roll bar diameter")?.key).toBe("front.antiRollBar.diameter");
    expect(book.named("Front ARB")?.key).toBe("front.antiRollBar.diameter");
    expect(book.named("flux")).toBeUndefined();
  });

  test("refuses a key or a name that is taken, and names both", () => {
    expect(() => characteristicBook([{ ...own, key: "front.camber" }])).toThrow(
      'the key "front.camber" is taken',
    );
    expect(() => characteristicBook([{ ...own, label: "Front camber" }])).toThrow(
      'the name "Front camber" of club.hood.straps is taken by front.camber',
    );
    expect(characteristicClashes([own, { ...own, key: "club.hood.other" }])).toEqual([
      { kind: "name", claimed: "Hood straps", holder: "club.hood.straps", claimant: "club.hood.other" },
    ]);
  });
});
