import { openWorld, type World } from "@trunnion/fixtures";
import { Refusal } from "@trunnion/register";
import iconv from "iconv-lite";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { bookOf } from "../characteristic";
import { openMember, openOperator } from "../gate";
import { tableLimits } from "../table";
import { type ImportInput, importRegister } from "./index";

let world: World;

beforeAll(async () => {
  world = await openWorld();
  await world.car({ chassis: "M1-001", engine: "KM 1" });
}, 120_000);
afterAll(() => world?.close());

const bytesOf = (text: string) => new TextEncoder().encode(text);

function importBytes(bytes: Uint8Array, given: Partial<ImportInput> = {}) {
  return openOperator(world.database, "ours", async (ctx) =>
    importRegister(ctx, {
      file: "register.csv",
      bytes,
      book: await bookOf(ctx),
      asOf: "2026-01-15",
      dryRun: false,
      ...given,
    }),
  );
}

const importCsv = (...lines: readonly string[]) => importBytes(bytesOf(lines.join("\n")));

async function refusalOf(
  work: Promise<unknown>,
): Promise<{ readonly code: string; readonly details: unknown }> {
  const error = await work.then(
    () => new Error("nothing was refused"),
    (reason: unknown) => reason,
  );
  if (!(error instanceof Refusal)) throw error;
  return { code: error.code, details: error.details };
}

describe("a row with a cell that cannot be read", () => {
  const headings = "Chassis;Built;now: front anti-roll bar diameter;now: front camber left";
  // What is expected of each cell, to the end that people read.
  test.each([
    [
      "unknown unit",
      "M1-031;1971;14 furlongs;",
      'C "now: front anti-roll bar diameter"',
      "14 furlongs",
      "16 mm or 5/8 in",
    ],
    ["negative diameter", "M1-031;1971;-14 mm;", 'C "now: front anti-roll bar diameter"', "-14 mm", /mm/],
    [
      "bare number without a unit",
      "M1-031;1971;14;",
      'C "now: front anti-roll bar diameter"',
      "14",
      "14 mm or 14 in",
    ],
    ["date in the future", "M1-031;2031;14 mm;", 'B "Built"', "2031", /^a day up to /],
    ["text that is no date", "M1-031;once;14 mm;", 'B "Built"', "once", /^a date such as 1971, 3\/72/],
    [
      "formula",
      "M1-031;1971;=9/16*25.4;",
      'C "now: front anti-roll bar diameter"',
      "=9/16*25.4",
      "a value, not a formula",
    ],
    ["angle beyond belief", "M1-031;1971;;95°", 'D "now: front camber left"', "95°", "-8° to 8°"],
    ["cell beyond the headings", "M1-031;1971;;;x", "E (no heading)", "x", "no cell beyond the 4 headings"],
    ["number without a letter or figure", "--;1971;;", 'A "Chassis"', "--", "letters or figures"],
    ["number with the mark of a further claimant", "M1-031~2;1971;;", 'A "Chassis"', "M1-031~2", /^no "~"/],
    [
      "number longer than an address takes",
      `${"7".repeat(41)};;;`,
      'A "Chassis"',
      "7".repeat(41),
      "at most 40 characters",
    ],
  ])(
    "(%s) is told by line, column and cell, and the others go in",
    async (_, row, column, found, expected) => {
      const before = await world.fingerprint();
      const report = await importCsv(headings, "M1-001;;;", row);
      expect(report).toMatchObject({ rowsRead: 2, carsAdded: 0, carsUnchanged: 1 });
      expect(report.refusedRows).toMatchObject([{ line: 3, column, found }]);
      const told = report.refusedRows[0]?.expected ?? "";
      if (typeof expected === "string") expect(told).toBe(expected);
      else expect(told).toMatch(expected);
      expect(await world.fingerprint()).toEqual(before);
    },
  );

  test("tells every one of them, and keeps what is quoted short", async () => {
    const { refusedRows } = await importCsv(headings, `M1-031;${"x".repeat(500)};wide;95°`);
    expect(refusedRows.map(({ line, column }) => `${line} ${column}`).sort()).toEqual([
      '2 B "Built"',
      '2 C "now: front anti-roll bar diameter"',
      '2 D "now: front camber left"',
    ]);
    expect(refusedRows.every(({ found }) => found.length <= 121)).toBe(true);
  });

  test("does not keep the rows round it out", async () => {
    const report = await importCsv(headings, "M1-041;1971;14 mm;", "M1-042;1971;fat;", "M1-043;1971;16 mm;");
    expect(report).toMatchObject({ rowsRead: 3, carsAdded: 2, refusedRows: [{ line: 3, found: "fat" }] });
    const cars = await world.inClub((db) =>
      db.car.findMany({ where: { chassisKey: { startsWith: "M104" } } }),
    );
    expect(cars.map(({ chassis }) => chassis).sort()).toEqual(["M1-041", "M1-043"]);
    const [run] = await world.inClub((db) => db.importRun.findMany({ orderBy: { id: "desc" }, take: 1 }));
    expect(run).toMatchObject({ rowsRead: 3, carsAdded: 2, rowsRefused: 1 });
  });

  test("names a series the club has not, and says which it has", async () => {
    const { refusedRows } = await importCsv("Chassis;Series", "M1-044;Mark 9");
    expect(refusedRows).toEqual([
      { line: 2, column: 'B "Series"', found: "Mark 9", expected: "one of: Mark 1" },
    ]);
  });

  test("without a chassis number is refused", async () => {
    const { refusedRows } = await importCsv("Chassis;Built", ";1971");
    expect(refusedRows).toMatchObject([{ line: 2, found: "nothing", expected: "a chassis number" }]);
  });
});

