import { describe, expect, test } from "vitest";
import { type KnownCar, matchEntry } from "./match";
import { entryColumnOf, readEntryLines } from "./read";

const cars: readonly KnownCar[] = [
  { id: "one", chassis: "SV2-0417", marks: ["GV 3107"], keepers: ["Ragnhild Tveitås"] },
  { id: "two", chassis: "SV2-0147", marks: [], keepers: ["Åse Ørnhøi"] },
  { id: "three", chassis: "SV3-0002", marks: ["AB 12"], keepers: ["Åse Ørnhøi"] },
  { id: "claim", chassis: "SV3-0002", marks: [], keepers: [] },
];
const match = (car: string, more: { readonly mark?: string; readonly driver?: string } = {}) =>
  matchEntry({ car, mark: "", driver: "", ...more }, cars);

describe("a line of an entry list", () => {
  test.each([
    ["sv2 0417", "one", "its chassis number, however it is spaced"],
    ["GV-3107", "one", "its registration mark"],
  ])("%s is car %s: %s", (written, id) => {
    expect(match(written)).toMatchObject({ state: "matched", car: id });
  });

  test("is asked where two cars claim the number", () => {
    expect(match("SV3-0002")).toMatchObject({
      state: "doubtful",
      candidates: [{ car: "three" }, { car: "claim" }],
    });
  });

  test.each([
    ["SV2-O417", "one", "letters for digits"],
    ["SV2-0714", undefined, ""],
    ["SV2-041", "one", "one character differs"],
  ])("%s is only like %s, and is asked", (written, id, because) => {
    const found = match(written);
    if (id === undefined) expect(found).toEqual({ state: "none" });
    else {
      expect(found).toMatchObject({
        state: "doubtful",
        candidates: [{ car: id, because: expect.stringContaining(because) }],
      });
    }
  });

  test("is never settled by the driver's name alone", () => {
    expect(match("blue coupé", { driver: "Ase Ornhoi" }).state).toBe("doubtful");
    expect(match("blue coupé", { driver: "RAGNHILD TVEITÅS" })).toMatchObject({
      state: "doubtful",
      candidates: [{ car: "one", because: "kept by RAGNHILD TVEITÅS" }],
    });
    expect(match("", { driver: "Åse Ørnhøi" })).toMatchObject({
      candidates: [{ car: "two" }, { car: "three" }],
    });
  });

  test("of nothing the register knows is none of its cars", () => {
    expect(match("kit car, blue")).toEqual({ state: "none" });
  });
});

describe("a table of entries", () => {
  test("is read by its headings, in any order, and says which it does not know", () => {
    const table = {
      headings: ["Driver", "No.", "Chassis number", "Tyres"],
      rows: [
        { line: 2, cells: ["Åse", "7", "SV2-0417", "new"] },
        { line: 3, cells: ["", " ", "", ""] },
      ],
    };
    expect(readEntryLines(table)).toEqual({
      lines: [{ line: 2, number: "7", car: "SV2-0417", mark: "", driver: "Åse", group: "", className: "" }],
      unknown: ["Tyres"],
    });
  });

  test("without headings loses no line: number, car, driver, group, class", () => {
    const table = { headings: ["7", "SV2-0417", "Åse"], rows: [{ line: 2, cells: ["8", "GV 3107"] }] };
    expect(readEntryLines(table).lines).toMatchObject([
      { line: 1, number: "7", car: "SV2-0417", driver: "Åse" },
      { line: 2, number: "8", car: "GV 3107", driver: "" },
    ]);
  });

  test("knows no column by what is no heading", () => {
    expect(entryColumnOf("Start number")).toBe("number");
    expect(entryColumnOf("Colour of the car")).toBeUndefined();
  });
});
