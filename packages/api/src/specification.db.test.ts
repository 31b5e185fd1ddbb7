import { openWorld, type World, type WorldPerson } from "@trunnion/fixtures";
import { createSignIn, type SignIn } from "@trunnion/service";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { refusalOf } from "./failure";
import { createCaller, type RouterInputs } from "./router";

let world: World;
let signIn: SignIn;
let registrar: WorldPerson;
let owner: WorldPerson;

beforeAll(async () => {
  world = await openWorld();
  signIn = createSignIn(world.database, { secret: "s".repeat(32), baseUrl: "http://localhost" });
  registrar = await world.person({ roles: ["registrar"], email: "registrar@example.test" });
  owner = await world.person({ roles: ["owner"], email: "owner@example.test" });
  await world.car({ chassis: "M1-010", read: { "front.camber": "0°40'" } });
}, 120_000);
afterAll(() => world?.close());

const as = (signedIn: WorldPerson | null) => createCaller({ database: world.database, signIn, signedIn });
const club = "ours";
const series = "mark-1";

async function statusOf(attempt: Promise<unknown>) {
  const error = await attempt.then(
    () => undefined,
    (reason: unknown) => reason,
  );
  const refusal = refusalOf(error);
  return [refusal?.code, refusal?.status];
}

describe("the procedures of specifications", () => {
  test("take what forms say, as text, from the first draft to the version that is current", async () => {
    const { specification } = as(registrar);
    const version = await specification.startDraft({ club, series, from: series });
    const { lines } = await specification.page({ club, series, version });
    const camber = lines.find(({ characteristic }) => characteristic === "front.camber")?.id ?? "";
    const { text, opened, revision } = await specification.entry({ club, series, version, entry: camber });
    // A browser sends every field as text, numbers too.
    const typed = { ...text, opened, revision: String(revision), upper: "0°45'", newSource: "" };
    await specification.putEntry({
      ...(typed as unknown as RouterInputs["specification"]["putEntry"]),
      club,
      series,
      version,
      entry: camber,
    });
    const review = await specification.review({ club, series, version });
    expect(review.moves.counts).toEqual([{ before: "outsideLimits", after: "insideLimits", count: 2 }]);
    const decided = {
      revision: String(review.revision),
      current: String(review.current),
      reason: "Bulletin 7",
    };
    await specification.makeCurrent({
      ...(decided as unknown as RouterInputs["specification"]["makeCurrent"]),
      club,
      series,
      version,
    });
    const page = await specification.page({ club, series });
    expect(page.shown).toMatchObject({ version, status: "current", by: registrar.name, note: "Bulletin 7" });
    const { changes } = await specification.compare({
      club,
      before: { series, version: 1 },
      after: { series },
    });
    expect(changes).toMatchObject([{ kind: "changed", fields: [{ label: "Upper limit", after: "0°45'" }] }]);
  });

  test("are read by every member, and written by those who may", async () => {
    const { specification, characteristic, series: ofSeries } = as(owner);
    expect((await specification.overview({ club })).series).toHaveLength(1);
    expect((await specification.csv({ club, series, version: 1 })).text).toContain(
      "front.camber,Front camber",
    );
    expect((await characteristic.own({ club })).mayEdit).toBe(false);
    expect((await ofSeries.page({ club, series })).mayEdit).toBe(false);
    const denied = ["ROLE_NEEDED", 403];
    expect(await statusOf(specification.startDraft({ club, series, from: "empty" }))).toEqual(denied);
    expect(await statusOf(ofSeries.addMarque({ club, name: "Another" }))).toEqual(denied);
    const lamps = { label: "Lamps", assembly: "body", kind: "date", help: "Lamps." } as const;
    expect(await statusOf(characteristic.add({ club, ...lamps }))).toEqual(denied);
  });

  test("answer with the status that says what is wrong", async () => {
    const { specification, characteristic } = as(registrar);
    expect(await statusOf(specification.page({ club, series: "mark-9" }))).toEqual(["SERIES_NOT_FOUND", 404]);
    expect(await statusOf(specification.page({ club, series, version: 9 }))).toEqual([
      "SPECIFICATION_NOT_FOUND",
      404,
    ]);
    expect(await statusOf(specification.entry({ club, series, version: 1 }))).toEqual([
      "SPECIFICATION_NOT_DRAFT",
      409,
    ]);
    expect(await statusOf(characteristic.page({ club, key: "front.camber" }))).toEqual([
      "CHARACTERISTIC_NOT_FOUND",
      404,
    ]);
    expect(await statusOf(as(null).specification.overview({ club }))).toEqual(["NOT_SIGNED_IN", 401]);
    expect(await statusOf(specification.overview({ club: "theirs" }))).toEqual(["NOT_A_MEMBER", 403]);
  });
});
