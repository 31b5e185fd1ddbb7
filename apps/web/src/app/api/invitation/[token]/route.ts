import { createCaller, logFault, refusalOf } from "@trunnion/api";
import { isUnreadable, withoutControls } from "../../../../lib/address";
import { clubPath, invitationPath } from "../../../../lib/path";
import { service } from "../../../../lib/service";
import { redirectTo, signInThrough } from "../../../../lib/sign-in";

interface Segments {
  readonly params: Promise<{ readonly token: string }>;
}

/** Which field a refused form should point at. */
function fieldOf(name: string, password: string): string | undefined {
  if (name.trim() === "" || name !== withoutControls(name)) return "name";
  return password.length < 12 ? "password" : undefined;
}

/** Takes the form that accepts an invitation, and signs the new member in. */
export async function POST(request: Request, { params }: Segments): Promise<Response> {
  const { token } = await params;
  const form = await request.formData();
  const text = (name: string) => String(form.get(name) ?? "");
  // Somebody with an account is asked for no name; theirs stands.
  const name = form.has("name") ? text("name").slice(0, 100) : "as before";
  const password = text("password").slice(0, 128);
  const back = (why: string) =>
    redirectTo(`${invitationPath(token)}?${new URLSearchParams({ refused: why, name })}`);
  const field = fieldOf(name, password);
  if (field !== undefined) return back(field);
  try {
    const caller = createCaller({ ...service(), signedIn: null });
    const { email, club } = await caller.invitation.accept({ token, name, password });
    const answer = await signInThrough(request, { email, password });
    return redirectTo(clubPath(club), answer.headers.getSetCookie());
  } catch (error) {
    if (refusalOf(error) || isUnreadable(error)) return back("wrong");
    logFault(error, "invitation");
    throw error;
  }
}
