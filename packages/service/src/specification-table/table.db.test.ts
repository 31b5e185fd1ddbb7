import { openWorld, type World } from "@trunnion/fixtures";
import { specificationDifference } from "@trunnion/register";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Context } from "../context";
import { openOperator } from "../gate";
import { findSeries } from "../series";
import { specificationOf } from "../specification";
import { discardDraft, startDraft } from "../specification-draft";
import { type ImportSpecificationInput, importSpecification, specificationCsv } from "./index";

let world: World;

beforeAll(async () => {
  world = await openWorld();
}, 120_000);
afterAll(() => world?.close());

const series = "mark-1";
const ours = <T>(work: (ctx: Context) => Promise<T>) => openOperator(world.database, "ours", work);
const versionOf = (version: number) =>
  ours(async (ctx) => specificationOf(ctx, { series: await findSeries(ctx, series), version }));
const begin = (from: string) => ours((ctx) => startDraft(ctx, { series, from }));
const discard = (revision: number) =>
  ours((ctx) => discardDraft(ctx, { series, version: 2, revision, reason: "" }));

const read = (text: string | Uint8Array, parts: Partial<ImportSpecificationInput> = {}) =>
  ours((ctx) =>
    importSpecification(ctx, {
      series,
      version: 2,
      revision: 1,
      mode: "merge",
      dryRun: false,
      file: "specification.csv",
      bytes: typeof text === "string" ? new TextEncoder().encode(text) : text,
      ...parts,
    }),
  );

async function refusal(attempt: () => Promise<unknown>) {
  const before = await world.fingerprint();
  const error = await attempt().then(
    () => undefined,
    (reason: unknown) => reason,
  );
  expect(await world.fingerprint()).toEqual(before);
  return error as { readonly code?: string; readonly details?: unknown };
}

describe("a specification as a table", () => {
  test("goes out and comes back into an empty draft as the same, sources with it", async () => {
    const { file, text } = await ours((ctx) => specificationCsv(ctx, { series, version: 1 }));
    expect(file).toBe("mark-1-specification-1.csv");
    await begin("empty");
    const before = await world.fingerprint();
    const looked = await read(text, { dryRun: true });
    expect(await world.fingerprint()).toEqual(before);
    expect(looked).toMatchObject({
      problems: [],
      contradictions: [],
      newSources: [],
      written: false,
      before: 0,
    });
    const report = await read(text);
    expect(report).toMatchObject({ written: true, revision: 2 });
    const [one, other] = [await versionOf(1), await versionOf(2)];
    expect(specificationDifference(one.entries, other.entries)).toEqual([]);
    // The same table once more changes nothing, and writes nothing.
    expect(await read(text, { revision: 2 })).toMatchObject({ written: false, changes: [], revision: 2 });
    await discard(2);
  });

  test("goes from one club to another, with what its sources are", async () => {
    const { text } = await ours((ctx) => specificationCsv(ctx, { series, version: 1 }));
    await openOperator(world.database, "theirs", async (ctx) => {
      await ctx.db.source.updateMany({ data: { title: "Another title" } });
      await startDraft(ctx, { series, from: "empty" });
      const input = { series, version: 2, revision: 1, mode: "merge" as const, dryRun: false, file: "a.csv" };
      const report = await importSpecification(ctx, { ...input, bytes: new TextEncoder().encode(text) });
      expect(report.newSources).toEqual(["Mark 1 workshop manual"]);
      const added = await ctx.db.source.findFirst({ where: { title: "Mark 1 workshop manual" } });
      expect(added).toMatchObject({ kind: "publication", edition: "2nd" });
    });
  });

  test("takes the place of what holds for the same cars, or of everything, as one asks", async () => {
    await begin(series);
    const table = "Characteristic;Nominal;Lower;Upper\nFront camber;0°;-1°;1°\nfront.toe;5' in per side;;";
    const merged = await read(table, { dryRun: true });
    expect(merged.changes.map(({ kind, label }) => [kind, label])).toEqual([
      ["changed", "Front camber"],
      ["added", "Front toe"],
    ]);
    const replaced = await read(table, { dryRun: true, mode: "replace" });
    expect(replaced).toMatchObject({ before: 13, after: 2 });
    expect(replaced.changes.filter(({ kind }) => kind === "removed")).toHaveLength(12);
    await read(table);
    const { entries } = await versionOf(2);
    expect(entries).toHaveLength(14);
    await discard(2);
  });

  test("with one cell that is wrong stays out whole, and every such cell is told", async () => {
    await begin(series);
    const table = "Characteristic,Nominal,Upper\nfront.camber,steep,\nfront.castor,3°,4°\nfront.wing,1,\n";
    const before = await world.fingerprint();
    const report = await read(table);
    expect(await world.fingerprint()).toEqual(before);
    expect(report).toMatchObject({ written: false, revision: 1 });
    expect(report.problems.map(({ line, column, found }) => [line, column, found])).toEqual([
      [2, "B", "steep"],
      [4, "A", "front.wing"],
    ]);
  });

  test("may contradict itself between rows in a draft, and is told", async () => {
    const report = await read("Key,Nominal\nfront.disc.face,plain\nfront.disc.face,drilled\n", {
      dryRun: true,
    });
    expect(report.problems).toEqual([]);
    expect(report.contradictions).toHaveLength(1);
  });

  test.each([
    ["no heading that names a characteristic", "Nominal\n1", "HEADING_MISSING"],
    ["a heading that is none", "Characteristic,Colour\nfront.camber,red", "SPECIFICATION_HEADING_UNKNOWN"],
    ["a heading twice", "Key,Nominal,Value\nfront.camber,0°,0°", "HEADING_TWICE"],
    ["nothing in it", "", "FILE_EMPTY"],
    ["a quotation mark left open", 'Key,Nominal\nfront.camber,"0°', "TABLE_BROKEN"],
    ["more bytes than a specification has", new Uint8Array(600_001).fill(65), "FILE_TOO_LARGE"],
    [
      "a picture in it",
      new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 0]),
      "FILE_NOT_A_TABLE",
    ],
  ])("with %s is refused", async (_, text, code) => {
    expect(await refusal(() => read(text))).toMatchObject({ code });
  });

  test("is refused by a draft that moved on, and by a version that is none any more", async () => {
    const table = "Key,Nominal\nfront.camber,1°\n";
    expect(await refusal(() => read(table, { revision: 7 }))).toMatchObject({
      code: "SPECIFICATION_MOVED_ON",
    });
    expect(await refusal(() => read(table, { version: 1 }))).toMatchObject({
      code: "SPECIFICATION_NOT_DRAFT",
    });
  });
});
