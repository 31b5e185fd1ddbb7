import { Readable } from "node:stream";
import type { World } from "@trunnion/fixtures";
import { Invalid } from "@trunnion/register";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { openMember, openOperator } from "../gate";
import { keepFile } from "../import-file";
import {
  beginImport,
  discardImport,
  importProblems,
  importView,
  listImports,
  takeSheet,
} from "../import-plan";
import type { Open } from "../import-run";
import { undoImport } from "../import-undo";
import { readTableFile } from "../table";
import { type ImportDesk, openImportDesk, refusalOf } from "./import-desk.fixture";
import { carryOn, lookThrough } from "./index";

let desk: ImportDesk;
let world: World;
let folder: string;
beforeAll(async () => {
  desk = await openImportDesk();
  ({ world, folder } = desk);
}, 120_000);
afterAll(() => desk?.close());

const open: Open = (work) => desk.open(work);
const view: ImportDesk["view"] = (run) => desk.view(run);
const upload: ImportDesk["upload"] = (...given) => desk.upload(...given);
const settle: ImportDesk["settle"] = (...given) => desk.settle(...given);
const cars: ImportDesk["cars"] = (start) => desk.cars(start);
const keptFiles = () => desk.keptFiles();

describe("a file that was uploaded", () => {
  const text =
    "VIN;Frnt bar;Year built;Shoe size\nM1-001;16;1971;44\nM1-002;9/16 in;c. 1972;\nM1-003;fat;1973;41\n";

  test("has its columns proposed, and writes nothing to the register", async () => {
    const before = await cars("");
    const run = await upload(text);
    const { proposals, status, stage } = await view(run);
    expect([status, stage]).toEqual(["planned", "mapping"]);
    expect(proposals.map(({ as }) => as)).toEqual([
      "Chassis",
      "now: Front anti-roll bar diameter",
      "Built",
      "keep as remarks",
    ]);
    expect(await cars("")).toBe(before);
    expect(await keptFiles()).toHaveLength(1);
  });

  test("asks for the unit of bare numbers, at their column", async () => {
    const run = await upload(text);
    const error = await settle(run).catch((reason: unknown) => reason);
    expect(error).toBeInstanceOf(Invalid);
    expect((error as Invalid).problems).toEqual([
      { field: "columns.1.unit", message: expect.stringContaining("numbers such as 16 stand here") },
    ]);
    const wrong = await settle(run, { 1: { unit: "psi" }, 3: { as: "Shoe" } }).catch(
      (reason: unknown) => reason,
    );
    expect((wrong as Invalid).problems.map(({ field }) => field)).toEqual(["columns.1.unit", "columns.3.as"]);
  });

  test("is looked through: what would be added and changed, and which rows are left out", async () => {
    await world.car({ chassis: "M1-002" });
    const run = await upload(text);
    await settle(run, { 1: { unit: "mm" }, 3: { as: "leave out" } });
    await lookThrough({ open, folder, run });
    const seen = await view(run);
    expect(seen).toMatchObject({
      status: "planned",
      stage: "looked",
      carsAdded: 1,
      carsChanged: 1,
      rowsRefused: 1,
    });
    expect(seen.preview).toEqual([
      {
        line: 3,
        car: "M1-002",
        added: false,
        lines: [
          { what: "Built", before: "", after: "c. 1972" },
          { what: `Front anti-roll bar diameter, on ${seen.asOf}`, before: "", after: "9/16 in" },
        ],
      },
      expect.objectContaining({ line: 2, car: "M1-001", added: true }),
    ]);
    expect(seen.refusedRows).toMatchObject([{ line: 4, column: 'B "Frnt bar"', found: "fat" }]);
    expect(await cars("M1001")).toBe(0);
    expect(await open((ctx) => importProblems(ctx, run))).toMatchObject({
      file: "cars.csv",
      refusedRows: [{ line: 4 }],
    });
  });

  test("is read in, its file deleted, names taken out of the run, and undone as one step", async () => {
    const [latest] = await open(listImports);
    const run = latest?.id ?? "";
    await open((ctx) => beginImport(ctx, run));
    await carryOn({ open, folder, run });
    const done = await view(run);
    expect(done).toMatchObject({
      status: "done",
      carsAdded: 1,
      carsChanged: 1,
      rowsRefused: 1,
      rowsDone: 3,
      preview: [],
    });
    expect(await cars("M1001")).toBe(1);
    const kept = await world.inClub((db) => db.importRun.findFirstOrThrow({ where: { id: run } }));
    expect(JSON.stringify(kept.options)).not.toContain("sample");
    await open((ctx) => undoImport(ctx, run));
    expect(await cars("M1001")).toBe(0);
    expect((await view(run)).status).toBe("undone");
  });

  test("is known again by its headings, with what was settled then", async () => {
    const run = await upload(text.replace("M1-003", "M1-004"));
    const { proposals } = await view(run);
    expect(proposals[1]).toMatchObject({
      as: "now: Front anti-roll bar diameter",
      unit: "mm",
      certainty: "sure",
    });
    expect(proposals[3]).toMatchObject({
      as: "leave out",
      reason: "the last file with these headings was read so",
    });
    await open((ctx) => discardImport(ctx, run));
    expect(await refusalOf(view(run))).toBe("IMPORT_NOT_FOUND");
  });

  test("without a column for the chassis number, or with one meaning twice, is refused at the columns", async () => {
    const run = await upload("VIN;Year built\nM1-001;1971\n");
    expect(await refusalOf(settle(run, { 0: { as: "Engine no" } }))).toBe("HEADING_MISSING");
    expect(await refusalOf(settle(run, { 1: { as: "Chassis" } }))).toBe("HEADING_TWICE");
    expect(await refusalOf(open((ctx) => beginImport(ctx, run)))).toBe("IMPORT_NOT_READY");
  });

  test("is nobody's business but a registrar's or fleet manager's", async () => {
    const owner = await world.person({ roles: ["owner"] });
    expect(await refusalOf(openMember(world.database, owner, "ours", listImports))).toBe("ROLE_NEEDED");
    const run = await upload("Chassis\nM1-001\n");
    const theirs = openOperator(world.database, "theirs", (ctx) => importView(ctx, run));
    expect(await refusalOf(theirs)).toBe("IMPORT_NOT_FOUND");
  });

  test("that is too large leaves nothing on the disk", async () => {
    const before = await keptFiles();
    const stream = Readable.from(
      (function* many() {
        for (let n = 0; n < 40; n++) yield Buffer.alloc(1_000_000, 65);
      })(),
    );
    expect(await refusalOf(keepFile({ folder, clubId: world.ours.id, stream, file: "big.csv" }))).toBe(
      "FILE_TOO_LARGE",
    );
    expect(await keptFiles()).toEqual(before);
  });
});

