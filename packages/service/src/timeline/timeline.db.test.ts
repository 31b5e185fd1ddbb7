import { openWorld, type World, type WorldCar } from "@trunnion/fixtures";
import { deviationsFromFactory, entriesFor, stateKey, stateOn } from "@trunnion/register";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { assess } from "../assessment";
import { findCar } from "../car";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { openMember, openOperator } from "../gate";
import { writeJournal } from "../journal";
import { currentSpecifications } from "../specification";
import { carTimeline } from "./read";

let world: World;
let car: WorldCar;
let plain: WorldCar;

const bar = "rear.antiRollBar.diameter";

/** As somebody would who sets the clock of the database: when things were recorded is the database's to say. */
async function recordedOn(table: string, carId: string, day: string): Promise<void> {
  await world.asOwner((db) =>
    db.$executeRawUnsafe(
      `UPDATE ${table} SET recorded_at = '${day}T12:00:00Z' WHERE ${table === "car" ? "id" : "car_id"} = '${carId}'`,
    ),
  );
}

async function journalledOn(action: string, day: string): Promise<void> {
  await world.asOwner(async (db) => {
    await db.$executeRawUnsafe("ALTER TABLE journal_entry DISABLE TRIGGER USER");
    await db.$executeRawUnsafe(`UPDATE journal_entry SET at = '${day}T12:00:00Z' WHERE action = '${action}'`);
    await db.$executeRawUnsafe("ALTER TABLE journal_entry ENABLE TRIGGER USER");
  });
}

const operator = <T>(work: (ctx: Context) => Promise<T>) => openOperator(world.database, "ours", work);
const timeline = (reference: string, believed?: string) =>
  operator((ctx) => carTimeline(ctx, { car: reference, ...(believed === undefined ? {} : { believed }) }));

/** The bar on a day by the data that is sent to the browser. */
async function barOn(day: string, believed?: string): Promise<string | undefined> {
  const { data } = await timeline(car.reference, believed);
  const entries = new Map(data.entries.map((entry) => [stateKey(entry.characteristic, entry.side), entry]));
  return stateOn(day, { ...data, entries }).get(`${bar} whole`)?.value.entered;
}

beforeAll(async () => {
  world = await openWorld();
  car = await world.car({
    chassis: "M1-030",
    built: "3/1971",
    status: "inUse",
    options: ["H"],
    registration: "GV 101",
    keeper: { name: "Håkon Brennås" },
    asBuilt: { [bar]: "14 mm" },
    modified: { [bar]: "18 mm" },
    modifiedOn: "1995-05-01",
    read: { "front.camber": "-0°20'" },
    readOn: "2024-06-01",
  });
  plain = await world.car({ chassis: "M1-031" });
  for (const table of [
    "as_built_value",
    "modification",
    "car_identity",
    "car_status_span",
    "setting_sheet",
    "keepership",
  ]) {
    await recordedOn(table, car.id, "2020-01-10");
  }
  await recordedOn("car", car.id, "2020-01-10");
  await world.inClub(async (db) => {
    const submission = await db.submission.findFirstOrThrow({ where: { carId: car.id } });
    await db.submission.updateMany({
      where: { carId: car.id },
      data: { decidedAt: new Date("2020-01-10T12:00:00Z") },
    });
    // A modification of which only the year is known, recorded in 2022.
    const fitted = {
      fittedText: "1998",
      fittedEarliest: new Date("1998-01-01"),
      fittedLatest: new Date("1998-12-31"),
    };
    const modification = await db.modification.create({
      data: {
        carId: car.id,
        submissionId: submission.id,
        sequence: 2,
        reason: "stiffer still",
        recordedAt: new Date("2022-02-02T12:00:00Z"),
        ...fitted,
      },
    });
    await db.modificationChange.create({
      data: {
        modificationId: modification.id,
        characteristic: bar,
        side: "whole",
        afterValueKind: "quantity",
        afterEntered: "20 mm",
        afterNumber: 0.02,
        afterResolution: 0.001,
      },
    });
    await db.historyNote.create({
      data: {
        carId: car.id,
        onText: "c. 1980",
        onEarliest: new Date("1979-01-01"),
        onLatest: new Date("1981-12-31"),
        text: "Driven to the coast",
      },
    });
    await db.specification.updateMany({
      data: { recordedAt: new Date("2019-01-01T00:00:00Z"), madeCurrentAt: new Date("2019-01-01T00:00:00Z") },
    });
  });
}, 120_000);
afterAll(() => world?.close());

