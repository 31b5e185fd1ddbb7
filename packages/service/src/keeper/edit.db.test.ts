import { openWorld, type World, type WorldPerson } from "@trunnion/fixtures";
import { type Invalid, Refusal } from "@trunnion/register";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { carForm } from "../car-form";
import { carPage } from "../car-page";
import type { Context } from "../context";
import { openMember } from "../gate";
import { home } from "../home";
import {
  addKeepership,
  addKeepershipInput,
  correctKeeper,
  correctKeeperInput,
  correctKeepership,
  correctKeepershipInput,
  correctOwnContact,
  correctOwnContactInput,
  eraseKeeper,
  exportKeeper,
  keeperDetail,
  ownContacts,
  removeKeepership,
  removeKeepershipInput,
} from ".";

let world: World;
let registrar: WorldPerson;
let owner: WorldPerson;

beforeAll(async () => {
  world = await openWorld();
  registrar = await world.person({ roles: ["registrar"], name: "Ragna Vík" });
  owner = await world.person({ roles: ["owner"], name: "Óskar Lund" });
}, 120_000);
afterAll(() => world?.close());

const inOurs = <T>(work: (ctx: Context) => Promise<T>, who = registrar) =>
  openMember(world.database, who, "ours", work);
const form = (car: string) => inOurs((ctx) => carForm(ctx, car));
const caught = (work: Promise<unknown>) =>
  work.then(
    () => undefined,
    (error: unknown) => error,
  );

const keeping = (car: string, version: number, parts: Record<string, unknown> = {}) =>
  addKeepershipInput.parse({ car, version, name: "", from: "", to: "", ...parts });

async function journal(): Promise<string> {
  const rows = await world.inClub((db) => db.journalEntry.findMany({ orderBy: { sequence: "asc" } }));
  return JSON.stringify(rows.map(({ before, after, reason }) => [before, after, reason]));
}

/** A car kept by the owner, who is a member. */
async function ownersCar() {
  const car = await world.car();
  const parts = {
    name: owner.name,
    email: "o@example.test",
    phone: "1",
    address: "Quay 3",
    membership: owner.membershipId,
  };
  await inOurs((ctx) => addKeepership(ctx, keeping(car.reference, 1, { ...parts, from: "1999" })));
  const [row] = (await form(car.reference)).keepers;
  return { ...car, keeperId: row?.keeperId ?? "", keepershipId: row?.id ?? "" };
}

