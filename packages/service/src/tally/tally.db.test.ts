import { Prisma } from "@trunnion/db";
import { openWorld, type World } from "@trunnion/fixtures";
import type { Condition } from "@trunnion/register";
import fc from "fast-check";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { bookOf } from "../characteristic";
import { conditionBits, everyCarSql, truthBitsSql } from "../condition-bits";
import { conditionSql } from "../condition-sql";
import type { Context } from "../context";
import { rebuildAllCurrentValues } from "../current-value";
import { duePage } from "../due";
import { openOperator } from "../gate";
import { prevalence } from "../prevalence";
import { registerList } from "../register-list";
import { refreshSearchIndex } from "../search-index";
import { spread } from "../spread";
import { compareTallies, forgetTallies } from "./index";
import { type Counted, columnList, countedSql, type LiveAbout } from "./policy";

let world: World;
let cars: readonly string[];
let otherSeries: string;
let ownSeries: string;

const inClub = <T>(work: (ctx: Context) => Promise<T>) => openOperator(world.database, "ours", work);
/** Narrows nothing, but is a condition: so the rows are counted by the blocks. */
const everyCar: Condition = { op: "always" };
const keys = ["front.camber", "front.disc.face", "rear.antiRollBar.diameter", "body.colour"] as const;

const fill: readonly Parameters<World["car"]>[0][] = [
  {
    built: "3/71",
    status: "inUse",
    read: { "front.camber": "0°10'", "body.colour": "Red" },
    readOn: "2019-05-01",
  },
  {
    built: "1971",
    asBuilt: { "rear.antiRollBar.diameter": "16 mm" },
    modified: { "front.disc.face": "drilled" },
  },
  {
    built: "4/72",
    read: { "front.camber left": "-2°", "body.colour": "Blue" },
    modified: { "front.disc.face": "plain" },
    modifiedOn: "1995-05-01",
  },
  {
    read: { "front.camber": "-2°" },
    asBuilt: { "rear.antiRollBar.diameter": "not fitted" },
    status: "destroyed",
  },
  { built: "3/71", modified: { "rear.antiRollBar.diameter": "20 mm" }, status: "laidUp" },
  {},
];

async function rebuild(): Promise<void> {
  await inClub(async (ctx) => rebuildAllCurrentValues(ctx, await bookOf(ctx)));
}

beforeAll(async () => {
  world = await openWorld();
  const made = [];
  for (const input of fill) made.push(await world.car(input));
  made.push(await world.car({ chassis: "M1-001", claim: 2, read: { "front.camber": "5°00'" } }));
  await world.car({ club: world.theirs, read: { "front.camber": "5°00'" } });
  cars = made.map(({ id }) => id);
  ownSeries = world.ours.seriesId;
  otherSeries = await world.inClub(async (db) => {
    const { id: _, clubId: __, ...series } = await db.series.findFirstOrThrow();
    const { id } = await db.series.create({
      data: { ...series, slug: "mark-2", name: "Mark 2", numberPrefix: "M2-", ordinal: 2 },
    });
    return id;
  });
  await rebuild();
}, 120_000);
afterAll(() => world?.close());

/** The tallies after whatever changed was worked out, against counting from scratch. */
const wrong = async () => {
  const book = await inClub(bookOf);
  await inClub((ctx) => refreshSearchIndex(ctx, book));
  return compareTallies(inClub, book);
};

const withoutCondition = <T extends { readonly choice: { readonly condition?: unknown } }>(page: T) => {
  const { condition: _, ...choice } = page.choice;
  return { ...page, choice };
};

const someConditions: readonly Condition[] = [
  { op: "always" },
  { op: "number", characteristic: "front.camber", is: "lt", si: 0 },
  { op: "not", of: { op: "status", in: ["inUse"] } },
  {
    op: "any",
    of: [
      { op: "modified", in: ["brakes"] },
      { op: "built", from: "1972-01-01" },
    ],
  },
];

