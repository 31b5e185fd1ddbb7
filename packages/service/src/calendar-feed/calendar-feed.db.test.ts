import { openWorld, type World, type WorldPerson } from "@trunnion/fixtures";
import { refused } from "@trunnion/register";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { bookOf } from "../characteristic";
import { rebuildAllCurrentValues } from "../current-value";
import { dueMonth, duePage } from "../due";
import { openMember, openOperator } from "../gate";
import { addFeed, feedPage, readFeed, removeFeed } from "./index";

let world: World;
let member: WorldPerson;

beforeAll(async () => {
  world = await openWorld();
  const year = new Date().getUTCFullYear();
  const first = await world.car({
    chassis: "M1-001",
    keeper: { name: "Tõnu Bråtvær" },
    read: { "safety.harness.expires": `${year + 1}-12-31` },
  });
  await world.car({ chassis: "M1-002", read: { "safety.harness.expires": `${year - 3}-12-31` } });
  await world.car({
    chassis: "M1-003",
    status: "destroyed",
    read: { "safety.harness.expires": `${year + 1}-12-31` },
  });
  await world.car({
    chassis: "M1-004",
    club: world.theirs,
    read: { "safety.harness.expires": `${year + 1}-12-31` },
  });
  await world.inClub(async (db) => {
    const item = { carId: first.id, label: "Tõnu's own words" };
    await db.datedItem.create({ data: { ...item, kind: "harness", validTo: new Date(`${year + 1}-12-31`) } });
    await db.datedItem.create({
      data: { ...item, kind: "inspection", validTo: new Date(`${year + 1}-06-15`) },
    });
    await db.datedItem.create({ data: { ...item, kind: "extinguisher" } });
    const gone = { ...item, kind: "inspection", replacedAt: new Date() };
    await db.datedItem.create({ data: { ...gone, validTo: new Date(`${year + 1}-06-16`) } });
  });
  await openOperator(world.database, "ours", async (ctx) => rebuildAllCurrentValues(ctx, await bookOf(ctx)));
  member = await world.person({ roles: ["fleetManager"] });
}, 120_000);
afterAll(() => world?.close());

const year = new Date().getUTCFullYear();
const as = <T>(person: WorldPerson, work: Parameters<typeof openMember<T>>[3]) =>
  openMember(world.database, person, "ours", work);

describe("what falls due", () => {
  test("counts a label's day and the dated item of that day once, and what has no day as that", async () => {
    const page = await as(member, (ctx) => duePage(ctx, {}));
    expect(page.items.map(({ reference, kind, day }) => [reference, kind, day])).toEqual([
      ["M1-002", "harness", `${year - 3}-12-31`],
      ["M1-001", "inspection", `${year + 1}-06-15`],
      ["M1-001", "harness", `${year + 1}-12-31`],
      ["M1-001", "extinguisher", undefined],
    ]);
    expect(page.counts.find(({ kind }) => kind === "harness")?.counts).toMatchObject({ past: 1, later: 1 });
    expect(page.items.at(-1)?.standing).toBe("unknown");
    expect(JSON.stringify(page)).not.toContain("Tõnu");
  });

  test("is narrowed by kind, standing, days and series", async () => {
    const kinds = await as(member, (ctx) => duePage(ctx, { kind: "inspection" }));
    expect(kinds.items).toHaveLength(1);
    expect((await as(member, (ctx) => duePage(ctx, { standing: "past" }))).items).toHaveLength(1);
    expect((await as(member, (ctx) => duePage(ctx, { standing: "unknown" }))).items).toHaveLength(1);
    const days = { from: `${year + 1}-12-01`, to: `${year + 1}-12-31` };
    expect((await as(member, (ctx) => duePage(ctx, days))).items).toHaveLength(1);
    await expect(as(member, (ctx) => duePage(ctx, { series: "x" }))).rejects.toMatchObject(
      refused("SERIES_NOT_FOUND", { series: "x", known: ["mark-1"] }),
    );
  });

  test("takes a club's own date of safety equipment for a last day, by its label, and no date of another assembly", async () => {
    const own = (key: string, label: string, assembly: "safety" | "engine") => ({
      ...{ key, label, assembly, kind: "date" as const, definition: {}, help: "A day." },
    });
    await world.inClub(async (db) => {
      await db.characteristic.create({ data: own("own.fuelCell", "Fuel cell", "safety") });
      await db.characteristic.create({ data: own("own.engineRebuilt", "Engine rebuilt", "engine") });
      const car = await db.car.findFirstOrThrow({ where: { chassisKey: "M1001" } });
      const value = { valueKind: "date" as const, entered: `${year + 3}-04-05`, text: `${year + 3}-04-05` };
      for (const characteristic of ["own.fuelCell", "own.engineRebuilt"])
        await db.asBuiltValue.create({ data: { carId: car.id, characteristic, side: "whole", ...value } });
    });
    await openOperator(world.database, "ours", async (ctx) =>
      rebuildAllCurrentValues(ctx, await bookOf(ctx)),
    );
    const days = { from: `${year + 3}-01-01`, to: `${year + 3}-12-31` };
    const page = await as(member, (ctx) => duePage(ctx, days));
    expect(page.items).toMatchObject([
      { reference: "M1-001", kind: "own.fuelCell", label: "Fuel cell", day: `${year + 3}-04-05` },
    ]);
    expect(page.kinds).toContainEqual({ kind: "own.fuelCell", label: "Fuel cell" });
    const april = await as(member, (ctx) => dueMonth(ctx, { month: `${year + 3}-04` }));
    expect(april.days).toMatchObject([
      { day: `${year + 3}-04-05`, count: 1, items: [{ label: "Fuel cell" }] },
    ]);
  });

  test("goes in pages, each item once, across a page's end", async () => {
    await world.inClub(async (db) => {
      const car = await db.car.findFirstOrThrow({ where: { chassisKey: "M1001" } });
      const many = Array.from({ length: 60 }, () => ({
        carId: car.id,
        kind: "seal",
        label: "x",
        validTo: new Date(`${year + 2}-01-01`),
      }));
      for (const data of many) await db.datedItem.create({ data });
    });
    const first = await as(member, (ctx) => duePage(ctx, { kind: "seal" }));
    expect(first.items).toHaveLength(50);
    const after = first.next ?? { day: "", id: "none" };
    const second = await as(member, (ctx) => duePage(ctx, { kind: "seal", after }));
    expect(second.items).toHaveLength(10);
    expect(new Set([...first.items, ...second.items].map(({ id }) => id)).size).toBe(60);
  });

  test("by month names the first few of a day and counts them all", async () => {
    const june = await as(member, (ctx) => dueMonth(ctx, { month: `${year + 1}-06` }));
    expect(june.days).toMatchObject([
      { day: `${year + 1}-06-15`, count: 1, items: [{ reference: "M1-001" }] },
    ]);
    const january = await as(member, (ctx) => dueMonth(ctx, { month: `${year + 2}-01` }));
    expect(january.days).toMatchObject([{ count: 60 }]);
    expect(january.days[0]?.items).toHaveLength(20);
  });
});

