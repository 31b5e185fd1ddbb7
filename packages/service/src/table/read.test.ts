import { Refusal } from "@trunnion/register";
import iconv from "iconv-lite";
import { describe, expect, test } from "vitest";
import { tableLimits } from "./limit";
import { readTable } from "./read";

const bytesOf = (text: string) => new TextEncoder().encode(text);
const read = (text: string) => readTable(bytesOf(text), "cars.csv");

/** Code and details of the refusal; anything else than a refusal is a fault. */
function refusalOf(work: () => unknown): { readonly code: string; readonly details: unknown } {
  try {
    work();
  } catch (error) {
    if (error instanceof Refusal) return { code: error.code, details: error.details };
    throw error;
  }
  throw new Error("nothing was refused");
}

describe("a table's separator", () => {
  test.each([
    ["Chassis,Built\nS1,1971\n", "a comma"],
    ["Chassis;Built\nS1;1971\n", "a semicolon"],
    ["Chassis\tBuilt\nS1\t1971\n", "a tab"],
  ])("%j is read by %s", (text) => {
    expect(read(text)).toEqual({
      kind: "csv",
      headings: ["Chassis", "Built"],
      head: 1,
      above: [],
      rows: [{ line: 2, cells: ["S1", "1971"] }],
    });
  });

  test("is the one that stands evenly: commas in figures and in a title part nothing", () => {
    const table = read("Our register, 2019\n\nChassis;Camber\nS1;-0,5\nS2;-0,5, -1,0\n");
    expect(table).toMatchObject({ headings: ["Chassis", "Camber"], head: 3, above: ["Our register, 2019"] });
    expect(table.rows[1]).toEqual({ line: 5, cells: ["S2", "-0,5, -1,0"] });
  });

  test("may be said by a line above the table, as spreadsheets write it", () => {
    const table = read("sep=;\r\nChassis, as stamped;Built\r\nS1;1971\r\n");
    expect(table).toMatchObject({ headings: ["Chassis, as stamped", "Built"], head: 2, above: [] });
  });

  test("is not told by what stands in quotation marks", () => {
    expect(read('"Chassis, as stamped, or filed";Built\nS1;1971').headings).toEqual([
      "Chassis, as stamped, or filed",
      "Built",
    ]);
  });

  test("does not matter where there is one column", () => {
    expect(read("Chassis\nS1\n").rows).toEqual([{ line: 2, cells: ["S1"] }]);
  });
});

describe("the headings", () => {
  const title = ["Register of chassis;;;", "As of 31.12.2019;;;", ";;;"];

  test("are looked for below a title, which is passed over and told", () => {
    const table = read([...title, "Chassis;Motor;Built;", "S1-001;KM 1;1971;old"].join("\n"));
    expect(table).toEqual({
      kind: "csv",
      headings: ["Chassis", "Motor", "Built", ""],
      head: 4,
      above: ["Register of chassis", "As of 31.12.2019"],
      rows: [{ line: 5, cells: ["S1-001", "KM 1", "1971", "old"] }],
    });
  });

  test("stand in two lines where one was merged over several columns", () => {
    const lines = [...title, "Chassis;Camber;;Built", ";left;right;", "S1-001;-1;-2;1971"];
    expect(read(lines.join("\n"))).toMatchObject({
      headings: ["Chassis", "Camber left", "Camber right", "Built"],
      head: 4,
      rows: [{ line: 6 }],
    });
  });

  test.each([
    ["Chassis;Camber;\nS1-001;-1;note"],
    ["Chassis;Keeper;\nS1;Tõnu;note"],
    ["Chassis;Camber\nS1-001;-1"],
  ])("of %j stand in one line: below are values", (text) => {
    expect(read(text)).toMatchObject({ head: 1, rows: [{ line: 2 }] });
  });

  test("of a table of one column, or of values only, are its first line", () => {
    expect(read("Chassis\nS1-001;1971")).toMatchObject({ headings: ["Chassis"], head: 1 });
    expect(read("S1-001;1971\nS1-002;1972")).toMatchObject({ head: 1, rows: [{ line: 2 }] });
  });

  test("are those of the line that somebody says", () => {
    const text = [...title, "Chassis;Built", "No.;Year", "S1-001;1971"].join("\n");
    expect(readTable(bytesOf(text), "cars.csv", 5)).toMatchObject({
      headings: ["No.", "Year"],
      head: 5,
      rows: [{ line: 6 }],
    });
    expect(refusalOf(() => readTable(bytesOf(text), "cars.csv", 3))).toEqual({
      code: "HEAD_LINE_EMPTY",
      details: { file: "cars.csv", line: 3 },
    });
  });
});

