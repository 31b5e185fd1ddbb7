import { randomBytes } from "node:crypto";
import { type ClubTables, type Database, Role } from "@trunnion/db";
import { openClub } from "@trunnion/db/gate";
import { refused } from "@trunnion/register";
import { v7 as uuid } from "uuid";
import { z } from "zod";
import type { Context } from "../context";
import { writeJournal } from "../journal";
import { requireRole } from "../role";
import type { SignIn } from "../sign-in";
import { PASSWORD_MINIMUM } from "../sign-in/auth";
import { findInvitation, hashOf } from "./read";

/** Days an invitation lasts. */
const DAYS = 14;

export const inviteInput = z.object({
  email: z.email().max(254).toLowerCase(),
  roles: z.array(z.enum(Role)).min(1),
});

/**
 * Makes an invitation and tells the token of its link; only the token's hash is kept.
 *
 * @throws Refusal ROLE_NEEDED, ALREADY_A_MEMBER
 */
export async function invite(
  ctx: Context,
  input: { readonly email: string; readonly roles: readonly Role[] },
): Promise<string> {
  requireRole(ctx.actor, "registrar", "fleetManager");
  const email = input.email.toLowerCase();
  const member = await ctx.db.membership.findFirst({
    // One read back from an archive has no way to sign in yet: he is invited like anybody new.
    where: { leftAt: null, person: { email, credentials: { some: {} } } },
    select: { id: true },
  });
  if (member) throw refused("ALREADY_A_MEMBER", { email });
  const token = randomBytes(32).toString("base64url");
  const expiresAt = new Date(ctx.now.getTime() + DAYS * 86_400_000);
  const { id } = await ctx.db.invitation.create({
    data: {
      email,
      roles: [...input.roles],
      tokenHash: hashOf(token),
      expiresAt,
      invitedById: ctx.actor.membershipId,
    },
  });
  const line = {
    action: "invitation.add",
    noun: "invitation",
    nounId: id,
    after: { roles: [...input.roles] },
  };
  await writeJournal(ctx, [line]);
  return token;
}

/** Somebody's name: one line, since the database keeps no control characters. */
const personName = z
  .string()
  .trim()
  .min(1)
  .max(100)
  .regex(/^\P{Cc}*$/u, "no control characters");

export const acceptInput = z.object({
  token: z.string().min(20).max(100),
  name: personName,
  password: z.string().min(PASSWORD_MINIMUM).max(128),
});

/**
 * The person of that address; made with the password given when there is none yet. A person without any password
 * cannot sign in: that account was left half made, and is finished.
 */
async function personFor(signIn: SignIn, email: string, input: z.infer<typeof acceptInput>): Promise<string> {
  const { internalAdapter, password } = await signIn.$context;
  const known = await internalAdapter.findUserByEmail(email, { includeAccounts: true });
  const hash = known?.accounts.find(({ providerId }) => providerId === "credential")?.password;
  if (known && hash != null) {
    const right = await password.verify({ hash, password: input.password });
    if (!right) throw refused("WRONG_SIGN_IN", {});
    return known.user.id;
  }
  const particulars = { email, name: input.name, emailVerified: true };
  const person = known?.user ?? (await internalAdapter.createUser(particulars, { method: "email-password" }));
  await internalAdapter.linkAccount({
    userId: person.id,
    accountId: person.id,
    providerId: "credential",
    password: await password.hash(input.password),
  });
  return person.id;
}

async function join(
  db: ClubTables,
  { personId, invited }: { readonly personId: string; readonly invited: readonly Role[] },
): Promise<void> {
  const before = await db.membership.findFirst({ where: { personId, leftAt: null } });
  // A member's second invitation adds to what they may do; it takes nothing away.
  const roles = [...new Set([...(before?.roles ?? []), ...invited])];
  const known = await db.membership.findFirst({ where: { personId }, select: { id: true } });
  const id = known?.id ?? uuid();
  if (known) await db.membership.updateMany({ where: { id }, data: { roles, leftAt: null } });
  else await db.membership.create({ data: { id, personId, roles } });
  await db.journalEntry.create({
    data: {
      action: before ? "membership.change" : "membership.add",
      noun: "membership",
      nounId: id,
      personId,
      ...(before ? { before: { roles: before.roles } } : {}),
      after: { roles },
    },
  });
}

/**
 * Accepts an invitation: makes the account where there is none (else the password must be its own), and the membership.
 * The link reached the address, so the address counts as proved.
 *
 * @throws Refusal INVITATION_NOT_VALID, WRONG_SIGN_IN; then the link stays as it was
 */
export async function acceptInvitation(
  database: Database,
  signIn: SignIn,
  input: z.infer<typeof acceptInput>,
  now: Date,
): Promise<{ readonly email: string; readonly club: string }> {
  const { id, clubId, email, roles, club } = await findInvitation(database, input.token, now);
  return openClub(database, clubId, async (db) => {
    // First, so that a form sent twice waits here and finds the link used, rather than half an account.
    const used = await db.invitation.updateMany({
      where: { id, acceptedAt: null, revokedAt: null },
      data: { acceptedAt: now },
    });
    if (used.count === 0) throw refused("INVITATION_NOT_VALID", { because: "used" });
    await join(db, { personId: await personFor(signIn, email, input), invited: roles });
    return { email, club: club.slug };
  });
}

export interface NewMember {
  readonly name: string;
  readonly email: string;
  readonly password: string;
  readonly roles: readonly Role[];
}

const newMember = z.object({
  name: personName,
  email: z.email().max(254).toLowerCase(),
  password: z.string().min(PASSWORD_MINIMUM).max(128),
  roles: z.array(z.enum(Role)).min(1),
});

/**
 * Makes a member without an invitation, for whoever holds the machine: the first registrar of a club, the demo.
 *
 * @throws Refusal ROLE_NEEDED; WRONG_SIGN_IN where there is an account of another password; ZodError for particulars
 *   that no account may have
 */
export async function createMember(ctx: Context, signIn: SignIn, input: NewMember): Promise<void> {
  requireRole(ctx.actor, "registrar");
  const { roles, ...person } = newMember.parse(input);
  const personId = await personFor(signIn, person.email, { ...person, token: "" });
  const who = { clubId_personId: { clubId: ctx.club.id, personId } };
  const member = await ctx.db.membership.upsert({
    where: who,
    create: { personId, roles },
    update: { roles, leftAt: null },
  });
  const line = { action: "membership.add", noun: "membership", nounId: member.id, after: { roles } };
  await writeJournal(ctx, [line]);
}