const withoutSeries = Prisma.raw(columnList.sql.replace("series_id, ", ""));

/** Where cars of which a condition holds are counted from: off the blocks, and one by one. */
function countedBoth(ctx: Context, condition: Condition): readonly [Counted, Counted] {
  const bits = truthBitsSql({ ...conditionBits(condition, ctx.today), among: everyCarSql({}) });
  const where = Prisma.sql`c.merged_into_id IS NULL AND ${conditionSql(condition, ctx.today).yes}`;
  return [{ where, bits }, { where }];
}

/** What is counted of them, each kind in one row. */
async function counted(ctx: Context, about: LiveAbout, condition: Condition) {
  const [blocks, oneByOne] = countedBoth(ctx, condition);
  const rows = (source: Counted) =>
    ctx.db.$queryRaw<object[]>(
      // Off blocks they are of no series.
      Prisma.sql`SELECT row(${withoutSeries}, sum(count)::int)::text AS row FROM ${countedSql(about, source)} AS p
        GROUP BY ${withoutSeries} HAVING sum(count) > 0 ORDER BY 1`,
    );
  return { blocks: await rows(blocks), oneByOne: await rows(oneByOne) };
}

/** What pages say read off the tallies, and what they say off their blocks. */
async function bothWays(narrowed: { readonly series?: string }) {
  return inClub(async (ctx) => {
    const pages = [];
    for (const further of [{}, { condition: everyCar }]) {
      const input = { ...narrowed, ...further };
      const spreads = [];
      for (const key of keys) {
        spreads.push(withoutCondition(await spread(ctx, { ...input, key })));
        spreads.push(withoutCondition(await spread(ctx, { ...input, key, side: "left" })));
      }
      const { total, facets } = await registerList(ctx, input);
      pages.push({ spreads, total, facets, prevalence: withoutCondition(await prevalence(ctx, input)) });
    }
    return pages;
  });
}

const STATUSES = ["inUse", "laidUp", "destroyed", "dismantled", "unknown"] as const;
const DAYS = ["1971-03-01", "1971-12-31", "1972-04-01"] as const;

type Step = (car: string, other: string, pick: number) => Promise<unknown>;

/** What may happen to a car, by whichever way: what is worked out hangs on the rows, not on who wrote them. */
const steps: Readonly<Record<string, Step>> = {
  status: (carId, _, pick) =>
    world.inClub(async (db) => {
      await db.carStatusSpan.deleteMany({ where: { carId } });
      const status = STATUSES[pick % STATUSES.length] ?? "unknown";
      await db.carStatusSpan.create({ data: { carId, status } });
    }),
  series: (id, _, pick) =>
    world.inClub((db) =>
      db.car.updateMany({
        where: { id },
        data: { seriesId: [ownSeries, otherSeries, null][pick % 3] ?? null },
      }),
    ),
  built: (id, _, pick) =>
    world.inClub((db) => {
      const day = new Date(DAYS[pick % DAYS.length] ?? DAYS[0]);
      const built = pick % 4 === 0 ? null : day;
      return db.car.updateMany({
        where: { id },
        data: { builtEarliest: built, builtLatest: built, builtText: built && "so" },
      });
    }),
  merge: (id, other, pick) =>
    world.inClub((db) =>
      db.car.updateMany({
        where: { id },
        data: { mergedIntoId: pick % 2 === 0 || id === other ? null : other },
      }),
    ),
  reading: async (carId, _, pick) => {
    const characteristic = pick % 2 === 0 ? "front.camber" : "rear.camber";
    const si = (pick - 5) / 100;
    await world.inClub(async (db) => {
      const sequence = (await db.settingSheet.count({ where: { carId } })) + 1;
      const sheet = await db.settingSheet.create({
        data: { carId, on: new Date(DAYS[pick % 3] ?? DAYS[0]), sequence, trust: "stated" },
      });
      for (const side of ["left", "right"] as const) {
        const value = { valueKind: "quantity", entered: `${pick}`, number: si, resolution: 0.001 } as const;
        await db.reading.create({ data: { settingSheetId: sheet.id, characteristic, side, ...value } });
      }
    });
    await rebuild();
  },
  superseded: async (carId) => {
    await world.inClub((db) =>
      db.settingSheet.updateMany({ where: { carId }, data: { supersededAt: new Date() } }),
    );
    await rebuild();
  },
  modified: async (carId, _, pick) => {
    await world.inClub((db) =>
      db.modification.updateMany({
        where: { carId },
        data: { supersededAt: pick % 2 === 0 ? new Date() : null },
      }),
    );
    await rebuild();
  },
  emptied: (carId) => world.inClub((db) => db.currentValue.deleteMany({ where: { carId } })),
  specified: async (_car, _other, pick) => {
    await world.inClub((db) =>
      db.currentValue.updateMany({
        where: { characteristic: keys[pick % keys.length] ?? keys[0] },
        data: { verdict: pick % 2 === 0 ? "outsideLimits" : "asSpecified" },
      }),
    );
  },
  dated: (carId, _, pick) =>
    world.inClub((db) =>
      db.datedItem.create({
        data: { carId, kind: "harness", label: "Harness", validTo: new Date(DAYS[pick % 3] ?? DAYS[0]) },
      }),
    ),
  replaced: (carId) =>
    world.inClub((db) => db.datedItem.updateMany({ where: { carId }, data: { replacedAt: new Date() } })),
};

