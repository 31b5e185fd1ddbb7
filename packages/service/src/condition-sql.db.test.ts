import { CarStatus, Prisma } from "@trunnion/db";
import { openWorld, type World } from "@trunnion/fixtures";
import {
  assemblies,
  builtInBook,
  type CarView,
  type Comparison,
  type Condition,
  comparedVerdicts,
  conditionSchema,
  evaluate,
  knowables,
  sayCondition,
  stateKey,
  verdicts,
} from "@trunnion/register";
import fc from "fast-check";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { assessAll } from "./assessment";
import { conditionBits, everyCarSql, truthBitsSql } from "./condition-bits";
import { conditionSql } from "./condition-sql";
import type { Context } from "./context";
import { rebuildAllCurrentValues } from "./current-value";
import { openOperator } from "./gate";
import { recordsOf } from "./record";
import { refreshSearchIndex } from "./search-index";

let world: World;
let views: ReadonlyMap<string, { readonly chassis: string; readonly view: CarView }>;

const CARS = 40;
const clock = { now: new Date("2026-11-25T12:00:00Z") };
const day = (text: string) => new Date(`${text}T00:00:00Z`);

/** Entries in the trade's notation, by characteristic; what is sided is left out on one side now and then. */
const entries: Readonly<Record<string, readonly string[]>> = {
  "front.antiRollBar.diameter": ["9/16 in", "14.3 mm", "16 mm", "5/8 in", "none", "20 mm"],
  "rear.antiRollBar.diameter": ["none", "14 mm", "16 mm"],
  "front.disc.diameter": ["9 1/2 in", "10 1/2 in", "241 mm"],
  "front.disc.face": ["plain", "drilled", "grooved"],
  "front.lowerArm.bush": ["rubber", "polyurethane"],
  "front.caliper.boltThread": ["7/16-20 UNF", "M12x1.5"],
  "wheels.stud.thread": ["M12x1.5", "1/2-20 UNF"],
  "front.camber": ["-1°30'", "-0°20'", "0°", "0°30'", "-1.5°"],
  "front.castor": ["3°30'", "4°00'", "2°"],
  "front.disc.thickness": ["9 mm", "10.5 mm", "8.9 mm"],
  "front.caliper.source": ["Alloy four-pot, kit İ12", "ØRNHØI Straße", "οδός ΟΔΟΣ", "100 % _plain_"],
  "body.colour": ["Fjord-blå", "FJORD BLÅ", "Gerçek ILGAZ", "ochre"],
  "safety.harness.expires": ["6/2027", "25.11.2026", "2025"],
};
const keys = Object.keys(entries);
const absentKey = "oil.cooler";

/** Some of the characteristics, one or both sides of those that have sides. */
const valuesOf = fc
  .subarray(keys, { maxLength: 5 })
  .chain((some) =>
    fc.tuple(
      ...some.map((key) => {
        const sided = builtInBook.find(key)?.sided === true;
        const place = sided ? fc.constantFrom(key, `${key} left`, `${key} right`) : fc.constant(key);
        return fc.tuple(place, fc.constantFrom(...(entries[key] ?? [])));
      }),
    ),
  )
  .map((pairs) => Object.fromEntries(pairs));

const builtTexts = ["c. 1971", "1971", "3/72", "before March 1972", "12 May 1970"] as const;
const car = fc.record(
  {
    asBuilt: valuesOf,
    modified: valuesOf,
    read: valuesOf,
    readOn: fc.constantFrom("2026-11-24", "2025-11-25", "2025-11-24", "1994-01-01"),
    built: fc.constantFrom(...builtTexts),
    status: fc.constantFrom(...Object.values(CarStatus)),
    options: fc.subarray(["H", "OD"]),
    chassis: fc.constantFrom("M1-017", "M1-077", "unreadable"),
    seriesKnown: fc.boolean(),
  },
  { requiredKeys: ["chassis", "seriesKnown"] },
);

async function addCars(): Promise<void> {
  const { seed = 0 } = fc.readConfigureGlobal();
  for (const [index, { seriesKnown, ...input }] of fc.sample(car, { numRuns: CARS, seed }).entries()) {
    const given = Object.fromEntries(Object.entries(input).filter(([, part]) => part !== undefined));
    const { id } = await world.car({ ...given, chassis: input.chassis, claim: index + 1 });
    if (!seriesKnown)
      await world.inClub((db) => db.car.updateMany({ where: { id }, data: { seriesId: null } }));
  }
  await addOddCars();
}

