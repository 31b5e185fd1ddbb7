import { refused, sayRefusal } from "@trunnion/register";
import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { Frame } from "../../components/shell/frame";
import { demo } from "../../env";
import { SignInPage } from "../../features/sign-in/sign-in-page";
import { clubsPath, signInFormPath } from "../../lib/path";
import { pageRequest } from "../../lib/service";

export const metadata: Metadata = { title: "Sign in" };

interface Segments {
  readonly searchParams: Promise<{
    readonly next?: string;
    readonly email?: string;
    readonly refused?: string;
  }>;
}

const refusals: Readonly<Record<string, ReturnType<typeof sayRefusal>>> = {
  wrong: sayRefusal(refused("WRONG_SIGN_IN", {})),
  often: sayRefusal(refused("TOO_MANY_TRIES", { seconds: 60 })),
};

export default async function Page({ searchParams }: Segments) {
  const { next, email, refused: why } = await searchParams;
  const { signedIn } = await pageRequest();
  if (signedIn) redirect(clubsPath);
  const refusal = refusals[why ?? ""];
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
