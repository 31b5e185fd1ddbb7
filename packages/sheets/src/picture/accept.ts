import { mkdir, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { pagePictures, pngOf } from "./page-picture";
import { reviewedFolder, reviewedPages } from "./reviewed-page";

/** Keeps pages as they are drawn now as the reviewed ones: those named, or all. */
const wanted = process.argv.slice(2);
const unknown = wanted.filter((name) => !reviewedPages.some((page) => page.name === name));
if (unknown.length > 0)
  throw new Error(`no page "${unknown[0]}"; there are ${reviewedPages.map(({ name }) => name).join(", ")}`);
await mkdir(reviewedFolder, { recursive: true });
for (const { name, page, draw } of reviewedPages) {
  if (wanted.length > 0 && !wanted.includes(name)) continue;
  const [picture] = await pagePictures(await draw(), [page]);
  if (!picture) throw new Error(`page ${page} of ${name} was not drawn`);
  await writeFile(join(reviewedFolder, `${name}.png`), pngOf(picture));
  process.stdout.write(`${name}\n`);
}
