import { refused, sayRefusal } from "@trunnion/register";
import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { Frame } from "../../components/shell/frame";
import { demo } from "../../env";
import { SignInPage } from "../../features/sign-in/sign-in-page";
import { signInFormPath } from "../../lib/path";
import { pageRequest } from "../../lib/service";
import { localPath } from "../../lib/sign-in";

export const metadata: Metadata = { title: "Sign in" };

interface Segments {
  readonly searchParams: Promise<Readonly<Record<string, string | readonly string[] | undefined>>>;
}

const refusals: Readonly<Record<string, ReturnType<typeof sayRefusal>>> = {
  wrong: sayRefusal(refused("WRONG_SIGN_IN", {})),
  often: sayRefusal(refused("TOO_MANY_TRIES", { seconds: 60 })),
};

export default async function Page({ searchParams }: Segments) {
  const query = await searchParams;
  const text = (name: string) => (typeof query[name] === "string" ? query[name] : undefined);
  const next = text("next");
  const email = text("email");
  const { signedIn } = await pageRequest();
  if (signedIn) redirect(localPath(next ?? ""));
  const refusal = refusals[text("refused") ?? ""];
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
