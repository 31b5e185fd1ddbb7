import { openWorld, type World } from "@trunnion/fixtures";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { openOperator } from "../gate";
import { carConsequence, carConsequences } from "./index";

let world: World;

beforeAll(async () => {
  world = await openWorld();
  await world.car({ chassis: "M1-007", modified: { "front.antiRollBar.diameter": "5/8 in" } });
  await world.car({ chassis: "M1-008" });
}, 120_000);
afterAll(() => world?.close());

const ask = <T>(work: Parameters<typeof openOperator<T>>[2]) => openOperator(world.database, "ours", work);

describe("what a car's differences do", () => {
  test("is worked out against the specification: a 5/8 in bar for a 9/16 in one by the fourth power", async () => {
    const { consequences } = await ask((ctx) => carConsequences(ctx, "M1-007"));
    const ratio = consequences.find(({ id }) => id === "front.bar.ratio")?.figures[0];
    expect(ratio?.numberAfter).toBeCloseTo((10 / 9) ** 4, 9);
  });

  test("names what would have to be recorded to say more", async () => {
    const { consequences } = await ask((ctx) => carConsequences(ctx, "M1-007"));
    const missing = consequences
      .find(({ id }) => id === "front.bar.rate")
      ?.missing.map(({ characteristic }) => characteristic);
    expect(missing).toContain("front.antiRollBar.leverLength");
  });

  test("is nothing for a car that does not differ", async () => {
    expect((await ask((ctx) => carConsequences(ctx, "M1-008"))).consequences).toEqual([]);
  });

  test("comes with its working, validity and source when one is asked for", async () => {
    const worked = await ask((ctx) => carConsequence(ctx, { car: "M1-007", id: "front.bar.ratio" }));
    expect(worked.working.after?.working.length).toBeGreaterThan(1);
    expect(worked.validity).toMatch(/same shape/);
    expect(worked.source.length).toBeGreaterThan(0);
    expect(worked.inputs.map(({ origin }) => origin)).toEqual(
      expect.arrayContaining(["specification", "modification"]),
    );
  });

  test("refuses one that does not follow, and a car that is not there", async () => {
    await expect(
      ask((ctx) => carConsequence(ctx, { car: "M1-007", id: "rear.bar.rate" })),
    ).rejects.toMatchObject({
      code: "CONSEQUENCE_NOT_FOUND",
    });
    await expect(ask((ctx) => carConsequences(ctx, "M9-999"))).rejects.toMatchObject({
      code: "CAR_NOT_FOUND",
    });
  });
});
