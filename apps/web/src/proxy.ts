import { type NextRequest, NextResponse } from "next/server";
import { inDevelopment } from "./env";
import { viewAsked, viewCookie, viewCookieAge } from "./lib/list-view";
import { contentPolicy } from "./lib/security-header";

/** Gives every page a content policy with a nonce of its own; the framework reads it off the request. */
export function proxy(request: NextRequest): NextResponse {
  const nonce = btoa(crypto.randomUUID());
  const policy = contentPolicy(nonce, { development: inDevelopment });
  const headers = new Headers(request.headers);
  headers.set("x-nonce", nonce);
  headers.set("content-security-policy", policy);
  const response = NextResponse.next({ request: { headers } });
  response.headers.set("content-security-policy", policy);
  const view = viewAsked(request.nextUrl);
  if (view !== undefined)
    response.cookies.set(viewCookie, view, {
      path: "/club",
      maxAge: viewCookieAge,
      sameSite: "lax",
      httpOnly: true,
    });
  return response;
}

/** Pages only: files and the programming interface run no script. */
export const config = {
  matcher: [
    "/((?!api/|_next/static|_next/image|icon.svg|apple-icon.png|manifest.webmanifest|paddock-worker.js).*)",
  ],
};
