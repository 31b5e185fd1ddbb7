import { openWorld, type World, type WorldPerson } from "@trunnion/fixtures";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { rebuildCurrentValues } from "../current-value";
import { openMember } from "../gate";
import { createDraft } from "../submission";
import { garage } from "./read";

let world: World;
let owner: WorldPerson;
let neighbour: WorldPerson;

const DAY = 24 * 3_600_000;

beforeAll(async () => {
  world = await openWorld();
  owner = await world.person({ roles: ["owner"], name: "Owner" });
  neighbour = await world.person({ roles: ["owner"], name: "Neighbour" });
  const kept = { name: "Owner", membershipId: owner.membershipId };
  const car = await world.car({
    chassis: "M1-011",
    keeper: kept,
    modified: { "front.antiRollBar.diameter": "5/8 in", "front.disc.face": "drilled" },
  });
  await world.car({ chassis: "M1-012", keeper: { name: "N", membershipId: neighbour.membershipId } });
  const inDays = (days: number) => new Date(Date.now() + days * DAY);
  await world.inClub(async (db) => {
    await db.datedItem.createMany({
      data: [
        { carId: car.id, kind: "harness", label: "Harness", validTo: inDays(30) },
        { carId: car.id, kind: "extinguisher", label: "Extinguisher", validTo: inDays(-3) },
        { carId: car.id, kind: "seat", label: "Seat", validTo: inDays(400) },
        { carId: car.id, kind: "inspection", label: "Inspection" },
      ],
    });
  });
  const on = inDays(10).toISOString().slice(0, 10);
  await world.event({ slug: "open-day", on, entries: [{ number: "7", car }] });
  await as(owner, async (ctx) => rebuildCurrentValues(ctx, [car.id], await bookOf(ctx)));
  await as(owner, (ctx) => createDraft(ctx, { clientKey: crypto.randomUUID(), car: "M1-011" }));
}, 180_000);
afterAll(() => world?.close());

const as = <T>(person: WorldPerson, work: (ctx: Context) => Promise<T>) =>
  openMember(world.database, person, "ours", work);

describe("an owner's garage", () => {
  test("has his own cars and submissions, and nobody else's", async () => {
    const { cars, open } = await as(owner, garage);
    expect(cars.map(({ chassis }) => chassis)).toEqual(["M1-011"]);
    expect(open.map(({ status, car }) => [status, car.chassis])).toEqual([["draft", "M1-011"]]);
    expect((await as(neighbour, garage)).open).toEqual([]);
  });

  test("tells what ran out, what runs out within 90 days and what nobody dated, and not what is good for longer", async () => {
    const { cars } = await as(owner, garage);
    expect(cars[0]?.due.map(({ label, standing }) => [label, standing])).toEqual([
      ["Extinguisher", "past"],
      ["Harness", "soon"],
      ["Inspection", "unknown"],
    ]);
  });

  test("tells what is worth recording, with what it would let be worked out", async () => {
    const { cars } = await as(owner, garage);
    expect(cars[0]?.missing.length).toBeGreaterThan(0);
    for (const { adds } of cars[0]?.missing ?? []) expect(adds.length).toBeGreaterThan(0);
  });

  test("tells what a scrutineer advised before and nobody has passed since, of his cars alone", async () => {
    const before = await as(owner, garage);
    expect(before.cars[0]?.carried).toEqual([]);
    const past = await world.event({ slug: "last-year", on: "2025-05-01", entries: [{ number: "7" }] });
    await world.inClub(async (db) => {
      const entry = await db.entry.findFirstOrThrow({ where: { eventId: past.id } });
      const car = await db.car.findFirstOrThrow({ where: { chassis: "M1-011" } });
      await db.entry.updateMany({ where: { id: entry.id }, data: { carId: car.id } });
      const finding = { entryId: entry.id, checkCode: "wheel-nuts", note: "Nearside rear stud short" };
      const at = { foundAt: new Date("2025-05-01T09:00:00Z"), clientKey: crypto.randomUUID() };
      await db.finding.create({ data: { ...finding, ...at, result: "advise" } });
    });
    const [car] = (await as(owner, garage)).cars;
    expect(car?.carried).toMatchObject([
      { checkCode: "wheel-nuts", result: "advise", note: "Nearside rear stud short", on: "2025-05-01" },
    ]);
    expect((await as(neighbour, garage)).cars[0]?.carried).toEqual([]);
  });

  test("tells of the next event what will be looked at on this car, with why, apart from what every car gets", async () => {
    const { cars } = await as(owner, garage);
    expect(cars[0]?.event).toMatchObject({ slug: "open-day", runningNumber: "7" });
    expect(cars[0]?.event?.expected.map(({ text }) => text)).toEqual([
      "Drilled discs: no cracks between the holes.",
    ]);
    expect(cars[0]?.event?.expected[0]?.why).toMatch(/^front disc face drilled/);
    expect(cars[0]?.event?.unrecorded).toHaveLength(1);
    expect(cars[0]?.event?.besides).toBe(1);
  });
});
