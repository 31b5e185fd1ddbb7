import { PASSWORD_MINIMUM, refusalOf } from "@trunnion/api";
import { refused, sayRefusal } from "@trunnion/register";
import type { Metadata } from "next";
import { Frame } from "../../../components/shell/frame";
import { InvitationPage } from "../../../features/sign-in/invitation-page";
import { isUnreadable } from "../../../lib/address";
import { sayLongDay } from "../../../lib/day";
import { invitationFormPath } from "../../../lib/path";
import { api } from "../../../lib/service";

export const metadata: Metadata = { title: "Invitation" };

interface Segments {
  readonly params: Promise<{ readonly token: string }>;
  readonly searchParams: Promise<{ readonly refused?: string; readonly name?: string }>;
}

/** What is no link of ours is not known here, however it is written. */
const unknown = { because: "unknown" } as const;

const errors: Readonly<Record<string, { readonly name?: string; readonly password?: string }>> = {
  name: { name: "Your name, up to 100 characters." },
  password: { password: `At least ${PASSWORD_MINIMUM} characters.` },
};

export default async function Page({ params, searchParams }: Segments) {
  const { token } = await params;
  const { refused: why = "", name } = await searchParams;
  const found = await (await api()).invitation
    .find({ token })
    .then((invitation) => ({ invitation: { ...invitation, expires: sayLongDay(invitation.expiresOn) } }))
    .catch((error: unknown) => {
      const refusal = refusalOf(error);
      if (refusal) return { refusal: refusal.text };
      if (isUnreadable(error)) return { refusal: sayRefusal(refused("INVITATION_NOT_VALID", unknown)) };
      throw error;
    });
  const wrong = why === "wrong" ? { refusal: sayRefusal(refused("WRONG_SIGN_IN", {})) } : {};
  return (
    <Frame>
      <InvitationPage
        action={invitationFormPath(token)}
        passwordMinimum={PASSWORD_MINIMUM}
        {...wrong}
        {...found}
        {...(name === undefined ? {} : { name })}
        {...(errors[why] === undefined ? {} : { errors: errors[why] })}
      />
    </Frame>
  );
}
