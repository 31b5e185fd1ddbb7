import { createHash } from "node:crypto";
import type { Database, Role } from "@trunnion/db";
import { invitationByToken } from "@trunnion/db/gate";
import { refused } from "@trunnion/register";
import { dayOf } from "../day";
import type { SignIn } from "../sign-in";

/** SHA-256 (hex) of a link's token: all that is kept of it. */
export const hashOf = (token: string): string => createHash("sha256").update(token).digest("hex");

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