describe("a car's life", () => {
  test("has everything that is dated, in order, each date as the record has it", async () => {
    const { events } = await timeline(car.reference);
    const told = events.map(({ lane, title, when, until }) => [
      lane,
      title,
      when?.text ?? "",
      until === undefined ? "" : until === "open" ? "open" : until.text,
    ]);
    expect(told).toEqual([
      ["life", "Built", "3/1971", ""],
      ["note", "Noted", "c. 1980", ""],
      ["work", "Modified", "1995-05-01", ""],
      ["work", "Modified", "1998", ""],
      ["setting", "Seen or measured", "2024-06-01", ""],
      ["life", "In use", "", "open"],
      ["number", "Registration mark GV 101", "", "open"],
      ["keeper", "Håkon Brennås", "", "open"],
    ]);
  });

  test("tells before and after of each modification, from what the car had until then", async () => {
    const { events } = await timeline(car.reference);
    const details = events.filter(({ lane }) => lane === "work").flatMap((event) => event.details ?? []);
    expect(details).toEqual([
      { label: "Rear anti-roll bar diameter", before: "14 mm", after: "18 mm" },
      { label: "Rear anti-roll bar diameter", before: "18 mm", after: "20 mm" },
    ]);
  });

  test("never carries the last day of a year that is all the record knows", async () => {
    const { events, data } = await timeline(car.reference);
    const words = JSON.stringify([
      events.map(({ when, ...event }) => [when?.text, event]),
      data.modifications.map(({ said }) => said),
    ]);
    expect(words).not.toMatch(/1998-12-31|31 Dec/);
    expect(data.modifications[1]).toMatchObject({ on: "1998-12-31", earliest: "1998-01-01", said: "1998" });
  });

  test("names its keepers to a registrar and to no owner or scrutineer, in no part of what is sent", async () => {
    for (const roles of [["owner"], ["scrutineer"]] as const) {
      const person = await world.person({ roles });
      const sent = await openMember(world.database, person, "ours", (ctx) =>
        carTimeline(ctx, { car: car.reference }),
      );
      expect(JSON.stringify(sent)).not.toContain("Brennås");
      expect(sent.keepersShown).toBe(false);
    }
    expect(JSON.stringify(await timeline(car.reference))).toContain("Brennås");
  });

  test("is refused for a car of another club, as if there were none", async () => {
    const theirs = await world.car({ chassis: "M1-077", club: world.theirs });
    await expect(timeline(theirs.reference)).rejects.toMatchObject({ code: "CAR_NOT_FOUND" });
  });
});

describe("the state that the browser works out from what is sent", () => {
  test.each(["1971-01-01", "1995-04-30", "1995-05-01", "1998-12-31", "2024-06-01", "2026-01-01"])(
    "on %s is the one the service works out from the record, deviations and all",
    async (day) => {
      const { data } = await timeline(car.reference);
      const entries = new Map(
        data.entries.map((entry) => [stateKey(entry.characteristic, entry.side), entry]),
      );
      await operator(async (ctx) => {
        const record = await findCar(ctx, car.reference);
        const book = await bookOf(ctx);
        const specifications = await currentSpecifications(ctx, [record.series?.id ?? ""]);
        const whole = assess(record, specifications.get(record.series?.id ?? ""), book, day);
        const state = stateOn(day, { ...data, entries });
        expect([...state].map(([key, { source: _, ...value }]) => [key, value])).toEqual(
          [...whole.state].map(([key, { source: _, ...value }]) => [key, value]),
        );
        const verdicts = deviationsFromFactory(state, entries, book).map(
          ({ characteristic, side, verdict }) => [characteristic, side, verdict],
        );
        expect(verdicts).toEqual(
          whole.deviations.map(({ characteristic, side, verdict }) => [characteristic, side, verdict]),
        );
      });
    },
  );
});