describe("a row that is taken, but somebody should look at", () => {
  test.each([
    ["M1-121;", "0 cars", "121 lies above the last of Mark 1, which is 120"],
    ["X9-1;", "no series", "chassis X9-1 fits no series of this club"],
    ["M1-051;H XL", "an option", "Mark 1 has no option XL"],
  ])("%j is told", async (row, _, text) => {
    const series = row.startsWith("M1-121") ? "Mark 1" : "";
    const report = await importBytes(bytesOf(`Chassis;Options;Series\n${row};${series}`), { dryRun: true });
    expect(report).toMatchObject({ carsAdded: 1, refusedRows: [], doubtfulRows: [{ line: 2, text }] });
  });
});

describe("a row that is no car", () => {
  test.each([
    ["M1-001 / M1-002", "one car in a row; M1-001 and M1-002 need a row each"],
    ["M1-001 and M1-002", "one car in a row; M1-001 and M1-002 need a row each"],
    ["Total", "a chassis number; a line of totals is no car"],
    ["Summe:", "a chassis number; a line of totals is no car"],
    ["Chassis", "a car; these are the headings again"],
  ])("(%s) is left out, and told", async (chassis, expected) => {
    const before = await world.fingerprint();
    const { refusedRows, carsAdded } = await importCsv("Chassis;Keeper", `${chassis};Keeper`, "M1-001;");
    expect(refusedRows.filter(({ column }) => column.startsWith("A"))).toEqual([
      { line: 2, column: 'A "Chassis"', found: chassis, expected },
    ]);
    expect(carsAdded).toBe(0);
    expect(await world.fingerprint()).toEqual(before);
  });
});

