import { insertRows, Prisma } from "@trunnion/db";
import { openWorld, type World } from "@trunnion/fixtures";
import { builtInBook, type Condition } from "@trunnion/register";
import { v7 as uuid } from "uuid";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Context } from "../context";
import { openOperator } from "../gate";
import { refreshWholeSearchIndex } from "../search-index";
import { countSql } from "./facet";
import { followingSql, type ListOrder } from "./order";
import { type CarChoice, choiceSql } from "./policy";
import { chosenCarIds, comparedSql, foundCars, pageSql, type RegisterListInput, registerList } from "./read";

let world: World;

const CARS = 3_000;
const parts = [
  "front.antiRollBar.diameter",
  "rear.antiRollBar.diameter",
  "front.disc.diameter",
  "front.disc.thickness",
];
const choices = ["front.disc.face", "front.lowerArm.bush", "brakes.hose", "body.style"];

/** Values that spread: one car in a hundred has the thickest bar, every other a plain disc. */
function valuesOf(carId: string, index: number): readonly object[] {
  const row = { carId, side: "whole", origin: "asBuilt", originId: carId, verdict: "asSpecified" };
  const numbers = parts.map((characteristic, place) => {
    const number = 0.014 + ((index * 7 + place) % 100) / 10_000;
    const odd = index % 100 === place;
    return {
      ...row,
      characteristic,
      valueKind: "quantity",
      entered: `${number} m`,
      number,
      resolution: 0.001,
      verdict: odd ? "differentPart" : "asSpecified",
      nominalNumber: 0.016,
    };
  });
  const codes = choices.map((characteristic, place) => {
    const text = (index + place) % 2 === 0 ? "plain" : `code${index % 40}`;
    return { ...row, characteristic, valueKind: "choice", entered: text, text };
  });
  // Of one car in ten the two sides, mostly unlike.
  const sided = ["left", "right"].flatMap((side, place) => {
    const number = -((index * (7 + 6 * place)) % 100) / 1_000;
    const camber = { valueKind: "quantity", entered: `${number} rad`, number, resolution: 0.001 };
    return index % 10 === 0 ? [{ ...row, characteristic: "front.camber", side, ...camber }] : [];
  });
  const colour = `Colour ${index % 50}`;
  return [
    ...numbers,
    ...codes,
    ...sided,
    { ...row, characteristic: "body.colour", valueKind: "text", entered: colour, text: colour },
  ];
}

async function addCars(seriesId: string) {
  const cars = Array.from({ length: CARS }, (_, index) => {
    const chassis = `M1-${String(index).padStart(5, "0")}`;
    return {
      id: uuid(),
      seriesId,
      chassis,
      chassisKey: chassis.replace("-", ""),
      claim: 1,
      version: 1,
      recordedAt: new Date(),
    };
  });
  const spans = cars.map(({ id }) => ({
    id: uuid(),
    carId: id,
    status: "inUse",
    trust: "stated",
    recordedAt: new Date(),
  }));
  return { cars, spans, values: cars.flatMap(({ id }, index) => valuesOf(id, index)) };
}

beforeAll(async () => {
  world = await openWorld();
  for (const club of [world.ours, world.theirs]) {
    const { cars, spans, values } = await addCars(club.seriesId);
    await world.inClub(async (db) => {
      await insertRows(db, "car", cars);
      await insertRows(db, "carStatusSpan", spans);
      await insertRows(db, "currentValue", values);
    }, club);
  }
  await world.asOwner((db) => db.$executeRawUnsafe("ANALYZE"));
}, 180_000);
afterAll(() => world?.close());

interface Node {
  readonly "Node Type": string;
  readonly "Relation Name"?: string;
  readonly "Index Cond"?: string;
  readonly "Recheck Cond"?: string;
  readonly Filter?: string;
  readonly "Index Name"?: string;
  readonly Plans?: readonly Node[];
}

function nodesOf(node: Node): readonly Node[] {
  return [node, ...(node.Plans ?? []).flatMap(nodesOf)];
}

async function planOf(ctx: Context, query: Prisma.Sql): Promise<readonly Node[]> {
  const [row] = await ctx.db.$queryRaw<{ "QUERY PLAN": readonly { readonly Plan: Node }[] }[]>(
    Prisma.sql`EXPLAIN (FORMAT JSON) ${query}`,
  );
  const [plan] = row?.["QUERY PLAN"] ?? [];
  if (!plan) throw new Error("no plan");
  return nodesOf(plan.Plan);
}

const bar = (si: number): Condition => ({
  op: "number",
  characteristic: "front.antiRollBar.diameter",
  is: "gt",
  si,
});
const disc: Condition = { op: "code", characteristic: "front.disc.face", in: ["code7"] };
const conditions: Readonly<Record<string, Condition>> = {
  "one car in a hundred": bar(0.0238),
  "every other car": { op: "code", characteristic: "front.disc.face", in: ["plain"] },
  "two at once": { op: "all", of: [bar(0.0236), disc] },
  "either of two": { op: "any", of: [bar(0.0238), disc] },
  "none of two": { op: "not", of: { op: "any", of: [bar(0.0141), { op: "status", in: ["laidUp"] }] } },
  "a verdict": { op: "verdict", characteristic: "front.antiRollBar.diameter", in: ["differentPart"] },
  "a multiple": {
    op: "against",
    characteristic: "front.antiRollBar.diameter",
    measure: "ratio",
    is: "gt",
    si: 1.4,
  },
  words: { op: "textHas", characteristic: "body.colour", text: "colour 7" },
  "nothing anybody has": { op: "recorded", characteristic: "oil.cooler" },
};

