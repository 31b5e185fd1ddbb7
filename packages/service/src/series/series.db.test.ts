import { openWorld, type World } from "@trunnion/fixtures";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { compareCurrentValues, rebuildAllCurrentValues } from "../current-value";
import { openOperator } from "../gate";
import {
  addMarque,
  addSeriesForm,
  type ChangeSeriesInput,
  changeSeries,
  changeSeriesInput,
  foundSeries,
  seriesPage,
  seriesTexts,
} from "./index";

let world: World;

beforeAll(async () => {
  world = await openWorld();
  await world.car({ chassis: "M1-010", built: "1971", options: ["H"] });
  await world.car({ chassis: "M1-110", built: "1973", modified: { "front.disc.diameter": "10 1/2 in" } });
  await world.car({ chassis: "M1-999", built: "1969" });
  await ours(async (ctx) => rebuildAllCurrentValues(ctx, await bookOf(ctx)));
}, 120_000);
afterAll(() => world?.close());

const ours = <T>(work: (ctx: Context) => Promise<T>) => openOperator(world.database, "ours", work);
const page = () => ours((ctx) => seriesPage(ctx, "mark-1"));

/** The series' form as it would be opened now, with what is changed in it. */
async function form(parts: Partial<ChangeSeriesInput> = {}): Promise<ChangeSeriesInput> {
  const series = await page();
  const { options: _, ...texts } = seriesTexts(series);
  const opened = seriesTexts(series);
  const { version, options } = series;
  return changeSeriesInput.parse({
    series: "mark-1",
    version,
    opened,
    ...texts,
    options,
    reason: "letter",
    ...parts,
  });
}

const change = async (parts: Partial<ChangeSeriesInput> = {}) => {
  const input = await form(parts);
  return ours((ctx) => changeSeries(ctx, input));
};

async function refusal(attempt: () => Promise<unknown>) {
  const before = await world.fingerprint();
  const error = await attempt().then(
    () => undefined,
    (reason: unknown) => reason,
  );
  expect(await world.fingerprint()).toEqual(before);
  return error as {
    readonly code?: string;
    readonly details?: unknown;
    readonly problems?: readonly { readonly field: string; readonly message: string }[];
  };
}

