import type { Database } from "@trunnion/db";
import { signInTables } from "@trunnion/db/gate";
import { betterAuth } from "better-auth";
import { prismaAdapter } from "better-auth/adapters/prisma";

/** Least length of a password, in characters. */
export const PASSWORD_MINIMUM = 12;

export interface SignInOptions {
  /** Secret that signs cookies; at least 32 random bytes. */
  readonly secret: string;
  /** Address the service is reached at. */
  readonly baseUrl: string;
  /** Further addresses the same service is reached at. */
  readonly alsoReachedAt?: readonly string[];
}

/**
 * Sign-in with e-mail and password, sessions in the database. There is no public sign-up:
 * an account is made by accepting an invitation.
 */
export function createSignIn(database: Database, options: SignInOptions) {
  return betterAuth({
    appName: "Trunnion",
    secret: options.secret,
    baseURL: options.baseUrl,
    trustedOrigins: [options.baseUrl, ...(options.alsoReachedAt ?? [])],
    database: prismaAdapter(signInTables(database), { provider: "postgresql" }),
    emailAndPassword: {
      enabled: true,
      disableSignUp: true,
      minPasswordLength: PASSWORD_MINIMUM,
      maxPasswordLength: 128,
    },
    user: { modelName: "person" },
    session: { modelName: "session", fields: { userId: "personId" }, expiresIn: 60 * 60 * 24 * 14 },
    account: { modelName: "credential", fields: { userId: "personId" } },
    verification: { modelName: "verification" },
    rateLimit: {
      enabled: true,
      window: 60,
      max: 120,
      customRules: { "/sign-in/email": { window: 60, max: 20 } },
    },
    advanced: {
      database: { generateId: false },
      cookiePrefix: "trunnion",
      // Said, since the library leaves the check out by itself where NODE_ENV is "test".
      disableOriginCheck: false,
    },
    telemetry: { enabled: false },
    logger: { level: "error" },
  });
}

export type SignIn = ReturnType<typeof createSignIn>;
