import { openWorld, type World } from "@trunnion/fixtures";
import { afterAll, beforeAll, expect, test } from "vitest";
import { bookOf } from "../characteristic";
import { openOperator } from "../gate";
import { importRegister } from "./index";

let world: World;

beforeAll(async () => {
  world = await openWorld();
  await world.car({ chassis: "M1-011", built: "c. 1971" });
  await world.car({ chassis: "M1-012" });
}, 120_000);
afterAll(() => world?.close());

test("a keeper since before the register's own date of build is asked about, before anything is written", async () => {
  const lines = ["Chassis;Keeper;Kept since", "M1-011;Tõnu Bråtvær;1968", "M1-012;Tõnu Bråtvær;1968"];
  const before = await world.fingerprint();
  const report = await openOperator(world.database, "ours", async (ctx) =>
    importRegister(ctx, {
      file: "keepers.csv",
      bytes: new TextEncoder().encode(lines.join("\n")),
      book: await bookOf(ctx),
      asOf: "2025-01-01",
      dryRun: true,
    }),
  );
  expect(report).toMatchObject({ refusedRows: [], carsChanged: 2 });
  expect(report.doubtfulRows).toEqual([
    {
      line: 2,
      column: 'C "Kept since"',
      found: "1968",
      text: "kept since 1968, before it was built (c. 1971)",
    },
  ]);
  expect(await world.fingerprint()).toEqual(before);
});
