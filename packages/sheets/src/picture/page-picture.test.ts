import { mkdir, readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { drawSheets } from "../draw-sheets";
import { plainSheet } from "../sample/sample-sheet";
import { differingPatches, pagePictures, patchTolerance, pictureOf, pngOf } from "./page-picture";
import { reviewedFolder, reviewedPages } from "./reviewed-page";

/** Patches of some six thousand a page that may lie beyond the tolerance: another machine's smoothing of edges. */
const mostPatches = 12;

describe("pages look as they were reviewed", () => {
  test.each(reviewedPages.map((page) => [page.name, page] as const))(
    "%s",
    async (name, { page, draw }) => {
      const [now] = await pagePictures(await draw(), [page]);
      if (!now) throw new Error(`page ${page} was not drawn`);
      const reviewed = await pictureOf(await readFile(join(reviewedFolder, `${name}.png`)));
      const places = differingPatches(now, reviewed);
      if (places.length > mostPatches) {
        const folder = join(reviewedFolder, "../reports/page");
        await mkdir(folder, { recursive: true });
        await writeFile(join(folder, `${name}.png`), pngOf(now));
      }
      const told = `${places.length} places differ, at ${places.slice(0, 8).join("; ")}; the page as it is now: reports/page/${name}.png. Look at it; if it is right: node packages/sheets/bin/accept-page.mjs ${name}`;
      expect(places.length, told).toBeLessThanOrEqual(mostPatches);
    },
    60_000,
  );
});

describe("the comparison", () => {
  test("sees one word that changed, one rule that is gone, and nothing between two drawings of one page", async () => {
    const draw = async (driver: string) => {
      const model = plainSheet(7);
      const sheet = { ...model, entry: { ...model.entry, driver } };
      const [picture] = await pagePictures(await drawSheets([sheet], { paper: "A4" }), [1]);
      if (!picture) throw new Error("nothing was drawn");
      return picture;
    };
    const [one, same, other] = [
      await draw("Åse Ørnhøi"),
      await draw("Åse Ørnhøi"),
      await draw("Tõnu Bråtvær"),
    ];
    expect(differingPatches(one, same)).toEqual([]);
    expect(differingPatches(one, other).length).toBeGreaterThan(mostPatches);
    const greys = Uint8Array.from(one.greys);
    const row = Math.floor(one.height * 0.5);
    for (let x = 50; x < one.width - 50; x++)
      greys[row * one.width + x] = 255 - (greys[row * one.width + x] ?? 0);
    expect(differingPatches(one, { ...one, greys }).length).toBeGreaterThan(mostPatches);
  }, 60_000);

  test("lets smoothing of edges pass", async () => {
    const [one] = await pagePictures(await drawSheets([plainSheet(7)], { paper: "A4" }), [1]);
    if (!one) throw new Error("nothing was drawn");
    const greys = one.greys.map((grey) => Math.min(255, grey + patchTolerance - 2));
    expect(differingPatches(one, { ...one, greys })).toEqual([]);
  }, 60_000);
});
