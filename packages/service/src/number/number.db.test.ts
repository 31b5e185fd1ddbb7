import { openWorld, type World, type WorldPerson } from "@trunnion/fixtures";
import { Invalid, Refusal } from "@trunnion/register";
import { afterAll, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { carPage } from "../car-page";
import { claimPage } from "../claim";
import type { Context } from "../context";
import { openMember } from "../gate";
import { mergeCars, mergeCarsInput, previewMerge } from "../merge";
import { decideNumber, decideNumberInput, numbersPage, setAside, setAsideInput, takeUp } from ".";

let world: World;
let registrar: WorldPerson;

beforeAll(async () => {
  world = await openWorld();
  registrar = await world.person({ roles: ["registrar"], name: "Ragna Vík" });
}, 120_000);
// Findings are of the whole register, so each test begins with none.
beforeEach(async () => {
  await world.asOwner((db) => db.$executeRaw`TRUNCATE car, number_decision, number_set_aside CASCADE`);
});
afterAll(() => world?.close());

const inOurs = <T>(work: (ctx: Context) => Promise<T>, who = registrar) =>
  openMember(world.database, who, "ours", work);
const caught = (work: Promise<unknown>) =>
  work.then(
    () => undefined,
    (error: unknown) => error,
  );
const open = async () => (await inOurs(numbersPage)).open.map(({ finding }) => finding.key);

const decide = (parts: Record<string, unknown>) =>
  inOurs((ctx) =>
    decideNumber(
      ctx,
      decideNumberInput.parse({ kind: "chassis", number: "M1-010", reason: "the stamping", ...parts }),
    ),
  );

async function twoClaim() {
  const first = await world.car({ chassis: "M1-010", engine: "K 1", keeper: { name: "Ása Secret" } });
  const second = await world.car({ chassis: "M1-010", claim: 2, engine: "K 2" });
  return { first, second };
}

describe("the numbers page", () => {
  test("tells what is odd, what is settled, and what is known of each series", async () => {
    await twoClaim();
    await world.car({ chassis: "M1-121" });
    await world.car({ chassis: "M1-020", built: "1969" });
    const page = await inOurs(numbersPage);
    expect(page.open.map(({ finding }) => finding.key)).toEqual([
      "doesNotFit M1-121",
      "claimed chassis M1010",
      "outsideSeries M1-020",
    ]);
    expect(page.coverage).toMatchObject([{ name: "Mark 1", known: 2, unplaced: 1, built: 120 }]);
    await decide({ outcome: "oneHolds", holder: "M1-010" });
    const after = await inOurs(numbersPage);
    expect(after.open.map(({ finding }) => finding.key)).not.toContain("claimed chassis M1010");
    expect(after.settled).toMatchObject([
      { finding: { key: "claimed chassis M1010" }, decision: { by: "Ragna Vík" } },
    ]);
  });

  test("leaves out what was set aside with a reason, until what it rests on changes", async () => {
    await world.car({ chassis: "M1-121" });
    const aside = setAsideInput.parse({ finding: "doesNotFit M1-121", reason: "a works special" });
    await inOurs((ctx) => setAside(ctx, aside));
    const page = await inOurs(numbersPage);
    expect(page.open).toEqual([]);
    expect(page.setAside).toMatchObject([{ reason: "a works special", by: "Ragna Vík" }]);
    await world.inClub((db) => db.series.updateMany({ data: { lastSerial: 119 } }));
    expect(await open()).toEqual(["doesNotFit M1-121"]);
    await world.inClub((db) => db.series.updateMany({ data: { lastSerial: 120 } }));
    await inOurs((ctx) => takeUp(ctx, { id: page.setAside[0]?.id ?? "" }));
    expect(await open()).toEqual(["doesNotFit M1-121"]);
  });

  test("sets nothing aside without a reason, nor what it does not show", async () => {
    await world.car({ chassis: "M1-121" });
    const before = await world.fingerprint();
    const without = setAsideInput.parse({ finding: "doesNotFit M1-121", reason: " " });
    expect(await caught(inOurs((ctx) => setAside(ctx, without)))).toBeInstanceOf(Invalid);
    const none = setAsideInput.parse({ finding: "doesNotFit M1-999", reason: "x" });
    expect(await caught(inOurs((ctx) => setAside(ctx, none)))).toMatchObject({ code: "FINDING_NOT_FOUND" });
    expect(await world.fingerprint()).toEqual(before);
  });

  test("tells nine cars of one number as one finding", async () => {
    await world.inClub((db) =>
      db.car.createMany({
        data: Array.from({ length: 9 }, (_, index) => ({
          chassis: "M1-030",
          chassisKey: "M1030",
          claim: index + 1,
          seriesId: world.ours.seriesId,
        })),
      }),
    );
    const [found] = (await inOurs(numbersPage)).open;
    expect(found?.what).toBe("9 cars claim chassis number M1-030.");
  });
});

describe("a decision about a number", () => {
  test("sets how it stands on each car, shows on both pages, and is journalled on both", async () => {
    const { first, second } = await twoClaim();
    await decide({ outcome: "oneHolds", holder: "M1-010~2" });
    for (const car of [first, second]) {
      const page = await inOurs((ctx) => carPage(ctx, car.reference));
      expect(page.decisions).toMatchObject([
        { outcome: "oneHolds", holder: "M1-010~2", reason: "the stamping" },
      ]);
      expect(page.car.version).toBe(2);
    }
    const standings = await world.inClub((db) =>
      db.carIdentity.findMany({ where: { kind: "chassis" }, select: { carId: true, standing: true } }),
    );
    expect(new Map(standings.map(({ carId, standing }) => [carId, standing]))).toEqual(
      new Map([
        [first.id, "disputed"],
        [second.id, "accepted"],
      ]),
    );
    const lines = await world.inClub((db) =>
      db.journalEntry.findMany({
        where: {
          action: "number.decide",
          carId: { in: [first.id, second.id] },
        },
      }),
    );
    expect(new Set(lines.map(({ carId }) => carId))).toEqual(new Set([first.id, second.id]));
  });

  test("is reconsidered: the one before is superseded, and stays to be read", async () => {
    await twoClaim();
    const id = await decide({ outcome: "undecided" });
    expect(await open()).toContain("claimed chassis M1010");
    await decide({ outcome: "allStand", reason: "stamped twice by the works", standing: id });
    const { decisions } = await inOurs((ctx) => claimPage(ctx, { kind: "chassis", number: "m1 010" }));
    expect(decisions.map(({ outcome, supersededOn }) => [outcome, supersededOn !== undefined])).toEqual([
      ["allStand", false],
      ["undecided", true],
    ]);
    expect(await open()).not.toContain("claimed chassis M1010");
  });

  test("is open again when a further car claims the number", async () => {
    await twoClaim();
    await decide({ outcome: "allStand" });
    await world.car({ chassis: "M1-010", claim: 3 });
    expect(await open()).toContain("claimed chassis M1010");
  });

  test("that somebody took meanwhile is not written over", async () => {
    await twoClaim();
    await decide({ outcome: "undecided" });
    const before = await world.fingerprint();
    expect(await caught(decide({ outcome: "allStand" }))).toMatchObject({ code: "DECIDED_MEANWHILE" });
    expect(await world.fingerprint()).toEqual(before);
  });

  test.each([
    [{ outcome: "oneHolds", holder: "" }, "holder"],
    [{ outcome: "oneHolds", holder: "M1-011" }, "holder"],
    [{ outcome: "allStand", reason: " " }, "reason"],
  ])("as %o is refused at the field %s", async (parts, field) => {
    await twoClaim();
    const before = await world.fingerprint();
    const error = await caught(decide(parts));
    expect((error as Invalid).problems).toMatchObject([{ field }]);
    expect(await world.fingerprint()).toEqual(before);
  });

  test("about a number that one car bears is refused", async () => {
    await world.car({ chassis: "M1-010" });
    expect(await caught(decide({ outcome: "allStand" }))).toMatchObject({ code: "CLAIM_NOT_FOUND" });
  });

  test("is weighed side by side, keepers by name only for those who may see them", async () => {
    await twoClaim();
    const page = await inOurs((ctx) => claimPage(ctx, { kind: "chassis", number: "M1-010" }));
    expect(page.claimants.map(({ reference, numbers }) => [reference, numbers[0]?.value])).toEqual([
      ["M1-010", "K 1"],
      ["M1-010~2", "K 2"],
    ]);
    expect(page.claimants[0]?.keepers).toMatchObject([{ name: "Ása Secret" }]);
    const owner = await world.person({ roles: ["owner"] });
    const error = await caught(inOurs((ctx) => claimPage(ctx, { kind: "chassis", number: "M1-010" }), owner));
    expect(error).toBeInstanceOf(Refusal);
  });

  test("knows what commission numbers and build dates say", async () => {
    for (let serial = 1; serial <= 12; serial++) {
      const chassis = `M1-0${serial + 20}`;
      const car = await world.car({ chassis, built: `1970-${String(serial).padStart(2, "0")}-01` });
      const number = String(520 + serial);
      await world.inClub((db) =>
        db.carIdentity.create({ data: { carId: car.id, kind: "commission", number, numberKey: number } }),
      );
    }
    const second = await world.car({ chassis: "M1-023", claim: 2, built: "12/73" });
    await world.inClub((db) =>
      db.carIdentity.create({
        data: { carId: second.id, kind: "commission", number: "599", numberKey: "599" },
      }),
    );
    const { claimants } = await inOurs((ctx) => claimPage(ctx, { kind: "chassis", number: "M1-023" }));
    expect(claimants.map((one) => one.arguments.map(({ weight, text }) => `${weight}: ${text}`))).toEqual([
      [
        "neither: The number fits Mark 1.",
        "for: Commission 523 goes with this number, as in 12 of 13 cars of Mark 1.",
        "for: Built 1970-03-01: in order with its neighbours.",
      ],
      [
        "neither: The number fits Mark 1.",
        "against: Commission 599 would go with M1-099, as in 12 of 13 cars of Mark 1.",
        // Neighbours 022 and 024 were built 1 February and 1 April 1970; 62 days either side.
        "against: Built 12/73; its neighbours say not before 1 Dec 1969 and not after 2 Jun 1970.",
      ],
    ]);
  });
});

describe("two records of one car", () => {
  test("become one: nothing is lost, what both had stays with the pointer, and both journals say so", async () => {
    const { first, second } = await twoClaim();
    await world.inClub(async (db) => {
      await db.asBuiltValue.create({
        data: {
          carId: first.id,
          characteristic: "front.disc.face",
          side: "whole",
          valueKind: "choice",
          entered: "plain",
          text: "plain",
        },
      });
      await db.asBuiltValue.create({
        data: {
          carId: second.id,
          characteristic: "front.disc.face",
          side: "whole",
          valueKind: "choice",
          entered: "grooved",
          text: "grooved",
        },
      });
      await db.carStatusSpan.create({ data: { carId: first.id, status: "inUse" } });
      await db.carStatusSpan.create({ data: { carId: second.id, status: "laidUp" } });
      await db.car.updateMany({ where: { id: first.id }, data: { builtText: "1971" } });
      await db.car.updateMany({
        where: { id: second.id },
        data: { builtText: "1972", remarks: "with tools" },
      });
    });
    const rows = await world.inClub((db) =>
      Promise.all([db.carIdentity.count(), db.asBuiltValue.count(), db.carStatusSpan.count()]),
    );
    const both = { into: "M1-010", from: "M1-010~2" };
    const preview = await inOurs((ctx) => previewMerge(ctx, both));
    expect(preview.parts).toEqual([
      { what: "numbers and marks", moved: 1, stays: 0 },
      { what: "statuses", moved: 0, stays: 1 },
      { what: "as-built values", moved: 1, stays: 0 },
    ]);
    expect(preview.facts).toEqual([
      { what: "Built", said: "1972", becomes: "noted" },
      { what: "Remarks", said: "with tools", becomes: "taken" },
    ]);
    const input = mergeCarsInput.parse({ ...both, intoVersion: 1, fromVersion: 1, reason: "same frame" });
    expect(await inOurs((ctx) => mergeCars(ctx, input))).toBe("M1-010");
    expect(
      await world.inClub((db) =>
        Promise.all([db.carIdentity.count(), db.asBuiltValue.count(), db.carStatusSpan.count()]),
      ),
    ).toEqual(rows);
    const car = await world.inClub((db) =>
      db.car.findFirstOrThrow({
        where: { id: first.id },
        include: { identities: true, asBuilt: true, histories: true },
      }),
    );
    expect(car).toMatchObject({ builtText: "1971", remarks: "with tools", version: 2 });
    expect(car.identities.map(({ number }) => number).toSorted()).toEqual(["K 1", "K 2"]);
    expect(car.asBuilt.filter(({ supersededAt }) => supersededAt === null)).toMatchObject([
      { entered: "plain" },
    ]);
    expect(car.histories[0]?.text).toContain("Built: 1972");
    const pointer = await inOurs((ctx) => carPage(ctx, "M1-010~2"));
    expect(pointer.mergedInto).toBe("M1-010");
    expect((await inOurs((ctx) => carPage(ctx, "M1-010"))).claims).toBe(1);
    expect(await open()).toEqual([]);
    expect(
      await world.inClub((db) =>
        db.journalEntry.count({ where: { action: "car.merge", carId: { in: [first.id, second.id] } } }),
      ),
    ).toBe(2);
  });

  test("are not made one when either changed since, or when one only points already", async () => {
    const { first } = await twoClaim();
    const both = { into: "M1-010", from: "M1-010~2" };
    await world.inClub((db) => db.car.updateMany({ where: { id: first.id }, data: { version: 5 } }));
    const before = await world.fingerprint();
    const stale = mergeCarsInput.parse({ ...both, intoVersion: 1, fromVersion: 1 });
    expect(await caught(inOurs((ctx) => mergeCars(ctx, stale)))).toMatchObject({ code: "CHANGED_MEANWHILE" });
    const itself = { into: "M1-010", from: "m1 010" };
    expect(await caught(inOurs((ctx) => previewMerge(ctx, itself)))).toMatchObject({
      code: "MERGE_IMPOSSIBLE",
    });
    expect(await world.fingerprint()).toEqual(before);
    await inOurs((ctx) => mergeCars(ctx, { ...stale, intoVersion: 5 }));
    expect(await caught(inOurs((ctx) => previewMerge(ctx, both)))).toMatchObject({
      code: "MERGE_IMPOSSIBLE",
    });
  });
});
