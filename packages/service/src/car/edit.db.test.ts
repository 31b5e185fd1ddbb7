import type { Role } from "@trunnion/db";
import { openWorld, type World, type WorldPerson } from "@trunnion/fixtures";
import { Invalid, Refusal } from "@trunnion/register";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { carForm } from "../car-form";
import { carPage } from "../car-page";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { compareCurrentValues } from "../current-value";
import { openMember } from "../gate";
import { verifyJournal } from "../journal";
import {
  addCar,
  addCarInput,
  correctCar,
  correctCarInput,
  fileCar,
  fileCarInput,
  setOptions,
  setOptionsInput,
} from ".";

let world: World;
let registrar: WorldPerson;

beforeAll(async () => {
  world = await openWorld();
  registrar = await world.person({ roles: ["registrar"] });
}, 120_000);
afterAll(() => world?.close());

const inOurs = <T>(work: (ctx: Context) => Promise<T>, who = registrar) =>
  openMember(world.database, who, "ours", work);
const form = (car: string) => inOurs((ctx) => carForm(ctx, car));

async function refusalOf(work: Promise<unknown>): Promise<Refusal> {
  const error = await work.then(
    () => undefined,
    (caught: unknown) => caught,
  );
  expect(error).toBeInstanceOf(Refusal);
  return error as Refusal;
}

async function problemsOf(work: Promise<unknown>) {
  const error = await work.then(
    () => undefined,
    (caught: unknown) => caught,
  );
  expect(error).toBeInstanceOf(Invalid);
  return (error as Invalid).problems;
}

function facts(car: string, version: number, parts: Record<string, unknown> = {}) {
  const said = { car, version, built: "", firstRegistered: "", remarks: "", ...parts };
  return correctCarInput.parse(said);
}

async function lastLine(carId: string) {
  return world.inClub((db) =>
    db.journalEntry.findFirstOrThrow({ where: { carId }, orderBy: { sequence: "desc" } }),
  );
}

describe("correcting a car's facts", () => {
  test("writes dates as written, counts the version up, and journals before and after with the reason", async () => {
    const car = await world.car({ built: "1971" });
    const version = await inOurs((ctx) =>
      correctCar(ctx, facts(car.reference, 1, { built: "before March 1972", reason: "build sheet found" })),
    );
    expect(version).toBe(2);
    expect(await form(car.reference)).toMatchObject({ built: "before March 1972", version: 2 });
    expect(await lastLine(car.id)).toMatchObject({
      action: "car.correct",
      reason: "build sheet found",
      before: { built: "1971" },
      after: { built: "before March 1972" },
      personId: registrar.personId,
    });
  });

  test("keeps remarks, which may name people, out of the journal", async () => {
    const car = await world.car();
    await inOurs((ctx) => correctCar(ctx, facts(car.reference, 1, { remarks: "bought from Jóhann Vík" })));
    const line = await lastLine(car.id);
    expect(JSON.stringify([line.before, line.after])).not.toContain("Jóhann");
    expect(line.after).toEqual({ remarks: "not told here" });
  });

  test("changes nothing, not even the version, when nothing differs", async () => {
    const car = await world.car({ built: "1971" });
    const before = await world.fingerprint();
    expect(await inOurs((ctx) => correctCar(ctx, facts(car.reference, 1, { built: "1971" })))).toBe(1);
    expect(await world.fingerprint()).toEqual(before);
  });

  test.each([
    ["32.1.1971", "built", /is not a date that can be read/],
    ["2090", "built", /lies in the future/],
    ["1850", "built", /lies before 1900/],
  ])("refuses %s at its field and writes nothing", async (built, field, message) => {
    const car = await world.car();
    const before = await world.fingerprint();
    const [problem] = await problemsOf(inOurs((ctx) => correctCar(ctx, facts(car.reference, 1, { built }))));
    expect(problem).toMatchObject({ field, message: expect.stringMatching(message) });
    expect(await world.fingerprint()).toEqual(before);
  });

  test("refuses control characters before anything else", () => {
    expect(correctCarInput.safeParse({ ...facts("M1-001", 1), built: "19\u000071" }).success).toBe(false);
    expect(correctCarInput.safeParse({ ...facts("M1-001", 1), remarks: "a\u0000b" }).success).toBe(false);
    expect(correctCarInput.parse({ ...facts("M1-001", 1), remarks: "one\r\ntwo " }).remarks).toBe("one\ntwo");
  });
});

