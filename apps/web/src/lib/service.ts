import "server-only";
import { createCaller, createSignIn, Database, type Request, requestOf, type SignIn } from "@trunnion/api";
import { headers } from "next/headers";
import { cache } from "react";
import { serviceSettings } from "../env";
import { mailWhatWaits } from "./mail";

interface Service {
  readonly database: Database;
  readonly signIn: SignIn;
}

// Kept on the global: a development server evaluates modules again, and a second pool would be one too many.
const kept = globalThis as typeof globalThis & { trunnionService?: Service };

/** The one pool and sign-in of this process; made on first use, so that a build needs no database. */
export function service(): Service {
  if (!kept.trunnionService) {
    const { serviceUrl, authSecret, baseUrl } = serviceSettings();
    const database = new Database(serviceUrl);
    kept.trunnionService = { database, signIn: createSignIn(database, { secret: authSecret, baseUrl }) };
    mailWhatWaits(database);
  }
  return kept.trunnionService;
}

/** Who asks, for a page; read once per request. */
export const pageRequest = cache(async (): Promise<Request> => requestOf(service(), await headers()));

/** The procedures, called on the server for a page. */
export const api = cache(async () => createCaller(await pageRequest()));