describe("a series", () => {
  test.each([
    [
      "a last number below a car's",
      { lastSerial: 100 },
      "M1-110: 110 lies above the last of Mark 1, which is 100",
    ],
    [
      "a first number above a car's",
      { firstSerial: 50 },
      "M1-010: 010 lies below the first of Mark 1, which is 050",
    ],
    [
      "another prefix",
      { numberPrefix: "N1-" },
      "M1-010: M1-010 does not begin with N1-, as the numbers of Mark 1 do",
    ],
    [
      "a build that ended before a car was built",
      { builtTo: "1972" },
      "M1-110: built 1 Jan 1973 to 31 Dec 1973",
    ],
    [
      "an option taken away that a car has",
      { options: [{ code: "OD", label: "overdrive" }] },
      "M1-010: has option H",
    ],
  ])("refuses %s, with the cars that would fall outside", async (_, parts, told) => {
    const error = await refusal(() => change(parts));
    expect(error).toMatchObject({ code: "SERIES_LEAVES_CARS_OUT" });
    expect((error.details as { readonly cars: readonly string[] }).cars).toContain(told);
  });

  test("refuses what would make its current specification speak of nobody", async () => {
    // The other club has the same series and specification, and no car that would speak for the option.
    const attempt = () =>
      openOperator(world.database, "theirs", async (ctx) => {
        const series = await seriesPage(ctx, "mark-1");
        const { options: _, ...texts } = seriesTexts(series);
        const options = [{ code: "OD", label: "overdrive" }];
        const { version } = series;
        await changeSeries(ctx, changeSeriesInput.parse({ series: "mark-1", version, ...texts, options }));
      });
    const error = await refusal(attempt);
    expect(error).toMatchObject({ code: "SPECIFICATION_CONTRADICTS" });
    expect(error.details).toEqual({
      problems: ['Rear anti-roll bar diameter: Mark 1 has no option "H"; it has OD'],
    });
  });

  test.each([
    [{ lastSerial: 4000 }, "lastSerial", "4000 has more than 3 digits"],
    [{ firstSerial: 200 }, "lastSerial", "the last serial must not be below 200"],
    [{ builtFrom: "later" }, "builtFrom", '"later" is no date'],
    [{ builtFrom: "1975" }, "builtTo", "the build ends 1973-12-31, before it begins 1975-01-01"],
    [{ builtCount: "some" }, "builtCount", "expected a whole number"],
    [{ options: [{ code: "", label: "pack" }] }, "options.0.code", '"pack" has no code'],
  ])("refuses %o at its field", async (parts, field, message) => {
    const error = await refusal(() => change(parts));
    expect(error.problems?.[0]?.field).toBe(field);
    expect(error.problems?.[0]?.message).toContain(message);
  });

  test("wider than before reads its cars' serials again, and works out again what hangs on them", async () => {
    const before = await page();
    await change({ lastSerial: 999, builtFrom: "1969", name: "Mark One" });
    const after = await page();
    expect(after).toMatchObject({ name: "Mark One", builtFrom: "1969-01-01", pattern: { last: 999 } });
    expect(after.version).toBe(before.version + 1);
    const cars = await world.inClub((db) => db.car.findMany({ orderBy: { chassis: "asc" } }));
    expect(cars.map(({ chassis, serial, version }) => [chassis, serial, version])).toEqual([
      ["M1-010", 10, 1],
      ["M1-110", 110, 1],
      ["M1-999", 999, 2],
    ]);
    expect(await ours(async (ctx) => compareCurrentValues(ctx, await bookOf(ctx)))).toEqual([]);
    const [line] = await world.inClub((db) =>
      db.journalEntry.findMany({ orderBy: { sequence: "desc" }, take: 1 }),
    );
    expect(line).toMatchObject({
      action: "series.change",
      reason: "letter",
      before: { name: "Mark 1", lastSerial: "120", builtFrom: "1970-01-01" },
      after: { name: "Mark One", lastSerial: "999", builtFrom: "1969-01-01", carsRenumbered: 1 },
    });
  });

  test("shows the second of two editors what the first changed", async () => {
    const [first, second] = [await form({ builtCount: "120" }), await form({ builtCount: "118" })];
    await ours((ctx) => changeSeries(ctx, first));
    const error = await refusal(() => ours((ctx) => changeSeries(ctx, second)));
    expect(error).toMatchObject({
      code: "CHANGED_MEANWHILE",
      details: { differences: [{ field: "builtCount", was: "", theirs: "120", yours: "118" }] },
    });
  });

  test("left as it is writes nothing", async () => {
    expect(await refusal(() => change())).toBeUndefined();
  });
});

describe("a new marque and series", () => {
  const fields = {
    marque: "sorvik",
    name: "Série 1 GT",
    numberPrefix: "S",
    numberDigits: 2,
    firstSerial: 1,
    lastSerial: 40,
    builtFrom: "1971",
    builtTo: "6/73",
    options: [{ code: "GT", label: "long nose" }],
  };

  test("get a short name of their names, and stand last", async () => {
    await ours((ctx) => addMarque(ctx, { slug: "", name: "Sørvik" })).catch(() => undefined);
    const marques = await world.inClub((db) => db.marque.findMany({ orderBy: { name: "asc" } }));
    const marque = marques.find(({ name }) => name === "Sørvik")?.slug ?? "";
    const slug = await ours((ctx) => foundSeries(ctx, addSeriesForm.parse({ ...fields, marque })));
    expect(slug).toBe("serie-1-gt");
    expect(await ours((ctx) => seriesPage(ctx, slug))).toMatchObject({
      marque: { name: "Sørvik" },
      ordinal: 2,
      builtTo: "1973-06-30",
      options: [{ code: "GT" }],
      cars: 0,
    });
  });

  test("are refused a short name that is taken, a marque there is none of, and a name of no letters", async () => {
    const add = (parts: object) =>
      ours((ctx) => foundSeries(ctx, addSeriesForm.parse({ ...fields, ...parts })));
    expect((await refusal(() => add({ marque: "holmvik", slug: "mark-1" }))).problems?.[0]).toMatchObject({
      field: "slug",
    });
    expect((await refusal(() => add({ marque: "nobody" }))).problems?.[0]).toMatchObject({ field: "marque" });
    expect((await refusal(() => add({ marque: "holmvik", name: "—" }))).problems?.[0]).toMatchObject({
      field: "slug",
    });
    const twice = await refusal(() => ours((ctx) => addMarque(ctx, { slug: "holmvik", name: "Again" })));
    expect(twice.problems).toEqual([{ field: "slug", message: '"holmvik" is taken' }]);
  });
});
