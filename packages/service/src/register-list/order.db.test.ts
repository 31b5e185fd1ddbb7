import { insertRows } from "@trunnion/db";
import { openWorld, type World } from "@trunnion/fixtures";
import { v7 as uuid } from "uuid";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Context } from "../context";
import { openOperator } from "../gate";
import { foundCars, type RegisterListInput, registerList } from "./index";

const CARS = 130;
const camber = "front.camber";
const colour = "body.colour";
const face = "front.disc.face";
const harness = "safety.harness.expires";

let world: World;
let keys: readonly string[] = [];

/** Values by car, such that many are alike, some have two sides, some are known to have nothing, some are not recorded. */
const cambersOf = (index: number): readonly number[] => {
  if (index % 5 === 0) return [];
  const value = ((index * 7) % 11) / 300 - 0.02;
  return index % 3 === 0 ? [value, value + 0.05] : [value];
};
const colours = ["Rowan red", "ochre", "Ålborg green", "amber", "Zinc"];
const colourOf = (index: number) => (index % 4 === 0 ? undefined : colours[index % colours.length]);
const faceOf = (index: number) => (index % 2 === 0 ? undefined : index % 3 === 0 ? "drilled" : "plain");
const bareOf = (index: number) => index % 10 === 0;

function valuesOf(carId: string, index: number): readonly object[] {
  const row = { carId, side: "whole", origin: "asBuilt", originId: carId, verdict: "asSpecified" };
  const sides = cambersOf(index);
  const cambers = sides.map((number, place) => ({
    ...row,
    characteristic: camber,
    side: sides.length === 1 ? "whole" : place === 0 ? "right" : "left",
    valueKind: "quantity",
    entered: `${number} rad`,
    number,
  }));
  const texts = [
    { characteristic: colour, valueKind: "text", text: colourOf(index) },
    { characteristic: face, valueKind: "choice", text: faceOf(index) },
  ].filter(({ text }) => text !== undefined);
  const bare = bareOf(index)
    ? [{ ...row, characteristic: camber, valueKind: "absent", entered: "none" }]
    : [];
  return [...cambers, ...bare, ...texts.map((one) => ({ ...row, ...one, entered: one.text }))];
}

beforeAll(async () => {
  world = await openWorld();
  // Not recorded in the order of their numbers.
  const cars = Array.from({ length: CARS }, (_, index) => {
    const number = (index * 37) % CARS;
    const chassis = `M1-${String(number).padStart(3, "0")}`;
    return { number, row: { id: uuid(), chassis, chassisKey: chassis.replace("-", ""), claim: 1 } };
  });
  await world.inClub(async (db) => {
    await insertRows(
      db,
      "car",
      cars.map(({ row }) => ({ ...row, version: 1, recordedAt: new Date() })),
    );
    await insertRows(
      db,
      "currentValue",
      cars.flatMap(({ number, row }) => valuesOf(row.id, number)),
    );
  });
  keys = cars.map(({ row }) => row.chassis).sort();
}, 120_000);
afterAll(() => world?.close());

const inClub = <T>(work: (ctx: Context) => Promise<T>) => openOperator(world.database, "ours", work);

async function pages(input: RegisterListInput): Promise<readonly string[]> {
  const seen: string[] = [];
  for (let after: string | undefined; ; ) {
    const page = await inClub((ctx) =>
      registerList(ctx, { ...input, ...(after === undefined ? {} : { after }) }),
    );
    seen.push(...page.cars.map(({ reference }) => reference));
    after = page.next;
    if (after === undefined) return seen;
  }
}

/** The cars as a reader would sort them: those with a value, those known to have nothing, those not recorded; then by number. */
function sorted<T>(
  placeOf: (index: number) => T | undefined,
  compare: (a: T, b: T) => number,
  bare: (index: number) => boolean = () => false,
): readonly string[] {
  const lines = keys.map((chassis, index) => ({ chassis, place: placeOf(index), bare: bare(index) }));
  const rank = ({ place, bare: none }: (typeof lines)[number]) => (place !== undefined ? 0 : none ? 1 : 2);
  return [...lines]
    .sort(
      (a, b) =>
        rank(a) - rank(b) ||
        (a.place !== undefined && b.place !== undefined ? compare(a.place, b.place) : 0) ||
        (a.chassis < b.chassis ? -1 : 1),
    )
    .map(({ chassis }) => chassis);
}

const least = (values: readonly number[]) => (values.length === 0 ? undefined : Math.min(...values));
const most = (values: readonly number[]) => (values.length === 0 ? undefined : Math.max(...values));
const letters = new Intl.Collator("en").compare;

describe("the list by what the cars have of a characteristic", () => {
  test.each([
    [
      camber,
      false,
      () =>
        sorted(
          (index) => least(cambersOf(index)),
          (a, b) => a - b,
          bareOf,
        ),
    ],
    [
      camber,
      true,
      () =>
        sorted(
          (index) => most(cambersOf(index)),
          (a, b) => b - a,
          bareOf,
        ),
    ],
    [colour, false, () => sorted(colourOf, letters)],
    [colour, true, () => sorted(colourOf, (a, b) => letters(b, a))],
    [face, false, () => sorted(faceOf, letters)],
    [harness, true, () => keys],
  ])(
    "%s, descending %s: each car once, what is not known last, then by number",
    async (key, descending, expected) => {
      expect(await pages({ order: { key, descending } })).toEqual(expected());
    },
  );

  test("shows the characteristic, and goes together with a search", async () => {
    const order = { key: camber, descending: false };
    const { columns, cars } = await inClub((ctx) => registerList(ctx, { order, search: "M100" }));
    expect(columns.map(({ key }) => key)).toEqual([camber]);
    const all = await pages({ order });
    expect(cars.map(({ reference }) => reference)).toEqual(all.filter((one) => one.startsWith("M1-00")));
  });

  test("is that of its file too, and by number where nobody knows the characteristic", async () => {
    const order = { key: camber, descending: true };
    const rows = await inClub(async (ctx) => {
      const file: string[] = [];
      for await (const row of (await foundCars(ctx, { order })).rows) file.push(row.reference);
      return file;
    });
    expect(rows).toEqual(await pages({ order }));
    expect(await pages({ order: { key: "no.such", descending: true } })).toEqual(keys);
  });

  test.each(["M1-999", "", "~", "'; DROP TABLE car; --"])(
    "shows no car behind one that is not there: %j",
    async (after) => {
      const order = { key: camber, descending: false };
      const { cars, total } = await inClub((ctx) => registerList(ctx, { order, after }));
      expect(total).toBe(CARS);
      expect(cars).toEqual([]);
    },
  );
});