describe("keepers over time", () => {
  test("who would have kept it before it was built is asked about, and nobody is named in the question", async () => {
    const { reference } = await world.car({ built: "1971" });
    const add = (sure?: string) =>
      inOurs((ctx) =>
        addKeepership(ctx, {
          ...keeping(reference, 1, { name: "Ása Early", from: "1968" }),
          ...(sure === undefined ? {} : { sure }),
        }),
      );
    const doubt = "kept since 1968, before it was built (1971)";
    const before = await world.fingerprint();
    await expect(add()).rejects.toMatchObject({ code: "DOUBTFUL", details: { doubts: [doubt] } });
    expect(await world.fingerprint()).toEqual(before);
    expect(await add(doubt)).toBe(2);
  });

  test("a new present keeper ends the keeping of the one before, unless they keep it together", async () => {
    const { reference } = await world.car();
    await inOurs((ctx) => addKeepership(ctx, keeping(reference, 1, { name: "Ása One", from: "1975" })));
    await inOurs((ctx) => addKeepership(ctx, keeping(reference, 2, { name: "Bára Two", from: "5/88" })));
    await inOurs((ctx) =>
      addKeepership(ctx, keeping(reference, 3, { name: "Ceri Three", from: "1990", together: "yes" })),
    );
    const told = (await form(reference)).keepers.map(
      ({ name, from, to }) => `${name} ${from} to ${to || "now"}`,
    );
    expect(told).toEqual(["Ceri Three 1990 to now", "Bára Two 5/88 to now", "Ása One 1975 to 1988-05-31"]);
    const text = await journal();
    for (const name of ["Ása", "Bára", "Ceri"]) expect(text).not.toContain(name);
  });

  test("a keeper the register knows is taken, not made again", async () => {
    const [one, other] = [await ownersCar(), await world.car()];
    await inOurs((ctx) =>
      addKeepership(ctx, keeping(other.reference, 1, { keeper: one.keeperId, from: "2001" })),
    );
    expect((await form(other.reference)).keepers).toMatchObject([
      { keeperId: one.keeperId, name: owner.name },
    ]);
  });

  test("dates are corrected, and a keeping that never was is taken away with the person nobody else needs", async () => {
    const car = await world.car();
    await inOurs((ctx) =>
      addKeepership(ctx, keeping(car.reference, 1, { name: "Dagný Four", from: "1975" })),
    );
    const [row] = (await form(car.reference)).keepers;
    const span = { car: car.reference, version: 2, id: row?.id, from: "c. 1976", to: "1980" };
    await inOurs((ctx) => correctKeepership(ctx, correctKeepershipInput.parse(span)));
    expect((await form(car.reference)).keepers).toMatchObject([{ from: "c. 1976", to: "1980-12-31" }]);
    const gone = removeKeepershipInput.parse({ car: car.reference, version: 3, id: row?.id });
    await inOurs((ctx) => removeKeepership(ctx, gone));
    expect(await world.inClub((db) => db.keeper.count({ where: { name: "Dagný Four" } }))).toBe(0);
  });

  test.each([
    [{}, "name", /Write the keeper's name/],
    [{ name: "X", membership: "019ab000-0000-7000-8000-000000000000" }, "membership", /no such member/],
    [{ name: "X", from: "1980", to: "1970" }, "to", /must not come before/],
    [{ keeper: "019ab000-0000-7000-8000-000000000000" }, "keeper", /no such keeper/],
  ])("as %o is refused at its field, and nothing is written", async (parts, field, message) => {
    const car = await world.car();
    const before = await world.fingerprint();
    const error = await caught(inOurs((ctx) => addKeepership(ctx, keeping(car.reference, 1, parts))));
    expect((error as Invalid).problems).toMatchObject([{ field, message: expect.stringMatching(message) }]);
    expect(await world.fingerprint()).toEqual(before);
  });
});

describe("an owner who is linked to a keeper", () => {
  test("has his car in his list, sees himself on its page, and nobody who kept it before", async () => {
    const car = await ownersCar();
    await inOurs((ctx) =>
      addKeepership(ctx, keeping(car.reference, 2, { name: "Eydís Before", from: "1970", to: "1980" })),
    );
    const { ownCars } = await inOurs(home, owner);
    expect(ownCars.map(({ reference }) => reference)).toContain(car.reference);
    const { keepers } = await inOurs((ctx) => carPage(ctx, car.reference), owner);
    expect(keepers).toMatchObject([{ name: owner.name, own: true }]);
  });

  test("sees no keeper of any other car", async () => {
    const car = await world.car({ keeper: { name: "Freyja Other" } });
    expect((await inOurs((ctx) => carPage(ctx, car.reference), owner)).keepers).toBeNull();
  });

  test("corrects his own contact data and nothing else, and the journal does not say what to", async () => {
    const car = await ownersCar();
    const own = correctOwnContactInput.parse({
      keeper: car.keeperId,
      address: "Hill 9",
      email: "new@example.test",
      phone: "",
    });
    await inOurs((ctx) => correctOwnContact(ctx, own), owner);
    const contact = (await inOurs(ownContacts, owner)).find(({ id }) => id === car.keeperId);
    expect(contact).toMatchObject({
      name: owner.name,
      address: "Hill 9",
      email: "new@example.test",
      phone: "",
    });
    expect(await journal()).not.toContain("Hill 9");
    expect((await form(car.reference)).version).toBe(3);
  });

  test("may not touch another's", async () => {
    const car = await world.car({ keeper: { name: "Gréta Other" } });
    const [row] = (await form(car.reference)).keepers;
    const input = correctOwnContactInput.parse({ keeper: row?.keeperId, address: "mine now" });
    const before = await world.fingerprint();
    expect(await caught(inOurs((ctx) => correctOwnContact(ctx, input), owner))).toMatchObject({
      code: "KEEPER_NOT_FOUND",
    });
    expect(await caught(inOurs((ctx) => exportKeeper(ctx, row?.keeperId ?? ""), owner))).toMatchObject({
      code: "ROLE_NEEDED",
    });
    expect(await world.fingerprint()).toEqual(before);
  });

  test("is told when the registrar changed them meanwhile", async () => {
    const car = await ownersCar();
    const particulars = {
      car: car.reference,
      version: 2,
      keeper: car.keeperId,
      name: owner.name,
      address: "Quay 4",
      membership: owner.membershipId,
    };
    await inOurs((ctx) => correctKeeper(ctx, correctKeeperInput.parse(particulars)));
    const own = { keeper: car.keeperId, address: "Quay 5", opened: { address: "Quay 3" } };
    const error = await caught(
      inOurs((ctx) => correctOwnContact(ctx, correctOwnContactInput.parse(own)), owner),
    );
    expect(error).toMatchObject({
      code: "CHANGED_MEANWHILE",
      details: { differences: [{ field: "address", was: "Quay 3", theirs: "Quay 4", yours: "Quay 5" }] },
    });
  });
});

describe("a person's data", () => {
  test("are given out whole to the person and to the registrar", async () => {
    const car = await ownersCar();
    for (const who of [owner, registrar]) {
      const told = await inOurs((ctx) => exportKeeper(ctx, car.keeperId), who);
      expect(told).toMatchObject({
        keeper: { name: owner.name, email: "o@example.test", address: "Quay 3" },
        keeperships: [{ car: car.reference, from: "1999", to: null }],
        membership: { roles: ["owner"] },
      });
    }
  });

  test("are erased on request: the rows stay, the person is nowhere, not even in what an import kept for undoing", async () => {
    const car = await world.car();
    const person = { name: "Hróðný Erased", address: "Vale 7", email: "h@example.test", phone: "0123456" };
    await inOurs((ctx) => addKeepership(ctx, keeping(car.reference, 1, { ...person, from: "1975" })));
    const [row] = (await form(car.reference)).keepers;
    const keeperId = row?.keeperId ?? "";
    await world.inClub(async (db) => {
      const run = await db.importRun.create({
        data: {
          fileName: "a.csv",
          sha256: "0".repeat(64),
          sourceId: world.ours.sourceId,
          rowsRead: 1,
          carsAdded: 0,
          carsChanged: 1,
          rowsRefused: 0,
        },
      });
      const before = { id: keeperId, ...person, phone: "999", erasedAt: null };
      await db.importStep.create({
        data: { runId: run.id, ordinal: 1, carId: car.id, table: "keeper", rowId: keeperId, before },
      });
      await db.car.updateMany({ where: { id: car.id }, data: { remarks: "From Hróðný Erased, with tools" } });
    });
    expect((await inOurs((ctx) => keeperDetail(ctx, keeperId))).mentions).toEqual([
      { reference: car.reference, where: "remarks" },
    ]);
    await inOurs((ctx) => eraseKeeper(ctx, { keeper: keeperId, reason: "asked by letter" }));
    expect((await form(car.reference)).keepers).toMatchObject([
      { name: "erased", erased: true, from: "1975" },
    ]);
    const left = await world.inClub(async (db) =>
      JSON.stringify([await db.keeper.findMany({ where: { id: keeperId } }), await db.importStep.findMany()]),
    );
    for (const part of [...Object.values(person), "999"]) expect(left).not.toContain(part);
    expect(await journal()).not.toContain("Hróðný");
    expect(await caught(inOurs((ctx) => eraseKeeper(ctx, { keeper: keeperId, reason: "" })))).toMatchObject({
      code: "KEEPER_ERASED",
    });
  });

  test("may not be erased or listed by an owner", async () => {
    const car = await ownersCar();
    const error = await caught(
      inOurs((ctx) => eraseKeeper(ctx, { keeper: car.keeperId, reason: "" }), owner),
    );
    expect(error).toBeInstanceOf(Refusal);
    expect(error).toMatchObject({ code: "ROLE_NEEDED" });
  });
});
