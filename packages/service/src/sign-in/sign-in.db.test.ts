import { openWorld, type World } from "@trunnion/fixtures";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { openOperator } from "../gate";
import { createMember } from "../invitation";
import { createSignIn, type SignIn } from "./index";

let world: World;
let signIn: SignIn;
const origin = "http://localhost:3000";
const right = { email: "ase@example.test", password: "walk round the car" };

beforeAll(async () => {
  world = await openWorld();
  signIn = createSignIn(world.database, { secret: "s".repeat(32), baseUrl: origin });
  await openOperator(world.database, "ours", (ctx) =>
    createMember(ctx, signIn, { ...right, name: "Åse", roles: ["owner"] }),
  );
}, 120_000);
afterAll(() => world?.close());

/** A request as a browser sends it, from an address of its own so that tests do not share a count of tries. */
let address = 0;
function post(path: string, body: object, headers: Record<string, string> = {}): Promise<Response> {
  return signIn.handler(
    new Request(`${origin}/api/auth${path}`, {
      method: "POST",
      headers: {
        "content-type": "application/json",
        origin,
        "x-forwarded-for": `10.0.0.${++address}`,
        ...headers,
      },
      body: JSON.stringify(body),
    }),
  );
}

const cookieOf = (response: Response) =>
  response.headers
    .getSetCookie()
    .map((cookie) => cookie.split(";")[0])
    .join("; ");

const sessionOf = (cookie: string) => signIn.api.getSession({ headers: new Headers({ cookie }) });

describe("signing in", () => {
  test("gives a cookie by which the session is found again, and another by which it is not", async () => {
    const response = await post("/sign-in/email", right);
    expect(response.status).toBe(200);
    const cookie = cookieOf(response);
    expect(cookie).toContain("trunnion.session_token=");
    expect((await sessionOf(cookie))?.user).toMatchObject({ name: "Åse", email: right.email });
    expect(await sessionOf(cookie.replace(/=..../, "=AAAA"))).toBeNull();
    expect(await sessionOf("")).toBeNull();
  });

  test("sets a cookie that scripts do not read and other sites do not send", async () => {
    const cookies = (await post("/sign-in/email", right)).headers.getSetCookie();
    const session = cookies.find((cookie) => cookie.startsWith("trunnion.session_token="));
    expect(session).toMatch(/HttpOnly/i);
    expect(session).toMatch(/SameSite=Lax/i);
  });

  test("keeps no password, only a salted hash of it", async () => {
    const rows = await world.asOwner(
      (db) => db.$queryRaw<{ password: string }[]>`SELECT password FROM credential`,
    );
    expect(rows).toHaveLength(1);
    expect(rows[0]?.password).not.toContain(right.password);
    expect(rows[0]?.password.length).toBeGreaterThan(40);
  });

  test.each([
    ["another password", { ...right, password: "walk round the cat" }],
    ["an address nobody has", { ...right, email: "nobody@example.test" }],
  ])("with %s is refused in the same words", async (_, body) => {
    const response = await post("/sign-in/email", body);
    expect(response.status).toBe(401);
    expect(await response.json()).toMatchObject({ code: "INVALID_EMAIL_OR_PASSWORD" });
    expect(response.headers.getSetCookie()).toEqual([]);
  });

  test("out ends the session for good", async () => {
    const cookie = cookieOf(await post("/sign-in/email", right));
    const out = await post("/sign-out", {}, { cookie });
    expect(out.status).toBe(200);
    expect(await sessionOf(cookie)).toBeNull();
  });

  test("a session that has run out is none", async () => {
    const cookie = cookieOf(await post("/sign-in/email", right));
    await world.asOwner((db) => db.$executeRaw`UPDATE session SET expires_at = now() - interval '1 second'`);
    expect(await sessionOf(cookie)).toBeNull();
  });

  test("is slowed down after twenty tries a minute from one address", async () => {
    const from = { "x-forwarded-for": "10.9.9.9" };
    const wrong = { ...right, password: "not this one 12" };
    const statuses: number[] = [];
    for (let i = 0; i < 22; i++) statuses.push((await post("/sign-in/email", wrong, from)).status);
    expect(statuses).toEqual([...Array(20).fill(401), 429, 429]);
  }, 30_000);
});

describe("an account", () => {
  test("cannot be made by whoever comes: there is no public sign-up", async () => {
    const before = await world.fingerprint();
    const response = await post("/sign-up/email", { ...right, email: "new@example.test", name: "New" });
    expect(response.status).toBeGreaterThanOrEqual(400);
    expect(response.status).toBeLessThan(500);
    const after = await world.fingerprint();
    expect([after.person, after.credential, after.session]).toEqual([
      before.person,
      before.credential,
      before.session,
    ]);
  });

  test("is not reached from another site's page", async () => {
    const response = await post("/sign-in/email", right, { origin: "http://elsewhere.test", cookie: "a=b" });
    expect(response.status).toBe(403);
  });
});
