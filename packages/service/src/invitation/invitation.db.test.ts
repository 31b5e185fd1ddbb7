import { openWorld, type World } from "@trunnion/fixtures";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { myClubs } from "../club";
import { openOperator } from "../gate";
import { createSignIn, PASSWORD_MINIMUM, type SignIn } from "../sign-in";
import { acceptInput, acceptInvitation, createMember, invite, inviteInput, readInvitation } from "./index";

let world: World;
let signIn: SignIn;

beforeAll(async () => {
  world = await openWorld();
  signIn = createSignIn(world.database, { secret: "s".repeat(32), baseUrl: "http://localhost:3000" });
}, 120_000);
afterAll(() => world?.close());

type Role = "registrar" | "owner" | "scrutineer" | "fleetManager";

const send = (email: string, roles: readonly Role[], club = "ours") =>
  openOperator(world.database, club, (ctx) => invite(ctx, { email, roles }));
const accept = (token: string, password = "walk round the car", now = new Date()) =>
  acceptInvitation(world.database, signIn, { token, name: "Åse Ørnhøi", password }, now);
const clubsOf = async (email: string) => {
  const { internalAdapter } = await signIn.$context;
  const found = await internalAdapter.findUserByEmail(email);
  return found ? myClubs(world.database, found.user.id) : [];
};
const later = (days: number) => new Date(Date.now() + days * 86_400_000);

describe("an invitation", () => {
  test("makes account and membership, and its link is not kept anywhere", async () => {
    const token = await send("Ase@Example.test", ["registrar", "owner"]);
    const kept = JSON.stringify(await world.asOwner((db) => db.invitation.findMany()));
    expect(kept).not.toContain(token);
    expect(await readInvitation(world.database, signIn, token, new Date())).toMatchObject({
      email: "ase@example.test",
      club: "Our Register",
      roles: ["registrar", "owner"],
      hasAccount: false,
    });
    expect(await accept(token)).toEqual({ email: "ase@example.test", club: "ours" });
    expect(await clubsOf("ase@example.test")).toMatchObject([
      { slug: "ours", roles: ["registrar", "owner"] },
    ]);
    const signed = await signIn.api.signInEmail({
      body: { email: "ase@example.test", password: "walk round the car" },
    });
    expect(signed.user).toMatchObject({ name: "Åse Ørnhøi", emailVerified: true });
  });

  test("is journalled without address or name", async () => {
    const entries = await world.inClub((db) => db.journalEntry.findMany({ orderBy: { sequence: "asc" } }));
    expect(entries.map(({ action }) => action)).toEqual(["invitation.add", "membership.add"]);
    expect(JSON.stringify(entries, (_, part) => (typeof part === "bigint" ? `${part}` : part))).not.toMatch(
      /example\.test|Ørnhøi/,
    );
  });

  test("works once", async () => {
    const token = await send("once@example.test", ["owner"]);
    await accept(token);
    await expect(accept(token)).rejects.toMatchObject({
      code: "INVITATION_NOT_VALID",
      details: { because: "used" },
    });
  });

  test("used twice at the same moment makes one member and is refused the other time", async () => {
    const token = await send("twice@example.test", ["owner"]);
    const both = await Promise.allSettled([accept(token), accept(token)]);
    expect(both.map(({ status }) => status).sort()).toEqual(["fulfilled", "rejected"]);
    const lost = both.find((one) => one.status === "rejected");
    expect(lost?.reason).toMatchObject({ code: "INVITATION_NOT_VALID", details: { because: "used" } });
    expect(await clubsOf("twice@example.test")).toHaveLength(1);
  });

  test.each([
    ["unknown", async () => "not-a-token-at-all-000000"],
    [
      "revoked",
      async () => {
        const token = await send("revoked@example.test", ["owner"]);
        const data = { revokedAt: new Date() };
        await world.inClub((db) =>
          db.invitation.updateMany({ where: { email: "revoked@example.test" }, data }),
        );
        return token;
      },
    ],
  ])("that is %s is refused and makes nobody", async (because, made) => {
    const token = await made();
    const before = await world.fingerprint();
    await expect(accept(token)).rejects.toMatchObject({ code: "INVITATION_NOT_VALID", details: { because } });
    await expect(readInvitation(world.database, signIn, token, new Date())).rejects.toMatchObject({
      details: { because },
    });
    expect(await world.fingerprint()).toEqual(before);
  });

  test("is good for fourteen days and not a moment longer", async () => {
    const token = await send("late@example.test", ["owner"]);
    const before = await world.fingerprint();
    await expect(accept(token, "walk round the car", later(14))).rejects.toMatchObject({
      details: { because: "expired" },
    });
    expect(await world.fingerprint()).toEqual(before);
    await accept(token, "walk round the car", later(13.99));
  });

  test("of somebody who has an account wants that account's own password", async () => {
    await accept(await send("known@example.test", ["owner"]), "the first password");
    const token = await send("known@example.test", ["scrutineer"], "theirs");
    expect(await readInvitation(world.database, signIn, token, new Date())).toMatchObject({
      hasAccount: true,
    });
    const before = await world.fingerprint();
    await expect(accept(token, "another password")).rejects.toMatchObject({ code: "WRONG_SIGN_IN" });
    expect(await world.fingerprint()).toEqual(before);
    await accept(token, "the first password");
    expect(await clubsOf("known@example.test")).toMatchObject([
      { slug: "ours", roles: ["owner"] },
      { slug: "theirs", roles: ["scrutineer"] },
    ]);
  });

  test("is refused for a member, whatever the capitals; a second one sent before adds to what they may do", async () => {
    const tokens = [
      await send("two@example.test", ["registrar"]),
      await send("two@example.test", ["scrutineer"]),
    ];
    for (const token of tokens) await accept(token);
    expect(await clubsOf("two@example.test")).toMatchObject([{ roles: ["registrar", "scrutineer"] }]);
    await expect(send("TWO@example.test", ["owner"])).rejects.toMatchObject({
      code: "ALREADY_A_MEMBER",
      details: { email: "two@example.test" },
    });
  });

  test("finishes an account that was left without a password when the machine stopped", async () => {
    await world.person({ email: "half@example.test" });
    await accept(await send("half@example.test", ["owner"]), "the first password");
    const signed = await signIn.api.signInEmail({
      body: { email: "half@example.test", password: "the first password" },
    });
    expect(signed.user.email).toBe("half@example.test");
  });

  test("brings back who has left, with the new roles only", async () => {
    await accept(await send("back@example.test", ["registrar"]));
    await world.asOwner(
      (db) => db.$executeRaw`UPDATE membership SET left_at = now() FROM person p
        WHERE p.id = person_id AND p.email = 'back@example.test'`,
    );
    expect(await clubsOf("back@example.test")).toEqual([]);
    await accept(await send("back@example.test", ["owner"]));
    expect(await clubsOf("back@example.test")).toMatchObject([{ slug: "ours", roles: ["owner"] }]);
  });
});

