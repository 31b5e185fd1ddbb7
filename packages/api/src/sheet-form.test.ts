import { mkdtemp, open, rm, truncate, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { buildSheet, builtInBook, starterChecks } from "@trunnion/register";
import { drawSheets, type SheetKind } from "@trunnion/sheets";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { readDroppedSheet } from "./sheet-form";

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "trunnion-dropped-"));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

const model = buildSheet({
  club: { name: "Sandvær Register", unitSystem: "metric" },
  event: { name: "Open day", on: "2026-05-16", venue: "Kvitnes ring", ruleSet: "Starter" },
  entry: { runningNumber: "7", group: "", className: "", driver: "Åse Ørnhøi", describedAs: "" },
  checks: starterChecks,
  book: builtInBook,
  recordHash: "ab".repeat(32),
  code: "7K2M9QXT",
  preparedAt: "2026-05-14T18:30:00Z",
});

const sheet = (kind: SheetKind) => drawSheets([model], { paper: "A4", kind });

async function dropped(name: string, bytes: Uint8Array) {
  const path = join(folder, name);
  await writeFile(path, bytes);
  return readDroppedSheet({ name, path });
}

describe("a dropped file", () => {
  test("as it was printed is read, with nothing filled in", async () => {
    expect(await dropped("sheet.pdf", await sheet("fillable"))).toEqual({
      file: "sheet.pdf",
      sheets: [{ code: "7K2M9QXT", record: "ab".repeat(32), fields: {} }],
    });
  }, 60_000);

  test("of 500 MB is refused by its size, unread", async () => {
    const path = join(folder, "huge.pdf");
    await (await open(path, "w")).close();
    await truncate(path, 500_000_000);
    const before = process.memoryUsage().rss;
    await expect(readDroppedSheet({ name: "huge.pdf", path })).rejects.toMatchObject({
      code: "FILE_TOO_LARGE",
      details: { file: "huge.pdf", bytes: 500_000_000 },
    });
    expect(process.memoryUsage().rss - before).toBeLessThan(200_000_000);
  });

  test("that breaks off anywhere is damaged", async () => {
    const whole = await sheet("tagged");
    for (const part of [0.2, 0.6, 0.95])
      await expect(
        dropped("cut.pdf", whole.subarray(0, Math.floor(whole.length * part))),
      ).rejects.toMatchObject({
        code: "SHEET_FILE_DAMAGED",
      });
  }, 60_000);

  test("with bytes turned over in its middle is damaged or foreign, never a crash", async () => {
    const whole = await sheet("fillable");
    for (const at of [0.3, 0.7, 0.9]) {
      const bytes = whole.slice();
      bytes.fill(0x41, Math.floor(bytes.length * at), Math.floor(bytes.length * at) + 400);
      const outcome = await dropped("turned.pdf", bytes).catch((error: { code?: string }) => error.code);
      if (typeof outcome === "string") expect(outcome).toMatch(/^SHEET_FILE_(DAMAGED|FOREIGN)$/);
      else expect(outcome).toMatchObject({ sheets: [{ code: "7K2M9QXT" }] });
    }
  }, 60_000);

  test("that is empty, and one printed to be written on, are told apart", async () => {
    await expect(dropped("nothing.pdf", new Uint8Array())).rejects.toMatchObject({ code: "FILE_EMPTY" });
    await expect(dropped("plain.pdf", await sheet("plain"))).rejects.toMatchObject({
      code: "SHEET_FILE_FOREIGN",
    });
  }, 60_000);
});
