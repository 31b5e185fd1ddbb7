import { openWorld, type World } from "@trunnion/fixtures";
import { builtInCharacteristics } from "@trunnion/register";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { carPage } from "../car-page";
import { openOperator } from "../gate";
import { importRegister } from "../import-run";
import { bookOf } from "./index";

let world: World;

beforeAll(async () => {
  world = await openWorld();
  await world.inClub((db) =>
    db.characteristic.create({
      data: {
        key: "club.fogLamps",
        label: "Fog lamps",
        assembly: "electrical",
        kind: "choice",
        help: "Lamps below the bumper.",
        removable: true,
        definition: {
          choices: [
            { code: "round", label: "round" },
            { code: "square", label: "square" },
          ],
        },
      },
    }),
  );
}, 120_000);
afterAll(() => world?.close());

const book = (club: string) => openOperator(world.database, club, bookOf);

describe("a club's own characteristic", () => {
  test("is in the club's dictionary beside the built-in ones, and in no other club's", async () => {
    const [ours, theirs] = [await book("ours"), await book("theirs")];
    expect(ours.all).toHaveLength(builtInCharacteristics.length + 1);
    expect(ours.find("club.fogLamps")).toMatchObject({ label: "Fog lamps", removable: true });
    expect(theirs.find("club.fogLamps")).toBeUndefined();
  });

  test("is read in, and deviates, like a built-in one", async () => {
    const page = await openOperator(world.database, "ours", async (ctx) => {
      const bytes = new TextEncoder().encode("Chassis;now: fog lamps\nM1-001;round");
      await importRegister(ctx, {
        file: "a.csv",
        bytes,
        book: await bookOf(ctx),
        asOf: ctx.today,
        dryRun: false,
      });
      return carPage(ctx, "M1-001");
    });
    expect(page.deviating).toMatchObject([{ label: "Fog lamps", verdict: "added", actual: "round" }]);
  });

  test("that does not read as one stops everything that needs the dictionary, by its name", async () => {
    await world.inClub((db) => db.characteristic.updateMany({ data: { definition: {} } }));
    await expect(book("ours")).rejects.toThrow(
      /^characteristic "club.fogLamps" is kept as something that is none/,
    );
    expect((await book("theirs")).all).toHaveLength(builtInCharacteristics.length);
  });
});