describe("ten thousand rows that say one number", () => {
  test("are one car and 9,999 refusals, each with its line", async () => {
    const run = await upload(
      ["Chassis", ...Array.from({ length: 10_000 }, () => "D-1")].join("\n"),
      "same.csv",
    );
    await settle(run);
    await lookThrough({ open, folder, run });
    expect(await view(run)).toMatchObject({ stage: "looked", carsAdded: 1, rowsRefused: 9_999 });
    const { refusedRows } = await open((ctx) => importProblems(ctx, run));
    expect(refusedRows.at(-1)).toMatchObject({ line: 10_001, found: "D-1, which stands on line 2 already" });
  }, 60_000);
});

describe("a workbook", () => {
  test("can have another of its sheets taken", async () => {
    const { writeXlsx } = await import("hucre/xlsx");
    const bytes = await writeXlsx({
      sheets: [
        {
          name: "Notes",
          rows: [
            ["Date", "Note"],
            ["2020", "x"],
          ],
        },
        {
          name: "Cars",
          rows: [
            ["Chassis", "Built"],
            ["M1-100", 1971],
          ],
        },
      ],
    });
    const run = await upload(bytes, "club.xlsx");
    expect(await view(run)).toMatchObject({ sheet: "Notes", rowsRead: 1 });
    const table = await readTableFile({ bytes, file: "club.xlsx", sheet: "Cars" });
    await open((ctx) => takeSheet(ctx, run, table));
    const taken = await view(run);
    expect([taken.sheet, taken.proposals.map(({ as }) => as)]).toEqual(["Cars", ["Chassis", "Built"]]);
    await settle(run);
    await lookThrough({ open, folder, run });
    expect(await view(run)).toMatchObject({ carsAdded: 1, rowsRefused: 0 });
  });
});
