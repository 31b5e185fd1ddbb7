import { openWorld, type World } from "@trunnion/fixtures";
import type { Condition } from "@trunnion/register";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { bookOf } from "../characteristic";
import { comparisonPage } from "../comparison";
import type { Context } from "../context";
import { rebuildAllCurrentValues } from "../current-value";
import { openOperator } from "../gate";
import { others, prevalence } from "./index";

let world: World;
const face = "front.disc.face";
const bush = "front.lowerArm.bush";

beforeAll(async () => {
  world = await openWorld();
  await world.car({ chassis: "M1-001", modified: { [face]: "drilled" }, modifiedOn: "1995-05-01" });
  await world.car({
    chassis: "M1-002",
    modified: { [face]: "drilled" },
    modifiedOn: "2005-05-01",
    read: { "front.camber left": "-2°" },
  });
  await world.car({ chassis: "M1-003", read: { [face]: "plain", "front.camber": "-2°" } });
  await world.car({ chassis: "M1-004", read: { "front.camber": "0°", [bush]: "polyurethane" } });
  const merged = await world.car({ chassis: "M1-005", modified: { [face]: "grooved" } });
  await world.car({ chassis: "M1-006", club: world.theirs, modified: { [face]: "grooved" } });
  await world.inClub(async (db) => {
    const into = await db.car.findFirstOrThrow({ where: { chassisKey: "M1004" } });
    await db.car.updateMany({ where: { id: merged.id }, data: { mergedIntoId: into.id } });
    const doubtful = {
      fittedText: "1994 to 1996",
      fittedEarliest: new Date("1994-01-01"),
      fittedLatest: new Date("1996-12-31"),
    };
    const car = await db.car.findFirstOrThrow({ where: { chassisKey: "M1001" } });
    await db.modification.updateMany({ where: { carId: car.id }, data: doubtful });
  });
  await openOperator(world.database, "ours", async (ctx) => rebuildAllCurrentValues(ctx, await bookOf(ctx)));
}, 120_000);
afterAll(() => world?.close());

const inClub = <T>(work: (ctx: Context) => Promise<T>) => openOperator(world.database, "ours", work);
const rowOf = async (key: string, condition?: Condition) => {
  const page = await inClub((ctx) => prevalence(ctx, condition === undefined ? {} : { condition }));
  return page.rows.find((row) => row.key === key);
};

describe("how often something is changed", () => {
  test("counts cars of which it is known, on either side once, merged records and other clubs not at all", async () => {
    expect(await rowOf(face)).toMatchObject({
      known: 3,
      compared: 3,
      differs: 2,
      commonest: { said: "Cross-drilled", cars: 2 },
    });
    expect(await rowOf("front.camber")).toMatchObject({ known: 3, compared: 3, differs: 2, setting: true });
  });

  test("an accepted substitute is not changed, what nobody recorded is in no row", async () => {
    expect(await rowOf(bush)).toMatchObject({ known: 1, differs: 0 });
    expect(await rowOf("brakes.hose")).toBeUndefined();
  });

  test("goes by the year of a change where the record is sure of it, and counts the others apart", async () => {
    expect(await rowOf(face)).toMatchObject({ changed: [{ year: 2005, cars: 1 }], undated: 1 });
  });

  test("is narrowed to the cars of which a condition holds", async () => {
    const steep: Condition = { op: "number", characteristic: "front.camber", is: "lt", si: -0.02 };
    expect(await rowOf(face, steep)).toMatchObject({ known: 2, differs: 1 });
  });
});

describe("what others run", () => {
  test("stands beside what the car has, most often changed first, and names no other car", async () => {
    const page = await inClub((ctx) => others(ctx, "M1-003"));
    expect(page).toMatchObject({ cars: 4, series: { name: "Mark 1" } });
    expect(page.rows.map(({ key }) => key).sort()).toEqual(["front.camber", face]);
    expect(page.rows.find(({ key }) => key === face)?.own).toEqual([
      { side: "whole", value: "Plain", differs: false },
    ]);
    expect(JSON.stringify(page)).not.toMatch(/M1-00[124]/);
  });
});

describe("cars side by side", () => {
  test("are found by reference, the reference among them, and what is not there is named", async () => {
    const page = await inClub((ctx) =>
      comparisonPage(ctx, { cars: ["m1 001", "M1-003", "M1-099"], against: "M1-003" }),
    );
    expect(page.cars.map(({ reference }) => reference)).toEqual(["M1-001", "M1-003"]);
    expect(page).toMatchObject({ notFound: ["M1-099"], against: 1, inColumns: true });
    expect(page.comparison?.rows.map(({ characteristic }) => characteristic)).toEqual([face]);
    expect(page.comparison?.differing).toEqual([1, 0]);
  });

  test("of a series are all of it, merged records left out; of one car there is nothing to compare", async () => {
    const page = await inClub((ctx) => comparisonPage(ctx, { cars: [], series: "mark-1" }));
    expect(page.cars).toHaveLength(4);
    expect((await inClub((ctx) => comparisonPage(ctx, { cars: ["M1-001"] }))).comparison).toBeUndefined();
  });
});
