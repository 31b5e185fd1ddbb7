import { describe, expect, test } from "vitest";
import { builtInBook } from "../characteristic/book";
import { readHeading } from "./heading";
import {
  allHeadings,
  columnsAs,
  headingKey,
  headingOf,
  importMappingSchema,
  mappingOf,
  unmatchedHeadings,
} from "./mapping";
import { readRow } from "./row";
import { dayOfSerial } from "./serial-day";

const today = "2026-11-25";
const columnsOf = (
  headings: readonly string[],
  columns: readonly { heading: string; as: string; unit?: string }[],
) => {
  const read = columnsAs(headings, { columns }, builtInBook);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.columns;
};

describe("a mapping", () => {
  test("names a column's meaning as a heading of a register, with the unit of bare numbers", () => {
    const columns = columnsOf(
      ["Number", "Bar", "Shoe size", "Mag"],
      [
        { heading: "Number", as: "Chassis" },
        { heading: "Bar", as: "now: Front anti-roll bar diameter", unit: "mm" },
        { heading: "Shoe size", as: "leave out" },
        { heading: "Mag", as: "keep as remarks" },
      ],
    );
    expect(columns.map(({ kind }) => kind)).toEqual(["plain", "value", "ignored", "unknown"]);
    expect(readRow(columns, ["M1-1", "16", "44", "no. 3"], today)).toMatchObject({
      ok: true,
      row: { chassis: "M1-1", remarks: "Mag: no. 3", now: [{ value: { entered: "16 mm", si: 0.016 } }] },
    });
  });

  test("leaves columns it does not name to their own headings, and tells columns of one heading apart by order", () => {
    const columns = columnsOf(
      ["Chassis", "Date", "Date"],
      [
        { heading: "date", as: "Built" },
        { heading: "Date", as: "First registered" },
      ],
    );
    expect(columns.map((column) => headingOf(column))).toEqual(["Chassis", "Built", "First registered"]);
  });

  test.each([
    [{ heading: "A", as: "Chasis" }, "as", /no heading of a register/],
    [
      { heading: "A", as: "now: Front anti-roll bar diameter", unit: "psi" },
      "unit",
      /no unit of front anti-roll bar diameter; expected mm/,
    ],
    [{ heading: "A", as: "Chassis", unit: "mm" }, "unit", /expected no unit/],
    [{ heading: "A", as: "Built", unit: "mm" }, "unit", /days from 1900/],
    [{ heading: "A", as: "now: Colour", unit: "mm" }, "unit", /expected no unit/],
  ])("%j is told at the column and its part", (mapped, part, message) => {
    const read = columnsAs(["A"], { columns: [mapped] }, builtInBook);
    expect(read).toMatchObject({
      ok: false,
      problems: [{ index: 0, part, message: expect.stringMatching(message) }],
    });
  });

  test("comes back the same when it is written down and read", () => {
    const mapping = {
      columns: [
        { heading: "x", as: "Chassis" },
        { heading: "y", as: "Built", unit: "days from 1904" },
        { heading: "z", as: "now: Front camber left", unit: "deg" },
        { heading: "t", as: "now: Front toe", unit: "min per side" },
        { heading: "v", as: "leave out" },
        { heading: "", as: "keep as remarks" },
      ],
    };
    const columns = columnsOf(["x", "y", "z", "t", "v", ""], mapping.columns);
    expect(mappingOf(columns)).toEqual(mapping);
    expect(importMappingSchema.parse(JSON.parse(JSON.stringify(mappingOf(columns))))).toEqual(mapping);
  });

  test("says which of its headings the file does not have", () => {
    const mapping = {
      columns: [
        { heading: "Chassis no.", as: "Chassis" },
        { heading: "Bra", as: "leave out" },
      ],
    };
    expect(unmatchedHeadings(["chassis  NO"], mapping)).toEqual(["Bra"]);
  });

  test("every heading to choose from reads back as itself", () => {
    for (const heading of allHeadings(builtInBook)) {
      if (heading === "keep as remarks" || heading === "leave out") continue;
      expect(headingOf(readHeading(heading, 0, builtInBook))).toBe(heading);
    }
  });

  test("is known by the headings, however they are spaced and capitalised, in their order", () => {
    expect(headingKey(["Chassis  No.", "BAR"])).toBe(headingKey(["chassis no", "Bar"]));
    expect(headingKey(["a", "b"])).not.toBe(headingKey(["b", "a"]));
  });
});

describe("a spreadsheet's day number", () => {
  // ECMA-376 part 1, 18.17.4.1; 1 January 1972 worked out by hand: 72 years of 365 days and 18 leap days (1904-1968
  // and 1900, which the count wrongly has), plus day 1; the other count starts 1,462 days later.
  test.each([
    ["26299", 1900, "1972-01-01"],
    ["24837", 1904, "1972-01-01"],
    ["26299.75", 1900, "1972-01-01"],
    ["1972", 1900, undefined],
    ["262990", 1900, undefined],
    ["2629a", 1900, undefined],
  ] as const)("%s counted from %d is %s", (text, epoch, day) => {
    expect(dayOfSerial(text, epoch)).toBe(day);
  });

  test("is refused where nobody said what it counts from, with both days", () => {
    const columns = columnsOf(["Chassis", "Built"], []);
    expect(readRow(columns, ["M1-1", "26299"], today)).toMatchObject({
      ok: false,
      problems: [
        { column: 'B "Built"', found: "26299", expected: expect.stringMatching(/1972-01-01.*1976-01-02/) },
      ],
    });
  });

  test("is the day where the mapping says it", () => {
    const columns = columnsOf(
      ["Chassis", "Built"],
      [{ heading: "Built", as: "Built", unit: "days from 1904" }],
    );
    expect(readRow(columns, ["M1-1", "24837"], today)).toMatchObject({
      row: { built: { earliest: "1972-01-01", latest: "1972-01-01", text: "1972-01-01" } },
    });
    expect(readRow(columns, ["M1-1", "c. 1971"], today)).toMatchObject({
      row: { built: { text: "c. 1971" } },
    });
  });
});
