import { TRPCError } from "@trpc/server";
import { getHTTPStatusCodeFromError } from "@trpc/server/http";
import { Invalid, Refusal, type RefusalText, sayRefusal } from "@trunnion/register";
import { ZodError } from "zod";
import { type FieldErrors, fieldErrorsOf } from "./field-error";
import { carried } from "./trpc";

/** A refusal ready for the edge. */
export interface ToldRefusal {
  readonly code: Refusal["code"];
  readonly details: Refusal["details"];
  readonly text: RefusalText;
  readonly status: number;
}

/** The refusal in an error, whether it came from a procedure or from the service itself; nothing for a bug. */
export function refusalOf(error: unknown): ToldRefusal | undefined {
  const refusal = error instanceof TRPCError ? error.cause : error;
  if (!(refusal instanceof Refusal)) return undefined;
  return {
    code: refusal.code,
    details: refusal.details,
    text: sayRefusal(refusal),
    status: getHTTPStatusCodeFromError(carried(refusal)),
  };
}

/**
 * Writes a bug to the log, whole; what a user can mend is not a bug and is not logged, a database that is away in a line. Input that cannot be read comes
 * as BAD_REQUEST: any other ZodError is of something the program itself made.
 */
export function logFault(error: unknown, place: string): void {
  const refusal = refusalOf(error);
  // Nobody at the screen can mend it, and nobody else would hear of it.
  if (refusal?.code === "DATABASE_AWAY") console.error(`${place}: the database does not answer`);
  if (refusal || problemsOf(error)) return;
  if (error instanceof TRPCError && error.code !== "INTERNAL_SERVER_ERROR") return;
  console.error(`fault in ${place}:`, error instanceof TRPCError ? (error.cause ?? error) : error);
}

/** What is wrong with an entry by field, whether a schema or the service found it; nothing for any other error. */
export function problemsOf(error: unknown): FieldErrors | undefined {
  if (error instanceof Invalid) return fieldErrorsOf(error);
  if (!(error instanceof TRPCError) || error.code !== "BAD_REQUEST") return undefined;
  const { cause } = error;
  return cause instanceof ZodError || cause instanceof Invalid ? fieldErrorsOf(cause) : undefined;
}
