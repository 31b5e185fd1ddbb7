import { describe, expect, test } from "vitest";
import { builtInBook } from "../characteristic/book";
import { columnLetter, columnsTwice, readHeadings } from "./heading";
import { readRow } from "./row";

const today = "2026-11-25";
const read = (headings: readonly string[], cells: readonly string[]) =>
  readRow(readHeadings(headings, builtInBook), cells, today);

describe("headings", () => {
  test.each([
    ["Chassis No.", { kind: "plain", column: "chassis" }],
    ["BUILD DATE", { kind: "plain", column: "built" }],
    ["now: Front anti-roll bar diameter", { kind: "value", when: "now", sides: ["whole"] }],
    ["as built: front.antiRollBar.diameter", { kind: "value", when: "asBuilt" }],
    ["now: front camber left", { kind: "value", sides: ["left"] }],
    ["now: Front camber", { kind: "value", sides: ["left", "right"] }],
    ["now: Front tyre pressure [psi]", { kind: "value", defaultUnit: "psi" }],
    ["now: Body style left", { kind: "unknown" }],
    ["Club magazine", { kind: "unknown" }],
  ])("%s is understood", (heading, column) => {
    expect(readHeadings([heading], builtInBook)[0]).toMatchObject(column);
  });

  test("name one thing once: a side and both sides of it clash", () => {
    const columns = readHeadings(["now: Front camber", "now: Front camber right"], builtInBook);
    expect(columnsTwice(columns)).toEqual([["now: Front camber", "now: Front camber right"]]);
  });

  test.each([
    [0, "A"],
    [25, "Z"],
    [26, "AA"],
    [701, "ZZ"],
    [702, "AAA"],
  ])("column %d is %s, as spreadsheets count", (index, letter) => {
    expect(columnLetter(index)).toBe(letter);
  });
});

describe("a row", () => {
  test("is read with its partial dates, status, options and values as entered", () => {
    const headings = [
      "Chassis",
      "Built",
      "Status",
      "Options",
      "as built: Front anti-roll bar diameter",
      "now: Front camber left",
    ];
    const reading = read(headings, ["S2-0211", "3/72", "not heard of", "H/OD", "5/8 in", "-0°30'"]);
    expect(reading).toMatchObject({
      ok: true,
      row: {
        chassis: "S2-0211",
        built: { earliest: "1972-03-01", latest: "1972-03-31" },
        status: "lostFromSight",
        options: ["H", "OD"],
        asBuilt: [
          { characteristic: "front.antiRollBar.diameter", side: "whole", value: { entered: "5/8 in" } },
        ],
        now: [{ characteristic: "front.camber", side: "left", value: { entered: "-0°30'" } }],
      },
    });
  });

  test("says nothing where a cell is empty", () => {
    const reading = read(["Chassis", "Built", "now: Front camber left"], ["S2-0211", "", ""]);
    const row = { chassis: "S2-0211", options: [], asBuilt: [], now: [] };
    expect(reading).toEqual({ ok: true, row, doubts: [] });
  });

  test("keeps what no column has a place for, under its heading", () => {
    const reading = read(["Chassis", "Remarks", "Club magazine"], ["S2-0211", "barn find", "no. 30"]);
    expect(reading).toMatchObject({ row: { remarks: "barn find\nClub magazine: no. 30" } });
  });

  test.each([
    ["now: Front anti-roll bar diameter", "22 mn", "16 mm or 5/8 in"],
    ["now: Front anti-roll bar diameter", "-16 mm", "6 mm to 50 mm"],
    ["now: Front anti-roll bar diameter", "=1+1", "16 mm or 5/8 in"],
    ["now: Front disc face", "shiny", "Plain"],
    ["Built", "2031", "a day up to 2026-11-25"],
    ["Status", "gone", "in use"],
    ["Claim", "0", "a whole number from 1 to 9"],
  ])("with %s %s is refused whole, and told what was expected", (heading, found, expected) => {
    const reading = read(["Chassis", heading], ["S2-0211", found]);
    expect(reading).toMatchObject({ ok: false, problems: [{ column: `B "${heading}"`, found }] });
    expect(reading.ok ? "" : reading.problems[0]?.expected).toContain(expected);
  });

  test("tells every cell that cannot be read, not just the first", () => {
    const reading = read(["Chassis", "Built", "Status"], ["", "yesterday", "gone"]);
    expect(reading.ok ? [] : reading.problems.map(({ column }) => column)).toEqual([
      "Chassis",
      'B "Built"',
      'C "Status"',
    ]);
  });

  test("with a cell beyond the headings is refused: nobody could tell what it is", () => {
    expect(read(["Chassis"], ["S2-0211", "", "stray"])).toMatchObject({
      ok: false,
      problems: [{ found: "stray" }],
    });
  });
});
