import { TRPCError } from "@trpc/server";
import { fetchRequestHandler } from "@trpc/server/adapters/fetch";
import { openWorld, type World, type WorldPerson } from "@trunnion/fixtures";
import { refused } from "@trunnion/register";
import { createSignIn, type SignIn } from "@trunnion/service";
import { afterAll, afterEach, beforeAll, describe, expect, test, vi } from "vitest";
import { ZodError, z } from "zod";
import { logFault } from "./failure";
import type { Request as Asked } from "./request";
import { appRouter } from "./router";
import { anyone, member, router, signedIn, undeclared } from "./trpc";

let world: World;
let signIn: SignIn;
let registrar: WorldPerson;

beforeAll(async () => {
  world = await openWorld();
  signIn = createSignIn(world.database, { secret: "s".repeat(32), baseUrl: "http://localhost" });
  registrar = await world.person({ roles: ["registrar"] });
  await world.car({ chassis: "M1-001" });
  await world.event({ slug: "open-day", entries: [{ number: "7" }] });
});
afterAll(() => world?.close());
afterEach(() => {
  vi.restoreAllMocks();
});

const SECRET = "SELECT password FROM credential";

/** Procedures that fail in the ways procedures fail, beside the real ones. */
const failing = router({
  bug: anyone.query(() => {
    throw new Error(SECRET);
  }),
  ownZod: anyone.query(() => z.object({ kept: z.string() }).parse({ kept: 1 })),
  sql: member.query(({ ctx }) => ctx.scope.db.$queryRawUnsafe("SELECT no_such_column FROM car")),
  refusedLate: member.mutation(async ({ ctx }) => {
    await ctx.scope.db.marque.create({ data: { slug: "half", name: "Half" } });
    throw refused("CHANGED_MEANWHILE", { what: "the car", version: 2, differences: [] });
  }),
  bugLate: member.mutation(async ({ ctx }) => {
    await ctx.scope.db.marque.create({ data: { slug: "half", name: "Half" } });
    throw new Error(SECRET);
  }),
  whole: member.mutation(async ({ ctx }) => {
    await ctx.scope.db.marque.create({ data: { slug: "whole", name: "Whole" } });
  }),
  nobody: undeclared.query(() => "told"),
  me: signedIn.query(({ ctx }) => ctx.signedIn.name),
});
const whole = router({ app: appRouter, failing });

interface Answer {
  readonly status: number;
  readonly text: string;
  readonly error?: { readonly message: string; readonly data: Record<string, unknown> };
  readonly data?: unknown;
}

interface Call {
  readonly as?: Asked["signedIn"];
  readonly input?: unknown;
  readonly body?: string;
  readonly post?: boolean;
}

/** Calls a procedure over HTTP, as a browser does, with the log that the web application keeps. */
async function call(path: string, { as = null, input = {}, body, post = false }: Call = {}): Promise<Answer> {
  const url = new URL(`http://localhost/api/trpc/${path}`);
  if (!post) url.searchParams.set("input", JSON.stringify(input));
  const sent = {
    method: "POST",
    body: body ?? JSON.stringify(input),
    headers: { "content-type": "application/json" },
  };
  const response = await fetchRequestHandler({
    endpoint: "/api/trpc",
    req: post ? new Request(url, sent) : new Request(url),
    router: whole,
    createContext: () => ({ database: world.database, signIn, signedIn: as }),
    onError: ({ error, path: place }) => logFault(error, place ?? "trpc"),
  });
  const text = await response.text();
  const { error, result } = JSON.parse(text) as { error?: Answer["error"]; result?: { data: unknown } };
  return {
    status: response.status,
    text,
    ...(error ? { error } : {}),
    ...(result ? { data: result.data } : {}),
  };
}

const listen = () => vi.spyOn(console, "error").mockImplementation(() => undefined);

describe("a refusal", () => {
  const asked = (input: object) => ({ as: registrar, input: { club: "ours", ...input } });
  test.each([
    ["app.club.mine", () => ({}), "NOT_SIGNED_IN", 401],
    ["app.club.home", () => ({ input: { club: "ours" } }), "NOT_SIGNED_IN", 401],
    ["app.club.home", () => ({ as: registrar, input: { club: "theirs" } }), "NOT_A_MEMBER", 403],
    ["app.club.home", () => ({ as: registrar, input: { club: "nowhere" } }), "NOT_A_MEMBER", 403],
    ["app.car.page", () => asked({ car: "M1-099" }), "CAR_NOT_FOUND", 404],
    ["app.event.page", () => asked({ event: "no-day" }), "EVENT_NOT_FOUND", 404],
    ["app.invitation.find", () => ({ input: { token: "x".repeat(40) } }), "INVITATION_NOT_VALID", 400],
  ])(
    "of %s comes as its code, in words, with its status, and is not logged",
    async (path, made, code, status) => {
      const log = listen();
      const answer = await call(path, made());
      expect(answer.status).toBe(status);
      const { refusal } = (answer.error?.data ?? {}) as {
        refusal: { code: string; what: string; remedy: string };
      };
      expect(refusal.code).toBe(code);
      expect(answer.error?.message).toBe(refusal.what);
      expect(refusal.what).toMatch(/^[A-Z].*\.$/);
      expect(refusal.remedy).toMatch(/^[A-Z].*\.$/);
      expect(answer.text).not.toMatch(/stack|\.ts:\d/);
      expect(log).not.toHaveBeenCalled();
    },
  );

  test("of a role names those that may", async () => {
    const owner = await world.person({ roles: ["owner"] });
    const input = { club: "ours", email: "x@example.test", roles: ["owner"] };
    const answer = await call("app.invitation.invite", { as: owner, input, post: true });
    expect(answer.status).toBe(403);
    expect(answer.error?.data).toMatchObject({
      refusal: { code: "ROLE_NEEDED", details: { needed: ["registrar", "fleetManager"], has: ["owner"] } },
    });
  });
});

