import { describe, expect, test } from "vitest";
import { builtInBook } from "../characteristic/book";
import { headingProblem, readSpecificationTable } from "./table";

const series = {
  name: "Mark 1",
  pattern: { series: "Mark 1", prefix: "M1-", digits: 3, first: 1, last: 120, suffixes: [] },
  options: ["H"],
  firstSerial: 1,
  lastSerial: 120,
  builtFrom: "1970-01-01",
  builtTo: "1973-12-31",
};

function tableOf(headings: readonly string[], ...rows: readonly (readonly string[])[]) {
  return { headings, rows: rows.map((cells, index) => ({ line: index + 2, cells })) };
}

function read(headings: readonly string[], ...rows: readonly (readonly string[])[]) {
  let id = 0;
  return readSpecificationTable(tableOf(headings, ...rows), {
    book: builtInBook,
    series,
    newId: () => `e${++id}`,
  });
}

describe("a table of a specification", () => {
  test("is read by the headings people write, several alternatives in a cell", () => {
    const { entries, sources, problems } = read(
      [
        "characteristic",
        "value",
        "min",
        "max",
        "option code",
        "period options",
        "accepted substitutes",
        "substitute notes",
        "source",
        "kind of source",
        "page",
      ],
      [
        "Front anti-roll bar diameter",
        "9/16 in",
        "",
        "",
        "",
        "5/8 in | 3/4 in",
        "18 mm | 20 mm",
        "| with stiffer links",
        "Works manual",
        "publication",
        "A 4",
      ],
      ["front.camber", "", "-0°30'", "'-0°10'", "h", "", "", "", "Works manual", "", "G 1"],
    );
    expect(problems).toEqual([]);
    expect(sources).toEqual([{ title: "Works manual", kind: "publication" }]);
    expect(entries[0]?.alternatives.map(({ role, value, note }) => [role, value.entered, note])).toEqual([
      ["periodOption", "5/8 in", undefined],
      ["periodOption", "3/4 in", undefined],
      ["acceptedSubstitute", "18 mm", undefined],
      ["acceptedSubstitute", "20 mm", "with stiffer links"],
    ]);
    expect(entries[1]).toMatchObject({
      applicability: { option: "H" },
      source: { locus: "G 1", trust: "unknown" },
    });
    expect(entries[1]?.limits?.upper).toBeCloseTo(-Math.PI / 1080, 12);
  });

  test("tells every cell that is wrong by line, column and heading, and leaves those rows out", () => {
    const { entries, problems } = read(
      [
        "Characteristic",
        "Nominal",
        "Upper",
        "Chassis from",
        "Replacements",
        "Replacement notes",
        "Source kind",
      ],
      ["front.camber", "steep", "0°", "", "", "", ""],
      ["front.wing", "1", "", "", "", "", ""],
      ["front.camber", "0°", "1°", "M2-001", "", "spare", ""],
      ["front.antiRollBar.diameter", "16 mm", "", "", "17 mm | 99 m", "", ""],
      ["front.disc.face", "plain", "", "", "", "", "hearsay"],
      ["front.disc.face", "plain", "", "", "", "", ""],
    );
    expect(entries.map(({ characteristic }) => characteristic)).toEqual(["front.disc.face"]);
    expect(problems.map(({ line, column, heading, found }) => [line, column, heading, found])).toEqual([
      [2, "B", "Nominal", "steep"],
      [3, "A", "Characteristic", "front.wing"],
      [4, "F", "Replacement notes", "spare"],
      [4, "D", "Chassis from", "M2-001"],
      [5, "E", "Replacements", "17 mm | 99 m"],
      [6, "G", "Source kind", "hearsay"],
    ]);
    expect(problems[0]?.message).toMatch(/"steep" cannot be read.*expected/);
    expect(problems[2]?.message).toBe("1 for no values; write one for each value, parted by strokes");
  });

  test("of more rows than a specification may have is read so far, and said", () => {
    const rows = Array.from({ length: 5002 }, () => ["front.disc.face", "plain"]);
    const { entries, problems } = read(["Characteristic", "Nominal"], ...rows);
    expect(entries).toHaveLength(5000);
    expect(problems).toMatchObject([{ line: 5002 }]);
    expect(problems[0]?.message).toContain("at most 5000 entries");
  });
});

describe("its headings", () => {
  test.each([
    [["Nominal"], { kind: "missing", wanted: ["Characteristic"] }],
    [["Characteristic", "Colour"], { kind: "unknown", heading: "Colour" }],
    [["Characteristic", "Nominal", "Value"], { kind: "twice", heading: "Value", columns: ["B", "C"] }],
    [["Key", "Value", ""], undefined],
  ])("%o give %o", (headings, expected) => {
    expect(headingProblem(tableOf(headings, ["front.disc.face", "plain", ""]))).toEqual(expected);
  });

  test("must not be empty over cells that are not", () => {
    expect(headingProblem(tableOf(["Key", ""], ["front.disc.face", "plain"]))).toEqual({
      kind: "unknown",
      heading: "",
    });
  });
});
