import { openWorld, sampleChecks, type World, type WorldPerson } from "@trunnion/fixtures";
import { v7 as uuid } from "uuid";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { compareCurrentValues } from "../current-value";
import { changeEntry } from "../entry";
import { openMember } from "../gate";
import { takeInspection, takeInspectionInput } from "../inspection";
import { makeSheets } from "../printed-sheet";
import { recordsOf } from "../record";
import { settingSheetPage } from "../setting-sheet";

let world: World;
let scrutineer: WorldPerson;
const DAY = "2026-05-01";
const NOW = `${DAY}T09:00:00.000Z`;

beforeAll(async () => {
  world = await openWorld();
  scrutineer = await world.person({ name: "Åse Ørnhøi", roles: ["scrutineer"] });
}, 180_000);
afterAll(() => world?.close());

const as = <T>(work: (ctx: Context) => Promise<T>) =>
  openMember(world.database, scrutineer, "ours", (ctx) => work({ ...ctx, now: new Date(NOW), today: DAY }));

const measuring = (id: string, characteristic: string) => ({
  ...sampleChecks[0],
  id,
  text: `Read ${characteristic}.`,
  criterion: { kind: "measured", characteristic, text: "inside its limits" },
});

async function entered(slug: string, modified: Readonly<Record<string, string>> = {}) {
  const car = await world.car({ modified });
  const checks = [
    ...sampleChecks,
    measuring("camber", "front.camber"),
    measuring("harness", "safety.harness.expires"),
  ] as never;
  const event = await world.event({ slug, checks, on: DAY, entries: [{ number: "7", car }] });
  const [entry] = await world.inClub((db) => db.entry.findMany({ where: { eventId: event.id } }));
  return { car, event, entryId: entry?.id ?? "" };
}

interface Said {
  readonly check?: string;
  readonly left?: string;
  readonly right?: string;
  readonly harness?: string;
  readonly replaces?: readonly string[];
  readonly instrument?: string;
  readonly at?: string;
}

const found = (entryId: string, said: Said) => ({
  key: uuid(),
  entryId,
  at: said.at ?? NOW,
  check: said.harness === undefined ? (said.check ?? "camber") : "harness",
  result: "pass",
  replaces: said.replaces ?? [],
  readings: [
    ...(["left", "right"] as const).flatMap((side) =>
      said[side] === undefined
        ? []
        : [
            {
              characteristic: "front.camber",
              side,
              entered: said[side],
              ...(said.instrument === undefined ? {} : { instrument: said.instrument }),
            },
          ],
    ),
    ...(said.harness === undefined
      ? []
      : [{ characteristic: "safety.harness.expires", side: "whole", entered: said.harness }]),
  ],
});
const send = (event: string, ...findings: readonly object[]) =>
  as((ctx) => takeInspection(ctx, takeInspectionInput.parse({ event, deviceNow: NOW, findings })));
const sheetsOf = (carId: string) =>
  world.inClub((db) =>
    db.settingSheet.findMany({
      where: { carId },
      include: { source: true, readings: { orderBy: [{ side: "asc" }, { repeat: "asc" }] } },
      orderBy: { sequence: "asc" },
    }),
  );
const itemsOf = (carId: string) =>
  world.inClub((db) => db.datedItem.findMany({ where: { carId }, orderBy: { validTo: "asc" } }));
const day = (date: Date | null | undefined) => date?.toISOString().slice(0, 10);

