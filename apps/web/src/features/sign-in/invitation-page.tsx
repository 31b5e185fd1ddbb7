import type { RefusalText } from "@trunnion/register";
import { Button } from "../../components/button";
import { Field } from "../../components/field";
import { Notice } from "../../components/notice";
import { PageHead } from "../../components/page-head";
import { sayRoles } from "../../components/shell/shell";
import { type FormTarget, formTarget, given } from "./sign-in-page";

export interface InvitationPageProps {
  readonly action: FormTarget;
  /** Who is invited, where to, as what; left out when the link is not valid. */
  readonly invitation?: {
    readonly club: string;
    readonly email: string;
    readonly roles: readonly string[];
    /** As written. */
    readonly expires: string;
    /** True for somebody who signs in here already: they give their password instead of choosing one. */
    readonly hasAccount: boolean;
  };
  readonly name?: string;
  readonly passwordMinimum: number;
  readonly errors?: { readonly name?: string; readonly password?: string };
  readonly refusal?: RefusalText;
}

/** Accepting an invitation. Fields are called `name` and `password`; the address is the invitation's. */
export function InvitationPage({ action, invitation, refusal, ...fields }: InvitationPageProps) {
  return (
    <div className="mx-auto grid w-full max-w-md gap-5">
      <PageHead title={invitation === undefined ? "Invitation" : `Join ${invitation.club}`} />
      {refusal === undefined ? null : <Notice text={refusal} />}
      {invitation === undefined ? null : (
        <>
          <p>
            {invitation.club} invites {invitation.email} as {sayRoles(invitation.roles)}. The invitation holds
            until {invitation.expires}.
          </p>
          <form {...formTarget(action)} className="grid gap-5">
            <Field
              name="email"
              label="E-mail address"
              type="email"
              autoComplete="username"
              value={invitation.email}
              readOnly
            />
            {invitation.hasAccount ? <KnownFields {...fields} /> : <NewFields {...fields} />}
            <Button weight="mark">Join the club</Button>
          </form>
        </>
      )}
    </div>
  );
}

type Fields = Pick<InvitationPageProps, "name" | "passwordMinimum" | "errors">;

function KnownFields({ errors = {} }: Fields) {
  return (
    <Field
      name="password"
      label="Your password here"
      type="password"
      autoComplete="current-password"
      required
      {...given("error", errors.password)}
    />
  );
}

function NewFields({ name, passwordMinimum, errors = {} }: Fields) {
  return (
    <>
      <Field
        name="name"
        label="Your name"
        autoComplete="name"
        hint="As other members see it."
        required
        {...given("value", name)}
        {...given("error", errors.name)}
      />
      <Field
        name="password"
        label="Choose a password"
        type="password"
        autoComplete="new-password"
        minLength={passwordMinimum}
        hint={`At least ${passwordMinimum} characters. A few words in a row are easy to remember and hard to guess.`}
        required
        {...given("error", errors.password)}
      />
    </>
  );
}
