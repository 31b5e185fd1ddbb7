import { openWorld, type World } from "@trunnion/fixtures";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Context } from "../context";
import { openMember, openOperator } from "../gate";
import { addSeries } from "../series";
import { currentSpecifications, makeCurrent } from "../specification";
import { comparePage, specificationPage } from "../specification-page";
import { discardDraft, startDraft } from "./index";

let world: World;

beforeAll(async () => {
  world = await openWorld();
}, 120_000);
afterAll(() => world?.close());

const ours = <T>(work: (ctx: Context) => Promise<T>) => openOperator(world.database, "ours", work);
const series = "mark-1";

/** Tries something that must be refused, and that nothing was written. */
async function refusal(attempt: () => Promise<unknown>) {
  const before = await world.fingerprint();
  const error = await attempt().then(
    () => undefined,
    (reason: unknown) => reason,
  );
  expect(await world.fingerprint()).toEqual(before);
  expect(error).toBeInstanceOf(Error);
  return error as { readonly code?: string };
}

describe("a specification of one series", () => {
  const second = {
    slug: "mark-2",
    name: "Mark 2",
    ordinal: 2,
    numberPrefix: "M2-",
    numberDigits: 3,
    firstSerial: 1,
    lastSerial: 50,
    numberSuffixes: [],
    builtFrom: "1974-01-01",
    builtTo: "1976-12-31",
    options: [],
  };

  test("copied to the next says the same, and what cannot hold there keeps it from being made current", async () => {
    await ours(async (ctx) => {
      const { marqueId } = await ctx.db.series.findFirstOrThrow();
      await addSeries(ctx, { ...second, marqueId });
      await startDraft(ctx, { series: "mark-2", from: series });
    });
    const page = await ours((ctx) =>
      comparePage(ctx, { before: { series }, after: { series: "mark-2", version: 1 } }),
    );
    expect(page.changes).toEqual([]);
    expect(page.alike).toBeGreaterThan(10);
    const { problems, versions } = await ours((ctx) =>
      specificationPage(ctx, { series: "mark-2", version: 1 }),
    );
    expect(problems.map(({ code }) => code).sort()).toEqual(["NEVER_APPLIES", "UNKNOWN_OPTION"]);
    expect(versions[0]).toMatchObject({ copiedFrom: { series, version: 1 } });
    const error = await refusal(() =>
      ours((ctx) => makeCurrent(ctx, { series: "mark-2", version: 1, revision: 1, current: 0, reason: "x" })),
    );
    expect(error).toMatchObject({ code: "SPECIFICATION_CONTRADICTS" });
  });

  test("is discarded whole, and the journal keeps that it was", async () => {
    await ours((ctx) =>
      discardDraft(ctx, { series: "mark-2", version: 1, revision: 1, reason: "by mistake" }),
    );
    const { versions, shown } = await ours((ctx) => specificationPage(ctx, { series: "mark-2" }));
    expect([versions, shown]).toEqual([[], undefined]);
    const [line] = await world.inClub((db) =>
      db.journalEntry.findMany({ orderBy: { sequence: "desc" }, take: 1 }),
    );
    expect(line).toMatchObject({
      action: "specification.discard",
      reason: "by mistake",
      before: { version: 1 },
    });
  });

  test("that says nothing is not made current, and one there is none of cannot be copied", async () => {
    expect(
      await refusal(() => ours((ctx) => startDraft(ctx, { series: "mark-2", from: "mark-2" }))),
    ).toMatchObject({
      code: "SPECIFICATION_NOT_FOUND",
    });
    expect(
      await refusal(() => ours((ctx) => startDraft(ctx, { series: "mark-2", from: "mark-9" }))),
    ).toMatchObject({
      code: "SERIES_NOT_FOUND",
    });
    await ours((ctx) => startDraft(ctx, { series: "mark-2", from: "empty" }));
    const error = await refusal(() =>
      ours((ctx) => makeCurrent(ctx, { series: "mark-2", version: 1, revision: 1, current: 0, reason: "x" })),
    );
    expect(error).toMatchObject({ code: "SPECIFICATION_SAYS_NOTHING" });
  });

  test("is nothing another club sees, nor one without the role may touch", async () => {
    const theirs = await openOperator(world.database, "theirs", async (ctx) => {
      const all = await currentSpecifications(ctx, [world.ours.seriesId, world.theirs.seriesId]);
      return [...all.keys()];
    });
    expect(theirs).toEqual([world.theirs.seriesId]);
    const owner = await world.person({ roles: ["owner"] });
    const error = await refusal(() =>
      openMember(world.database, owner, "ours", (ctx) => startDraft(ctx, { series, from: "empty" })),
    );
    expect(error).toMatchObject({ code: "ROLE_NEEDED" });
    const page = await openMember(world.database, owner, "ours", (ctx) => specificationPage(ctx, { series }));
    expect(page.mayEdit).toBe(false);
  });
});
