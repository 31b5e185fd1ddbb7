import { openWorld, type World } from "@trunnion/fixtures";
import { type DueStanding, datedItemKinds, dueStanding } from "@trunnion/register";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { rebuildAllCurrentValues } from "../current-value";
import { openOperator } from "../gate";
import { type DueInput, type DuePage, dueMonth, duePage, dueSums } from "./index";
import { dueCountSql } from "./policy";

let world: World;

/** Cars with a harness and a seat whose days are on their labels: several on each day, more lines than two pages. */
const CARS = 60;
const labelled = (index: number) => ({
  "safety.harness.expires": `20${20 + (index % 15)}-0${1 + (index % 4)}-10`,
  "safety.seat.expires": "2026-12-31",
});
const today = "2026-11-29";
const now = new Date(`${today}T12:00:00Z`);

const inClub = <T>(work: (ctx: Context) => Promise<T>) => openOperator(world.database, "ours", work, { now });
const pageOf = (input: DueInput = {}): Promise<DuePage> => inClub((ctx) => duePage(ctx, input));

/** Every line, page by page. */
async function allOf(input: DueInput = {}) {
  const items = [];
  for (let after: DueInput["after"]; ; ) {
    const page = await pageOf({ ...input, ...(after === undefined ? {} : { after }) });
    items.push(...page.items);
    after = page.next;
    if (after === undefined) return items;
  }
}

beforeAll(async () => {
  world = await openWorld();
  const ids: string[] = [];
  for (let index = 0; index < CARS; index++) {
    const chassis = `M1-${String(index + 1).padStart(3, "0")}`;
    ids.push((await world.car({ chassis, read: labelled(index) })).id);
  }
  const [first = "", second = "", third = ""] = ids;
  const gone = await world.car({ chassis: "M1-400", status: "destroyed", read: labelled(0) });
  await world.inClub(async (db) => {
    const item = (carId: string, kind: string, validTo?: string) =>
      db.datedItem.create({
        data: { carId, kind, label: kind, ...(validTo === undefined ? {} : { validTo: new Date(validTo) }) },
      });
    // The same day as on the label, another day beside it, two without a day, one that was replaced.
    await item(first, "harness", "2020-01-10");
    await item(second, "harness", "2027-06-01");
    await item(second, "belt");
    await item(third, "belt");
    await item(gone.id, "belt");
    const old = await item(third, "belt", "2019-01-01");
    await db.datedItem.updateMany({ where: { id: old.id }, data: { replacedAt: new Date() } });
  });
  await inClub(async (ctx) => rebuildAllCurrentValues(ctx, await bookOf(ctx)));
}, 120_000);
afterAll(() => world?.close());

describe("what falls due", () => {
  test("goes page by page in the order of its days, each once, and last what has none", async () => {
    const items = await allOf();
    expect(items).toHaveLength(CARS * 2 + 3);
    expect(new Set(items.map(({ id }) => id)).size).toBe(items.length);
    const places = items.map(({ day, id }) => `${day ?? "9999-12-31"} ${id}`);
    expect(places).toEqual([...places].sort());
    expect(items.slice(-2).map(({ kind, day }) => [kind, day])).toEqual([
      ["belt", undefined],
      ["belt", undefined],
    ]);
  });

  test("has a day that stands on the label and beside it once", async () => {
    const first = (await allOf()).filter(({ reference }) => reference === "M1-001");
    expect(first.map(({ kind, day }) => `${kind} ${day}`).sort()).toEqual([
      "harness 2020-01-10",
      "seat 2026-12-31",
    ]);
  });

  test("leaves out what is gone or was replaced", async () => {
    const items = await allOf();
    expect(items.filter(({ reference }) => reference === "M1-400")).toEqual([]);
    expect(items.filter(({ day }) => day === "2019-01-01")).toEqual([]);
  });

  test.each<readonly [string, DueInput, (item: DuePage["items"][number]) => boolean]>([
    ["a kind", { kind: "harness" }, ({ kind }) => kind === "harness"],
    ["what is past", { standing: "past" }, ({ standing }) => standing === "past"],
    ["what comes soon", { standing: "soon" }, ({ standing }) => standing === "soon"],
    ["what comes later", { standing: "later" }, ({ standing }) => standing === "later"],
    ["what has no day", { standing: "unknown" }, ({ standing }) => standing === "unknown"],
    [
      "a span, its ends included",
      { from: "2026-12-31", to: "2027-06-01" },
      ({ day }) => day !== undefined && day >= "2026-12-31" && day <= "2027-06-01",
    ],
    ["its series", { series: "mark-1" }, () => true],
  ])("is narrowed to %s", async (_, input, holds) => {
    const wanted = (await allOf()).filter(holds).map(({ id }) => id);
    expect(wanted.length).toBeGreaterThan(0);
    expect((await allOf(input)).map(({ id }) => id)).toEqual(wanted);
  });

  test("is counted by kind and standing alike off the tallies and row by row, as its lines are", async () => {
    const { counts } = await pageOf();
    const items = await allOf();
    for (const { kind, counts: told } of counts)
      for (const standing of ["past", "soon", "later", "unknown"] as const satisfies readonly DueStanding[])
        expect(told[standing]).toBe(
          items.filter((one) => one.kind === kind && dueStanding(one.day, today) === standing).length,
        );
    const [kept, counted] = await inClub(async ({ db }) => {
      const of = async (tallied: boolean) => {
        const rows = await db.$queryRaw<object[]>(dueCountSql({ kinds: datedItemKinds }, today, tallied));
        return rows.map((row) => JSON.stringify(row)).sort();
      };
      return [await of(true), await of(false)];
    });
    expect(kept).toEqual(counted);
  });

  test("comes to what the whole fleet has past and soon, as its lines do", async () => {
    const items = await allOf();
    const many = (standing: DueStanding) => items.filter((one) => one.standing === standing).length;
    expect(await inClub(dueSums)).toEqual({ past: many("past"), soon: many("soon") });
  });

  test("stands in its month with as many as there are, the first few by name", async () => {
    const { days } = await inClub((ctx) => dueMonth(ctx, { month: "2026-12" }));
    expect(days.map(({ day, count, items }) => [day, count, items.length])).toEqual([
      ["2026-12-31", CARS, 20],
    ]);
  });
});
