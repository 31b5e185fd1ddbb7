import { quantileOf } from "@trunnion/calc";
import { openWorld, type World } from "@trunnion/fixtures";
import { type Condition, refused } from "@trunnion/register";
import { mean, median, medianAbsoluteDeviation } from "simple-statistics";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { rebuildAllCurrentValues } from "../current-value";
import { openOperator } from "../gate";
import { together } from "../together";
import { type SpreadInput, spread } from "./index";

let world: World;
const camber = "front.camber";
/** Minutes, left and right alike; the last is a slip of the pen or a bent car. */
const minutes = [-30, -25, -22, -19, -18, -15, -12, -10, -8, -5, -3, 0, 4, 7, 10, -310];
const bar = "rear.antiRollBar.diameter";

const sayMinutes = (value: number) =>
  `${value < 0 ? "-" : ""}${Math.floor(Math.abs(value) / 60)}°${String(Math.abs(value) % 60).padStart(2, "0")}'`;

async function addCars(): Promise<void> {
  for (const [index, value] of minutes.entries()) {
    await world.car({
      chassis: `M1-${String(index + 1).padStart(3, "0")}`,
      built: index % 2 === 0 ? "1971" : "1972",
      read: { [camber]: sayMinutes(value), "body.colour": index < 9 ? "Red" : "Blue" },
      readOn: index < 8 ? "2019-05-01" : "2021-05-01",
      // Whoever has a thick bar has drilled discs; of the last the disc is not known.
      asBuilt: { [bar]: index < 6 ? "20 mm" : "not fitted" },
      ...(index === 15
        ? {}
        : { modified: { "front.disc.face": index < 6 ? "drilled" : "plain" }, modifiedOn: "1995-05-01" }),
    });
  }
  const merged = await world.car({ chassis: "M1-050", read: { [camber]: "5°00'" } });
  const into = await world.car({ chassis: "M1-051" });
  await world.car({ chassis: "M1-001", club: world.theirs, read: { [camber]: "5°00'" } });
  await world.inClub((db) =>
    db.car.updateMany({ where: { id: merged.id }, data: { mergedIntoId: into.id } }),
  );
}

beforeAll(async () => {
  world = await openWorld();
  await addCars();
  await openOperator(world.database, "ours", async (ctx) => rebuildAllCurrentValues(ctx, await bookOf(ctx)));
}, 120_000);
afterAll(() => world?.close());

const inClub = <T>(work: (ctx: Context) => Promise<T>) => openOperator(world.database, "ours", work);
const of = (input: Partial<SpreadInput> = {}) => inClub((ctx) => spread(ctx, { key: camber, ...input }));
const both = minutes.flatMap((value) => [value, value]);

