import { openWorld, type World } from "@trunnion/fixtures";
import { builtInBook, carHasPart, foldName, parseValue, type Value } from "@trunnion/register";
import { v7 as uuid } from "uuid";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Context } from "../context";
import { rebuildAllCurrentValues } from "../current-value";
import { openOperator } from "../gate";
import { valueColumns, valueFrom } from "../value-columns";
import { dependentCars, findPart, partNeeds } from ".";

let world: World;

beforeAll(async () => {
  world = await openWorld();
}, 120_000);
afterAll(() => world?.close());

const ours = <T>(work: (ctx: Context) => Promise<T>) => openOperator(world.database, "ours", work);

function valueFor(key: string, entered: string): Value {
  const characteristic = builtInBook.find(key);
  const read = characteristic && parseValue(characteristic, entered);
  if (!read?.ok) throw new Error(`${key} ${entered}`);
  return read.value;
}

interface PartInput {
  readonly slug: string;
  readonly tells?: Readonly<Record<string, string>>;
  readonly standing?: "original" | "fits" | "doesNotFit";
  readonly serials?: readonly [number, number];
}

/** A front caliper for Mark 1. */
async function add({ slug, tells = {}, standing = "original", serials }: PartInput): Promise<string> {
  return world.inClub(async (db) => {
    const id = uuid();
    const series = await db.series.findFirstOrThrow({ where: { slug: "mark-1" } });
    const place = "Front caliper";
    const part = { id, slug, assembly: "brakes", place, placeKey: foldName(place), name: slug };
    await db.part.create({ data: { ...part, kind: "donor" } });
    const span = serials ? { serialFrom: serials[0], serialTo: serials[1] } : {};
    await db.partFit.create({ data: { partId: id, seriesId: series.id, standing, ...span } });
    const features = Object.entries(tells).map(([characteristic, entered], index) => ({
      partId: id,
      ordinal: index + 1,
      kind: "characteristic" as const,
      characteristic,
      tells: true,
      ...valueColumns(valueFor(characteristic, entered)),
    }));
    await db.partFeature.createMany({ data: features });
    return id;
  });
}

const useOf = async (slug: string) => (await ours(partNeeds)).find(({ part }) => part.slug === slug)?.use;

describe("how many cars use a part", () => {
  test("counts what the record shows apart from what it leaves to the works, and leaves out what is gone", async () => {
    const bolt = "front.caliper.boltThread";
    await world.car({ chassis: "M1-010", modified: { [bolt]: "M10x1.25" } });
    await world.car({ chassis: "M1-011", modified: { [bolt]: "7/16-20 UNF" } });
    await world.car({ chassis: "M1-012" });
    const gone = await world.car({ chassis: "M1-013", modified: { [bolt]: "M10x1.25" } });
    await world.inClub(async (db) => {
      await db.carStatusSpan.updateMany({
        where: { carId: gone.id, to: null },
        data: { to: new Date("2020-01-01") },
      });
      await db.carStatusSpan.create({ data: { carId: gone.id, status: "destroyed" } });
    });
    await ours((ctx) => rebuildAllCurrentValues(ctx, builtInBook));
    await add({ slug: "metric", tells: { [bolt]: "M10x1.25" } });
    await add({ slug: "later", tells: { [bolt]: "M10x1.25" }, standing: "fits" });
    await add({ slug: "early", serials: [1, 10] });
    await add({ slug: "never", tells: { [bolt]: "M12x1.25" }, standing: "doesNotFit" });
    expect(await useOf("metric")).toEqual({ recorded: 1, presumed: 1, open: 0 });
    expect(await useOf("later")).toEqual({ recorded: 1, presumed: 0, open: 1 });
    expect(await useOf("early")).toEqual({ recorded: 0, presumed: 1, open: 0 });
    expect(await useOf("never")).toEqual({ recorded: 0, presumed: 0, open: 0 });
    const cars = await ours(async (ctx) => dependentCars(ctx, await findPart(ctx, "metric")));
    expect(cars.map(({ reference, how }) => [reference, how])).toEqual([
      ["M1-010", "recorded"],
      ["M1-012", "presumed"],
    ]);
  });

  const marks: readonly Readonly<Record<string, string>>[] = [
    { "front.antiRollBar.diameter": "9/16 in" },
    { "front.antiRollBar.diameter": "16 mm" },
    { "front.disc.face": "drilled" },
    { "wheels.front.size": "5J x 13" },
    { "front.caliper.source": "Hedmar" },
    { "rear.antiRollBar.diameter": "not fitted" },
    { "front.disc.face": "drilled", "front.antiRollBar.diameter": "16 mm" },
  ];
  const cars: readonly Readonly<Record<string, string>>[] = [
    { "front.antiRollBar.diameter": "14.3 mm", "front.caliper.source": "off a HEDMAR, 1969" },
    { "front.antiRollBar.diameter": "16.4 mm", "front.disc.face": "drilled" },
    { "front.antiRollBar.diameter": "16.6 mm", "front.disc.face": "drilled" },
    { "wheels.front.size": "5J x 13 ET 20", "rear.antiRollBar.diameter": "not fitted" },
    { "wheels.front.size": "5½J x 13", "rear.antiRollBar.diameter": "14 mm" },
  ];
  test("is what the pure function says, car by car and part by part", async () => {
    const references: string[] = [];
    for (const [index, modified] of cars.entries())
      references.push((await world.car({ chassis: `M1-0${20 + index}`, modified })).reference);
    await ours((ctx) => rebuildAllCurrentValues(ctx, builtInBook));
    for (const [index, tells] of marks.entries()) {
      const slug = `mark-${index}`;
      await add({ slug, tells, standing: "fits" });
      const part = await ours((ctx) => findPart(ctx, slug));
      const found = (await ours((ctx) => dependentCars(ctx, part))).map(({ reference }) => reference);
      const rows = await world.inClub((db) =>
        db.currentValue.findMany({ include: { car: { select: { chassis: true } } } }),
      );
      const wanted = references.filter((reference) => {
        const of = (key: string) =>
          rows.filter((row) => row.car.chassis === reference && row.characteristic === key).map(valueFrom);
        return carHasPart(part.features, of) === "yes";
      });
      expect([slug, found.filter((reference) => references.includes(reference))]).toEqual([slug, wanted]);
    }
  });
});
