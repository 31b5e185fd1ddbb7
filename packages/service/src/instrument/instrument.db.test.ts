import { openWorld, type World, type WorldPerson } from "@trunnion/fixtures";
import { Invalid, Refusal } from "@trunnion/register";
import { v7 as uuid } from "uuid";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Context } from "../context";
import { openMember } from "../gate";
import {
  addInstrument,
  addInstrumentInput,
  changeInstrument,
  changeInstrumentInput,
  instrumentPage,
  instrumentsPage,
  listInstruments,
  restoreInstrument,
  retireInstrument,
} from "./index";

let world: World;
let owner: WorldPerson;
let registrar: WorldPerson;

beforeAll(async () => {
  world = await openWorld();
  owner = await world.person({ roles: ["owner"] });
  registrar = await world.person({ roles: ["registrar"] });
}, 120_000);
afterAll(() => world?.close());

const ours = <T>(work: (ctx: Context) => Promise<T>) => openMember(world.database, owner, "ours", work);
const gauge = {
  label: "Gravity gauge no. 2",
  dimension: "angle",
  resolution: "0°05'",
  uncertainty: "±0°10'",
};
const add = (more: Partial<Record<keyof typeof gauge | "calibratedOn", string>> = {}) =>
  ours((ctx) => addInstrument(ctx, addInstrumentInput.parse({ ...gauge, ...more })));

async function problems(more: Parameters<typeof add>[0]) {
  const before = await world.fingerprint();
  const error = await add(more).then(
    () => undefined,
    (caught: unknown) => caught,
  );
  expect(await world.fingerprint()).toEqual(before);
  if (!(error instanceof Invalid)) throw new Error(`taken, or no answer: ${String(error)}`);
  return error.problems;
}

describe("an instrument a member adds", () => {
  test("is on the club's books with its step and uncertainty in the club's units, and once however often it is sent", async () => {
    const [one, two] = [await add(), await add({ label: "gravity gauge no. 2" })];
    expect(two).toBe(one);
    const found = (await ours(listInstruments)).find(({ id }) => id === one);
    expect(found).toMatchObject({ label: "Gravity gauge no. 2", known: "steps of 5', ±10' (k = 2)" });
    const row = await world.inClub((db) => db.instrument.findFirstOrThrow({ where: { id: one } }));
    // 5' of arc.
    expect(row.resolution).toBeCloseTo(((5 / 60) * Math.PI) / 180, 9);
  });

  test("without an uncertainty is said to have none known, never to have none", async () => {
    const id = await add({
      label: "Tyre gauge",
      dimension: "pressure",
      resolution: "0.1 bar",
      uncertainty: "",
    });
    const found = (await ours(listInstruments)).find((one) => one.id === id);
    expect(found?.known).toBe("steps of 0.1 bar, uncertainty not known");
  });

  test.each([
    [{ label: "Other", resolution: "two" }, "resolution"],
    [{ label: "Other", resolution: "0°" }, "resolution"],
    [{ label: "Other", uncertainty: "5 mm" }, "uncertainty"],
    [{ label: "Other", uncertainty: "0°01'" }, "uncertainty"],
    [{ label: "Other", calibratedOn: "2190-01-01" }, "calibratedOn"],
    [{ uncertainty: "0°20'" }, "label"],
  ])("as %o is told at its field, and nothing is written", async (more, field) => {
    await add();
    expect((await problems(more)).map((one) => one.field)).toEqual([field]);
  });
});

const desk = <T>(work: (ctx: Context) => Promise<T>) => openMember(world.database, registrar, "ours", work);
const change = (instrument: string, version: number, more: Partial<Record<string, string>>) =>
  desk((ctx) =>
    changeInstrument(ctx, changeInstrumentInput.parse({ ...gauge, ...more, instrument, version })),
  );
const pageOf = (id: string) => desk((ctx) => instrumentPage(ctx, id));
const journalOf = (nounId: string) =>
  world.inClub((db) => db.journalEntry.findMany({ where: { nounId }, orderBy: { sequence: "asc" } }));
const codeOf = (work: Promise<unknown>) =>
  work.then(
    () => "taken",
    (error: unknown) => (error instanceof Refusal ? error.code : String(error)),
  );

