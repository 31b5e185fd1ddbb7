import { openWorld, type World } from "@trunnion/fixtures";
import { createMember, createSignIn, openOperator, type SignIn } from "@trunnion/service";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { refusalOf } from "./failure";
import { requestOf } from "./request";
import { createCaller } from "./router";
import { sheetsPdf } from "./sheets";

let world: World;
let signIn: SignIn;
const origin = "http://localhost";

beforeAll(async () => {
  world = await openWorld();
  signIn = createSignIn(world.database, { secret: "s".repeat(32), baseUrl: origin });
  const car = await world.car({ chassis: "M1-001", read: { "front.disc.face": "drilled" } });
  await world.event({ slug: "open-day", entries: [{ number: "7", car }, { number: "91" }] });
  await world.event({ slug: "empty-day" });
  for (const role of ["scrutineer", "owner"] as const) {
    const member = {
      name: role,
      email: `${role}@example.test`,
      password: "walk round the car",
      roles: [role],
    };
    await openOperator(world.database, "ours", (ctx) => createMember(ctx, signIn, member));
  }
});
afterAll(() => world?.close());

/** A request as it comes in after signing in with the browser's own form. */
async function asked(role: string | null) {
  const service = { database: world.database, signIn };
  if (role === null) return requestOf(service, new Headers());
  const body = JSON.stringify({ email: `${role}@example.test`, password: "walk round the car" });
  const headers = { "content-type": "application/json", origin, "x-forwarded-for": "10.1.1.1" };
  const sent = new Request(`${origin}/api/auth/sign-in/email`, { method: "POST", headers, body });
  const cookies = (await signIn.handler(sent)).headers.getSetCookie();
  const cookie = cookies.map((one) => one.split(";")[0]).join("; ");
  return requestOf(service, new Headers({ cookie }));
}

describe("a request", () => {
  test("is signed in by its cookie and by nothing else", async () => {
    expect((await asked("scrutineer")).signedIn).toMatchObject({ name: "scrutineer" });
    expect((await asked(null)).signedIn).toBeNull();
    expect((await createCaller(await asked("owner")).club.mine()).clubs).toMatchObject([
      { slug: "ours", roles: ["owner"] },
    ]);
  });
});

describe("the sheets of an event as PDF", () => {
  const sheets = { club: "ours", event: "open-day", paper: "A4" } as const;

  test("are drawn for a scrutineer, all of them or one, and each is kept", async () => {
    const request = await asked("scrutineer");
    const pack = await sheetsPdf(request, sheets);
    const one = await sheetsPdf(request, { ...sheets, number: "7" });
    for (const bytes of [pack, one])
      expect(new TextDecoder("latin1").decode(bytes.slice(0, 5))).toBe("%PDF-");
    expect(one.length).toBeLessThan(pack.length);
    expect(await world.inClub((db) => db.printedSheet.count())).toBe(3);
  });

  test.each([
    [null, {}, "NOT_SIGNED_IN", 401],
    ["owner", {}, "ROLE_NEEDED", 403],
    ["scrutineer", { club: "theirs" }, "NOT_A_MEMBER", 403],
    ["scrutineer", { event: "no-day" }, "EVENT_NOT_FOUND", 404],
    ["scrutineer", { number: "8" }, "ENTRY_NOT_FOUND", 404],
    ["scrutineer", { event: "empty-day" }, "EVENT_HAS_NO_ENTRIES", 400],
  ])(
    "asked for by %s with %j are refused: %s, %d, and nothing is kept",
    async (role, given, code, status) => {
      const before = (await world.fingerprint()).printed_sheet;
      const error = await sheetsPdf(await asked(role), { ...sheets, ...given }).catch(
        (reason: unknown) => reason,
      );
      expect(refusalOf(error)).toMatchObject({ code, status });
      expect((await world.fingerprint()).printed_sheet).toBe(before);
    },
  );

  test("are no refusal where something else went wrong", () => {
    expect(refusalOf(new Error("boom"))).toBeUndefined();
    expect(refusalOf("boom")).toBeUndefined();
  });
});
