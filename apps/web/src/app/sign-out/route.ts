import { signInPath } from "../../lib/path";
import { redirectTo, signOutThrough } from "../../lib/sign-in";

/** Takes the sign-out form; a link cannot sign anyone out. */
export async function POST(request: Request): Promise<Response> {
  const answer = await signOutThrough(request);
  return redirectTo(signInPath, answer.headers.getSetCookie());
}
