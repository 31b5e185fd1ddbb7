import { buffer } from "node:stream/consumers";
import { Refusal } from "@trunnion/register";
import { writeOds } from "hucre/ods";
import { writeXlsx } from "hucre/xlsx";
import { describe, expect, test } from "vitest";
import { ZipFile } from "yazl";
import { tableLimits } from "./limit";
import { readTableFile } from "./read";
import { workbookLimits } from "./unpack";

const file = "cars.xlsx";
type Parts = Readonly<Record<string, string>>;

function zip(parts: Parts): Promise<Buffer> {
  const archive = new ZipFile();
  for (const [name, text] of Object.entries(parts)) archive.addBuffer(Buffer.from(text), name);
  archive.end();
  return buffer(archive.outputStream);
}

/** A workbook as a spreadsheet program writes it, with a sheet's rows given as XML. */
function xlsx(
  rows: string,
  given: { readonly styles?: string; readonly workbookPr?: string; readonly after?: string } = {},
) {
  const { styles = "", workbookPr = "", after = "" } = given;
  const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
  const rel = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
  const pkg = "http://schemas.openxmlformats.org/package/2006";
  return zip({
    "[Content_Types].xml": `<Types xmlns="${pkg}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/></Types>`,
    "_rels/.rels": `<Relationships xmlns="${pkg}/relationships"><Relationship Id="rId1" Type="${rel}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    "xl/workbook.xml": `<workbook xmlns="${main}" xmlns:r="${rel}">${workbookPr}<sheets><sheet name="Cars" sheetId="1" r:id="rId1"/></sheets></workbook>`,
    "xl/_rels/workbook.xml.rels": `<Relationships xmlns="${pkg}/relationships"><Relationship Id="rId1" Type="${rel}/worksheet" Target="worksheets/sheet1.xml"/><Relationship Id="rId2" Type="${rel}/styles" Target="styles.xml"/></Relationships>`,
    "xl/styles.xml": `<styleSheet xmlns="${main}"><numFmts count="3"><numFmt numFmtId="170" formatCode="mmm\\ yyyy"/><numFmt numFmtId="171" formatCode="0.0&quot; mm&quot;"/><numFmt numFmtId="172" formatCode="yyyy"/></numFmts><cellXfs><xf numFmtId="0"/><xf numFmtId="14"/><xf numFmtId="170"/><xf numFmtId="171"/><xf numFmtId="9"/><xf numFmtId="172"/></cellXfs>${styles}</styleSheet>`,
    "xl/worksheets/sheet1.xml": `<worksheet xmlns="${main}"><sheetData>${rows}</sheetData>${after}</worksheet>`,
  });
}

const textCell = (at: string, value: string) => `<c r="${at}" t="inlineStr"><is><t>${value}</t></is></c>`;
const head = (...headings: readonly string[]) =>
  `<row r="1">${headings.map((heading, index) => textCell(`${String.fromCharCode(65 + index)}1`, heading)).join("")}</row>`;

/** An OpenDocument spreadsheet of one sheet, its rows given as XML. */
function ods(rows: string, given: { readonly manifest?: string } = {}) {
  const office = "urn:oasis:names:tc:opendocument:xmlns:office:1.0";
  const table = "urn:oasis:names:tc:opendocument:xmlns:table:1.0";
  const text = "urn:oasis:names:tc:opendocument:xmlns:text:1.0";
  return zip({
    mimetype: "application/vnd.oasis.opendocument.spreadsheet",
    "META-INF/manifest.xml": given.manifest ?? "<manifest/>",
    "content.xml": `<office:document-content xmlns:office="${office}" xmlns:table="${table}" xmlns:text="${text}"><office:body><office:spreadsheet><table:table table:name="Cars">${rows}</table:table></office:spreadsheet></office:body></office:document-content>`,
  });
}
const odsText = (value: string) =>
  `<table:table-cell office:value-type="string"><text:p>${value}</text:p></table:table-cell>`;

const read = async (bytes: Uint8Array, sheet?: string) =>
  readTableFile({ bytes, file, ...(sheet === undefined ? {} : { sheet }) });

async function refusalOf(work: Promise<unknown>) {
  const error = await work.then(
    () => new Error("nothing was refused"),
    (reason: unknown) => reason,
  );
  if (!(error instanceof Refusal)) throw error;
  return { code: error.code as string, details: error.details as Record<string, unknown> };
}

describe("an XLSX workbook", () => {
  test("is read by what it is, whatever it is called, with the rows' numbers in the sheet", async () => {
    const bytes = await writeXlsx({
      sheets: [
        {
          name: "Cars",
          rows: [
            ["Chassis", "Remarks"],
            ["M1-001", "Åse's\r\nown"],
            [null, null],
            ["M1-002", "x"],
          ],
        },
      ],
    });
    expect(await readTableFile({ bytes, file: "cars.csv" })).toMatchObject({
      kind: "xlsx",
      sheet: "Cars",
      headings: ["Chassis", "Remarks"],
      rows: [
        { line: 2, cells: ["M1-001", "Åse's\nown"] },
        { line: 4, cells: ["M1-002", "x"] },
      ],
    });
  });

  // ECMA-376 part 1, 18.17.4.1: 26299 counts from 1900 and 24837 from 1904; both are 1 January 1972.
  test.each([
    ["1900", "", 26299],
    ["1904", '<workbookPr date1904="1"/>', 24837],
  ])("counts the days of its dates from %s where it says so", async (_, workbookPr, serial) => {
    const rows = `${head("Chassis", "Built")}<row r="2">${textCell("A2", "M1")}<c r="B2" s="1"><v>${serial}</v></c></row>`;
    expect((await read(await xlsx(rows, { workbookPr }))).rows).toMatchObject([
      { cells: ["M1", "1972-01-01"] },
    ]);
  });

  test("gives what a person sees: unit and precision of the format, per cent, yes and no", async () => {
    const cells =
      '<c r="B2" s="2"><v>26359</v></c><c r="C2" s="3"><v>15.9</v></c><c r="D2" s="4"><v>0.55</v></c><c r="E2" t="b"><v>1</v></c><c r="F2" s="5"><v>26359</v></c><c r="G2"><v>0.30000000000000004</v></c>';
    const rows = `${head("Chassis", "Built", "Bar", "Bias", "Servo", "Year", "x")}<row r="2">${textCell("A2", "M1")}${cells}</row>`;
    expect((await read(await xlsx(rows))).rows[0]?.cells).toEqual([
      "M1",
      "1972-03",
      "15.9 mm",
      "55 %",
      "yes",
      "1972",
      "0.3",
    ]);
  });

  test("gives what a formula came to, its error as it stands, and the formula itself where nothing is kept", async () => {
    const cells =
      '<c r="B2"><f>8*2</f><v>16</v></c><c r="C2" t="e"><f>1/0</f><v>#DIV/0!</v></c><c r="D2"><f>NOW()</f></c><c r="E2" t="str"><f>"a"&amp;"b"</f><v>ab</v></c>';
    const rows = `${head("Chassis", "a", "b", "c", "d")}<row r="2">${textCell("A2", "M1")}${cells}</row>`;
    expect((await read(await xlsx(rows))).rows[0]?.cells).toEqual(["M1", "16", "#DIV/0!", "=NOW()", "ab"]);
  });

  test("passes over a title and joins headings that are merged over two rows", async () => {
    const rows = [
      `<row r="1">${textCell("A1", "Register of 2026")}</row>`,
      `<row r="2">${textCell("A2", "Chassis")}${textCell("B2", "now: Front camber")}</row>`,
      `<row r="3">${textCell("B3", "left")}${textCell("C3", "right")}</row>`,
      `<row r="4">${textCell("A4", "M1")}${textCell("B4", "-1°")}${textCell("C4", "-2°")}</row>`,
    ].join("");
    const after = '<mergeCells count="2"><mergeCell ref="A1:C1"/><mergeCell ref="B2:C2"/></mergeCells>';
    expect(await read(await xlsx(rows, { after }))).toMatchObject({
      headings: ["Chassis", "now: Front camber left", "now: Front camber right"],
      rows: [{ line: 4, cells: ["M1", "-1°", "-2°"] }],
    });
  });

  test("reads the first sheet that is shown and has a table in it, and another by name", async () => {
    const rows = (chassis: string) => [
      ["Chassis", "x"],
      [chassis, "1"],
    ];
    const bytes = await writeXlsx({
      sheets: [
        { name: "Old", rows: rows("M9"), hidden: true },
        { name: "Empty", rows: [] },
        { name: "Note", rows: [["Ask the secretary"], [""], ["before May"]] },
        { name: "Cars", rows: rows("M1") },
      ],
    });
    const table = await read(bytes);
    expect(table.sheet).toBe("Cars");
    expect(table.sheets).toEqual([
      { name: "Old", hidden: true },
      { name: "Empty", hidden: false },
      { name: "Note", hidden: false },
      { name: "Cars", hidden: false },
    ]);
    expect((await read(bytes, "Old")).rows).toMatchObject([{ cells: ["M9", "1"] }]);
    expect(await refusalOf(read(bytes, "New"))).toEqual({
      code: "SHEET_NOT_FOUND",
      details: { file, sheet: "New", known: ["Old", "Empty", "Note", "Cars"] },
    });
  });
});

describe("an ODS workbook", () => {
  test("is read with its dates, figures, formulas and paragraphs", async () => {
    const rows = `<table:table-row>${["Chassis", "Built", "Bar", "Note"].map(odsText).join("")}</table:table-row>
<table:table-row table:number-rows-repeated="2"><table:table-cell table:number-columns-repeated="4"/></table:table-row>
<table:table-row>${odsText("M1-001")}<table:table-cell office:value-type="date" office:date-value="1972-03-12"><text:p>12.03.72</text:p></table:table-cell><table:table-cell office:value-type="float" office:value="15.9" table:formula="of:=15+0.9"><text:p>15,9</text:p></table:table-cell><table:table-cell office:value-type="string"><text:p>one</text:p><text:p>two</text:p></table:table-cell></table:table-row>`;
    expect(await read(await ods(rows))).toMatchObject({
      kind: "ods",
      sheet: "Cars",
      headings: ["Chassis", "Built", "Bar", "Note"],
      rows: [{ line: 4, cells: ["M1-001", "1972-03-12", "15.9", "one\ntwo"] }],
    });
  });

  test("that was written by the library reads back", async () => {
    const bytes = await writeOds({
      sheets: [
        {
          name: "Cars",
          rows: [
            ["Chassis", "n"],
            ["M1", 3.5],
          ],
        },
      ],
    });
    expect((await read(bytes)).rows).toMatchObject([{ cells: ["M1", "3.5"] }]);
  });

  test("that repeats a row a million times is refused for its length, not for what it takes", async () => {
    const rows = `<table:table-row>${odsText("Chassis")}${odsText("x")}</table:table-row><table:table-row table:number-rows-repeated="1048000">${odsText("M1")}</table:table-row>`;
    expect((await refusalOf(read(await ods(rows)))).code).toMatch(/TABLE_TOO_LONG|WORKBOOK_BROKEN/);
  }, 60_000);
});

/** An archive whose directory claims a part of so many bytes, and holds fewer. */
async function claiming(bytes: number): Promise<Buffer> {
  const whole = await xlsx(head("Chassis", "x"));
  // Sizes stand at offset 24 of an entry of the central directory (APPNOTE.TXT 4.3.12).
  const sheet = whole.lastIndexOf(Buffer.from("xl/worksheets/sheet1.xml"));
  whole.writeUInt32LE(bytes, sheet - 46 + 24);
  return whole;
}

describe("a file that is none, or would do harm", () => {
  test("a small one that claims gigabytes is refused with its numbers before anything is unpacked", async () => {
    const { code, details } = await refusalOf(read(await claiming(4_000_000_000)));
    expect(code).toBe("WORKBOOK_TOO_LARGE");
    expect(details).toMatchObject({ file, limit: workbookLimits.xlsx });
    expect(details.unpacked).toBeGreaterThan(4_000_000_000);
    expect(details.packed).toBeLessThan(10_000);
  });

  test("one that packs more than it claims is found out while it is unpacked", async () => {
    const { code, details } = await refusalOf(read(await claiming(10)));
    expect(code).toBe("WORKBOOK_BROKEN");
    expect(details.problem).toMatch(/too many bytes|expected/);
  });

  test("one of more parts than any workbook has is refused", async () => {
    const parts = Object.fromEntries(
      Array.from({ length: workbookLimits.entries }, (_, n) => [`xl/${n}.xml`, ""]),
    );
    expect((await refusalOf(read(await zip({ "xl/workbook.xml": "", ...parts })))).details.problem).toMatch(
      /more than 2000 parts/,
    );
  });

  test.each([
    ["another archive", () => zip({ "a.txt": "x" }), "FILE_NOT_A_TABLE"],
    [
      "a text document",
      () => zip({ mimetype: "application/vnd.oasis.opendocument.text", "content.xml": "<x/>" }),
      "FILE_NOT_A_TABLE",
    ],
    ["a damaged archive", async () => (await xlsx(head("Chassis"))).subarray(0, 300), "WORKBOOK_BROKEN"],
    [
      "a workbook without its sheet",
      () => zip({ "xl/workbook.xml": "<workbook/>", "[Content_Types].xml": "<Types/>" }),
      "WORKBOOK_BROKEN",
    ],
    [
      "an ODS with a password",
      () => ods("", { manifest: '<manifest:encryption-data manifest:checksum="x"/>' }),
      "FILE_LOCKED",
    ],
    ["an empty sheet", () => xlsx(""), "FILE_EMPTY"],
    ["XML that is none", () => xlsx("<row r='1'><c r='A1'><v>1</row>"), "WORKBOOK_BROKEN|FILE_EMPTY"],
  ])("%s is refused", async (_, make, code) => {
    expect((await refusalOf(read(await make()))).code).toMatch(new RegExp(`^(?:${code})$`));
  });

  test("an XLSX with a password is told as that, not as an old workbook", async () => {
    const bytes = await writeXlsx({
      sheets: [{ name: "Cars", rows: [["Chassis"]] }],
      encryption: { password: "secret", spinCount: 1_000 },
    });
    expect(await refusalOf(read(bytes))).toEqual({ code: "FILE_LOCKED", details: { file } });
  });

  test("more columns, and longer cells, than are read are refused with the figure", async () => {
    const wide = await writeXlsx({
      sheets: [{ name: "a", rows: [Array.from({ length: 501 }, (_, n) => `h${n}`)] }],
    });
    expect(await refusalOf(read(wide))).toEqual({
      code: "TABLE_TOO_WIDE",
      details: { file, columns: 501, limit: tableLimits.columns },
    });
    const long = await writeXlsx({
      sheets: [
        {
          name: "a",
          rows: [
            ["Chassis", "x"],
            ["M1", "y".repeat(10_001)],
          ],
        },
      ],
    });
    expect((await refusalOf(read(long))).details).toMatchObject({
      line: 2,
      problem: expect.stringMatching(/column 2 has 10001/),
    });
  });
});

describe("a large CSV", () => {
  test("read in turns is the same as read at once, across the borders of its pieces", async () => {
    const rows = Array.from({ length: 40_000 }, (_, n) => `M1-${n};"a;${n}\nå";${"x".repeat(n % 40)}`);
    const bytes = new TextEncoder().encode(["Chassis;Remarks;x", ...rows].join("\n"));
    const table = await read(bytes);
    expect(table.rows).toHaveLength(40_000);
    expect(table.rows[39_999]).toEqual({ line: 80_000, cells: ["M1-39999", "a;39999\nå", "x".repeat(39)] });
  });

  test("that breaks far down is refused at the line", async () => {
    const bytes = new TextEncoder().encode(`Chassis;x\n${"M1;2\n".repeat(200_000 - 1)}"M1;3\n`);
    expect(await refusalOf(read(bytes))).toEqual({
      code: "TABLE_BROKEN",
      details: { file, line: 200_001, problem: "a quotation mark is never closed" },
    });
  });
});