describe("two people over one car", () => {
  test("the second is shown what both made of it, and nothing of it is written", async () => {
    const car = await world.car({ built: "1970" });
    const opened = await form(car.reference);
    await inOurs((ctx) => correctCar(ctx, facts(car.reference, opened.version, { built: "1971" })));
    const before = await world.fingerprint();
    const second = facts(car.reference, opened.version, {
      built: "1972",
      remarks: "mine",
      opened: { built: "1970", firstRegistered: "", remarks: "" },
      openedAt: opened.openedAt,
    });
    const refusal = await refusalOf(inOurs((ctx) => correctCar(ctx, second)));
    expect(refusal).toMatchObject({
      code: "CHANGED_MEANWHILE",
      details: {
        version: 2,
        differences: [{ field: "built", was: "1970", theirs: "1971", yours: "1972" }],
      },
    });
    expect(await world.fingerprint()).toEqual(before);
    // Knowingly, with the version that was shown, it is taken.
    expect(await inOurs((ctx) => correctCar(ctx, { ...second, version: 2 }))).toBe(3);
    expect(await form(car.reference)).toMatchObject({ built: "1972", remarks: "mine" });
  });

  test("what was changed in another part of the record is shown from the journal", async () => {
    const car = await world.car();
    const opened = await form(car.reference);
    await inOurs((ctx) =>
      setOptions(ctx, setOptionsInput.parse({ car: car.reference, version: 1, options: ["OD"] })),
    );
    // Something must have been journalled before, or there is no place to look from.
    const second = facts(car.reference, opened.version, {
      built: "1972",
      opened: { built: "" },
      openedAt: 1,
    });
    const { details } = await refusalOf(inOurs((ctx) => correctCar(ctx, second)));
    expect(details).toMatchObject({
      differences: [{ label: "Option: options", was: "", theirs: "OD", yours: "" }],
    });
  });

  test("who save at the very same time are let in one after the other", async () => {
    const car = await world.car();
    const saves = ["1970", "1971", "1972", "1973"].map((built) =>
      inOurs((ctx) => correctCar(ctx, facts(car.reference, 1, { built }))).then(
        () => "saved",
        (error: Refusal) => error.code,
      ),
    );
    const outcomes = await Promise.all(saves);
    expect(outcomes.toSorted()).toEqual([...Array(3).fill("CHANGED_MEANWHILE"), "saved"]);
    expect(await form(car.reference)).toMatchObject({ version: 2 });
  });
});

const adding = (parts: Record<string, unknown>) =>
  addCarInput.parse({
    series: "mark-1",
    built: "",
    firstRegistered: "",
    engine: "",
    registration: "",
    since: "",
    remarks: "",
    ...parts,
  });

describe("adding a car", () => {
  test("files it under its series with its serial, numbers and status, from a source that is new", async () => {
    const reference = await inOurs((ctx) =>
      addCar(
        ctx,
        adding({
          chassis: "M1-101",
          engine: "KM 777",
          registration: "AB 101",
          built: "c. 1972",
          status: "laidUp",
          since: "1998",
          newSource: "Letter of May 2024",
          newSourceKind: "letter",
          locus: "p. 2",
          trust: "stated",
        }),
      ),
    );
    expect(reference).toBe("M1-101");
    const known = { source: "Letter of May 2024", locus: "p. 2", trust: "stated" };
    expect(await form(reference)).toMatchObject({
      series: "mark-1",
      built: "c. 1972",
      version: 1,
      identities: [
        { kind: "engine", number: "KM 777", ...known },
        { kind: "registration", number: "AB 101", ...known },
      ],
      statuses: [{ status: "laidUp", from: "1998", to: "", ...known }],
    });
    const car = await world.inClub((db) => db.car.findFirstOrThrow({ where: { chassis: "M1-101" } }));
    expect(car.serial).toBe(101);
    expect(await lastLine(car.id)).toMatchObject({ action: "car.add", after: { chassis: "M1-101" } });
  });

  test("takes a source the club has under that title rather than a second one", async () => {
    await inOurs((ctx) =>
      addCar(ctx, adding({ chassis: "M1-102", engine: "KM 778", newSource: "mark 1 WORKSHOP manual" })),
    );
    const titles = await world.inClub((db) =>
      db.source.findMany({ where: { title: { contains: "orkshop" } } }),
    );
    expect(titles).toHaveLength(1);
  });

  test("takes a number that does not fit as it is, without a serial", async () => {
    await inOurs((ctx) => addCar(ctx, adding({ chassis: "M1-121" })));
    const car = await world.inClub((db) => db.car.findFirstOrThrow({ where: { chassis: "M1-121" } }));
    expect(car.serial).toBeNull();
  });

  test("of a number that is taken is refused, until somebody says that another car claims it", async () => {
    await inOurs((ctx) => addCar(ctx, adding({ chassis: "M1-103" })));
    const before = await world.fingerprint();
    const [problem] = await problemsOf(inOurs((ctx) => addCar(ctx, adding({ chassis: "m1 103" }))));
    expect(problem?.message).toContain("is on the register already: M1-103.");
    expect(await world.fingerprint()).toEqual(before);
    expect(await inOurs((ctx) => addCar(ctx, adding({ chassis: "M1-103", another: "yes" })))).toBe(
      "M1-103~2",
    );
  });

  test("twice at once makes one car, not two first claimants", async () => {
    const outcomes = await Promise.all(
      [1, 2, 3].map(() =>
        inOurs((ctx) => addCar(ctx, adding({ chassis: "M1-104" }))).then(
          (reference) => reference,
          (error: Error) => error.name,
        ),
      ),
    );
    expect(outcomes.toSorted()).toEqual(["Invalid", "Invalid", "M1-104"]);
  });

  test.each([
    ["", "chassis"],
    ["M1-105~2", "chassis"],
    ["9".repeat(41), "chassis"],
  ])("named %j is refused at the field %s", async (chassis, field) => {
    const problems = await problemsOf(inOurs((ctx) => addCar(ctx, adding({ chassis }))));
    expect(problems.map((one) => one.field)).toContain(field);
  });

  test("names every problem at once", async () => {
    const wrong = adding({ chassis: "", series: "mark-9", built: "x", source: "nonsense", newSource: "Y" });
    const fields = (await problemsOf(inOurs((ctx) => addCar(ctx, wrong)))).map(({ field }) => field);
    expect(fields.toSorted()).toEqual(["built", "chassis", "newSource", "series"]);
  });
});