describe("the spread of a setting", () => {
  test("counts each side's value of the club's standing cars, and no other's", async () => {
    const found = await of();
    expect(found).toMatchObject({ cars: 17, known: 16, values: 32, as: "classes", unit: "°", absent: 0 });
    expect(found.rows.reduce((sum, { count }) => sum + count, 0)).toBe(32);
    expect((await of({ side: "left" })).values).toBe(16);
  });

  test("puts each value into the class whose ends it lies between", async () => {
    const { rows } = await of();
    for (const { from = 0, to = 0, count } of rows) {
      expect(count).toBe(both.filter((value) => value >= from && value < to).length);
    }
    const [first] = rows;
    expect(first?.label).toMatch(/^-\d+°\d\d?' up to -\d+°\d\d?'$/);
  });

  test("says how many are inside limits and how many differ", async () => {
    const { rows } = await of();
    const sum = (part: "asSpecified" | "differs" | "accepted" | "notCompared") =>
      rows.reduce((total, row) => total + row[part], 0);
    expect(sum("asSpecified") + sum("differs") + sum("accepted") + sum("notCompared")).toBe(32);
    expect(sum("differs")).toBe(2);
  });

  test("has the median and quartiles that a general-purpose library and our own quantile work out", async () => {
    const { figures } = await of();
    expect(figures?.median).toBe(sayMinutes(Math.round(median(both))).replace("°0", "°"));
    expect(figures?.count).toBe(32);
    expect(figures?.lower).toBe(sayMinutes(Math.round(quantileOf(both, 0.25))));
    expect(mean(both)).not.toBe(median(both));
  });

  test("names the car that stands apart, by how many robust standard deviations", async () => {
    const { apart, apartCount } = await of();
    expect(apartCount).toBe(2);
    expect(apart.map(({ reference, side }) => `${reference} ${side}`)).toEqual([
      "M1-016 left",
      "M1-016 right",
    ]);
    const score = Math.abs(-310 - median(both)) / (1.482_602_218_505_602 * medianAbsoluteDeviation(both));
    expect(apart[0]?.score).toBeCloseTo(score, 6);
    expect(apart[0]?.value).toBe("-5°10'");
  });

  test("is narrowed to a series, to a condition, and to what both leave", async () => {
    const red: Condition = { op: "textHas", characteristic: "body.colour", text: "red" };
    expect((await of({ series: "mark-1" })).known).toBe(16);
    const narrowed = await of({ condition: red });
    expect(narrowed).toMatchObject({
      cars: 9,
      known: 9,
      choice: { condition: { said: expect.stringContaining("red") } },
    });
    await expect(of({ series: "mark-9" })).rejects.toMatchObject(
      refused("SERIES_NOT_FOUND", { series: "mark-9", known: ["mark-1"] }),
    );
    await expect(of({ key: "no.such" })).rejects.toMatchObject(
      refused("CHARACTERISTIC_NOT_FOUND", { characteristic: "no.such" }),
    );
  });

  test("tells what the specification wants, along the same axis", async () => {
    const { limits } = await of();
    expect(limits).toMatchObject([{ series: "Mark 1", cars: "", lower: -30, upper: 30, at: 0 }]);
  });

  test("goes by year of building and by year of measuring", async () => {
    const { built, recorded } = await of();
    expect(built.rows.map(({ year, count }) => [year, count])).toEqual([
      [1971, 16],
      [1972, 16],
    ]);
    expect(recorded.rows.map(({ year, count }) => [year, count])).toEqual([
      [2019, 16],
      [2021, 16],
    ]);
  });
});

describe("the spread of a part", () => {
  test("counts each kind of value, not fitted among them, and says nothing of standing apart", async () => {
    const found = await of({ key: "front.disc.face" });
    expect(found.as).toBe("each");
    expect(found.rows.map(({ label, count, differs }) => [label, count, differs])).toEqual([
      ["Plain", 9, 0],
      ["Cross-drilled", 6, 6],
    ]);
    expect(found.apart).toEqual([]);
    expect(found.recorded).toMatchObject({
      as: "shares",
      names: ["Plain", "Cross-drilled", "other"],
      rows: [{ year: 1995, counts: [9, 6, 0] }],
    });
    const bars = await of({ key: bar });
    expect(bars.rows.map(({ label, count }) => [label, count])).toEqual([
      ["not fitted", 10],
      ["20 mm", 6],
    ]);
  });

  test("nobody recorded is none, not an error", async () => {
    expect(await of({ key: "engine.capacity" })).toMatchObject({
      known: 0,
      values: 0,
      rows: [],
      apart: [],
    });
  });
});

describe("what goes with a part", () => {
  const goes = (value?: string) =>
    inClub((ctx) => together(ctx, { key: "front.disc.face", ...(value === undefined ? {} : { value }) }));

  test("counts cars of which both are known: one whose disc is not known is in no cell", async () => {
    const found = await goes();
    const rear = found.rows.find(({ key }) => key === bar);
    expect(found).toMatchObject({ first: "differs from factory", known: 15, lookedAt: 15 });
    expect(rear).toMatchObject({
      both: 6,
      firstOnly: 0,
      secondOnly: 0,
      neither: 9,
      commonest: "20 mm",
      small: true,
    });
    // 1/C(15, 6): every one of the six, out of all ways to draw six of fifteen.
    expect(rear?.exactProbability).toBeCloseTo(1 / 5005, 10);
    expect(rear?.phi).toBeCloseTo(1, 12);
    expect(rear?.holdsUp).toBe(true);
  });

  test("goes by a value as well, in its own words", async () => {
    const found = await goes("plain");
    expect(found.first).toBe("is Plain");
    expect(found.rows.find(({ key }) => key === bar)).toMatchObject({
      both: 0,
      firstOnly: 9,
      secondOnly: 6,
      neither: 0,
    });
  });
});
