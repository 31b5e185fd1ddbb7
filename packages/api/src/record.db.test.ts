import { openWorld, type World, type WorldPerson } from "@trunnion/fixtures";
import { createSignIn, type SignIn } from "@trunnion/service";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { problemsOf, refusalOf } from "./failure";
import { createCaller } from "./router";

let world: World;
let signIn: SignIn;
let registrar: WorldPerson;

beforeAll(async () => {
  world = await openWorld();
  signIn = createSignIn(world.database, { secret: "s".repeat(32), baseUrl: "http://localhost" });
  registrar = await world.person({ roles: ["registrar"] });
}, 120_000);
afterAll(() => world?.close());

const club = "ours";
const as = (who: WorldPerson) => createCaller({ database: world.database, signIn, signedIn: who });
const caught = (work: Promise<unknown>) =>
  work.then(
    () => undefined,
    (error: unknown) => error,
  );

/** A form over a car's record as a browser sends it: every field a text, version and place among them. */
const sent = (car: string, version: string) => ({ club, car, version, openedAt: "0", reason: "" });
const unknown = { source: "", newSource: "", newSourceKind: "other", locus: "", trust: "unknown" } as const;

describe("a form over a car's record", () => {
  test("is taken as a browser sends it, all texts", async () => {
    const { record } = as(registrar);
    const car = await record.add({
      club,
      chassis: "M1-050",
      series: "mark-1",
      another: "no",
      ...unknown,
      built: " c. 1972 ",
      firstRegistered: "",
      engine: "K 1",
      registration: "",
      status: "unknown",
      since: "",
      remarks: "one\r\ntwo",
      reason: "",
    });
    await record.addStatus({ ...sent(car, "1"), ...unknown, status: "laidUp", from: "1998", to: "" });
    expect(await record.form({ club, car })).toMatchObject({
      built: "c. 1972",
      remarks: "one\ntwo",
      version: 2,
      statuses: [{ status: "laidUp", from: "1998" }],
    });
  });

  test("that cannot be read tells each problem at the field of the form", async () => {
    const car = (await world.car()).reference;
    const entered = { ...sent(car, "1"), ...unknown, kind: "registration", number: "AB 1" } as const;
    const late = await caught(as(registrar).record.addIdentity({ ...entered, from: "someday", to: "never" }));
    expect(Object.keys(problemsOf(late) ?? {})).toEqual(["from", "to"]);
    const long = await caught(
      as(registrar).record.addIdentity({ ...entered, from: "", to: "", locus: "x".repeat(121) }),
    );
    expect(problemsOf(long)).toEqual({ locus: ["at most 120 characters"] });
  });

  test("over a car somebody changed meanwhile carries both versions, as a conflict", async () => {
    const car = (await world.car({ built: "1971" })).reference;
    const facts = { firstRegistered: "", remarks: "" };
    await as(registrar).car.correct({ ...sent(car, "1"), ...facts, built: "1972" });
    const second = { ...sent(car, "1"), ...facts, built: "1973", opened: { built: "1971", ...facts } };
    const refusal = refusalOf(await caught(as(registrar).car.correct(second)));
    expect(refusal).toMatchObject({
      status: 409,
      code: "CHANGED_MEANWHILE",
      details: { version: 2, differences: [{ was: "1971", theirs: "1972", yours: "1973" }] },
    });
  });

  test("of a club's own is nobody else's: another club's registrar is refused", async () => {
    const car = (await world.car()).reference;
    const other = await world.person({ roles: ["registrar"], club: world.theirs });
    const before = await world.fingerprint();
    const refusal = refusalOf(await caught(as(other).record.form({ club, car })));
    expect(refusal?.code).toBe("NOT_A_MEMBER");
    const theirs = {
      ...sent(car, "1"),
      club: "theirs",
      ...unknown,
      status: "destroyed",
      from: "",
      to: "",
    } as const;
    expect(refusalOf(await caught(as(other).record.addStatus(theirs)))?.code).toBe("CAR_NOT_FOUND");
    expect(await world.fingerprint()).toEqual(before);
  });
});

describe("personal data", () => {
  test("are given to who may see them and to nobody else", async () => {
    const car = await world.car({ keeper: { name: "Ása Secret" } });
    const { keepers } = await as(registrar).record.form({ club, car: car.reference });
    const keeper = keepers[0]?.keeperId ?? "";
    expect(await as(registrar).keeper.export({ club, keeper })).toMatchObject({
      keeper: { name: "Ása Secret" },
    });
    for (const role of ["owner", "scrutineer"] as const) {
      const other = await world.person({ roles: [role] });
      const answers = [
        await caught(as(other).keeper.export({ club, keeper })),
        await caught(as(other).keeper.detail({ club, keeper })),
        await caught(as(other).keeper.choices({ club })),
        await caught(as(other).number.page({ club })),
      ];
      expect(answers.map((error) => refusalOf(error)?.code)).toEqual(Array(4).fill("ROLE_NEEDED"));
    }
  });
});
