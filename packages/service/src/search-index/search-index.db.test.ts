import { openWorld, type World } from "@trunnion/fixtures";
import type { Condition } from "@trunnion/register";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { rebuildAllCurrentValues } from "../current-value";
import { openMember, openOperator } from "../gate";
import { registerList } from "../register-list";
import { correctionsOf, searchedIn } from "./read";
import { refreshSearchIndex } from "./write";

let world: World;
let car: { readonly id: string };

const inClub = <T>(work: (ctx: Context) => Promise<T>, club = "ours") =>
  openOperator(world.database, club, work);
const found = async (search: string) =>
  (await inClub((ctx) => registerList(ctx, { search }))).cars.map(({ reference }) => reference);

beforeAll(async () => {
  world = await openWorld();
  car = await world.car({
    chassis: "M1-007",
    registration: "GR 95-837",
    read: { "body.colour": "Fjord blå", "front.upright.source": "Grøndal foundry" },
    modified: { "front.disc.face": "drilled" },
    keeper: { name: "Tõnu Bråtvær" },
  });
  await world.car({ chassis: "M1-008", read: { "body.colour": "Rowan red" } });
  await world.car({ chassis: "T9-001", club: world.theirs, read: { "body.colour": "Cloudberry" } });
  for (const club of ["ours", "theirs"])
    await inClub(async (ctx) => rebuildAllCurrentValues(ctx, await bookOf(ctx)), club);
}, 120_000);
afterAll(() => world?.close());

describe("a search", () => {
  test.each([
    ["grondal", [], "as it stands on the record, accents aside"],
    ["grondla", [{ word: "grondla", as: ["grondal"] }], "two letters that changed places"],
    ["gröndall", [{ word: "grondall", as: ["grondal"] }], "one letter too many"],
  ])("takes %j for a word of the record and says so: %s", async (search, corrections) => {
    expect(await found(search)).toEqual(["M1-007"]);
    expect(await inClub(async (ctx) => correctionsOf(ctx, await searchedIn(ctx, search)))).toEqual(
      corrections,
    );
  });

  test("compares no word that is longer than any that is kept", async () => {
    const long = "fjord".repeat(40);
    expect(await found(long)).toEqual([]);
    expect(await inClub(async (ctx) => correctionsOf(ctx, await searchedIn(ctx, long)))).toEqual([]);
  });

  test("takes no number for another", async () => {
    expect(await found("95838")).toEqual([]);
  });

  test("finds what was written a moment ago, and no longer what was taken back", async () => {
    expect(await found("sawmill")).toEqual([]);
    const note = await world.inClub((db) =>
      db.historyNote.create({ data: { carId: car.id, text: "Stood behind a sawmill", trust: "stated" } }),
    );
    expect(await found("sawmill")).toEqual(["M1-007"]);
    await world.inClub((db) =>
      db.historyNote.updateMany({ where: { id: note.id }, data: { text: "Nothing" } }),
    );
    expect(await found("sawmill")).toEqual([]);
  });

  test("shows a keeper's name, even a mistyped one, to nobody who may not see it", async () => {
    const owner = await world.person({ roles: ["owner"] });
    for (const search of ["bratvaer", "bratvear"]) {
      expect(await found(search)).toEqual(["M1-007"]);
      const asked = await openMember(world.database, owner, "ours", (ctx) => registerList(ctx, { search }));
      expect(asked).toMatchObject({ total: 0, corrections: [] });
    }
  });

  test("knows an erased name no more, before anybody searches again", async () => {
    await inClub(async (ctx) => refreshSearchIndex(ctx, await bookOf(ctx)));
    await world.inClub((db) => db.keeper.updateMany({ data: { name: null } }));
    const kept = await world.inClub((db) => db.carText.count({ where: { section: "keeper" } }));
    expect(kept).toBe(0);
    expect(await found("bratvaer")).toEqual([]);
  });
});

describe("another club", () => {
  const ask = (text: string) => world.inClub((db) => db.$queryRawUnsafe<unknown[]>(text));

  test("is not searched, by whatever the functions that pass row-level security are asked", async () => {
    await inClub(async (ctx) => refreshSearchIndex(ctx, await bookOf(ctx)), "theirs");
    expect(await ask("SELECT cars_with('%cloudberry%', NULL, true)")).toEqual([]);
    expect(await ask("SELECT cars_with('%', '%', true) EXCEPT SELECT id FROM car")).toEqual([]);
    expect(await ask("SELECT * FROM near_words('cloudbery', true)")).toEqual([]);
    const theirs = await world.inClub(
      (db) => db.$queryRawUnsafe<unknown[]>("SELECT * FROM near_words('cloudbery', true)"),
      world.theirs,
    );
    expect(theirs).toEqual([{ word: "cloudberry" }]);
  });

  test("is not searched where no club is set at all", async () => {
    const nobody = await world.asOwner((db) =>
      db.$queryRawUnsafe<unknown[]>("SELECT cars_with('%', NULL, true)"),
    );
    expect(nobody).toEqual([]);
  });

  test("is not counted", async () => {
    const { total, facets } = await inClub((ctx) => registerList(ctx, {}));
    expect(total).toBe(2);
    expect(facets.series.map(({ cars }) => cars)).toEqual([2]);
  });
});

describe("the counts", () => {
  test("are of the cars shown, and narrow the list to as many as they say", async () => {
    const { facets } = await inClub((ctx) => registerList(ctx, {}));
    expect(facets.modified).toEqual([{ assembly: "brakes", cars: 1 }]);
    expect(facets.status).toEqual([{ status: "unknown", cars: 2 }]);
    expect(facets.decade).toEqual([{ decade: null, cars: 2 }]);
    for (const { verdict, cars } of facets.verdict)
      expect(
        (await inClub((ctx) => registerList(ctx, { condition: { op: "anyVerdict", in: [verdict] } }))).total,
      ).toBe(cars);
    const brakes: Condition = { op: "modified", in: ["brakes"] };
    const narrowed = await inClub((ctx) => registerList(ctx, { condition: brakes, search: "fjord" }));
    expect(narrowed).toMatchObject({ total: 1, facets: { modified: [{ assembly: "brakes", cars: 1 }] } });
    expect((await inClub((ctx) => registerList(ctx, { condition: brakes, search: "rowan" }))).total).toBe(0);
  });
});

describe.each(["chassis", "built", "differing"] as const)("the list in order of %s", (order) => {
  test("shows each car once, page by page", async () => {
    const chassis = Array.from({ length: 120 }, (_, index) => `M1-${100 + index}`);
    await world.inClub(async (db) => {
      if ((await db.car.count()) < 100)
        await db.car.createMany({
          data: chassis.map((number, index) => ({
            chassis: number,
            chassisKey: number.replace("-", ""),
            ...(index % 3 === 0
              ? {}
              : {
                  builtEarliest: new Date(`197${index % 7}-03-01`),
                  builtLatest: new Date(`197${index % 7}-03-31`),
                }),
          })),
        });
    });
    const seen: string[] = [];
    for (let after: string | undefined; ; ) {
      const page = await inClub((ctx) =>
        registerList(ctx, { order, ...(after === undefined ? {} : { after }) }),
      );
      seen.push(...page.cars.map(({ reference }) => reference));
      after = page.next;
      if (after === undefined) break;
    }
    expect(seen).toHaveLength(122);
    expect(new Set(seen).size).toBe(122);
    if (order === "differing") expect(seen[0]).toBe("M1-007");
  });
});
