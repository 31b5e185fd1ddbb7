import { openWorld, type World } from "@trunnion/fixtures";
import { afterAll, beforeAll, expect, test } from "vitest";
import type { Context } from "./context";
import { exportPage } from "./export-page";
import { openMember, openOperator } from "./gate";
import { home } from "./home";
import { choosePublicExtract, extractList } from "./public-extract";
import { registerList } from "./register-list";

let world: World;

beforeAll(async () => {
  world = await openWorld();
  const stands = await world.car({ chassis: "M1-021" });
  const merged = await world.car({ chassis: "M1-022" });
  const registrar = await world.person({ roles: ["registrar"] });
  await openMember(world.database, registrar, "ours", (ctx) =>
    choosePublicExtract(ctx, {
      version: 0,
      open: "yes",
      parts: [],
      characteristics: [],
      series: [],
      lead: "",
    }),
  );
  await world.inClub((db) =>
    db.car.updateMany({ where: { id: merged.id }, data: { mergedIntoId: stands.id } }),
  );
}, 120_000);
afterAll(() => world?.close());

const ours = <T>(work: (ctx: Context) => Promise<T>) => openOperator(world.database, "ours", work);

test("a record that turned out to be of another car is in no list, count, condition or extract", async () => {
  const list = await ours((ctx) => registerList(ctx, {}));
  expect(list.cars.map(({ reference }) => reference)).toEqual(["M1-021"]);
  const narrowed = await ours((ctx) => registerList(ctx, { condition: { op: "always" } }));
  expect(narrowed.cars.map(({ reference }) => reference)).toEqual(["M1-021"]);
  expect(await ours(home)).toMatchObject({ cars: 1 });
  expect(await ours(exportPage)).toMatchObject({ cars: 1 });
  const extract = await extractList(world.database, { club: "ours" });
  expect([extract.total, extract.cars.map(({ reference }) => reference)]).toEqual([1, ["M1-021"]]);
});
