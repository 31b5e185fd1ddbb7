import type { Database, SignedIn, SignIn } from "@trunnion/service";

/** What every request brings: the pool, and who is signed in, if anyone. */
export interface Request {
  readonly database: Database;
  readonly signIn: SignIn;
  readonly signedIn: SignedIn | null;
}

/** Reads the session a browser's cookie names. The one place where somebody becomes signed in. */
export async function requestOf(
  { database, signIn }: { readonly database: Database; readonly signIn: SignIn },
  headers: Headers,
): Promise<Request> {
  const session = await signIn.api.getSession({ headers });
  const signedIn = session ? { personId: session.user.id, name: session.user.name } : null;
  return { database, signIn, signedIn };
}
