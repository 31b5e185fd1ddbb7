import { openWorld, type World, type WorldPerson } from "@trunnion/fixtures";
import { Invalid } from "@trunnion/register";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { carForm, findCharacteristics } from "../car-form";
import { carPage } from "../car-page";
import type { Context } from "../context";
import { openMember } from "../gate";
import { setAsBuilt, setAsBuiltInput } from ".";

let world: World;
let registrar: WorldPerson;

beforeAll(async () => {
  world = await openWorld();
  registrar = await world.person({ roles: ["registrar"] });
}, 120_000);
afterAll(() => world?.close());

const inOurs = <T>(work: (ctx: Context) => Promise<T>) => openMember(world.database, registrar, "ours", work);
const form = (car: string) => inOurs((ctx) => carForm(ctx, car));

async function set(car: string, characteristic: string, parts: Record<string, unknown>) {
  const { version } = await form(car);
  return inOurs((ctx) => setAsBuilt(ctx, setAsBuiltInput.parse({ car, version, characteristic, ...parts })));
}
const values = async (car: string) =>
  (await form(car)).asBuilt.map(({ side, entered }) => `${side} ${entered}`);

describe("what left the works", () => {
  test("is kept as it was entered, and superseded, never overwritten", async () => {
    const car = await world.car();
    await set(car.reference, "front.antiRollBar.diameter", {
      whole: "9/16 in",
      newSource: "Build sheet",
      trust: "documented",
    });
    await set(car.reference, "front.antiRollBar.diameter", { whole: "5/8 in" });
    expect(await values(car.reference)).toEqual(["whole 5/8 in"]);
    const rows = await world.inClub((db) =>
      db.asBuiltValue.findMany({ where: { carId: car.id }, orderBy: { id: "asc" } }),
    );
    expect(rows).toMatchObject([
      { entered: "9/16 in", number: 0.0142875, supersededAt: expect.any(Date) },
      { entered: "5/8 in", number: 0.015875, supersededAt: null },
    ]);
  });

  test("shows on the car's page at once, judged against the specification", async () => {
    const car = await world.car({ chassis: "M1-050" });
    await set(car.reference, "front.antiRollBar.diameter", { whole: "20 mm" });
    const { deviating } = await inOurs((ctx) => carPage(ctx, car.reference));
    expect(deviating).toMatchObject([
      { characteristic: "front.antiRollBar.diameter", verdict: "differentPart" },
    ]);
  });

  test("is entered side by side, and only the side that changes is superseded", async () => {
    const car = await world.car();
    await set(car.reference, "front.camber", { left: "0°10'", right: "0°12'" });
    await set(car.reference, "front.camber", { left: "0°10'", right: "0°15'" });
    expect(await values(car.reference)).toEqual(["left 0°10'", "right 0°15'"]);
    expect(await world.inClub((db) => db.asBuiltValue.count({ where: { carId: car.id } }))).toBe(3);
  });

  test("that is unusual is asked about first, in words, and kept once that is said to stand", async () => {
    const car = await world.car();
    const before = await world.fingerprint();
    const asked = await set(car.reference, "front.camber", { left: "-6°", right: "-1°" }).catch(
      (error: unknown) => error,
    );
    const doubt = 'Front camber, left: "-6°" is unusual; usual is -4° to 2°';
    expect(asked).toMatchObject({ code: "DOUBTFUL", details: { doubts: [doubt] } });
    expect(await world.fingerprint()).toEqual(before);
    // Another doubt than the one that was shown is asked about anew.
    const other = set(car.reference, "front.camber", { left: "5°", right: "-1°", sure: doubt });
    await expect(other).rejects.toMatchObject({ code: "DOUBTFUL" });
    await set(car.reference, "front.camber", { left: "-6°", right: "-1°", sure: doubt });
    expect(await values(car.reference)).toEqual(["left -6°", "right -1°"]);
    // What stands already is not asked about again.
    await set(car.reference, "front.camber", { left: "-6°", right: "-1°10'" });
    expect(await values(car.reference)).toEqual(["left -6°", "right -1°10'"]);
  });

  test("emptied is not known any more, and stays in the past", async () => {
    const car = await world.car();
    await set(car.reference, "front.disc.face", { whole: "plain" });
    await set(car.reference, "front.disc.face", { whole: "" });
    expect(await values(car.reference)).toEqual([]);
    expect(await world.inClub((db) => db.asBuiltValue.count({ where: { carId: car.id } }))).toBe(1);
  });

  test("said again from a better source supersedes the same value", async () => {
    const car = await world.car();
    await set(car.reference, "front.disc.face", { whole: "plain" });
    await set(car.reference, "front.disc.face", {
      whole: "plain",
      newSource: "Build sheet",
      trust: "documented",
    });
    expect((await form(car.reference)).asBuilt).toMatchObject([
      { entered: "plain", source: "Build sheet", trust: "documented" },
    ]);
  });

  test("said the same again changes nothing", async () => {
    const car = await world.car();
    await set(car.reference, "front.disc.face", { whole: "plain" });
    const before = await world.fingerprint();
    expect(await set(car.reference, "front.disc.face", { whole: "plain" })).toBe(2);
    expect(await world.fingerprint()).toEqual(before);
  });

  test.each([
    ["front.antiRollBar.diameter", { whole: "22 mn" }, "whole", /22 mn/],
    ["front.camber", { left: "0°10'", right: "much" }, "right", /much/],
    ["no.such.thing", { whole: "1" }, "characteristic", /no characteristic "no.such.thing"/],
  ])(
    "of %s as %o is refused at its field, and nothing is written",
    async (characteristic, parts, field, message) => {
      const car = await world.car();
      const before = await world.fingerprint();
      const error = await set(car.reference, characteristic, parts).then(
        () => undefined,
        (caught: unknown) => caught,
      );
      expect(error).toBeInstanceOf(Invalid);
      expect((error as Invalid).problems).toMatchObject([{ field, message: expect.stringMatching(message) }]);
      expect(await world.fingerprint()).toEqual(before);
    },
  );

  test("of a club's own characteristic is entered like any other, and found by its name", async () => {
    await world.inClub((db) =>
      db.characteristic.create({
        data: {
          key: "own.badge",
          label: "Bonnet badge",
          assembly: "body",
          kind: "text",
          definition: { maximumLength: 40 },
          help: "What it says.",
        },
      }),
    );
    expect(await inOurs((ctx) => findCharacteristics(ctx, "badge bonnet"))).toMatchObject([
      { key: "own.badge" },
    ]);
    const car = await world.car();
    await set(car.reference, "own.badge", { whole: "gilt" });
    expect(await values(car.reference)).toEqual(["whole gilt"]);
  });
});
