import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { canonicalJson } from "@trunnion/register";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { drawSheets, sheetKinds } from "./draw-sheets";
import { packParts } from "./pack/pack";
import { readSheetForm } from "./read/read-form";
import { fullSheet, plainSheet, sampleSheet } from "./sample/sample-sheet";

/** Programs that read PDF and share nothing with what wrote it; where one is not installed its tests are skipped. */
const installed = (program: string) => spawnSync(program, ["--version"]).error === undefined;
const models = [fullSheet(1), plainSheet(2), sampleSheet()];

let folder: string;
const path = (name: string) => join(folder, name);

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "trunnion-reader-"));
  for (const kind of sheetKinds) writeFileSync(path(kind), await drawSheets(models, { paper: "A4", kind }));
}, 60_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe.skipIf(!installed("qpdf"))("qpdf", () => {
  test.each(sheetKinds)("finds no fault in a %s file", (kind) => {
    const { status, stdout, stderr } = spawnSync("qpdf", ["--check", path(kind)], { encoding: "utf8" });
    expect({ status, stderr }).toEqual({ status: 0, stderr: "" });
    expect(stdout).toContain("No syntax or stream encoding errors found");
  });

  test("finds no fault in a file of lists", async () => {
    const parts = packParts.filter((part) => part !== "openPoints" && part !== "results");
    writeFileSync(path("lists"), await drawSheets(models, { paper: "Letter", kind: "tagged", parts }));
    expect(spawnSync("qpdf", ["--check", path("lists")]).status).toBe(0);
  }, 60_000);

  test("encrypts a file, and it is told from a damaged one", async () => {
    for (const password of ["", "secret"]) {
      execFileSync("qpdf", ["--encrypt", password, "owner", "256", "--", path("fillable"), path("locked")]);
      expect(await readSheetForm(readFileSync(path("locked")))).toEqual({ kind: "encrypted" });
    }
  }, 60_000);

  test("writes a file anew in its own order, and what is filled in is still found", async () => {
    execFileSync("qpdf", ["--linearize", "--object-streams=disable", path("tagged"), path("anew")]);
    const read = await readSheetForm(readFileSync(path("anew")));
    expect(read).toMatchObject({ kind: "sheets", sheets: [{}, {}, {}] });
  }, 60_000);
});

describe.skipIf(!installed("pdfdetach"))("poppler", () => {
  test("takes each car's model out of the file as it was put in", () => {
    execFileSync("pdfdetach", ["-saveall", "-o", folder, path("plain")]);
    models.forEach((model) => {
      const file = path(`no-${model.entry.runningNumber}.json`);
      expect(readFileSync(file, "utf8")).toBe(canonicalJson(model));
    });
  });

  test("finds both fonts embedded, cut down to what is used, and with their characters", () => {
    const told = execFileSync("pdffonts", [path("plain")], { encoding: "utf8" });
    const fonts = told.split("\n").filter((line) => line.includes("SourceSans3"));
    expect(fonts).toHaveLength(2);
    for (const line of fonts) expect(line).toMatch(/yes yes yes/);
  });

  test("reads the text, letters of three scripts among it", async () => {
    const sheet = sampleSheet();
    const driver = "Þórdís Łaszczyńska Ελευθερία Щербаков";
    const bytes = await drawSheets([{ ...sheet, entry: { ...sheet.entry, driver } }], { paper: "A4" });
    writeFileSync(path("scripts"), bytes);
    const text = execFileSync("pdftotext", [path("scripts"), "-"], { encoding: "utf8" });
    expect(text.replace(/\s+/g, " ")).toContain(driver);
  }, 60_000);
});
