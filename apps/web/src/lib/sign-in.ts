import "server-only";
import { clubsPath } from "./path";
import { service } from "./service";

/** Only a path of this service: a form must not send anyone elsewhere. */
export function localPath(wanted: string): string {
  return /^\/(?![/\\])[^\s\\]*$/.test(wanted) ? wanted : clubsPath;
}

/** Answers a form: go there with GET. Relative, so that it holds under whatever name the service is reached. */
export function redirectTo(path: string, cookies: readonly string[] = []): Response {
  const headers = new Headers({ location: path, "cache-control": "no-store" });
  for (const cookie of cookies) headers.append("set-cookie", cookie);
  return new Response(null, { status: 303, headers });
}

/** Whether a page of ours sent the form: its origin is the very host that was asked, by whatever name. */
function isOwnForm({ headers }: Request): boolean {
  const origin = headers.get("origin") ?? "";
  return URL.canParse(origin) && new URL(origin).host === headers.get("host");
}

function through(request: Request, path: string, body: object): Promise<Response> {
  const { signIn } = service();
  const { baseURL } = signIn.options;
  const headers = new Headers({ "content-type": "application/json" });
  for (const name of ["cookie", "origin", "user-agent", "x-forwarded-for"]) {
    const value = request.headers.get(name);
    if (value !== null) headers.set(name, value);
  }
  // The library knows one name of this service; people use others (localhost, a name in the paddock's network).
  if (isOwnForm(request)) headers.set("origin", new URL(baseURL).origin);
  const url = new URL(`/api/auth${path}`, baseURL);
  return signIn.handler(new Request(url, { method: "POST", headers, body: JSON.stringify(body) }));
}

/** Signs in through the library's own door, with its limits on tries. */
export function signInThrough(
  request: Request,
  who: { readonly email: string; readonly password: string },
): Promise<Response> {
  return through(request, "/sign-in/email", who);
}

export function signOutThrough(request: Request): Promise<Response> {
  return through(request, "/sign-out", {});
}
