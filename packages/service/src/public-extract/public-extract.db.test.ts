import { openWorld, type World } from "@trunnion/fixtures";

import { Invalid } from "@trunnion/register";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { bookOf } from "../characteristic";
import { rebuildAllCurrentValues } from "../current-value";
import { openMember, openOperator } from "../gate";
import {
  choosePublicExtract,
  extractCar,
  extractList,
  extractSettings,
  type PublicExtractInput,
} from "./index";

let world: World;
let registrar: { readonly personId: string; readonly name: string };
let owner: { readonly personId: string; readonly name: string };

beforeAll(async () => {
  world = await openWorld();
  registrar = await world.person({ roles: ["registrar"] });
  owner = await world.person({ roles: ["owner"] });
  await world.car({
    chassis: "M1-007",
    keeper: { name: "Tõnu Bråtvær" },
    asBuilt: { "front.antiRollBar.diameter": "9/16 in" },
    modified: { "front.disc.face": "drilled" },
    read: { "front.camber": "-0°20'" },
  });
  await world.car({ chassis: "M1-008" });
  await world.car({ chassis: "M1-007", club: world.theirs });
  await openOperator(world.database, "ours", async (ctx) => rebuildAllCurrentValues(ctx, await bookOf(ctx)));
}, 120_000);
afterAll(() => world?.close());

const nothing: PublicExtractInput = {
  version: 0,
  open: "no",
  parts: [],
  characteristics: [],
  series: [],
  lead: "",
};

const choose = (input: Partial<PublicExtractInput>, who = registrar) =>
  openMember(world.database, who, "ours", async (ctx) => {
    const { choice } = await extractSettings(ctx).catch(() => ({ choice: { version: 0 } }));
    return choosePublicExtract(ctx, { ...nothing, version: choice.version, ...input });
  });

const list = (club = "ours") => extractList(world.database, { club });
const car = (reference: string, club = "ours") => extractCar(world.database, { club, car: reference });

describe("the public extract", () => {
  test("is off until somebody turns it on, and a club that is not there answers alike", async () => {
    await expect(list()).rejects.toMatchObject({ code: "EXTRACT_NOT_OPEN" });
    await expect(list("nowhere")).rejects.toMatchObject({ code: "EXTRACT_NOT_OPEN" });
    await expect(car("M1-007")).rejects.toMatchObject({ code: "EXTRACT_NOT_OPEN" });
  });

  test("is chosen by registrars and fleet managers only", async () => {
    await expect(choose({ open: "yes" }, owner)).rejects.toMatchObject({ code: "ROLE_NEEDED" });
  });

  test("shows number and series, and of the rest what was ticked", async () => {
    await choose({ open: "yes" });
    const bare = await list();
    expect(bare.total).toBe(2);
    expect(Object.keys(bare.cars[0] ?? {}).sort()).toEqual(["chassis", "marque", "reference", "series"]);
    await choose({
      open: "yes",
      parts: ["asBuilt", "today", "status"],
      characteristics: ["front.antiRollBar.diameter", "front.disc.face"],
    });
    const { car: shown } = await car("M1-007");
    expect(shown.status).toBeDefined();
    expect(shown.asBuilt).toMatchObject([{ characteristic: "front.antiRollBar.diameter", unit: "m" }]);
    expect(shown.today?.map(({ characteristic }) => characteristic)).toContain("front.disc.face");
    expect(shown.today?.map(({ characteristic }) => characteristic)).not.toContain("front.camber");
  });

  test("never tells of a person, whatever is ticked", async () => {
    const { characteristics } = await openMember(world.database, registrar, "ours", extractSettings);
    await choose({
      open: "yes",
      parts: ["built", "firstRegistered", "status", "numbers", "options", "asBuilt", "today"],
      characteristics: characteristics.slice(0, 60).map(({ key }) => key),
    });
    expect(JSON.stringify([await list(), await car("M1-007")])).not.toMatch(/Bråtvær|Tõnu/);
  });

  test("stays within its club and its series", async () => {
    expect((await list()).cars).toHaveLength(2);
    await expect(list("theirs")).rejects.toMatchObject({ code: "EXTRACT_NOT_OPEN" });
    await expect(car("M1-999")).rejects.toMatchObject({ code: "CAR_NOT_FOUND" });
  });

  test.each([
    ["characteristics", { characteristics: ["no.such.thing"] }],
    ["series", { series: ["no-such-series"] }],
  ])("refuses %s that there are not, at the field, and changes nothing", async (field, input) => {
    const before = await world.fingerprint();
    const error = await choose({ open: "yes", ...input }).catch((reason: unknown) => reason);
    expect(error).toBeInstanceOf(Invalid);
    expect((error as Invalid).problems[0]?.field).toBe(field);
    expect(await world.fingerprint()).toEqual(before);
  });

  test("tells the second of two who choose at once what the first chose", async () => {
    const stale = openMember(world.database, registrar, "ours", (ctx) =>
      choosePublicExtract(ctx, { ...nothing, version: 1, open: "yes", lead: "Mine" }),
    );
    await expect(stale).rejects.toMatchObject({
      code: "CHANGED_MEANWHILE",
      details: {
        differences: expect.arrayContaining([expect.objectContaining({ field: "lead", yours: "Mine" })]),
      },
    });
  });

  test("can be closed again, and each choice is in the journal", async () => {
    await choose({ open: "no" });
    await expect(list()).rejects.toMatchObject({ code: "EXTRACT_NOT_OPEN" });
    const lines = await world.inClub((db) =>
      db.journalEntry.findMany({ where: { action: "extract.choose" } }),
    );
    expect(lines.length).toBeGreaterThanOrEqual(3);
  });
});
