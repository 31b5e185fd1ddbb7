import { openWorld, type World, type WorldPerson } from "@trunnion/fixtures";
import { Invalid } from "@trunnion/register";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Context } from "../context";
import { openMember } from "../gate";
import { addInstrument, addInstrumentInput, listInstruments } from "./index";

let world: World;
let owner: WorldPerson;

beforeAll(async () => {
  world = await openWorld();
  owner = await world.person({ roles: ["owner"] });
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
