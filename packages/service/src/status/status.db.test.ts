import { openWorld, type World, type WorldPerson } from "@trunnion/fixtures";
import { Invalid } from "@trunnion/register";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { carForm } from "../car-form";
import type { Context } from "../context";
import { openMember } from "../gate";
import {
  addStatus,
  addStatusInput,
  correctStatus,
  correctStatusInput,
  removeStatus,
  removeStatusInput,
} from ".";

let world: World;
let registrar: WorldPerson;

beforeAll(async () => {
  world = await openWorld();
  registrar = await world.person({ roles: ["registrar"] });
}, 120_000);
afterAll(() => world?.close());

const inOurs = <T>(work: (ctx: Context) => Promise<T>) => openMember(world.database, registrar, "ours", work);
const form = (car: string) => inOurs((ctx) => carForm(ctx, car));
const spans = async (car: string) =>
  (await form(car)).statuses.map(({ status, from, to }) => `${status} ${from || "?"} to ${to || "now"}`);

async function say(car: string, status: string, from: string, to = "") {
  const { version } = await form(car);
  const input = addStatusInput.parse({ car, version, status, from, to });
  return inOurs((ctx) => addStatus(ctx, input));
}

async function problems(work: Promise<unknown>) {
  const error = await work.then(
    () => undefined,
    (caught: unknown) => caught,
  );
  expect(error).toBeInstanceOf(Invalid);
  return (error as Invalid).problems.map(({ field, message }) => `${field}: ${message}`);
}

describe("the status of a car over time", () => {
  test("a new one ends the one before, on the latest day it may have begun itself", async () => {
    const { reference } = await world.car();
    await say(reference, "inUse", "1972");
    await say(reference, "laidUp", "3/98");
    await say(reference, "underRestoration", "c. 2010");
    expect(await spans(reference)).toEqual([
      "underRestoration c. 2010 to now",
      "laidUp 3/98 to 2011-12-31",
      "inUse 1972 to 1998-03-31",
    ]);
  });

  test("one without a date ends the one before today", async () => {
    const { reference } = await world.car();
    await say(reference, "inUse", "1972");
    await say(reference, "lostFromSight", "");
    const today = new Date().toISOString().slice(0, 10);
    expect(await spans(reference)).toEqual(["lostFromSight ? to now", `inUse 1972 to ${today}`]);
  });

  test("one of earlier is put in with its end, and ends nothing", async () => {
    const { reference } = await world.car();
    await say(reference, "inUse", "1990");
    await say(reference, "laidUp", "1980", "1989");
    expect(await spans(reference)).toEqual(["inUse 1990 to now", "laidUp 1980 to 1989-12-31"]);
  });

  test("one that surely overlaps another, or ends before it begins, or lies before the present one, is refused", async () => {
    const { reference } = await world.car();
    await say(reference, "inUse", "1970", "1979");
    await say(reference, "laidUp", "1980");
    const before = await world.fingerprint();
    expect(await problems(say(reference, "dismantled", "1972", "1975"))).toEqual([
      "from: This surely overlaps a status that ended 31 Dec 1979: correct one of the two.",
    ]);
    expect(await problems(say(reference, "dismantled", "1978"))).toEqual([
      "from: This lies before the present status began, 1 Jan 1980 at the earliest: give the day it ended, or correct the present one.",
    ]);
    expect((await problems(say(reference, "dismantled", "1978", "1970")))[0]).toMatch(
      /^to: 31 Dec 1970 lies before/,
    );
    expect((await problems(say(reference, "dismantled", "1985", "1990")))[0]).toMatch(
      /^to: This surely overlaps the present/,
    );
    expect(await world.fingerprint()).toEqual(before);
  });

  test("one that may overlap, because dates are rough, is taken", async () => {
    const { reference } = await world.car();
    await say(reference, "inUse", "1970", "1979");
    await say(reference, "laidUp", "1979");
    expect(await spans(reference)).toHaveLength(2);
  });

  test("is corrected in place", async () => {
    const { reference } = await world.car();
    await say(reference, "inUse", "1972");
    const { statuses, version } = await form(reference);
    const input = correctStatusInput.parse({
      car: reference,
      version,
      id: statuses[0]?.id,
      status: "laidUp",
      from: "1973",
      to: "",
    });
    await inOurs((ctx) => correctStatus(ctx, input));
    expect(await spans(reference)).toEqual(["laidUp 1973 to now"]);
  });

  test("the wrong one taken away, the one it had ended holds again", async () => {
    const { reference } = await world.car();
    await say(reference, "inUse", "1972");
    await say(reference, "destroyed", "1998");
    const { statuses, version } = await form(reference);
    const input = removeStatusInput.parse({
      car: reference,
      version,
      id: statuses[0]?.id,
      reason: "another car",
    });
    await inOurs((ctx) => removeStatus(ctx, input));
    expect(await spans(reference)).toEqual(["inUse 1972 to now"]);
  });

  test("an earlier one taken away opens nothing", async () => {
    const { reference } = await world.car();
    await say(reference, "inUse", "1970", "1979");
    await say(reference, "laidUp", "1980", "1989");
    const { statuses, version } = await form(reference);
    const id = statuses.find(({ status }) => status === "laidUp")?.id;
    await inOurs((ctx) => removeStatus(ctx, removeStatusInput.parse({ car: reference, version, id })));
    expect(await spans(reference)).toEqual(["inUse 1970 to 1979-12-31"]);
  });
});
