import { signInPath } from "../../../lib/path";
import { localPath, redirectTo, signInThrough } from "../../../lib/sign-in";

/** Takes the sign-in form; works without a script. */
export async function POST(request: Request): Promise<Response> {
  const form = await request.formData();
  const text = (name: string) => String(form.get(name) ?? "").slice(0, 254);
  const next = localPath(text("next"));
  const answer = await signInThrough(request, { email: text("email").trim(), password: text("password") });
  if (answer.ok) return redirectTo(next, answer.headers.getSetCookie());
  const why = answer.status === 429 ? "often" : "wrong";
  const query = new URLSearchParams({ refused: why, email: text("email").trim(), next });
  return redirectTo(`${signInPath}?${query}`);
}