describe("an instrument that is corrected", () => {
  test("shows its new figures, leaves what stands alone, and the journal says what was before", async () => {
    const id = await add({ label: "Corrected gauge" });
    await change(id, 1, {
      label: "Corrected gauge",
      uncertainty: "±0°08'",
      number: "SN 204",
      calibratedOn: "2026-01-10",
      calibratedUntil: "2026-02-10",
    });
    const { texts, line, version } = await pageOf(id);
    expect(texts).toMatchObject({ resolution: "5'", uncertainty: "8'", number: "SN 204" });
    expect(line.known).toContain("its calibration has run out");
    expect(version).toBe(2);
    const last = (await journalOf(id)).at(-1);
    expect(last).toMatchObject({
      action: "instrument.change",
      before: { uncertainty: "10'", number: "" },
      after: { uncertainty: "8'", number: "SN 204" },
    });
  });

  test("written the same in other words is no change", async () => {
    const id = await add({ label: "Unchanged gauge" });
    await change(id, 1, { label: "Unchanged gauge", resolution: "5'", uncertainty: "10'" });
    expect((await pageOf(id)).version).toBe(1);
    expect(await journalOf(id)).toHaveLength(1);
  });

  test("by two at once is refused to the second, with both sides' values", async () => {
    const id = await add({ label: "Contested gauge" });
    await change(id, 1, { label: "Contested gauge", number: "A" });
    const late = change(id, 1, { label: "Contested gauge", number: "B" });
    await expect(late).rejects.toMatchObject({
      code: "CHANGED_MEANWHILE",
      details: {
        version: 2,
        differences: [expect.objectContaining({ field: "number", theirs: "A", yours: "B" })],
      },
    });
    expect((await pageOf(id)).texts.number).toBe("A");
  });

  test.each([
    [{ label: "Gravity gauge no. 2" }, "label"],
    [{ label: "Other gauge", uncertainty: "0°01'" }, "uncertainty"],
    [{ label: "Other gauge", calibratedOn: "2026-02-10", calibratedUntil: "2026-01-10" }, "calibratedUntil"],
  ])("as %o is told at its field, and nothing is written", async (more, field) => {
    await add();
    const id = await add({ label: `Gauge for ${field}` });
    const before = await world.fingerprint();
    const error = await change(id, 1, more).catch((caught: unknown) => caught);
    expect(await world.fingerprint()).toEqual(before);
    expect(error instanceof Invalid && error.problems.map((one) => one.field)).toEqual([field]);
  });

  test("stays what it reads once something was read with it, and names the sheet", async () => {
    const id = await add({ label: "Used gauge" });
    const sheet = uuid();
    const car = await world.car();
    await world.inClub(async (db) => {
      await db.settingSheet.create({
        data: { id: sheet, carId: car.id, on: new Date("2026-03-01"), sequence: 1 },
      });
      await db.reading.create({
        data: {
          settingSheetId: sheet,
          characteristic: "front.camber",
          side: "left",
          repeat: 1,
          instrumentId: id,
          valueKind: "quantity",
          entered: "-0°30'",
          number: -0.0087,
          resolution: 0.0003,
        },
      });
    });
    const error = await change(id, 1, {
      label: "Used gauge",
      dimension: "pressure",
      resolution: "1 psi",
      uncertainty: "",
    }).catch((caught: unknown) => caught);
    expect(error instanceof Invalid && error.problems.map((one) => one.field)).toEqual(["dimension"]);
    expect((await pageOf(id)).sheets).toEqual([
      { id: sheet, car: expect.objectContaining({ chassis: car.chassis }), on: "2026-03-01", readings: 1 },
    ]);
  });
});

describe("an instrument taken out of use", () => {
  test("is offered no more, keeps its page and its name, and can be put back", async () => {
    const id = await add({ label: "Dropped gauge" });
    const sent = { instrument: id, version: 1, reason: "dropped" };
    await desk((ctx) => retireInstrument(ctx, sent));
    // Sent twice it is one step.
    await desk((ctx) => retireInstrument(ctx, sent));
    expect((await ours(listInstruments)).map((one) => one.id)).not.toContain(id);
    expect((await ours(instrumentsPage)).retired.find((one) => one.id === id)?.retired).toBe("dropped");
    expect((await problems({ label: "Dropped gauge" })).map((one) => one.field)).toEqual(["label"]);
    await desk((ctx) => restoreInstrument(ctx, { instrument: id, version: 2, reason: "mended" }));
    expect((await ours(listInstruments)).map((one) => one.id)).toContain(id);
    expect((await journalOf(id)).map(({ action }) => action)).toEqual([
      "instrument.add",
      "instrument.retire",
      "instrument.restore",
    ]);
  });

  test("is none of an owner's business, and unknown where there is none", async () => {
    const id = await add({ label: "Kept gauge" });
    const sent = { instrument: id, version: 1, reason: "no" };
    expect(await codeOf(ours((ctx) => retireInstrument(ctx, sent)))).toBe("ROLE_NEEDED");
    expect(await codeOf(desk((ctx) => retireInstrument(ctx, { ...sent, instrument: uuid() })))).toBe(
      "INSTRUMENT_NOT_FOUND",
    );
    expect(await codeOf(desk((ctx) => retireInstrument(ctx, { ...sent, version: 7 })))).toBe(
      "CHANGED_MEANWHILE",
    );
  });
});