describe("what is measured at an event", () => {
  test("is a setting sheet of the car: the day, the event as its source, the instrument with its uncertainty", async () => {
    const { car, entryId } = await entered("measured");
    const instrument = uuid();
    await world.inClub((db) =>
      db.instrument.create({
        data: {
          id: instrument,
          label: "gravity gauge",
          dimension: "angle",
          resolution: 0.001,
          expandedUncertainty: 0.0021,
        },
      }),
    );
    await send("measured", found(entryId, { left: "-1°15'", right: "-0°45'", instrument }));
    const [sheet, ...others] = await sheetsOf(car.id);
    expect(others).toEqual([]);
    expect(sheet).toMatchObject({ entryId, supersededAt: null, note: "Scrutineering, number 7" });
    expect(day(sheet?.on)).toBe(DAY);
    expect(sheet?.source?.title).toContain("Findings of ");
    expect(sheet?.readings).toMatchObject([
      { side: "left", entered: "-1°15'", instrumentId: instrument, expandedUncertainty: 0.0021 },
      { side: "right", entered: "-0°45'", instrumentId: instrument },
    ]);
    await as(async (ctx) => expect(await compareCurrentValues(ctx, await bookOf(ctx))).toEqual([]));
    const current = await world.inClub((db) =>
      db.currentValue.findMany({ where: { carId: car.id, characteristic: "front.camber" } }),
    );
    expect(current.map(({ origin }) => origin)).toEqual(["reading", "reading"]);
    const journal = await world.inClub((db) =>
      db.journalEntry.findMany({ where: { carId: car.id, action: "finding.record" } }),
    );
    expect(journal.map(({ after }) => after)).toEqual([
      { "front.camber left": "-1°15'", "front.camber right": "-0°45'" },
    ]);
  });

  test("is told on the car's setting sheets as of that event, and by whom to those who inspect", async () => {
    const { car, entryId } = await entered("told");
    await send("told", found(entryId, { left: "-1°" }));
    const input = { car: car.reference };
    const [line] = await as(async (ctx) => (await settingSheetPage(ctx, input)).sheets);
    expect(line).toMatchObject({ event: { slug: "told", number: "7" }, by: "Åse Ørnhøi" });
    const viewer = await world.person({ roles: ["owner"] });
    const page = await openMember(world.database, viewer, "ours", (ctx) => settingSheetPage(ctx, input));
    expect(page.sheets[0]).toMatchObject({ event: { slug: "told" }, by: "" });
  });

  test("and measured again supersedes the first sheet and leaves it as it was; sent twice it is one", async () => {
    const { car, entryId } = await entered("again");
    const first = found(entryId, { left: "-1°15'" });
    await send("again", first);
    await send("again", first);
    expect(await sheetsOf(car.id)).toHaveLength(1);
    await send("again", found(entryId, { left: "-2°", replaces: [first.key] }));
    const [was, is] = await sheetsOf(car.id);
    expect(was?.readings).toMatchObject([{ entered: "-1°15'" }]);
    expect(was?.supersededAt).not.toBeNull();
    expect(is).toMatchObject({ supersededAt: null, sequence: 2, readings: [{ entered: "-2°" }] });
  });

  test("by two scrutineers apart stands twice at its place; the same figure at two checks once", async () => {
    const { car, entryId } = await entered("repeats");
    await send(
      "repeats",
      found(entryId, { left: "-1°", at: "2026-05-01T08:00:00.000Z" }),
      found(entryId, { left: "-1°10'" }),
      found(entryId, { left: "-1°", check: "wheel-nuts" }),
    );
    const [sheet] = await sheetsOf(car.id);
    expect(sheet?.readings.map(({ repeat, entered: said }) => [repeat, said])).toEqual([
      [1, "-1°"],
      [2, "-1°10'"],
    ]);
  });

  test("does not change what is to be looked at at that event", async () => {
    const { car, event, entryId } = await entered("unmoved");
    const sheetNow = () =>
      as(async (ctx) => {
        const [made] = await makeSheets(ctx, { event: "unmoved", book: await bookOf(ctx) });
        return made?.sheet.recordHash;
      });
    const before = await sheetNow();
    await send("unmoved", found(entryId, { left: "-3°" }));
    expect(await sheetNow()).toBe(before);
    const [record] = await as((ctx) => recordsOf(ctx, [car.id]));
    const [without] = await as((ctx) => recordsOf(ctx, [car.id], { beforeEvent: event.id }));
    expect((record?.readings.length ?? 0) - (without?.readings.length ?? 0)).toBe(1);
  });

  test("follows the entry to the car it turned out to be", async () => {
    const { car, entryId } = await entered("moved");
    const other = await world.car({ chassis: "M1-0999" });
    await send("moved", found(entryId, { left: "-1°" }));
    const registrar = await world.person({ roles: ["registrar"] });
    await openMember(world.database, registrar, "ours", (ctx) =>
      changeEntry(ctx, {
        event: "moved",
        entry: entryId,
        version: 1,
        opened: {},
        number: "7",
        car: "M1-0999",
        describedAs: "",
        driver: "",
        group: "",
        eventClass: "",
        withdrawn: "no",
      }),
    );
    expect((await sheetsOf(car.id)).map(({ supersededAt }) => supersededAt === null)).toEqual([false]);
    expect((await sheetsOf(other.id)).map(({ supersededAt }) => supersededAt === null)).toEqual([true]);
  });
});

describe("a day read off a label", () => {
  const fitted = (carId: string, id: string, label = "Driver's harness") =>
    world.inClub((db) =>
      db.datedItem.create({
        data: { id, carId, kind: "harness", label, validTo: new Date("2025-12-31T00:00:00.000Z") },
      }),
    );

  test("takes the place of the item's day, which stays readable", async () => {
    const { car, entryId } = await entered("label");
    await fitted(car.id, uuid());
    await send("label", found(entryId, { harness: "2030" }));
    const items = await itemsOf(car.id);
    expect(items.map(({ validTo, replacedAt }) => [day(validTo), replacedAt === null])).toEqual([
      ["2025-12-31", false],
      ["2030-12-31", true],
    ]);
    expect(items[1]).toMatchObject({ label: "Driver's harness", entryId });
  });

  test("taken back puts the item before it in its place again", async () => {
    const { car, entryId } = await entered("back");
    const old = uuid();
    await fitted(car.id, old);
    const first = found(entryId, { harness: "2030" });
    await send("back", first);
    await send("back", { ...found(entryId, {}), check: "harness", replaces: [first.key] });
    const standing = (await itemsOf(car.id)).filter(({ replacedAt }) => replacedAt === null);
    expect(standing.map(({ id }) => id)).toEqual([old]);
  });

  test("of one of two harnesses stands beside both: which is meant is not guessed", async () => {
    const { car, entryId } = await entered("two");
    await fitted(car.id, uuid());
    await fitted(car.id, uuid(), "Passenger's harness");
    await send("two", found(entryId, { harness: "2031" }));
    const standing = (await itemsOf(car.id)).filter(({ replacedAt }) => replacedAt === null);
    expect(standing).toHaveLength(3);
  });
});