/** What no form lets in, but a database may hold: numbers at the end of what a double holds, half a span of days. */
async function addOddCars(): Promise<void> {
  const extremes = [1e308, -1e308, 5e-324, 0, 1e-160];
  for (const [index, number] of extremes.entries()) {
    const place = {
      chassis: "odd",
      claim: index + 1,
      read: { "front.camber": "0°", "front.castor": "3°30'" },
    };
    const { id } = await world.car(place);
    await world.inClub(async (db) => {
      const sheet = await db.settingSheet.findFirstOrThrow({ where: { carId: id } });
      await db.reading.updateMany({ where: { settingSheetId: sheet.id, side: "left" }, data: { number } });
      await db.car.updateMany({ where: { id }, data: { builtEarliest: day("1971-01-01") } });
    });
  }
  await world.car({ chassis: "nothing known" });
  // Another club's cars are nobody's answer here.
  await world.car({ chassis: "M1-001", club: world.theirs, read: { "front.camber": "0°" } });
}

async function viewsOf(ctx: Context) {
  const cars = await ctx.db.car.findMany({ select: { id: true } });
  const records = await recordsOf(
    ctx,
    cars.map(({ id }) => id),
  );
  const assessments = await assessAll(ctx, records, builtInBook, ctx.today);
  return new Map(
    assessments.map(({ record, state, deviations }) => {
      const { status, basis, series } = record;
      const known = series === null ? {} : { seriesSlug: series.slug };
      const view: CarView = {
        status,
        basis,
        state,
        deviations,
        eventDay: ctx.today,
        book: builtInBook,
        ...known,
      };
      return [record.id, { chassis: record.reference, view }];
    }),
  );
}

beforeAll(async () => {
  world = await openWorld();
  await addCars();
  await openOperator(world.database, "ours", (ctx) => rebuildAllCurrentValues(ctx, builtInBook), clock);
  await openOperator(world.database, "theirs", (ctx) => rebuildAllCurrentValues(ctx, builtInBook), clock);
  await openOperator(world.database, "ours", (ctx) => refreshSearchIndex(ctx, builtInBook), clock);
  views = await openOperator(world.database, "ours", viewsOf, clock);
}, 180_000);
afterAll(() => world?.close());

const inClub = <T>(work: (ctx: Context) => Promise<T>) => openOperator(world.database, "ours", work, clock);

/** What SQL says of each car, in its ways: apart, at once, and by the blocks of the tallies; where they differ, each. */
async function truthsOf(ctx: Context, condition: Condition): Promise<ReadonlyMap<string, string>> {
  const { yes, no, is } = conditionSql(condition, ctx.today);
  const bits = truthBitsSql({ ...conditionBits(condition, ctx.today), among: everyCarSql({}) });
  const { sql } = Prisma;
  const inBits = sql`get_bit(h.yes, k.place % 16384) + 2 * get_bit(h.open, k.place % 16384)`;
  const rows = await ctx.db.$queryRaw<
    { id: string; said: readonly string[] }[]
  >(sql`WITH ${bits} SELECT c.id::text AS id, ARRAY[
      CASE WHEN ${yes} AND ${no} THEN 'both' WHEN ${yes} THEN 'yes' WHEN ${no} THEN 'no' ELSE 'unknown' END,
      CASE ${is} WHEN TRUE THEN 'yes' WHEN FALSE THEN 'no' ELSE 'unknown' END,
      (ARRAY['no', 'yes', 'unknown', 'both'])[1 + ${inBits}]] AS said
    FROM car c JOIN car_summary k ON k.car_id = c.id JOIN truth h ON h.block = k.place / 16384`);
  return new Map(rows.map(({ id, said }) => [id, [...new Set(said)].join(" or ")]));
}

/** What a car has of the characteristics a condition names, so that a failure can be read. */
function told({ view }: { readonly view: CarView }, condition: Condition): string {
  const text = JSON.stringify(condition);
  const values = [...view.state.values()].filter(({ characteristic }) => text.includes(characteristic));
  const found = values.map(({ characteristic, side, value, origin }) => {
    const verdict = view.deviations.find(
      (one) => one.characteristic === characteristic && one.side === side,
    )?.verdict;
    return `${stateKey(characteristic, side)} = ${value.entered} (${origin}, ${verdict ?? "not compared"})`;
  });
  return [
    `series ${view.seriesSlug ?? "none"}, ${view.status}`,
    JSON.stringify(view.basis.built ?? {}),
    ...found,
  ].join("; ");
}