const inClub = <T>(work: (ctx: Context) => Promise<T>) => openOperator(world.database, "ours", work);

function queriesOf(ctx: Context, choice: CarChoice): Readonly<Record<string, Prisma.Sql>> {
  return {
    "first page": pageSql(choiceSql(ctx, choice)),
    "later page": pageSql(Prisma.sql`${choiceSql(ctx, choice)} AND ${followingSql("M1-02900")}`),
    unknown: pageSql(choiceSql(ctx, choice, "unknown")),
    count: countSql(ctx, choice),
  };
}

/** Tables of a few rows, which any plan reads whole. */
const small = new Set(["series", "b"]);

function scansOf(plan: readonly Node[]) {
  return plan.filter((node) => node["Relation Name"] !== undefined && !small.has(node["Relation Name"]));
}

describe.each(Object.entries(conditions))("the list of cars by %s", (_, condition) => {
  test.each(["first page", "later page", "unknown", "count"])(
    "%s: reads values by an index, and names the club in every scan",
    (query) =>
      inClub(async (ctx) => {
        const plan = await planOf(ctx, queriesOf(ctx, { condition })[query] ?? Prisma.empty);
        const scans = scansOf(plan);
        expect(scans.length).toBeGreaterThan(0);
        for (const scan of scans) {
          const told = JSON.stringify(scan, (key, value) => (key === "Plans" ? undefined : value));
          if (scan["Relation Name"] === "current_value") expect(scan["Node Type"], told).not.toBe("Seq Scan");
          const bounds = [scan["Index Cond"], scan["Recheck Cond"], scan.Filter].join(" ");
          const underBitmap = scan["Node Type"] === "Bitmap Heap Scan";
          expect(underBitmap || bounds.includes("club_id"), told).toBe(true);
        }
      }),
  );
});

describe("the rest of the list", () => {
  test("is paged by the index it is ordered by, from where the page before ended", () =>
    inClub(async (ctx) => {
      const plan = await planOf(
        ctx,
        pageSql(Prisma.sql`${choiceSql(ctx, {})} AND ${followingSql("M1-02900")}`),
      );
      const [limit, first] = plan;
      expect([limit?.["Node Type"], first?.["Node Type"]]).toEqual(["Limit", "Index Scan"]);
      expect(first?.["Index Name"]).toBe("car_club_id_chassis_key_claim_key");
      expect(first?.["Index Cond"]).toContain("chassis_key");
    }));

  test("counts what differs on the cars of one page by their key", () =>
    inClub(async (ctx) => {
      const cars = await ctx.db.car.findMany({ select: { id: true }, take: 50 });
      const plan = await planOf(
        ctx,
        comparedSql(
          cars.map(({ id }) => id),
          builtInBook,
        ),
      );
      const scans = scansOf(plan).filter((node) => node["Relation Name"] === "current_value");
      expect(scans.map((node) => node["Node Type"])).not.toContain("Seq Scan");
    }));
});

describe("a list found by the blocks of the tallies", () => {
  beforeAll(async () => refreshWholeSearchIndex(inClub, builtInBook), 180_000);

  const byBar: ListOrder = { key: "front.antiRollBar.diameter", descending: true };
  const orders = ["chassis", "built", "differing", byBar] as const;

  /** The first cars of a list car by car, and two pages of it by the blocks. */
  async function bothWays(input: RegisterListInput) {
    return inClub(async (ctx) => {
      const { rows } = await foundCars(ctx, input);
      const oneByOne: string[] = [];
      for await (const { reference } of rows) if (oneByOne.push(reference) === 100) break;
      const first = await registerList(ctx, input);
      const second =
        first.next === undefined ? undefined : await registerList(ctx, { ...input, after: first.next });
      const paged = [...first.cars, ...(second?.cars ?? [])].map(({ reference }) => reference);
      return { oneByOne, paged, first };
    });
  }

  test.each([true, false])(
    "and, whole and by a quantity, page after page has the cars in the order they have one by one: %s",
    async (descending) => {
      for (const key of ["front.antiRollBar.diameter", "front.camber"]) {
        const input: RegisterListInput = { order: { key, descending } };
        const [oneByOne, paged] = await inClub(async (ctx) => {
          const every: string[] = [];
          for await (const { reference } of (await foundCars(ctx, input)).rows)
            if (every.push(reference) === 500) break;
          const pages: string[] = [];
          let after: string | undefined;
          while (pages.length < 500) {
            const page = await registerList(ctx, { ...input, ...(after === undefined ? {} : { after }) });
            pages.push(...page.cars.map(({ reference }) => reference));
            after = page.next;
          }
          return [every, pages];
        });
        expect(paged).toEqual(oneByOne);
      }
    },
    120_000,
  );

  test.each(Object.entries(conditions))(
    "has of %s the cars that are found one by one, in every order",
    async (_, condition) => {
      for (const order of orders) {
        for (const show of ["yes", "unknown"] as const) {
          const { oneByOne, paged, first } = await bothWays({ condition, order, show });
          expect(first.stale).toBe(0);
          expect(paged, JSON.stringify({ order, show })).toEqual(oneByOne);
          const all = await inClub((ctx) => chosenCarIds(ctx, { condition }, show));
          expect(show === "yes" ? first.total : first.unknown).toBe(all.length);
        }
      }
    },
    60_000,
  );
});
