import { openWorld, type World } from "@trunnion/fixtures";
import { foldName, refused } from "@trunnion/register";
import { v7 as uuid } from "uuid";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { rebuildAllCurrentValues } from "../current-value";
import { openOperator } from "../gate";
import { scarceParts } from ".";

let world: World;

const ours = <T>(work: (ctx: Context) => Promise<T>) => openOperator(world.database, "ours", work);
const theirs = <T>(work: (ctx: Context) => Promise<T>) => openOperator(world.database, "theirs", work);

/** How many years ago a part was found, and looked for in vain. */
interface Looked {
  readonly found?: readonly number[];
  readonly notFound?: readonly number[];
}

interface PartInput extends Looked {
  readonly slug: string;
  readonly place: string;
  /** A disc's face by which a car's record shows that it has the part; without, only the works can have fitted it. */
  readonly face?: string;
  readonly standing?: "original" | "fits";
}

const yearsAgo = (years: number) => {
  const day = new Date();
  day.setUTCFullYear(day.getUTCFullYear() - years);
  return day;
};

async function add({ slug, place, face, standing = "original", found = [], notFound = [] }: PartInput) {
  await world.inClub(async (db) => {
    const id = uuid();
    const series = await db.series.findFirstOrThrow({ where: { slug: "mark-1" } });
    const part = { id, slug, assembly: "brakes", place, placeKey: foldName(place), name: `The ${slug}` };
    await db.part.create({ data: { ...part, kind: "donor" } });
    await db.partFit.create({ data: { partId: id, seriesId: series.id, standing } });
    if (face !== undefined) {
      const characteristic = "front.disc.face";
      const value = { valueKind: "choice" as const, entered: face, text: face };
      const feature = {
        partId: id,
        ordinal: 1,
        kind: "characteristic" as const,
        characteristic,
        tells: true,
      };
      await db.partFeature.create({ data: { ...feature, ...value } });
    }
    const notes = [
      ...found.map((years) => ({ kind: "found" as const, on: yearsAgo(years), count: 1 })),
      ...notFound.map((years) => ({ kind: "notFound" as const, on: yearsAgo(years) })),
    ];
    await db.partNote.createMany({ data: notes.map((note) => ({ ...note, partId: id, clientKey: uuid() })) });
  });
}

beforeAll(async () => {
  world = await openWorld();
  await world.car({ chassis: "M1-010", modified: { "front.disc.face": "drilled" } });
  await world.car({ chassis: "M1-011", modified: { "front.disc.face": "grooved" } });
  await world.car({ chassis: "M1-012" });
  await ours(async (ctx) => rebuildAllCurrentValues(ctx, await bookOf(ctx)));
  await add({ slug: "plenty", place: "Front disc", face: "grooved", standing: "fits", found: [0] });
  await add({ slug: "vanished", place: "Front disc", face: "drilled", found: [8], notFound: [3, 1] });
  await add({ slug: "rare", place: "Rear drum", found: [1], notFound: [0] });
  await add({ slug: "ageing", place: "Servo", found: [3] });
  await add({ slug: "unlooked", place: "Pedal box" });
}, 120_000);
afterAll(() => world?.close());

describe("scarce parts", () => {
  test("are those that are hard to find, the hardest first; what can be had and what nobody looked for are counted", async () => {
    const { parts, listed, notKnown, chosen } = await ours((ctx) => scarceParts(ctx));
    expect(parts.map(({ slug, scarcity }) => [slug, scarcity.rung])).toEqual([
      ["vanished", "unobtainable"],
      ["rare", "scarce"],
      ["ageing", "thinning"],
    ]);
    expect({ listed, notKnown, chosen }).toEqual({ listed: 5, notKnown: 1, chosen: undefined });
  });

  test("tell how many cars depend on each, by the record or by the works alone, and what can stand in", async () => {
    const { parts } = await ours((ctx) => scarceParts(ctx));
    const [vanished, rare] = parts;
    // Recorded: M1-010. Presumed: M1-012, of whose disc nothing is recorded. M1-011 has another.
    expect(vanished?.use).toEqual({ recorded: 1, presumed: 1, open: 0 });
    expect(vanished?.standIns.map(({ slug }) => slug)).toEqual(["plenty"]);
    expect(vanished?.series).toHaveLength(1);
    expect(rare).toMatchObject({ use: { recorded: 0, presumed: 3 }, standIns: [] });
  });

  test("name the cars of the one that is asked about, those recorded with it first", async () => {
    const { chosen } = await ours((ctx) => scarceParts(ctx, "vanished"));
    expect(chosen).toMatchObject({ slug: "vanished", name: "The vanished" });
    expect(chosen?.cars.map(({ reference, how }) => [reference, how])).toEqual([
      ["M1-010", "recorded"],
      ["M1-012", "presumed"],
    ]);
  });

  test("of another club are neither told nor found", async () => {
    expect(await theirs((ctx) => scarceParts(ctx))).toMatchObject({ parts: [], listed: 0, notKnown: 0 });
    await expect(theirs((ctx) => scarceParts(ctx, "vanished"))).rejects.toMatchObject(
      refused("PART_NOT_FOUND", { part: "vanished" }),
    );
  });
});
