import { openWorld, type World } from "@trunnion/fixtures";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { openMember } from "../gate";
import { dossierOf } from "./index";

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
  });
}, 120_000);
afterAll(() => world?.close());

const dossier = (keepers: boolean, who = registrar) =>
  openMember(
    world.database,
    who,
    "ours",
    async (ctx) => (await dossierOf(ctx, { car: "M1-007", keepers })).model,
  );

describe("a dossier's model", () => {
  test("tells who the car is, what differs and how each value is known", async () => {
    const model = await dossier(false);
    expect(model.car.chassis).toBe("M1-007");
    expect(model.deviations).toContainEqual(
      expect.objectContaining({ actual: "Cross-drilled", verdict: "differentPart" }),
    );
    const rows = model.assemblies.flatMap((assembly) => assembly.rows);
    expect(rows.filter(({ actual }) => actual === "9/16 in").every(({ known }) => known !== "")).toBe(true);
    expect(model.history.some(({ changes }) => changes.some((line) => line.includes("Cross-drilled")))).toBe(
      true,
    );
  });

  test("has no keeper unless asked for, in any part", async () => {
    expect(JSON.stringify(await dossier(false))).not.toContain("Bråtvær");
    expect((await dossier(true)).keepers).toEqual([expect.objectContaining({ name: "Tõnu Bråtvær" })]);
  });

  test("refuses keepers to whoever may not see them, and gives the rest", async () => {
    await expect(dossier(true, owner)).rejects.toMatchObject({ code: "ROLE_NEEDED" });
    expect(JSON.stringify(await dossier(false, owner))).not.toContain("Bråtvær");
  });

  test("has one hash while the record stands, and another once it moved", async () => {
    const [one, two] = [await dossier(false), await dossier(false)];
    expect(two.recordHash).toBe(one.recordHash);
    await world.inClub((db) =>
      db.car.updateMany({ where: { chassis: "M1-007" }, data: { remarks: "seen at the works" } }),
    );
    expect((await dossier(false)).recordHash).not.toBe(one.recordHash);
  });
});