describe("a row's line", () => {
  test.each([
    ["\n", "LF"],
    ["\r\n", "CR LF"],
    ["\r", "CR"],
  ])("is that of the file, over empty rows and cells of several lines, with %j for line ends", (end) => {
    const text = ["A;B", "1;2", "", '"3', 'below";4', ";", "5;6"].join(end);
    expect(read(text).rows).toEqual([
      { line: 2, cells: ["1", "2"] },
      { line: 4, cells: ["3\nbelow", "4"] },
      { line: 7, cells: ["5", "6"] },
    ]);
  });

  test("of an old file with CR for line ends is no reason to find it too wide", () => {
    const row = Array.from({ length: 20 }, (_, index) => `c${index}`).join(";");
    const table = read(Array.from({ length: 100 }, () => row).join("\r"));
    expect(table.rows).toHaveLength(99);
  });
});

describe("a cell", () => {
  test("that begins with = stays text: nothing is worked out", () => {
    expect(read("A;B\n=1+1;@x").rows[0]?.cells).toEqual(["=1+1", "@x"]);
  });

  test("may hold the separator and doubled quotation marks inside quotation marks", () => {
    expect(read('A;B\n"1/16"" out; per side";x').rows[0]?.cells).toEqual(['1/16" out; per side', "x"]);
  });
});

describe("the encoding", () => {
  test.each([
    ["utf16le", [0xff, 0xfe]],
    ["utf16be", [0xfe, 0xff]],
  ] as const)("that its mark says to be %s is read", (encoding, mark) => {
    const bytes = new Uint8Array([
      ...mark,
      ...iconv.encode("Chassis\tKeeper\r\nS1-001\tÅse Ørnhøi\r\n", encoding),
    ]);
    expect(readTable(bytes, "cars.txt").rows).toEqual([{ line: 2, cells: ["S1-001", "Åse Ørnhøi"] }]);
  });

  const text = "Chassis;Keeper\nS1;Åse Ørnhøi, 5 €\n";
  const cells = ["S1", "Åse Ørnhøi, 5 €"];

  test.each([
    ["UTF-8", bytesOf(text)],
    ["UTF-8 with a byte-order mark", bytesOf(`\ufeff${text}`)],
    ["Windows-1252", new Uint8Array(iconv.encode(text, "win1252"))],
    ["UTF-8 with the end-of-file mark of old systems", bytesOf(`${text}\u001a`)],
  ])("may be %s", (_, bytes) => {
    expect(readTable(bytes, "cars.csv")).toEqual({
      head: 1,
      above: [],
      kind: "csv",
      headings: ["Chassis", "Keeper"],
      rows: [{ line: 2, cells }],
    });
  });

  // Windows-1252 leaves five bytes without a character (the code page's own table): 81, 8D, 8F, 90, 9D.
  test.each([0x81, 0x8d, 0x8f, 0x90, 0x9d])(
    "that has a byte 0x%x no encoding has is refused with its line",
    (byte) => {
      const bytes = new Uint8Array([...bytesOf("Chassis\nS1\n"), byte, 10]);
      expect(refusalOf(() => readTable(bytes, "cars.csv"))).toEqual({
        code: "FILE_ENCODING",
        details: { file: "cars.csv", line: 3, found: `byte 0x${byte.toString(16)}` },
      });
    },
  );

  test("is not taken for Windows-1252 because of one stray byte in UTF-8: every name would be spoilt", () => {
    const bytes = new Uint8Array([...bytesOf("Keeper;B\nÅse;x\nØrn\n"), 0xe6, 10]);
    expect(refusalOf(() => readTable(bytes, "cars.csv"))).toEqual({
      code: "FILE_ENCODING",
      details: { file: "cars.csv", line: 4, found: "byte 0xe6, in a file that is UTF-8 elsewhere," },
    });
  });

  test("is what the byte-order mark says: a stray byte after it is refused", () => {
    const bytes = new Uint8Array([0xef, 0xbb, 0xbf, ...bytesOf("A\r\nB\r\n"), 0xf8, 10]);
    expect(refusalOf(() => readTable(bytes, "cars.csv"))).toMatchObject({
      code: "FILE_ENCODING",
      details: { line: 3 },
    });
  });

  test("stays Windows-1252 where two of its letters happen to look like one of UTF-8", () => {
    const text = "Keeper,B\nSKÅ’S ØRN; MÅKE; SØR,x\n";
    expect(readTable(new Uint8Array(iconv.encode(text, "win1252")), "cars.csv").rows[0]?.cells).toEqual([
      "SKÅ’S ØRN; MÅKE; SØR",
      "x",
    ]);
  });
});

