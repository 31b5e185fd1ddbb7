import { openWorld, type World, type WorldPerson } from "@trunnion/fixtures";
import { Invalid } from "@trunnion/register";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { rebuildAllCurrentValues } from "../current-value";
import { openMember } from "../gate";
import { settingSheetPage } from "../setting-sheet";
import { decideSubmission } from "../submission-decision";
import { handInSheet, handInSheetInput, readPastedSheet, settingSheetForm } from "./index";

let world: World;
let registrar: WorldPerson;

beforeAll(async () => {
  world = await openWorld();
  registrar = await world.person({ roles: ["registrar"] });
}, 120_000);
afterAll(() => world?.close());

const ours = <T>(work: (ctx: Context) => Promise<T>) => openMember(world.database, registrar, "ours", work);
const key = () => crypto.randomUUID();
const cell = (characteristic: string, side: "left" | "right", asLeft: string, asFound = "") => ({
  characteristic,
  side,
  asLeft,
  asFound,
  instrument: "",
});

async function handIn(car: string, parts: Record<string, unknown>) {
  const input = handInSheetInput.parse({ car, clientKey: key(), stepKey: key(), on: "2025-06-14", ...parts });
  return ours((ctx) => handInSheet(ctx, input));
}
async function accept(mark: { readonly id: string; readonly version: number }) {
  await ours((ctx) =>
    decideSubmission(ctx, { ...mark, key: key(), decision: "accept", text: "", keeperKnown: "yes" }),
  );
}
const page = (car: string, sheet?: string) =>
  ours((ctx) => settingSheetPage(ctx, { car, ...(sheet === undefined ? {} : { sheet }) }));

describe("a setting sheet that was handed in", () => {
  test("stands on the car's page once it is accepted, with its repeats, judged with the instrument's uncertainty", async () => {
    const car = await world.car();
    const gauge = await world.inClub((db) =>
      db.instrument.create({
        data: { label: "gravity gauge", dimension: "angle", resolution: 0.0003, expandedUncertainty: 0.0029 },
      }),
    );
    const mark = await handIn(car.reference, {
      loadState: "driver",
      cells: [
        { ...cell("front.camber", "left", "-0°25'; -0°27'"), instrument: gauge.id },
        { ...cell("front.camber", "right", "-0°10'"), instrument: gauge.id },
      ],
    });
    expect((await page(car.reference)).sheets).toEqual([]);
    await accept(mark);
    const { shown, groups } = await page(car.reference);
    expect(shown).toMatchObject({ on: "2025-06-14", loadState: "driver", instruments: ["gravity gauge"] });
    const camber = groups.flatMap(({ rows }) => rows).find((row) => row.characteristic === "front.camber");
    const [left, right] = camber?.places ?? [];
    // The last reading is what the record has; 10' of uncertainty reach over the limit of -30'.
    expect(left?.line).toMatchObject({ actual: "-0°27'", verdict: "cannotTell" });
    expect(left?.repeats).toMatchObject({ entered: ["-0°25'", "-0°27'"], mean: "-0°26'", wide: false });
    expect(right?.line.verdict).toBe("insideLimits");
  });

  test("of what was found and what was left is two sheets of one day, in this order", async () => {
    const car = await world.car();
    await accept(await handIn(car.reference, { cells: [cell("front.camber", "left", "0°05'", "1°10'")] }));
    const { sheets, shown, groups, plots } = await page(car.reference);
    expect(sheets.map(({ pair }) => pair)).toEqual(["asLeft", "asFound"]);
    expect(shown?.pair).toBe("asLeft");
    const [row] = groups.flatMap(({ rows }) => rows).filter((one) => one.characteristic === "front.camber");
    expect(row?.places[0]?.last).toMatchObject({ entered: "1°10'", difference: "-1°05'" });
    expect(plots[0]?.lines[0]?.points.map(({ entered }) => entered)).toEqual(["1°10'", "0°05'"]);
  });

  test("sent twice under the same keys is one sheet", async () => {
    const car = await world.car();
    const keys = { clientKey: key(), stepKey: key(), cells: [cell("front.camber", "left", "0°05'")] };
    const [one, two] = [await handIn(car.reference, keys), await handIn(car.reference, keys)];
    expect(two.id).toBe(one.id);
    expect(await world.inClub((db) => db.submission.count({ where: { id: one.id } }))).toBe(1);
  });

  test.each([
    [
      { cells: [cell("front.camber", "left", "40°")] },
      "asLeft-front-camber-left",
      /too large to be believed/,
    ],
    [{ cells: [cell("front.toe", "left", "", "2 mm in per side on")] }, "asFound-front-toe-left", /2 mm in/],
    [{ cells: [cell("front.camber", "left", "  ")] }, "readings", /at least one/],
    [{ on: "2190-01-01", cells: [cell("front.camber", "left", "0°05'")] }, "on", /which day/],
    [
      {
        cells: [
          { ...cell("front.camber", "left", "0°05'"), instrument: "00000000-0000-7000-8000-000000000000" },
        ],
      },
      "instrument",
      /no such instrument/,
    ],
  ])("as %o is told at its field, and nothing is written", async (parts, field, message) => {
    const car = await world.car();
    const before = await world.fingerprint();
    const error = await handIn(car.reference, parts).then(
      () => undefined,
      (caught: unknown) => caught,
    );
    expect(error).toBeInstanceOf(Invalid);
    expect((error as Invalid).problems).toContainEqual({ field, message: expect.stringMatching(message) });
    expect(await world.fingerprint()).toEqual(before);
  });
});

describe("the page of setting sheets", () => {
  test("compares with the other cars of the series, not with this one", async () => {
    const read = (camber: string) => ({ read: { "front.camber": camber } });
    const [own] = [
      await world.car(read("-0°20'")),
      await world.car(read("0°10'")),
      await world.car(read("0°14'")),
    ];
    await ours(async (ctx) => rebuildAllCurrentValues(ctx, await bookOf(ctx)));
    const { groups } = await page(own.reference);
    const [row] = groups.flatMap(({ rows }) => rows).filter((one) => one.characteristic === "front.camber");
    const series = row?.places[0]?.series;
    expect(series?.others).not.toContain((-20 / 60 / 180) * Math.PI);
    expect(series?.count).toBe(series?.others.length);
    expect(series?.count).toBeGreaterThanOrEqual(2);
  });

  test("of a car that was never measured says so, and its form has every setting", async () => {
    const car = await world.car();
    expect(await page(car.reference)).toMatchObject({ sheets: [], groups: [], plots: [] });
    const form = await ours((ctx) => settingSheetForm(ctx, car.reference));
    expect(form.groups.flatMap(({ rows }) => rows.map(({ key: name }) => name))).toContain("front.camber");
  });

  test("takes a pasted table with tabs apart", async () => {
    const table = "Setting\tLeft\tRight\nFront camber\t-0°30'\t-0°20'\n";
    const { readings, problems } = await ours((ctx) => readPastedSheet(ctx, { table }));
    expect(problems).toEqual([]);
    expect(readings.map(({ side, entered }) => `${side} ${entered}`)).toEqual([
      "left -0°30'",
      "right -0°20'",
    ]);
  });
});
