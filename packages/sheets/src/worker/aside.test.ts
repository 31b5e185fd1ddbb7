import { createHash } from "node:crypto";
import { expect, test } from "vitest";
import { drawSheets } from "../draw-sheets";
import { plainSheet, sampleSheet } from "../sample/sample-sheet";
import { drawSheetsAside, readSheetFormAside } from "./aside";

const digest = (bytes: Uint8Array) => createHash("sha256").update(bytes).digest("hex");

test("a thread of its own draws the same bytes", async () => {
  const models = Array.from({ length: 20 }, (_, at) => plainSheet(at + 1));
  const options = { paper: "A4", kind: "tagged" } as const;
  expect(digest(await drawSheetsAside(models, options))).toBe(digest(await drawSheets(models, options)));
}, 60_000);

test("what cannot be drawn is refused in the same words", async () => {
  await expect(drawSheetsAside([], { paper: "A4" })).rejects.toThrow(RangeError);
  await expect(drawSheetsAside([sampleSheet({ layoutVersion: 1 })], { paper: "A4" })).rejects.toThrow(
    /print the sheet anew/,
  );
}, 60_000);

test("two jobs at once are both answered, each with its own", async () => {
  const [one, other] = await Promise.all([
    drawSheetsAside([plainSheet(1)], { paper: "A4", kind: "fillable" }),
    drawSheetsAside([plainSheet(2)], { paper: "A4", kind: "fillable" }),
  ]);
  expect(await readSheetFormAside(one)).toMatchObject({ sheets: [{ record: plainSheet(1).recordHash }] });
  expect(await readSheetFormAside(other)).toMatchObject({ sheets: [{ record: plainSheet(2).recordHash }] });
}, 60_000);