async function expectAgreement(ctx: Context, condition: Condition): Promise<Set<string>> {
  const truths = await truthsOf(ctx, condition);
  const differing = [...views].flatMap(([id, one]) => {
    const expected = evaluate(condition, one.view);
    const found = truths.get(id);
    if (found === expected) return [];
    return [`  ${one.chassis}: evaluator ${expected}, SQL ${found ?? "no row"}; ${told(one, condition)}`];
  });
  if (differing.length > 0 || truths.size !== views.size) {
    const said = sayCondition(condition, builtInBook);
    throw new Error([`"${said}" of ${truths.size} cars`, ...differing.slice(0, 3)].join("\n"));
  }
  return new Set(truths.values());
}

const comparison = fc.constantFrom<Comparison>("eq", "ne", "lt", "le", "gt", "ge");

/** A characteristic that suits, or now and then any, or none at all; mostly on any side. */
const about = (...suits: readonly string[]) => {
  const suiting = fc.constantFrom(...suits);
  const any = fc.constantFrom(...keys, absentKey, "no.such.thing");
  const place = fc.record({
    characteristic: fc.oneof({ weight: 5, arbitrary: suiting }, { weight: 1, arbitrary: any }),
    side: fc.constantFrom(undefined, undefined, undefined, "whole", "left", "right"),
  });
  return place.map(({ characteristic, side }) => ({
    characteristic,
    ...(side === undefined ? {} : { side }),
  }));
};
const bars = ["front.antiRollBar.diameter", "rear.antiRollBar.diameter", "front.disc.diameter"] as const;
const sided = ["front.camber", "front.castor", "front.disc.thickness"] as const;
const coded = [
  "front.disc.face",
  "front.lowerArm.bush",
  "front.caliper.boltThread",
  "wheels.stud.thread",
] as const;
const texts = ["front.caliper.source", "body.colour"] as const;
const dated = ["safety.harness.expires"] as const;

const days = fc.constantFrom(
  "2026-11-24",
  "2026-11-25",
  "2027-06-30",
  "1971-01-01",
  "1971-12-31",
  "1972-02-29",
  "1970-05-12",
);

/** Numbers that some car has, their neighbours among doubles, and any other. */
const number = fc.oneof(
  fc
    .constantFrom(0.016, 0.0142875, 0.02, 0.014, (-1.5 * Math.PI) / 180, 0, 1, 1.25, 0.0, -0, 1e-320, 1e308)
    .chain((one) => fc.constantFrom(one, one * (1 + Number.EPSILON), one * (1 - Number.EPSILON))),
  fc.double({ noNaN: true, noDefaultInfinity: true }),
);

const codes = fc.uniqueArray(
  fc.constantFrom(
    "plain",
    "drilled",
    "rubber",
    "polyurethane",
    "7/16-20 UNF",
    "M12x1.5",
    "no such code",
    "o'clock",
  ),
  { minLength: 1, maxLength: 4 },
);
const text = fc.oneof(
  fc.constantFrom(
    "alloy",
    "istanbul",
    "İ12",
    "I12",
    "ı12",
    "ørn",
    "ORNHOI",
    "strasse",
    "STRAẞE",
    "ΟΔΌΣ",
    "οδοσ",
    "%",
    "_",
    "100 %",
  ),
  fc.constantFrom("blå", "bla", "fjord blå", "fjord-blå", "ılgaz", "'; --", "\\", "\u0301"),
  fc.string({ unit: "grapheme", minLength: 1, maxLength: 3 }),
);