describe("input that cannot be read", () => {
  test("is told at its fields, and not logged", async () => {
    const log = listen();
    const input = { club: "ours", email: "nobody", roles: ["king"] };
    const answer = await call("app.invitation.invite", { as: registrar, input, post: true });
    expect(answer.status).toBe(400);
    const { fieldErrors } = (answer.error?.data ?? {}) as { fieldErrors: Record<string, string[]> };
    expect(Object.keys(fieldErrors).sort()).toEqual(["email", "roles.0"]);
    expect(answer.error?.message).toBe("Something entered cannot be read.");
    expect(log).not.toHaveBeenCalled();
  });

  test.each([
    ["app.car.page", { club: "ours", car: "M1\u0000001" }, "car"],
    ["app.car.list", { club: "ours", search: "\u0000" }, "search"],
    ["app.car.list", { club: "ours", search: "x".repeat(201) }, "search"],
    ["app.event.page", { club: "ours", event: "" }, "event"],
    ["app.club.home", { club: "ou\u0000rs" }, "club"],
    ["app.car.page", { club: "ours" }, "car"],
  ])("%s of %j never reaches the database", async (path, input, field) => {
    const log = listen();
    const answer = await call(path, { as: registrar, input });
    expect(answer.status).toBe(400);
    expect(answer.error?.data).toHaveProperty(["fieldErrors", field]);
    expect(log).not.toHaveBeenCalled();
  });

  test("and is no JSON at all is no fault of the program", async () => {
    const log = listen();
    const answer = await call("app.invitation.invite", { as: registrar, body: "{", post: true });
    expect(answer.status).toBe(400);
    expect(answer.text).not.toMatch(/stack|\.ts:\d/);
    expect(log).not.toHaveBeenCalled();
  });
});

describe("a bug", () => {
  test.each([
    ["failing.bug", {}],
    ["failing.sql", { club: "ours" }],
    ["failing.ownZod", {}],
  ])("in %s is blanked for whoever called, and logged whole", async (path, input) => {
    const log = listen();
    const answer = await call(path, { as: registrar, input });
    expect(answer.status).toBe(500);
    expect(answer.error?.message).toMatch(/^Something went wrong here, and was written to the log\./);
    expect(Object.keys(answer.error?.data ?? {}).sort()).toEqual(["code", "httpStatus"]);
    expect(answer.text).not.toMatch(/SELECT|no_such_column|stack|\.ts:|kept/);
    expect(log).toHaveBeenCalledTimes(1);
    const [place, error] = log.mock.calls[0] ?? [];
    expect(place).toBe(`fault in ${path}:`);
    expect(error).toBeInstanceOf(Error);
    expect((error as Error).stack).toMatch(/\.ts:\d+/);
  });

  test("is logged as it was thrown, outside procedures as well", () => {
    const log = listen();
    const cause = new Error(SECRET);
    logFault(new TRPCError({ code: "INTERNAL_SERVER_ERROR", cause }), "a");
    logFault(cause, "b");
    logFault(new ZodError([]), "c");
    expect(log.mock.calls.map(([place]) => place)).toEqual(["fault in a:", "fault in b:", "fault in c:"]);
    expect(log.mock.calls[0]?.[1]).toBe(cause);
    expect(log.mock.calls[1]?.[1]).toBe(cause);
  });
});

describe("a procedure's transaction", () => {
  test.each(["failing.refusedLate", "failing.bugLate"])(
    "is not kept when it fails half way (%s)",
    async (path) => {
      listen();
      const before = await world.fingerprint();
      const answer = await call(path, { as: registrar, input: { club: "ours" }, post: true });
      expect(answer.status).toBe(path === "failing.bugLate" ? 500 : 409);
      expect(await world.fingerprint()).toEqual(before);
    },
  );

  test("is kept when it does not", async () => {
    expect((await call("failing.whole", { as: registrar, input: { club: "ours" }, post: true })).status).toBe(
      200,
    );
    const marques = await world.inClub((db) => db.marque.findMany({ where: { slug: "whole" } }));
    expect(marques).toHaveLength(1);
  });
});

describe("who may call", () => {
  test("a procedure that does not say is nobody, not even a registrar", async () => {
    const answer = await call("failing.nobody", { as: registrar });
    expect(answer.status).toBe(403);
    expect(answer.text).not.toContain("told");
  });

  test("one for the signed in is whoever is, of whatever club", async () => {
    const stranger = await world.person({ name: "Łucja" });
    expect(await call("failing.me", { as: stranger })).toMatchObject({ status: 200, data: "Łucja" });
    expect(await call("app.club.mine", { as: stranger })).toMatchObject({ status: 200, data: { clubs: [] } });
  });

  test("one of a club is its members, who see that club's rows only", async () => {
    await world.car({ chassis: "M1-050", club: world.theirs });
    const answer = await call("app.car.list", { as: registrar, input: { club: "ours" } });
    expect(answer.status).toBe(200);
    expect(answer.data).toMatchObject({ total: 1, cars: [{ reference: "M1-001" }] });
  });
});
