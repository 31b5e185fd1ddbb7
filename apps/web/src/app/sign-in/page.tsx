import { type RefusalText, refused, sayRefusal } from "@trunnion/register";
import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { Frame } from "../../components/shell/frame";
import { demo } from "../../env";
import { SignInPage } from "../../features/sign-in/sign-in-page";
import { signInFormPath } from "../../lib/path";
import { pageRequest } from "../../lib/service";
import { localPath } from "../../lib/sign-in";
import type { SignInProblem } from "../../lib/sign-in-answer";

export const metadata: Metadata = { title: "Sign in" };

interface Segments {
  readonly searchParams: Promise<Readonly<Record<string, string | readonly string[] | undefined>>>;
}

const refusals: Readonly<Record<SignInProblem, RefusalText>> = {
  wrong: sayRefusal(refused("WRONG_SIGN_IN", {})),
  often: sayRefusal(refused("TOO_MANY_TRIES", { seconds: 60 })),
  elsewhere: {
    what: "This form did not come from this service, so nothing was tried.",
    remedy: "Open the sign-in page at the service's own address and sign in there.",
  },
  fault: {
    what: "Signing in did not work; that is a fault of the program, not of your password.",
    remedy: "Try again; if it stays, tell whoever runs this.",
  },
};

export default async function Page({ searchParams }: Segments) {
  const query = await searchParams;
  const text = (name: string) => (typeof query[name] === "string" ? query[name] : undefined);
  const next = text("next");
  const email = text("email");
  const { signedIn } = await pageRequest();
  if (signedIn) redirect(localPath(next ?? ""));
  const why = text("refused") ?? "";
  const refusal = Object.hasOwn(refusals, why) ? refusals[why as SignInProblem] : undefined;
  const shown = demo();
  return (
    <Frame>
      <SignInPage
        action={signInFormPath}
        {...(next === undefined ? {} : { next })}
        {...(email === undefined ? {} : { email })}
        {...(refusal === undefined ? {} : { refusal })}
        {...(shown === undefined ? {} : { demo: shown })}
      />
    </Frame>
  );
}
