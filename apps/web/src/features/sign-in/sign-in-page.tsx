import type { RefusalText } from "@trunnion/register";
import { Button } from "../../components/button";
import { Field } from "../../components/field";
import { Notice } from "../../components/notice";
import { PlanDrawing } from "../../components/plan-drawing";
import { planFrame } from "../../components/plan-frame";
import { generalNote } from "../../components/shell/title-block";
import { Wordmark } from "../../components/shell/wordmark";

/** Where a form goes: an address it is posted to, or a server action. */
export type FormTarget = string | ((data: FormData) => Promise<void>);

/** Spreads a form's target: a plain address needs the method said. */
export function formTarget(target: FormTarget) {
  return typeof target === "string" ? ({ action: target, method: "post" } as const) : { action: target };
}

export interface SignInPageProps {
  readonly action: FormTarget;
  /** Where to go afterwards, sent along as `next`. */
  readonly next?: string;
  readonly email?: string;
  readonly errors?: { readonly email?: string; readonly password?: string };
  /** Why signing in was refused. */
  readonly refusal?: RefusalText;
  /** Only for the demo world: who can be tried. Nothing else ever has a password that is shown. */
  readonly demo?: {
    readonly password: string;
    readonly people: readonly { readonly email: string; readonly as: string }[];
  };
}

/** E-mail address and password. Fields are called `email` and `password`. */
export function SignInPage({ action, next, email, errors = {}, refusal, demo }: SignInPageProps) {
  return (
    <div className="m-auto grid w-full max-w-5xl gap-x-16 gap-y-6 wide:grid-cols-[1fr_22rem] wide:grid-rows-[auto_1fr]">
      <div className="grid gap-4">
        <Wordmark />
        <svg aria-hidden viewBox={planFrame.car} className="h-auto w-full">
          <PlanDrawing />
        </svg>
      </div>
      <div className="grid content-start gap-6 wide:row-span-2">
        <h1 className="text-title">Sign in</h1>
        {refusal === undefined ? null : <Notice text={refusal} />}
        <form {...formTarget(action)} className="grid gap-5">
          {next === undefined ? null : <input type="hidden" name="next" value={next} />}
          <Field
            name="email"
            label="E-mail address"
            type="email"
            autoComplete="username"
            required
            {...given("value", email)}
            {...given("error", errors.email)}
          />
          <Field
            name="password"
            label="Password"
            type="password"
            autoComplete="current-password"
            required
            {...given("error", errors.password)}
          />
          <Button weight="mark">Sign in</Button>
        </form>
        {demo === undefined ? (
          <p className="text-small text-soft">No account? A club's registrar sends invitations.</p>
        ) : (
          <Demo {...demo} />
        )}
      </div>
      <div className="grid content-start gap-4">
        <p className="max-w-prose">
          The club's memory of every car: what the works specified, what left the works, what is on it today,
          and what a scrutineer must therefore look at.
        </p>
        <p className="max-w-prose text-fine text-soft">{generalNote}</p>
      </div>
    </div>
  );
}

/** A property only where there is something to give. */
export function given<K extends string>(name: K, value: string | undefined): Partial<Record<K, string>> {
  return value === undefined ? {} : ({ [name]: value } as Record<K, string>);
}

function Demo({ password, people }: NonNullable<SignInPageProps["demo"]>) {
  return (
    <section aria-labelledby="demo" className="border-line border-t pt-3 text-small">
      <h2 id="demo">This is the demo world</h2>
      <p>
        Everybody's password is <code className="select-all">{password}</code>
      </p>
      <ul className="pt-1">
        {people.map((person) => (
          <li key={person.email} className="flex flex-wrap justify-between gap-x-4">
            <span className="select-all">{person.email}</span>
            <span className="text-soft">{person.as}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}