describe("a file that is not what its name says", () => {
  const magic = (...start: number[]) => new Uint8Array([...start, ...bytesOf("\u0000\u0001rest")]);
  test.each([
    ["a ZIP archive (XLSX and ODS are such)", magic(0x50, 0x4b, 3, 4)],
    ["an old spreadsheet workbook (XLS)", magic(0xd0, 0xcf, 0x11, 0xe0)],
    ["a PDF", bytesOf("%PDF-1.7\n1 0 obj")],
    ["a PNG picture", magic(0x89, 0x50, 0x4e, 0x47)],
    ["a JPEG picture", magic(0xff, 0xd8, 0xff, 0xe0)],
    ["a gzip archive", magic(0x1f, 0x8b)],
    ["binary data (0x01)", new Uint8Array([0xff, 0xfe, ...iconv.encode("Chassis;\u0001Built", "utf16le")])],
    ["binary data (byte 0x00 on line 1)", new Uint8Array(iconv.encode("Chassis;Built", "utf16le"))],
    ["binary data (byte 0x07 on line 3)", bytesOf("Chassis\nS1\nS\u00072\n")],
  ])("is told to be %s", (found, bytes) => {
    expect(refusalOf(() => readTable(bytes, "cars.csv"))).toEqual({
      code: "FILE_NOT_A_TABLE",
      details: { file: "cars.csv", found },
    });
  });
});

describe("a file", () => {
  test.each([[""], ["\ufeff"], [" \r\n\t\n"]])("of nothing (%j) is empty", (text) => {
    expect(refusalOf(() => read(text))).toEqual({ code: "FILE_EMPTY", details: { file: "cars.csv" } });
  });

  test("of a line of headings has no rows", () => {
    expect(read("Chassis;Built")).toMatchObject({ kind: "csv", headings: ["Chassis", "Built"], rows: [] });
  });

  test("of the size limit is read, one byte more is not", () => {
    const noise = new Uint8Array(tableLimits.bytes + 1).fill(0);
    expect(refusalOf(() => readTable(noise, "noise.csv"))).toEqual({
      code: "FILE_TOO_LARGE",
      details: { file: "noise.csv", bytes: tableLimits.bytes + 1, limit: tableLimits.bytes },
    });
    expect(refusalOf(() => readTable(noise.subarray(1), "noise.csv")).code).toBe("FILE_NOT_A_TABLE");
  });

  test("of a million columns is refused by the count, and the limit itself is read", () => {
    expect(refusalOf(() => read("c;".repeat(999_999).concat("c\n1;2\n")))).toEqual({
      code: "TABLE_TOO_WIDE",
      details: { file: "cars.csv", columns: 1_000_000, limit: tableLimits.columns },
    });
    expect(read(`${"c;".repeat(tableLimits.columns - 1)}c`).headings).toHaveLength(tableLimits.columns);
  });

  test("of a row with a million cells is refused at that row", () => {
    expect(refusalOf(() => read(`A;B\n1;2\n${"c;".repeat(1_000_000)}\n`))).toEqual({
      code: "TABLE_BROKEN",
      details: { file: "cars.csv", line: 3, problem: "the row that begins here is longer than 100000 bytes" },
    });
  });

  test("of more rows than the limit is refused", () => {
    const rows = "1\n".repeat(tableLimits.rows);
    expect(read(`A\n${rows}`).rows).toHaveLength(tableLimits.rows);
    expect(refusalOf(() => read(`A\n${rows}1\n`))).toEqual({
      code: "TABLE_TOO_LONG",
      details: { file: "cars.csv", limit: tableLimits.rows },
    });
  }, 60_000);

  test.each([
    ['A;B\n1;2\n"3;4\n5;6\n7;8', 3, "a quotation mark is never closed"],
    ['A;B\n1;2\n"3;4\n5;"6"\n', 3, "text follows a closing quotation mark"],
    ['A;B\n1;2\n\n9/16";4\n', 4, "a quotation mark stands inside a cell that does not begin with one"],
  ])(
    "with a quotation mark gone astray (%j) is refused where the row begins, line %d",
    (text, line, problem) => {
      expect(refusalOf(() => read(text))).toEqual({
        code: "TABLE_BROKEN",
        details: { file: "cars.csv", line, problem },
      });
    },
  );
});
