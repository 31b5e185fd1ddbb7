import { logFault } from "@trunnion/api";
import { signInPath } from "../../../lib/path";
import { localPath, redirectTo, signInThrough } from "../../../lib/sign-in";
import { signInProblem } from "../../../lib/sign-in-answer";

interface Tried {
  readonly email: string;
  readonly password: string;
}

/** Tries, and tells what came of it; what the library throws is a fault like one it answers. */
async function tried(request: Request, who: Tried) {
  try {
    const answer = await signInThrough(request, who);
    if (answer.ok) return { cookies: answer.headers.getSetCookie() };
    const problem = signInProblem(answer.status);
    if (problem === "fault") logFault(new Error(`the sign-in library answered ${answer.status}`), "sign-in");
    return { problem };
  } catch (error) {
    logFault(error, "sign-in");
    return { problem: "fault" as const };
  }
}

/** Takes the sign-in form; works without a script. */
export async function POST(request: Request): Promise<Response> {
  const form = await request.formData();
  const text = (name: string) => String(form.get(name) ?? "").slice(0, 254);
  const next = localPath(text("next"));
  const email = text("email").trim();
  const { cookies, problem } = await tried(request, { email, password: text("password") });
  if (cookies !== undefined) return redirectTo(next, cookies);
  const query = new URLSearchParams({ refused: problem, email, next });
  return redirectTo(`${signInPath}?${query}`);
}
