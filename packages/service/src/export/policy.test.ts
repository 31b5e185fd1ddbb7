import { parse } from "csv-parse/sync";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { neutral, unneutral } from "../neutral-cell";
import { csvLine, headingOf, xlsxCell } from "./policy";

describe("a cell that a spreadsheet might take for a formula", () => {
  // OWASP Community, "CSV Injection": = + - @, tab (0x09), carriage return (0x0D), line feed; full-width forms from memory.
  // OWASP ASVS 5.0, requirement 1.2.10: '=', '+', '-', '@', tab and NUL, escaped with a single quote.
  test.each(["=1+1", "+1", "-0°30'", "@SUM(A1)", "\t=1", "\r=1", "\n=1", "\0", "＝1", "＋1", "－1", "＠x"])(
    "%j gets an apostrophe",
    (text) => {
      expect(neutral(text)).toBe(`'${text}`);
      expect(unneutral(`'${text}`)).toBe(text);
      expect(xlsxCell(text)).toMatch(/^'/);
      expect(csvLine([text])).toMatch(/^"?'/);
    },
  );

  test.each(["1+1", "a=b", "S2-0211", "", "'=1", "0°12'"])("%j stays as it is", (text) => {
    expect(neutral(text)).toBe(text);
  });

  test.each(["'60s car", "'", "O'=1", "1971"])(
    "%j loses no apostrophe of its own when it is read in",
    (text) => {
      expect(unneutral(text)).toBe(text);
    },
  );

  test("does not concern numbers that are numbers", () => {
    expect(csvLine([-0.5, 1e-7])).toBe("-0.5,1e-7\r\n");
    expect(xlsxCell(-0.5)).toBe(-0.5);
  });
});

describe("a line of CSV", () => {
  // RFC 4180, 2.5 to 2.7: fields with line breaks, double quotes and commas are quoted; a quote in them is doubled.
  test.each([
    [["aaa", "b\r\nbb", "ccc"], 'aaa,"b\r\nbb",ccc\r\n'],
    [["aaa", 'b"bb', "ccc"], 'aaa,"b""bb",ccc\r\n'],
    [["a,b", " c", null], '"a,b"," c",\r\n'],
  ])("%j is written as RFC 4180 has it", (cells, line) => {
    expect(csvLine(cells)).toBe(line);
  });

  test("says to another reader what was put in, apostrophes aside", () => {
    const cell = fc.string({ unit: "binary-ascii" }).filter((text) => !text.includes("\0"));
    fc.assert(
      fc.property(fc.array(cell, { minLength: 2, maxLength: 5 }), (cells) => {
        const [read] = parse(csvLine(cells), { relax_column_count: true }) as string[][];
        expect(read).toEqual(cells.map((text) => neutral(text)));
      }),
    );
  });
});

describe("a cell of XLSX", () => {
  test("holds no character that XML cannot", () => {
    expect(xlsxCell("a\u0001b\ud800c\ufffe")).toBe("a\ufffdb\ufffdc\ufffd");
    expect(xlsxCell("日本 😀\tx")).toBe("日本 😀\tx");
  });

  test("is cut at what the format can hold, and says so", () => {
    const text = String(xlsxCell("x".repeat(40_000)));
    expect(text).toHaveLength(32_767);
    expect(text).toMatch(/cut here/);
  });
});

test("a heading has the unit of its numbers", () => {
  expect(headingOf({ label: "Size", unit: "m" })).toBe("Size [m]");
  expect(headingOf({ label: "Size" })).toBe("Size");
});
