import { createHash } from "node:crypto";
import { readFile } from "node:fs/promises";
import type { Download } from "@playwright/test";
import { ExportPage } from "./pages/export.page";
import { unzip } from "./pages/zip";
import { expect, test } from "./world";

/** A keeper of the demo's register file (prisma/demo). */
const keeper = "Grindstø";

const contentOf = async (download: Download) => readFile(await download.path());

test.describe("a registrar", () => {
  test.use({ as: "registrar" });

  test("takes the whole club away without people, as a file that proves itself", async ({ page }) => {
    const exportPage = await new ExportPage(page).open("sandvaer");
    await expect(exportPage.withPeople).not.toBeChecked();
    const download = await exportPage.fetch(exportPage.archive);
    expect(download.suggestedFilename()).toBe("sandvaer-archive.zip");
    const files = unzip(await contentOf(download));
    const manifest = JSON.parse(files.get("manifest.json")?.toString() ?? "null");
    expect(manifest).toMatchObject({ format: "trunnion-club-archive", personalData: false });
    const hashes = [...files].filter(([path]) => path !== "manifest.json");
    expect(
      hashes.map(([path, content]) => [path, createHash("sha256").update(content).digest("hex")]),
    ).toEqual(manifest.members.map(({ path, sha256 }: { path: string; sha256: string }) => [path, sha256]));
    const cars = files.get("rows/car.jsonl")?.toString().trimEnd().split("\n") ?? [];
    expect(cars.length).toBeGreaterThanOrEqual(412);
    expect(cars.map((line) => JSON.parse(line).chassis)).toContain("S3-0237");
    expect(files.get("rows/keeper.jsonl")?.toString()).not.toContain(keeper);
    expect(files.get("README.txt")?.toString()).toContain("Personal data were left out");
  });

  test("takes it with people when asking for them", async ({ page }) => {
    const exportPage = await new ExportPage(page).open("sandvaer");
    await exportPage.withPeople.check();
    const download = await exportPage.fetch(exportPage.archive);
    expect(download.suggestedFilename()).toBe("sandvaer-archive-with-personal-data.zip");
    const files = unzip(await contentOf(download));
    expect(files.get("rows/keeper.jsonl")?.toString()).toContain(keeper);
  });

  test("fetches lists as tables, with people where asked for", async ({ page }) => {
    const exportPage = await new ExportPage(page).open("sandvaer");
    const plain = await contentOf(await exportPage.fetch(exportPage.list("Register of cars, as CSV")));
    expect(plain.subarray(0, 3)).toEqual(Buffer.from([0xef, 0xbb, 0xbf]));
    expect(plain.toString()).toContain("S3-0237,1,");
    expect(plain.toString()).not.toContain(keeper);
    const people = exportPage.list("Register of cars, with keepers, as CSV");
    expect((await contentOf(await exportPage.fetch(people))).toString()).toContain(keeper);
    const workbook = await exportPage.fetch(exportPage.list("Journal, as XLSX"));
    expect(workbook.suggestedFilename()).toBe("sandvaer-journal.xlsx");
    expect([...unzip(await contentOf(workbook)).keys()]).toContain("xl/workbook.xml");
  });
});

test.describe("an owner", () => {
  test.use({ as: "owner" });

  test("is offered lists without people, and no archive", async ({ page, requestAs }) => {
    const exportPage = await new ExportPage(page).open("sandvaer");
    await expect(exportPage.list("Register of cars, as CSV")).toBeVisible();
    await expect(exportPage.archive).toHaveCount(0);
    await expect(page.getByRole("link", { name: /with keepers/ })).toHaveCount(0);
    const owner = await requestAs("owner");
    for (const path of [
      "archive.zip",
      "archive.zip?people=yes",
      "list/cars.csv?people=yes",
      "list/journal.csv?people=yes",
    ]) {
      const answer = await owner.get(`/api/club/sandvaer/${path}`);
      expect(answer.status(), path).toBe(403);
      expect(await answer.text()).toContain("This is for: registrar");
    }
    expect((await owner.get("/api/club/grusvik/list/cars.csv")).status()).toBe(403);
  });
});