describe("a number that stands in several rows", () => {
  test("is refused the second time, with the line of the first", async () => {
    const before = await world.fingerprint();
    const report = await importCsv("Chassis;Built", "M1-001;", "m1 001;1971");
    expect(report.refusedRows).toMatchObject([
      { line: 3, column: 'A "Chassis"', found: "m1 001, which stands on line 2 already" },
    ]);
    expect(report).toMatchObject({ carsUnchanged: 1, carsChanged: 0 });
    expect(await world.fingerprint()).toEqual(before);
  });

  test("is two cars where their engines differ, and stays the same two in any order", async () => {
    const rows = ["M1-060;KM 60", "M1-060;KM 61"];
    const report = await importCsv("Chassis;Engine no", ...rows);
    expect(report).toMatchObject({ carsAdded: 2, refusedRows: [] });
    expect(report.doubtfulRows).toEqual([
      {
        line: 3,
        column: 'A "Chassis"',
        found: "M1-060",
        text: "another car claims M1-060 too: taken as claimant 2",
      },
    ]);
    const before = await world.fingerprint();
    expect(await importCsv("Chassis;Engine no", ...rows)).toMatchObject({ carsUnchanged: 2 });
    expect(await importCsv("Chassis;Engine no", ...rows.toReversed())).toMatchObject({ carsUnchanged: 2 });
    expect(await importCsv("Chassis;Engine no", "M1-060;km-61")).toMatchObject({ carsUnchanged: 1 });
    expect(await world.fingerprint()).toEqual(before);
  });

  test("and an engine that none of its claimants bears is refused rather than given to the first", async () => {
    const before = await world.fingerprint();
    const { refusedRows } = await importCsv("Chassis;Engine no", "M1-060;KM 99");
    expect(refusedRows).toEqual([
      {
        line: 2,
        column: 'B "Engine no"',
        found: "KM 99, which none of the 2 cars that claim M1-060 bears",
        expected: '"1" to "9" under "Claim"; engines by claimant: 1: KM60; 2: KM61',
      },
    ]);
    expect(await world.fingerprint()).toEqual(before);
  });

  test("is the car that the row names under Claim, and one row per claimant", async () => {
    const report = await importCsv("Chassis;Claim;Built", "M1-060;2;1972", "M1-060;2;1973", "M1-060;ten;");
    expect(report).toMatchObject({ carsChanged: 1 });
    expect(report.refusedRows.map(({ line, column }) => [line, column])).toEqual([
      [3, 'A "Chassis"'],
      [4, 'B "Claim"'],
    ]);
    const cars = await world.inClub((db) =>
      db.car.findMany({ where: { chassisKey: "M1060" }, orderBy: { claim: "asc" } }),
    );
    expect(cars.map(({ claim, builtText }) => [claim, builtText])).toEqual([
      [1, null],
      [2, "1972"],
    ]);
  });
});

describe("a file that cannot be read", () => {
  const zip = new Uint8Array([0x50, 0x4b, 3, 4, 20, 0, 6, 0, 8, 0]);
  const png = new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  const file = "register.csv";
  test.each([
    [
      "a workbook cut short",
      zip,
      "WORKBOOK_BROKEN",
      {
        file,
        problem:
          "End of central directory record signature not found. Either not a zip file, or file is truncated",
      },
    ],
    ["a PDF", bytesOf("%PDF-1.7\n"), "FILE_NOT_A_TABLE", { file, found: "a PDF" }],
    ["a picture", png, "FILE_NOT_A_TABLE", { file, found: "a PNG picture" }],
    ["nothing", bytesOf(""), "FILE_EMPTY", { file }],
    ["blanks", bytesOf("\n \n"), "FILE_EMPTY", { file }],
    [
      "no encoding",
      new Uint8Array([...bytesOf("Chassis\n"), 0x81]),
      "FILE_ENCODING",
      { file, line: 2, found: "byte 0x81" },
    ],
    [
      "a million columns",
      bytesOf(`Chassis${",c".repeat(999_999)}\n`),
      "TABLE_TOO_WIDE",
      { file, columns: 1_000_000, limit: tableLimits.columns },
    ],
    [
      "an unclosed quotation mark",
      bytesOf('Chassis;Remarks\nM1-070;"oh\nM1-071;x\n'),
      "TABLE_BROKEN",
      { file, line: 2, problem: "a quotation mark is never closed" },
    ],
    [
      "no heading Chassis",
      bytesOf("Number;Built\nM1-070;1971\n"),
      "HEADING_MISSING",
      { file, wanted: ["chassis", "chassis no", "chassis number"], found: ["Number", "Built"] },
    ],
    [
      "a heading twice",
      bytesOf("Chassis;Keeper;Built;Owner\nM1-070;a;1971;b\n"),
      "HEADING_TWICE",
      { file, heading: "Keeper", columns: ["B", "D"] },
    ],
    [
      "a value twice",
      bytesOf("Chassis;now: front camber;now: Front camber left\nM1-070;1°;2°\n"),
      "HEADING_TWICE",
      { file, heading: "now: front camber", columns: ["B", "C"] },
    ],
  ])(
    "(%s) is refused with what is wrong and where, and nothing is written",
    async (_, bytes, code, details) => {
      const before = await world.fingerprint();
      expect(await refusalOf(importBytes(bytes))).toEqual({ code, details });
      expect(await world.fingerprint()).toEqual(before);
    },
  );

  test("because it is too large is refused by its size", async () => {
    const before = await world.fingerprint();
    const noise = new Uint8Array(tableLimits.bytes + 1).fill(120);
    expect(await refusalOf(importBytes(noise))).toEqual({
      code: "FILE_TOO_LARGE",
      details: { file, bytes: tableLimits.bytes + 1, limit: tableLimits.bytes },
    });
    expect(await world.fingerprint()).toEqual(before);
  });

  test("as of no day, or of a day ahead, is refused", async () => {
    const before = await world.fingerprint();
    for (const asOf of ["last spring", "2026-02-30", "2999-01-01"]) {
      await expect(importBytes(bytesOf("Chassis\nM1-070"), { asOf })).rejects.toThrow(/asOf/);
    }
    expect(await world.fingerprint()).toEqual(before);
  });
});