describe("filing a car under another number", () => {
  test("moves it with its serial, and tells how it is named then", async () => {
    const car = await world.car({ chassis: "M1-017" });
    const moved = await inOurs((ctx) =>
      fileCar(
        ctx,
        fileCarInput.parse({ car: car.reference, version: 1, chassis: "M1-071", series: "mark-1" }),
      ),
    );
    expect(moved).toBe("M1-071");
    const row = await world.inClub((db) => db.car.findFirstOrThrow({ where: { id: car.id } }));
    expect(row).toMatchObject({ chassis: "M1-071", chassisKey: "M1071", serial: 71, claim: 1, version: 2 });
    expect(await lastLine(car.id)).toMatchObject({
      before: { chassis: "M1-017" },
      after: { chassis: "M1-071" },
    });
  });

  test("keeps its claim when only the writing or the series changes", async () => {
    await world.car({ chassis: "M1-018" });
    const second = await world.car({ chassis: "M1-018", claim: 2 });
    const moved = await inOurs((ctx) =>
      fileCar(ctx, fileCarInput.parse({ car: second.reference, version: 1, chassis: "M1 018", series: "" })),
    );
    expect(moved).toBe("M1 018~2");
  });
});

describe("options", () => {
  test("replace those before, once each, in order", async () => {
    const car = await world.car({ options: ["H"] });
    await inOurs((ctx) =>
      setOptions(
        ctx,
        setOptionsInput.parse({ car: car.reference, version: 1, options: ["OD"], others: "XX; OD" }),
      ),
    );
    expect((await form(car.reference)).options).toEqual(["OD", "XX"]);
    expect(await lastLine(car.id)).toMatchObject({ before: { options: "H" }, after: { options: "OD, XX" } });
  });
});

describe("a record that only points to another", () => {
  test("is not changed, and says where the car is", async () => {
    const [into, from] = [await world.car(), await world.car()];
    await world.inClub((db) =>
      db.car.updateMany({ where: { id: from.id }, data: { mergedIntoId: into.id } }),
    );
    const refusal = await refusalOf(
      inOurs((ctx) => correctCar(ctx, facts(from.reference, 1, { built: "1971" }))),
    );
    expect(refusal).toMatchObject({ code: "CAR_MERGED", details: { into: into.reference } });
  });
});

describe("who may not", () => {
  test.each<Role>(["owner", "scrutineer"])("a %s may not open the form", async (role) => {
    const car = await world.car();
    const member = await world.person({ roles: [role] });
    expect((await refusalOf(inOurs((ctx) => carForm(ctx, car.reference), member))).code).toBe("ROLE_NEEDED");
  });

  test("a car of another club cannot even be found", async () => {
    const theirs = await world.car({ club: world.theirs, chassis: "M1-099" });
    const refusal = await refusalOf(inOurs((ctx) => correctCar(ctx, facts(theirs.reference, 1))));
    expect(refusal.code).toBe("CAR_NOT_FOUND");
  });
});

test("after all of it the journal's chain holds, and the current values of the cars changed are right", async () => {
  const [breaks, stale] = await inOurs(async (ctx) => [
    await verifyJournal(ctx),
    await compareCurrentValues(ctx, await bookOf(ctx)),
  ]);
  expect(breaks).toEqual([]);
  // Cars that a test only made have no current values yet: those are the service's to work out.
  const untouched = await world.inClub((db) =>
    db.car.findMany({ where: { version: 1, currentValues: { none: {} } }, select: { chassis: true } }),
  );
  const made = new Set(untouched.map(({ chassis }) => chassis));
  expect(stale.filter(({ car }) => !made.has(car))).toEqual([]);
  expect(await inOurs((ctx) => carPage(ctx, "M1-101"))).toMatchObject({ claims: 1 });
});
