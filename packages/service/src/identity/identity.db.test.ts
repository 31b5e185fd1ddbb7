import { openWorld, type World, type WorldPerson } from "@trunnion/fixtures";
import { Invalid, Refusal } from "@trunnion/register";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { carForm } from "../car-form";
import type { Context } from "../context";
import { openMember } from "../gate";
import {
  addIdentity,
  addIdentityInput,
  correctIdentity,
  correctIdentityInput,
  removeIdentity,
  removeIdentityInput,
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
const caught = (work: Promise<unknown>) =>
  work.then(
    () => undefined,
    (error: unknown) => error,
  );

const mark = (car: string, version: number, parts: Record<string, unknown> = {}) =>
  addIdentityInput.parse({ car, version, kind: "registration", number: "AB 1", from: "", to: "", ...parts });

describe("a number or mark", () => {
  test("is added with its span, standing and provenance, and journalled whole", async () => {
    const car = await world.car();
    const parts = {
      from: "3/72",
      to: "c. 1980",
      standing: "restamped",
      newSource: "Log book",
      trust: "documented",
    };
    expect(await inOurs((ctx) => addIdentity(ctx, mark(car.reference, 1, parts)))).toBe(2);
    const { identities } = await form(car.reference);
    expect(identities).toMatchObject([
      {
        kind: "registration",
        number: "AB 1",
        standing: "restamped",
        from: "3/72",
        to: "c. 1980",
        source: "Log book",
      },
    ]);
    const line = await world.inClub((db) => db.journalEntry.findFirstOrThrow({ where: { carId: car.id } }));
    expect(line).toMatchObject({
      action: "identity.add",
      noun: "carIdentity",
      nounId: identities[0]?.id,
      after: { kind: "registration", number: "AB 1", from: "3/72", to: "c. 1980", source: "Log book" },
    });
  });

  test("is corrected in place, with before and after in the journal", async () => {
    const car = await world.car({ registration: "AB 2" });
    const [row] = (await form(car.reference)).identities;
    const input = { ...mark(car.reference, 1, { number: "AB 22", to: "1981" }), id: row?.id };
    await inOurs((ctx) => correctIdentity(ctx, correctIdentityInput.parse(input)));
    expect((await form(car.reference)).identities).toMatchObject([
      { id: row?.id, number: "AB 22", to: "1981" },
    ]);
    const line = await world.inClub((db) => db.journalEntry.findFirstOrThrow({ where: { carId: car.id } }));
    expect(line).toMatchObject({
      before: { number: "AB 2", to: "" },
      after: { number: "AB 22", to: "1981" },
    });
  });

  test("taken away stays in the journal, and its evidence with the car", async () => {
    const car = await world.car({ registration: "AB 3" });
    const [row] = (await form(car.reference)).identities;
    await world.inClub(async (db) => {
      const evidence = await db.evidence.create({
        data: { sha256: "a".repeat(64), mediaType: "image/png", bytes: 1, fileName: "a.png" },
      });
      await db.evidenceLink.create({ data: { evidenceId: evidence.id, carIdentityId: row?.id ?? "" } });
    });
    const input = removeIdentityInput.parse({
      car: car.reference,
      version: 1,
      id: row?.id,
      reason: "another car's",
    });
    expect(await inOurs((ctx) => removeIdentity(ctx, input))).toBe(2);
    expect((await form(car.reference)).identities).toEqual([]);
    const [line, link] = await world.inClub(async (db) => [
      await db.journalEntry.findFirstOrThrow({ where: { carId: car.id } }),
      await db.evidenceLink.findFirstOrThrow(),
    ]);
    expect(line).toMatchObject({
      action: "identity.remove",
      reason: "another car's",
      before: { number: "AB 3" },
    });
    expect(link).toMatchObject({ carId: car.id, carIdentityId: null });
  });

  test("which somebody else took away meanwhile is refused", async () => {
    const car = await world.car({ registration: "AB 4" });
    const id = "019ab000-0000-7000-8000-000000000000";
    const error = await caught(
      inOurs((ctx) => removeIdentity(ctx, removeIdentityInput.parse({ car: car.reference, version: 1, id }))),
    );
    expect(error).toBeInstanceOf(Refusal);
    expect(error).toMatchObject({ code: "ROW_NOT_FOUND" });
  });

  test.each([
    [{ number: "ab-5" }, "number", /has AB 5 already/],
    [{ number: "--" }, "number", /letters or figures/],
    [{ number: "AB 6", from: "1980", to: "1970" }, "to", /the end must not come before the beginning/],
    [{ number: "AB 6", from: "someday" }, "from", /not a date/],
    [{ number: "AB 6", source: "019ab000-0000-7000-8000-000000000000" }, "source", /not the club's/],
  ])("as %o is refused at its field, and the record stays as it was", async (parts, field, message) => {
    const car = await world.car({ registration: "AB 5" });
    const before = await world.fingerprint();
    const error = await caught(inOurs((ctx) => addIdentity(ctx, mark(car.reference, 1, parts))));
    expect(error).toBeInstanceOf(Invalid);
    expect((error as Invalid).problems).toMatchObject([{ field, message: expect.stringMatching(message) }]);
    expect(await world.fingerprint()).toEqual(before);
  });

  test("may end in the year it began: what is only known to the year is no contradiction", async () => {
    const car = await world.car();
    await inOurs((ctx) => addIdentity(ctx, mark(car.reference, 1, { from: "1972", to: "3/72" })));
    expect((await form(car.reference)).identities).toHaveLength(1);
  });
});
