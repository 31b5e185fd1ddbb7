import { openWorld, type World } from "@trunnion/fixtures";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { bookOf } from "../characteristic";
import { rebuildAllCurrentValues } from "../current-value";
import { openOperator } from "../gate";
import { type CarListInput, findCar, listCars } from "./index";

let world: World;

beforeAll(async () => {
  world = await openWorld();
  await world.car({
    chassis: "M1-007",
    registration: "GR 95-837",
    status: "laidUp",
    built: "c. 1971",
    read: { "body.colour": "Fjord blue", "front.disc.face": "drilled", "front.camber": "-1°10'" },
  });
  await world.car({ chassis: "M1-007", claim: 2, engine: "KM 7" });
  await world.inClub(async (db) => {
    const many = Array.from({ length: 60 }, (_, index) => `M1-${index + 20}`);
    await db.car.createMany({
      data: many.map((chassis) => ({ chassis, chassisKey: chassis.replace("-", "") })),
    });
  });
  await world.car({ chassis: "M1-007", club: world.theirs });
  await openOperator(world.database, "ours", async (ctx) => rebuildAllCurrentValues(ctx, await bookOf(ctx)));
}, 120_000);
afterAll(() => world?.close());

const list = (input: CarListInput = {}) =>
  openOperator(world.database, "ours", (ctx) => listCars(ctx, input));
const references = async (search: string) => (await list({ search })).cars.map(({ reference }) => reference);
const find = (reference: string) => openOperator(world.database, "ours", (ctx) => findCar(ctx, reference));

describe("the list of cars", () => {
  test("says of each what differs from factory, and of how much that could be said", async () => {
    const { cars } = await list({ search: "M1-007" });
    expect(cars).toMatchObject([
      {
        reference: "M1-007",
        series: "Mark 1",
        built: "c. 1971",
        status: "laidUp",
        registration: "GR 95-837",
        colour: "Fjord blue",
        deviating: 3,
        assemblies: { brakes: 1, settings: 2 },
        compared: 3,
      },
      {
        reference: "M1-007~2",
        claim: 2,
        built: "not known",
        status: "unknown",
        colour: "",
        deviating: 0,
        compared: 0,
      },
    ]);
  });

  test.each([
    ["m1 007", ["M1-007", "M1-007~2"]],
    ["95837", ["M1-007"]],
    ["gr95", ["M1-007"]],
    ["km-7", ["M1-007~2"]],
    ["fjord", ["M1-007"]],
    ["zzz", []],
    ["'; DROP TABLE car; --", []],
  ])("is searched by %j over every number, mark and colour", async (search, expected) => {
    expect(await references(search)).toEqual(expected);
  });

  test("goes in pages of fifty, each car once, with how many there are in all", async () => {
    const first = await list();
    expect(first.total).toBe(62);
    expect(first.cars).toHaveLength(50);
    const second = await list(first.next === undefined ? {} : { after: first.next });
    expect(second.total).toBe(62);
    expect(second.cars).toHaveLength(12);
    expect(second.next).toBeUndefined();
    const all = [...first.cars, ...second.cars].map(({ reference }) => reference);
    expect(new Set(all).size).toBe(62);
  });

  test("is narrowed to a series", async () => {
    expect((await list({ series: "mark-1" })).total).toBe(2);
    expect((await list({ series: "mark-9" })).total).toBe(0);
  });
});

describe("a car's reference", () => {
  test.each([
    ["M1-007", 1],
    ["m1007", 1],
    ["M1-007~1", 1],
    ["M1-007~2", 2],
  ])("%s finds claimant %d", async (reference, claim) => {
    expect(await find(reference)).toMatchObject({ chassis: "M1-007", claim });
  });

  test.each(["M1-008", "M1-007~3", "M1-007~x", "M1-007~", "", "~2"])("%j finds none", async (reference) => {
    await expect(find(reference)).rejects.toMatchObject({
      code: "CAR_NOT_FOUND",
      details: { car: reference },
    });
  });
});