describe("what an invitation is made and accepted with", () => {
  test("is an address and a role there is", () => {
    expect(inviteInput.parse({ email: "A@B.test", roles: ["owner"] }).email).toBe("a@b.test");
    for (const wrong of [{ email: "nobody" }, { roles: [] }, { roles: ["king"] }]) {
      expect(inviteInput.safeParse({ email: "a@b.test", roles: ["owner"], ...wrong }).success).toBe(false);
    }
  });

  test("is a name, and a password of twelve characters or more", () => {
    const input = { token: "t".repeat(43), name: "A", password: "p".repeat(PASSWORD_MINIMUM) };
    expect(acceptInput.safeParse(input).success).toBe(true);
    for (const wrong of [
      { name: "  " },
      { name: "A\u0000" },
      { password: "p".repeat(PASSWORD_MINIMUM - 1) },
      { token: "t" },
    ]) {
      expect(acceptInput.safeParse({ ...input, ...wrong }).success).toBe(false);
    }
  });
});

describe("a member made by whoever holds the machine", () => {
  const make = (given: object) =>
    openOperator(world.database, "ours", (ctx) =>
      createMember(ctx, signIn, {
        name: "Nanna",
        email: "Nanna@Example.test",
        password: "a long password",
        roles: ["registrar"],
        ...given,
      }),
    );

  test("can sign in, under the address in small letters", async () => {
    await make({});
    expect(await clubsOf("nanna@example.test")).toMatchObject([{ slug: "ours", roles: ["registrar"] }]);
    const signed = await signIn.api.signInEmail({
      body: { email: "nanna@example.test", password: "a long password" },
    });
    expect(signed.user.name).toBe("Nanna");
  });

  test("is not made with a short password, no role or no address", async () => {
    const before = await world.fingerprint();
    for (const wrong of [{ password: "short" }, { roles: [] }, { email: "nobody" }]) {
      await expect(make(wrong)).rejects.toThrow();
    }
    expect(await world.fingerprint()).toEqual(before);
  });

  test("does not take over an account that has another password", async () => {
    await expect(make({ password: "somebody else's" })).rejects.toMatchObject({ code: "WRONG_SIGN_IN" });
  });
});
