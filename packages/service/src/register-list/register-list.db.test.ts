import { openWorld, type World } from "@trunnion/fixtures";
import { type Condition, refused } from "@trunnion/register";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { rebuildAllCurrentValues } from "../current-value";
import { saveFilter } from "../filter";
import { openMember, openOperator } from "../gate";
import { chosenCarIds, type RegisterListInput, registerList } from "./index";

let world: World;

const rear = "rear.antiRollBar.diameter";

async function addCars(): Promise<void> {
  await world.car({
    chassis: "M1-007",
    registration: "GR 95-837",
    status: "laidUp",
    built: "c. 1971",
    modified: { [rear]: "16 mm" },
    read: { "body.colour": "Fjord blå", "front.disc.face": "drilled", "front.camber": "-1°10'" },
    keeper: { name: "Tõnu Bråtvær" },
  });
  await world.car({ chassis: "M1-007", claim: 2, engine: "KM 7", built: "3/72" });
  await world.car({ chassis: "M1-008", built: "1972", modified: { [rear]: "14 mm" } });
  const odd = await world.car({ chassis: "M1-009", modified: { [rear]: "none" } });
  await world.car({ chassis: "M1-007", club: world.theirs, read: { "body.colour": "Fjord blå" } });
  const merged = await world.car({ chassis: "M1-010", modified: { [rear]: "16 mm" } });
  await world.inClub(async (db) => {
    await db.car.updateMany({
      where: { id: odd.id },
      data: { remarks: "100 % original_paint, they say; Ørnfoss" },
    });
    await db.car.updateMany({ where: { id: merged.id }, data: { mergedIntoId: odd.id } });
    const many = Array.from({ length: 60 }, (_, index) => `M1-${index + 20}`);
    await db.car.createMany({
      data: many.map((chassis) => ({ chassis, chassisKey: chassis.replace("-", "") })),
    });
    const claims = Array.from({ length: 12 }, (_, index) => index + 1);
    await db.car.createMany({
      data: claims.map((claim) => ({ chassis: "M1-99", chassisKey: "M199", claim })),
    });
  });
}

beforeAll(async () => {
  world = await openWorld();
  await addCars();
  await openOperator(world.database, "ours", async (ctx) => rebuildAllCurrentValues(ctx, await bookOf(ctx)));
}, 120_000);
afterAll(() => world?.close());