const edits = fc.array(
  fc.record({
    step: fc.constantFrom(...Object.keys(steps)),
    car: fc.nat({ max: 6 }),
    other: fc.nat({ max: 6 }),
    pick: fc.nat({ max: 11 }),
  }),
  { minLength: 1, maxLength: 5 },
);

describe("the tallies", () => {
  test("are what counting from scratch gives, whatever is done to whichever cars", async () => {
    await fc.assert(
      fc.asyncProperty(edits, async (done) => {
        for (const { step, car, other, pick } of done)
          await steps[step]?.(cars[car] ?? "", cars[other] ?? "", pick);
        expect(await wrong()).toEqual([]);
      }),
      { numRuns: 25 },
    );
  }, 300_000);

  test("make every page say what it says off their blocks", async () => {
    await rebuild();
    for (const narrowed of [{}, { series: "mark-1" }, { series: "mark-2" }]) {
      const [kept, counted] = await bothWays(narrowed);
      expect(kept).toEqual(counted);
    }
  });

  test.each(["value", "known", "differing", "told", "changed"] as const)(
    "have of %s, where a condition holds, in their blocks what counting one by one gives",
    async (about) => {
      // The same read twice in a year counts twice.
      for (const _ of [1, 2]) await steps.reading?.(cars[0] ?? "", "", 4);
      await wrong();
      for (const condition of someConditions) {
        const { blocks, oneByOne } = await inClub((ctx) => counted(ctx, about, condition));
        expect(blocks).toEqual(oneByOne);
      }
      const every = await inClub((ctx) => counted(ctx, about, { op: "always" }));
      expect(every.blocks.length).toBeGreaterThan(0);
    },
  );

  test("have the counts of what falls due that its rows have", async () => {
    const page = await inClub((ctx) => duePage(ctx, {}));
    const sums = new Map<string, number>();
    for (const { kind, standing } of page.items) {
      const place = `${kind} ${standing}`;
      sums.set(place, (sums.get(place) ?? 0) + 1);
    }
    const told = page.counts.flatMap(({ kind, counts }) =>
      Object.entries(counts).map(([standing, count]) => [`${kind} ${standing}`, count] as const),
    );
    expect(new Map(told.filter(([, count]) => count > 0))).toEqual(sums);
  });

  test("follow a characteristic of the club's own into another assembly", async () => {
    const own = {
      key: "own.day",
      label: "Own day",
      kind: "date",
      sided: false,
      setting: false,
      help: "A day",
      definition: {},
    } as const;
    const { id } = await world.inClub((db) =>
      db.characteristic.create({ data: { ...own, assembly: "chassis", removable: false } }),
    );
    const { id: carId } = await world.car({ chassis: "M1-900" });
    await world.inClub((db) =>
      db.currentValue.create({
        data: {
          ...{
            carId,
            characteristic: own.key,
            side: "whole",
            valueKind: "date",
            entered: "1 May 2026",
            text: "2026-05-01",
          },
          ...{ origin: "asBuilt", originId: carId, verdict: "notRecorded" },
        },
      }),
    );
    const due = async () => (await inClub((ctx) => duePage(ctx, {}))).counts.map(({ kind }) => kind);
    expect(await due()).not.toContain(own.key);
    await world.inClub((db) => db.characteristic.updateMany({ where: { id }, data: { assembly: "safety" } }));
    expect(await due()).toContain(own.key);
    expect(await wrong()).toEqual([]);
    await world.inClub(async (db) => {
      await db.currentValue.deleteMany({ where: { characteristic: own.key } });
      await db.characteristic.deleteMany({ where: { id } });
    });
  });

  test("keep no row that counts nothing, so that a text taken back is gone", async () => {
    await inClub(async (ctx) => refreshSearchIndex(ctx, await bookOf(ctx)));
    expect(await world.inClub((db) => db.tally.count({ where: { count: { lte: 0 } } }))).toBe(0);
  });

  test("are told where somebody tampered with them, and counted anew on request", async () => {
    await wrong();
    await world.inClub((db) => db.tally.updateMany({ where: { about: "known" }, data: { count: 99 } }));
    expect(await wrong()).not.toEqual([]);
    await inClub(forgetTallies);
    expect(await wrong()).toEqual([]);
    // One that no car has, within the places in use and far beyond them.
    for (const place of [77, 16_000]) {
      await world.inClub(
        (db) =>
          db.$executeRaw`UPDATE tally_block SET cars = set_bit(cars, ${place}::int, 1) WHERE sort = (SELECT min(sort) FROM tally WHERE about = 'car')`,
      );
      const told = (await wrong()).map(({ about, kept, counted }) => [about, kept - counted]);
      expect(told).toEqual([["car", 1]]);
      await inClub(forgetTallies);
      expect(await wrong()).toEqual([]);
    }
    await world.inClub((db) => db.$executeRaw`DELETE FROM tally_block`);
    expect((await wrong()).length).toBeGreaterThan(10);
    await inClub(forgetTallies);
    expect(await wrong()).toEqual([]);
  });

  test("of one club hold nothing of another", async () => {
    const camber = await world.inClub((db) => db.tally.count({ where: { entered: "5°00'" } }), world.theirs);
    expect(camber).toBe(0);
    await openOperator(world.database, "theirs", async (ctx) => refreshSearchIndex(ctx, await bookOf(ctx)));
    const [{ cars: ours } = { cars: 0 }] = await inClub(
      ({ db }) =>
        db.$queryRaw<{ cars: number }[]>`SELECT sum(count)::int AS cars FROM tally WHERE about = 'car'`,
    );
    expect(ours).toBe(await world.inClub((db) => db.car.count({ where: { mergedIntoId: null } })));
  });

  test("are kept by many who look at once, none waiting for another crosswise", async () => {
    for (let round = 0; round < 3; round++) {
      await world.inClub((db) => db.car.updateMany({ data: { remarks: `round ${round}` } }));
      await Promise.all(
        cars.map((id, index) =>
          inClub(async (ctx) => {
            await ctx.db.car.updateMany({
              where: { id },
              data: { firstRegisteredText: `${round} ${index}` },
            });
            await refreshSearchIndex(ctx, await bookOf(ctx));
          }),
        ),
      );
      expect(await wrong()).toEqual([]);
    }
  });
});