describe("what was believed on a day", () => {
  test.each([
    ["2001-01-01", "2020-01-09", "nothing", "the car was not on the register yet"],
    ["2001-01-01", "2020-01-10", "18 mm", "on the day it came onto it"],
    ["2001-01-01", "2022-02-01", "18 mm", "the change of 1998 was not known of"],
    ["2001-01-01", "2022-02-02", "20 mm", "and then it was"],
    ["1990-01-01", "2022-02-02", "14 mm", "of a day before either"],
  ])("of %s on %s: %s, %s", async (day, believed, expected) => {
    expect((await barOn(day, believed)) ?? "nothing").toBe(expected);
  });

  test("today is what the record says", async () => {
    const { today, ...now } = await timeline(car.reference);
    const { believed, ...then } = await timeline(car.reference, today);
    expect(believed).toBe(today);
    expect(then.data).toEqual(now.data);
    expect(then.events).toEqual(now.events);
  });

  test("is nothing of a car that was not on the register, and says so", async () => {
    const { known, events } = await timeline(car.reference, "2019-12-31");
    expect([known, events]).toEqual([false, []]);
  });

  test("goes by the specification that was the current one then", async () => {
    await world.inClub(async (db) => {
      await db.specification.updateMany({
        where: { id: world.ours.specificationId },
        data: { status: "superseded", supersededAt: new Date("2023-03-03T12:00:00Z") },
      });
      await db.specification.create({
        data: {
          seriesId: world.ours.seriesId,
          version: 2,
          status: "current",
          madeCurrentAt: new Date("2023-03-03T12:00:00Z"),
        },
      });
    });
    const versionOn = async (believed?: string) => (await timeline(plain.reference, believed)).specification;
    await recordedOn("car", plain.id, "2018-01-01");
    expect([
      await versionOn("2018-12-31"),
      await versionOn("2023-03-02"),
      await versionOn("2023-03-03"),
      await versionOn(),
    ]).toEqual([undefined, 1, 2, 2]);
  });

  test("takes back by the journal what is changed in place: when it was built, options, a mark, a status", async () => {
    await operator(async (ctx) => {
      const identity = await ctx.db.carIdentity.findFirstOrThrow({ where: { carId: car.id } });
      const status = await ctx.db.carStatusSpan.findFirstOrThrow({ where: { carId: car.id } });
      const line = { noun: "car", nounId: car.id, carId: car.id };
      await writeJournal(ctx, [
        {
          ...line,
          action: "car.correct",
          before: { built: "1970", remarks: "not told here" },
          after: { built: "3/1971", remarks: "not told here" },
        },
        { ...line, action: "option.set", before: { options: "" }, after: { options: "H" } },
        {
          action: "identity.correct",
          noun: "carIdentity",
          nounId: identity.id,
          carId: car.id,
          before: { number: "GV 110", from: "1985" },
          after: { kind: "registration", number: "GV 101" },
        },
        {
          action: "status.correct",
          noun: "carStatusSpan",
          nounId: status.id,
          carId: car.id,
          before: { status: "laidUp", from: "1990" },
          after: { status: "inUse" },
        },
      ]);
    });
    for (const action of ["car.correct", "option.set", "identity.correct", "status.correct"])
      await journalledOn(action, "2024-04-04");
    const titles = async (believed: string) =>
      (await timeline(car.reference, believed)).events
        .filter(({ lane }) => lane === "life" || lane === "number")
        .map(({ title, when }) => [title, when?.text ?? ""]);
    expect(await titles("2024-04-03")).toEqual([
      ["Built", "1970"],
      ["Registration mark GV 110", "1985"],
      ["Laid up", "1990"],
    ]);
    expect(await titles("2024-04-04")).toEqual([
      ["Built", "3/1971"],
      ["In use", ""],
      ["Registration mark GV 101", ""],
    ]);
    expect((await timeline(car.reference, "2024-04-03")).lost).toEqual(["the remarks"]);
    expect((await timeline(car.reference, "2024-04-04")).lost).toEqual([]);
  });

  test("says that a file which was taken back since is not told", async () => {
    const runId = "01900000-0000-7000-8000-00000000000a";
    const line = { noun: "car", nounId: plain.id, carId: plain.id, runId };
    await operator((ctx) =>
      writeJournal(ctx, [{ ...line, action: "car.change", before: {}, after: { now: { [bar]: "20 mm" } } }]),
    );
    await journalledOn("car.change", "2023-01-01");
    await operator((ctx) =>
      writeJournal(ctx, [{ ...line, action: "car.change", before: { now: { [bar]: "20 mm" } }, after: {} }]),
    );
    expect((await timeline(plain.reference, "2023-01-02")).lost).toEqual([
      "what a file said that has been taken back",
    ]);
    expect((await timeline(plain.reference, "2022-12-31")).lost).toEqual([]);
  });

  test("without the option the entry that asks for it no longer holds", async () => {
    // The sample specification: no rear bar, 14 mm with the handling pack. Without it the 14 mm left the works as an addition.
    const nominalOn = async (believed: string) => {
      const { data } = await timeline(car.reference, believed);
      return data.entries.find(({ characteristic }) => characteristic === bar)?.nominal?.entered;
    };
    expect([await nominalOn("2022-12-31")]).toEqual(["not fitted"]);
    expect(entriesFor(undefined, { options: [] }, await operator(bookOf)).size).toBe(0);
  });

  test("a status that was ended by one learnt later was still going on", async () => {
    const other = await world.car({ chassis: "M1-040", status: "inUse" });
    await recordedOn("car_status_span", other.id, "2020-01-10");
    await recordedOn("car", other.id, "2020-01-10");
    await world.inClub(async (db) => {
      await db.carStatusSpan.updateMany({ where: { carId: other.id }, data: { to: new Date("1998-12-31") } });
      await db.carStatusSpan.create({
        data: {
          carId: other.id,
          status: "laidUp",
          fromText: "1998",
          fromEarliest: new Date("1998-01-01"),
          fromLatest: new Date("1998-12-31"),
        },
      });
    });
    const spans = async (believed?: string) =>
      (await timeline(other.reference, believed)).events
        .filter(({ lane }) => lane === "life")
        .map(({ title, until }) => [title, typeof until === "object" ? until.text : until]);
    expect(await spans("2020-01-10")).toEqual([["In use", "open"]]);
    expect(await spans()).toEqual([
      ["Laid up", "open"],
      ["In use", "1998"],
    ]);
  });
});