const inClub = <T>(work: (ctx: Context) => Promise<T>) => openOperator(world.database, "ours", work);
const list = (input: RegisterListInput = {}) => inClub((ctx) => registerList(ctx, input));
const references = async (input: RegisterListInput) =>
  (await list(input)).cars.map(({ reference }) => reference);

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
        colour: "Fjord blå",
        deviating: 4,
        assemblies: { rearSuspension: 1, brakes: 1, settings: 2 },
        compared: 4,
      },
      {
        reference: "M1-007~2",
        claim: 2,
        built: "3/72",
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
    ["FJORD BLA", ["M1-007"]],
    ["fjord blå", ["M1-007"]],
    ["ornfoss", ["M1-009"]],
    ["%", ["M1-009"]],
    ["_", []],
    ["fjrod", ["M1-007"]],
    ["fjord laid gr95", []],
    ["gr95 fjord", ["M1-007"]],
    ["drilled", ["M1-007"]],
    ["for the track", ["M1-007", "M1-008", "M1-009"]],
    ["original_p", ["M1-009"]],
    ["1972", ["M1-007~2", "M1-008"]],
    ["1971", ["M1-007"]],
    ["zzz", []],
    ["fjord mark 1", ["M1-007"]],
    ["rowan mark 1", []],
    ["mark-1 drilled", ["M1-007"]],
    ["m1-8", ["M1-008"]],
    ["m17 fjord", ["M1-007"]],
    ["gr 95 837", ["M1-007"]],
    ['"for the track" drilled', ["M1-007"]],
    ['"track the for"', []],
    ["🚗", []],
    ["\u0301", []],
    ["'; DROP TABLE car; --", []],
  ])("is searched by %j over every number, mark, colour, remark and year", async (search, expected) => {
    expect(await references({ search })).toEqual(expected);
  });

  test("says of a search that finds nothing what comes nearest", async () => {
    expect((await list({ search: "fjord 008" })).nearest).toEqual([
      { kind: "word", without: "fjord", search: "008", cars: 1 },
      { kind: "word", without: "008", search: "fjord", cars: 1 },
    ]);
    const none: Condition = { op: "status", in: ["destroyed"] };
    expect((await list({ search: "drilled", condition: none })).nearest).toEqual([
      { kind: "condition", cars: 1 },
    ]);
    expect((await list({ search: "M1-0085" })).nearest).toMatchObject([
      { reference: "M1-007" },
      { reference: "M1-008" },
      { reference: "M1-009" },
      { reference: "M1-20" },
    ]);
    expect((await list({ search: "fjord" })).nearest).toEqual([]);
    expect((await list({ search: "zzz yyy" })).nearest).toEqual([]);
  });

  test("takes words that are a series' name for it, and says so", async () => {
    expect((await list({ search: "drilled mark 1" })).named).toEqual(["mark 1"]);
    const words = Array.from({ length: 10 }, (_, index) => `w${index}`).join(" ");
    expect((await list({ search: words })).passedOver).toEqual(["w8", "w9"]);
  });

  test("is searched by keeper for those who may see keepers, and for nobody else", async () => {
    const asked = async (role: "registrar" | "owner") => {
      const member = await world.person({ roles: [role] });
      const found = await openMember(world.database, member, "ours", (ctx) =>
        registerList(ctx, { search: "bratvaer" }),
      );
      return found.total;
    };
    expect(await asked("registrar")).toBe(1);
    expect(await asked("owner")).toBe(0);
  });

  test("goes in pages of fifty, each car once, with how many there are in all; more than nine claims of a number too", async () => {
    const first = await list();
    expect(first).toMatchObject({ total: 76, unknown: 0 });
    expect(first.cars).toHaveLength(50);
    const second = await list(first.next === undefined ? {} : { after: first.next });
    expect(second.cars).toHaveLength(26);
    expect(second.next).toBeUndefined();
    const all = [...first.cars, ...second.cars].map(({ reference }) => reference);
    expect(new Set(all).size).toBe(76);
    expect(await references({ after: "M1-99~10" })).toEqual(["M1-99~11", "M1-99~12"]);
  });

  test("is narrowed to a series", async () => {
    expect((await list({ series: "mark-1" })).total).toBe(4);
    expect((await list({ series: "mark-9" })).total).toBe(0);
  });

  test("shows who has a car to those who may see keepers alone, and when it was last looked at to everybody", async () => {
    const columns = ["car.keeper", "car.lookedAt", "front.camber"];
    const asked = async (role: "registrar" | "owner") => {
      const member = await world.person({ roles: [role] });
      const found = await openMember(world.database, member, "ours", (ctx) =>
        registerList(ctx, { search: "fjord", columns }),
      );
      return { keys: found.columns.map(({ key }) => key), values: found.cars[0]?.values };
    };
    const registrar = await asked("registrar");
    expect(registrar.keys).toEqual(["front.camber", "car.lookedAt", "car.keeper"]);
    expect(registrar.values).toMatchObject({ "car.keeper": "Tõnu Bråtvær", "front.camber": "-1°10'" });
    expect(registrar.values?.["car.lookedAt"]).toMatch(/^\d{4}-\d\d-\d\d$/);
    const owner = await asked("owner");
    expect(owner.keys).toEqual(["front.camber", "car.lookedAt"]);
    expect(owner.values).not.toHaveProperty(["car.keeper"]);
  });

  test("leaves out a record that was found to be of another car", async () => {
    expect(await references({ search: "M1-010" })).toEqual([]);
  });
});

describe("a condition", () => {
  const thick: Condition = { op: "number", characteristic: rear, is: "gt", si: 0.015 };

  test("gives the cars that fit, how many are not known, and itself in words; each car is in one of three lists", async () => {
    const fitting = await list({ condition: thick });
    expect(fitting).toMatchObject({ total: 1, unknown: 73, cars: [{ reference: "M1-007" }] });
    const said = "rear anti-roll bar diameter is above 15 mm";
    expect(fitting.condition).toEqual({ is: thick, said, parts: [{ is: thick, said }] });
    const not: Condition = { op: "not", of: thick };
    expect(await list({ condition: not })).toMatchObject({ total: 2, unknown: 73 });
  });

  test("goes together with the search, the series and the paging", async () => {
    expect(await list({ condition: thick, search: "008" })).toMatchObject({ total: 0, unknown: 0 });
    expect(await list({ condition: thick, series: "mark-1" })).toMatchObject({ total: 1, unknown: 1 });
    const first = await list({ condition: thick, show: "unknown" });
    expect(first.cars).toHaveLength(50);
    const second = await list({ condition: thick, show: "unknown", after: first.next ?? "" });
    expect(second.cars).toHaveLength(23);
    expect([...first.cars, ...second.cars].map(({ reference }) => reference)).not.toContain("M1-007");
  });

  test("saved under a name is asked for by it", async () => {
    const member = await world.person({ roles: ["owner"] });
    const found = await openMember(world.database, member, "ours", async (ctx) => {
      await saveFilter(ctx, { name: "Thick bars", condition: thick, shared: "no", replace: "no" });
      return registerList(ctx, { filter: "thick BARS" });
    });
    expect(found).toMatchObject({ total: 1, unknown: 73, condition: { is: thick } });
    await expect(list({ filter: "thick bars" })).rejects.toMatchObject(
      refused("FILTER_NOT_FOUND", { filter: "thick bars", known: [] }),
    );
  });

  test("gives the ids of all its cars at once, in the list's order", async () => {
    const ids = await inClub((ctx) => chosenCarIds(ctx, { condition: thick }, "unknown"));
    expect(ids).toHaveLength(73);
    expect(new Set(ids).size).toBe(73);
  });
});
