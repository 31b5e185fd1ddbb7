import { createHash, randomBytes } from "node:crypto";
import { type Database, Role } from "@trunnion/db";
import { invitationByToken, openClub } from "@trunnion/db/gate";
import { refused } from "@trunnion/register";
import { z } from "zod";
import type { Context } from "../context";
import { dayOf } from "../day";
import { writeJournal } from "../journal";
import { requireRole } from "../role";
import type { SignIn } from "../sign-in";
import { PASSWORD_MINIMUM } from "../sign-in/auth";

/** Days an invitation lasts. */
const DAYS = 14;

const hashOf = (token: string) => createHash("sha256").update(token).digest("hex");

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
    where: { leftAt: null, person: { email } },
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

/**
 * The invitation a link belongs to, for showing what one is invited to.
 *
 * @throws Refusal INVITATION_NOT_VALID
 */
export async function findInvitation(database: Database, token: string, now: Date) {
  const invitation = await invitationByToken(database, hashOf(token));
  if (!invitation) throw refused("INVITATION_NOT_VALID", { because: "unknown" });
  if (invitation.acceptedAt) throw refused("INVITATION_NOT_VALID", { because: "used" });
  if (invitation.revokedAt) throw refused("INVITATION_NOT_VALID", { because: "revoked" });
  if (invitation.expiresAt <= now) throw refused("INVITATION_NOT_VALID", { because: "expired" });
  return invitation;
}

/** An invitation as a page shows it to whoever holds the link. */
export interface InvitationFace {
  readonly email: string;
  readonly club: string;
  readonly roles: readonly Role[];
  /** ISO day. */
  readonly expiresOn: string;
  /** True for somebody who signs in here already. */
  readonly hasAccount: boolean;
}

/** @throws Refusal INVITATION_NOT_VALID */
export async function readInvitation(
  database: Database,
  signIn: SignIn,
  token: string,
  now: Date,
): Promise<InvitationFace> {
  const { email, club, roles, expiresAt } = await findInvitation(database, token, now);
  const { internalAdapter } = await signIn.$context;
  const known = await internalAdapter.findUserByEmail(email);
  return { email, club: club.name, roles, expiresOn: dayOf(expiresAt), hasAccount: known !== null };
}

export const acceptInput = z.object({
  token: z.string().min(20).max(100),
  name: z.string().trim().min(1).max(100),
  password: z.string().min(PASSWORD_MINIMUM).max(128),
});

/** The person of that address; made with the password given when there is none yet. */
async function personFor(signIn: SignIn, email: string, input: z.infer<typeof acceptInput>): Promise<string> {
  const { internalAdapter, password } = await signIn.$context;
  const known = await internalAdapter.findUserByEmail(email, { includeAccounts: true });
  if (known) {
    const hash = known.accounts.find(({ providerId }) => providerId === "credential")?.password;
    const right = hash != null && (await password.verify({ hash, password: input.password }));
    if (!right) throw refused("WRONG_SIGN_IN", {});
    return known.user.id;
  }
  const particulars = { email, name: input.name, emailVerified: true };
  const person = await internalAdapter.createUser(particulars, { method: "email-password" });
  await internalAdapter.linkAccount({
    userId: person.id,
    accountId: person.id,
    providerId: "credential",
    password: await password.hash(input.password),
  });
  return person.id;
}

/**
 * Accepts an invitation: makes the account where there is none (else the password must be its own), and the membership.
 * The link reached the address, so the address counts as proved.
 *
 * @throws Refusal INVITATION_NOT_VALID, WRONG_SIGN_IN
 */
export async function acceptInvitation(
  database: Database,
  signIn: SignIn,
  input: z.infer<typeof acceptInput>,
  now: Date,
): Promise<{ readonly email: string; readonly club: string }> {
  const invitation = await findInvitation(database, input.token, now);
  const personId = await personFor(signIn, invitation.email, input);
  return openClub(database, invitation.clubId, async (db) => {
    const used = await db.invitation.updateMany({
      where: { id: invitation.id, acceptedAt: null, revokedAt: null },
      data: { acceptedAt: now },
    });
    if (used.count === 0) throw refused("INVITATION_NOT_VALID", { because: "used" });
    const before = await db.membership.findFirst({ where: { personId, leftAt: null } });
    // A member's second invitation adds to what they may do; it takes nothing away.
    const roles = [...new Set([...(before?.roles ?? []), ...invitation.roles])];
    const who = { clubId_personId: { clubId: invitation.clubId, personId } };
    const member = await db.membership.upsert({
      where: who,
      create: { personId, roles },
      update: { roles, leftAt: null },
    });
    const data = {
      action: before ? "membership.change" : "membership.add",
      noun: "membership",
      nounId: member.id,
      personId,
      ...(before ? { before: { roles: before.roles } } : {}),
      after: { roles },
    };
    await db.journalEntry.create({ data });
    return { email: invitation.email, club: invitation.club.slug };
  });
}

export interface NewMember {
  readonly name: string;
  readonly email: string;
  readonly password: string;
  readonly roles: readonly Role[];
}

const newMember = z.object({
  name: z.string().trim().min(1).max(100),
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