describe("a file of a line of headings", () => {
  test("is read and changes nothing", async () => {
    const before = await world.fingerprint();
    expect(await importCsv("Chassis;Built")).toMatchObject({ rowsRead: 0, carsAdded: 0, refusedRows: [] });
    expect(await world.fingerprint()).toEqual(before);
  });
});

describe("a file's encoding", () => {
  const text = "Chassis;Keeper;Remarks\nM1-080;Åse Ørnhøi;paid 5 € – twice\n";
  test.each([
    ["UTF-8", bytesOf(text)],
    ["UTF-8 with a byte-order mark", bytesOf(`\ufeff${text}`)],
    ["Windows-1252", new Uint8Array(iconv.encode(text, "win1252"))],
  ])("%s gives the same names to the letter", async (_, bytes) => {
    await importBytes(bytes);
    const car = await world.inClub((db) =>
      db.car.findFirstOrThrow({
        where: { chassisKey: "M1080" },
        include: { keeperships: { include: { keeper: true } } },
      }),
    );
    expect(car.remarks).toBe("paid 5 € – twice");
    expect(car.keeperships.map(({ keeper }) => keeper.name)).toEqual(["Åse Ørnhøi"]);
  });
});

describe("a reading-in", () => {
  test("leaves nothing behind when its transaction fails", async () => {
    const before = await world.fingerprint();
    const failing = openOperator(world.database, "ours", async (ctx) => {
      const input = { file: "register.csv", bytes: bytesOf("Chassis;Keeper\nM1-090;A"), asOf: "2026-01-01" };
      const report = await importRegister(ctx, { ...input, book: await bookOf(ctx), dryRun: false });
      expect(report.carsAdded).toBe(1);
      throw new Error("the machine stopped");
    });
    await expect(failing).rejects.toThrow("the machine stopped");
    expect(await world.fingerprint()).toEqual(before);
  });

  test("waits for another of the same club, so that both are whole", async () => {
    const lines = "Chassis;Engine no\nM1-095;KM 95\nM1-096;KM 96";
    const reports = await Promise.all([1, 2].map(() => importBytes(bytesOf(lines))));
    expect(reports.map(({ carsAdded }) => carsAdded).sort()).toEqual([0, 2]);
  });

  test("writes into its own club only, whatever the other one has", async () => {
    await world.car({ chassis: "M1-099", club: world.theirs });
    const theirs = await world.inClub((db) => db.car.findMany(), world.theirs);
    expect(await importCsv("Chassis;Built", "M1-099;1972")).toMatchObject({ carsAdded: 1 });
    expect(await world.inClub((db) => db.car.findMany(), world.theirs)).toEqual(theirs);
  });

  test.each(["owner", "scrutineer"] as const)("is refused to a member who is only %s", async (role) => {
    const member = await world.person({ roles: [role] });
    const before = await world.fingerprint();
    const attempt = openMember(world.database, member, "ours", async (ctx) =>
      importRegister(ctx, {
        file: "register.csv",
        bytes: bytesOf("Chassis\nM1-100"),
        book: await bookOf(ctx),
        asOf: ctx.today,
        dryRun: true,
      }),
    );
    expect(await refusalOf(attempt)).toEqual({
      code: "ROLE_NEEDED",
      details: { needed: ["registrar", "fleetManager"], has: [role] },
    });
    expect(await world.fingerprint()).toEqual(before);
  });
});