const leaf: fc.Arbitrary<Condition> = fc.oneof(
  fc.constant<Condition>({ op: "always" }),
  fc.subarray(["mark-1", "mark-9"], { minLength: 1 }).map((one) => ({ op: "series" as const, in: one })),
  fc
    .uniqueArray(fc.constantFrom(...Object.values(CarStatus), "no such status"), {
      minLength: 1,
      maxLength: 3,
    })
    .map((one) => ({ op: "status" as const, in: one })),
  fc
    .record({ from: days, to: days }, { requiredKeys: [] })
    .map((span) => ({ op: "built" as const, ...span }) as Condition),
  fc.constantFrom(...knowables).map((what) => ({ op: "known" as const, what })),
  fc
    .subarray([...comparedVerdicts], { minLength: 1, maxLength: 4 })
    .map((one) => ({ op: "anyVerdict" as const, in: one })),
  fc
    .subarray([...assemblies], { minLength: 1, maxLength: 4 })
    .map((one) => ({ op: "modified" as const, in: one })),
  about(...keys).map((place) => ({ op: "recorded" as const, ...place })),
  about(...bars).map((place) => ({ op: "absent" as const, ...place })),
  fc
    .tuple(about(...bars, ...sided), comparison, number)
    .map(([place, is, si]) => ({ op: "number" as const, ...place, is, si })),
  fc.tuple(about(...coded), codes).map(([place, one]) => ({ op: "code" as const, ...place, in: one })),
  fc.tuple(about(...texts), text).map(([place, one]) => ({ op: "textHas" as const, ...place, text: one })),
  fc
    .tuple(about(...dated), comparison, fc.oneof(days, fc.constant("eventDay" as const)))
    .map(([place, is, date]) => ({ op: "date" as const, ...place, is, date })),
  fc
    .tuple(about(...keys), fc.uniqueArray(fc.constantFrom(...verdicts), { minLength: 1, maxLength: 4 }))
    .map(([place, one]) => ({ op: "verdict" as const, ...place, in: one })),
  fc
    .tuple(
      about(...bars, ...sided),
      fc.constantFrom("ratio" as const, "difference" as const),
      comparison,
      number,
    )
    .map(([place, measure, is, si]) => ({ op: "against" as const, ...place, measure, is, si })),
  fc
    .tuple(
      fc.constantFrom(...sided, ...keys),
      fc.option(fc.constantFrom(0, 0.001, 0.02, 1e-18), { nil: undefined }),
    )
    .map(([characteristic, by]) => ({
      op: "sidesDiffer" as const,
      characteristic,
      ...(by === undefined ? {} : { by }),
    })),
  fc
    .tuple(fc.constantFrom(...sided, ...keys), fc.constantFrom(1, 364, 365, 366, 11_000))
    .map(([characteristic, count]) => ({ op: "readingOlderThan" as const, characteristic, days: count })),
);

const condition = fc.letrec<{ readonly node: Condition }>((tie) => ({
  node: fc.oneof(
    { depthSize: "small", withCrossShrink: true },
    leaf,
    fc.array(tie("node"), { minLength: 1, maxLength: 4 }).map((of) => ({ op: "all" as const, of })),
    fc.array(tie("node"), { minLength: 1, maxLength: 4 }).map((of) => ({ op: "any" as const, of })),
    tie("node").map((of) => ({ op: "not" as const, of })),
  ),
})).node;

describe("a condition in SQL", () => {
  test("says of every car what the evaluator says, each operator by itself", () =>
    inClub(async (ctx) => {
      const seen = new Map<string, Set<string>>();
      const property = fc.asyncProperty(leaf, async (one) => {
        const truths = await expectAgreement(ctx, one);
        seen.set(one.op, new Set([...(seen.get(one.op) ?? []), ...truths]));
      });
      await fc.assert(property, { numRuns: 600 });
      const decided = Object.fromEntries([...seen].map(([op, truths]) => [op, [...truths].sort()]));
      const all = ["no", "unknown", "yes"];
      expect(decided).toEqual({
        always: ["yes"],
        series: all,
        status: all,
        built: all,
        known: ["no", "yes"],
        anyVerdict: all,
        modified: ["no", "yes"],
        recorded: ["no", "yes"],
        absent: all,
        number: all,
        code: all,
        textHas: all,
        date: all,
        verdict: all,
        against: all,
        sidesDiffer: all,
        readingOlderThan: all,
      });
    }));

  test("says of every car what the evaluator says, however nested", () =>
    inClub(async (ctx) => {
      const readable = condition.filter((one) => conditionSchema.safeParse(one).success);
      const property = fc.asyncProperty(readable, async (one) => {
        await expectAgreement(ctx, one);
      });
      await fc.assert(property, { numRuns: 400 });
    }));

  test("of a sided characteristic with one side not recorded is unknown, not no", () =>
    inClub(async (ctx) => {
      const outside: Condition = { op: "verdict", characteristic: "front.disc.thickness", in: ["missing"] };
      expect(await expectAgreement(ctx, outside)).toContain("unknown");
    }));

  test("at its limit of parts is still one query that the server plans and answers", () =>
    inClub(async (ctx) => {
      const parts = fc.sample(leaf, { numRuns: 198, seed: 7 }).filter(({ op }) => op !== "always");
      const half = Math.floor(parts.length / 2);
      const of = [parts.slice(0, half), parts.slice(half)].map((some) => ({ op: "any" as const, of: some }));
      await expectAgreement(ctx, { op: "all", of });
    }));
});