describe("a private calendar link", () => {
  const make = (label = "Workshop") => as(member, (ctx) => addFeed(ctx, { label }));

  test("shows what falls due of its club to whoever holds it, and nothing of anybody", async () => {
    const token = await make();
    const text = await readFeed(world.database, { token, origin: "https://club.test" });
    expect(text).toContain("SUMMARY:M1-001: inspection\\, last day");
    expect(text).toContain("URL:https://club.test/club/ours/car/M1-001");
    expect(text).not.toMatch(/Tõnu|Bråtvær/);
    // Gone cars, another club's, and what is years past are no appointments.
    expect(text).not.toMatch(/M1-00[234]/);
    const [line] = (await as(member, (ctx) => feedPage(ctx))).feeds;
    expect(line).toMatchObject({ label: "Workshop", lastReadAt: expect.any(String) });
    expect(JSON.stringify(line)).not.toContain(token);
  });

  test("is kept as a hash alone", async () => {
    const token = await make("Hash");
    const rows = await world.inClub((db) => db.calendarFeed.findMany());
    expect(rows.every(({ tokenHash }) => /^[0-9a-f]{64}$/.test(tokenHash))).toBe(true);
    expect(JSON.stringify(rows)).not.toContain(token);
  });

  test("ends when it is taken back, by its own member and nobody else, and with the membership", async () => {
    const token = await make("Ends");
    const id =
      (await as(member, (ctx) => feedPage(ctx))).feeds.find(({ label }) => label === "Ends")?.id ?? "";
    const other = await world.person({ roles: ["registrar"] });
    const unknown = refused("CALENDAR_FEED_UNKNOWN", {});
    await expect(as(other, (ctx) => removeFeed(ctx, { id }))).rejects.toMatchObject(unknown);
    expect((await as(other, (ctx) => feedPage(ctx))).feeds).toEqual([]);
    await as(member, (ctx) => removeFeed(ctx, { id }));
    await expect(readFeed(world.database, { token })).rejects.toMatchObject(unknown);
    const theirs = await as(other, (ctx) => addFeed(ctx, { label: "Leaves" }));
    await world.inClub((db) =>
      db.membership.updateMany({ where: { personId: other.personId }, data: { leftAt: new Date() } }),
    );
    await expect(readFeed(world.database, { token: theirs })).rejects.toMatchObject(unknown);
  });

  test("that never was is told as one taken back, whatever it looks like", async () => {
    for (const token of ["", "x", "a".repeat(43), "../../etc", "%00"])
      await expect(readFeed(world.database, { token })).rejects.toMatchObject(
        refused("CALENDAR_FEED_UNKNOWN", {}),
      );
  });

  test("may be had ten times at once, no more", async () => {
    const greedy = await world.person({ roles: ["owner"] });
    for (let count = 0; count < 10; count += 1)
      await as(greedy, (ctx) => addFeed(ctx, { label: `n${count}` }));
    await expect(as(greedy, (ctx) => addFeed(ctx, { label: "one more" }))).rejects.toMatchObject(
      refused("CALENDAR_FEED_TOO_MANY", { most: 10 }),
    );
  });
});
