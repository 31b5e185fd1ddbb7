import { initTRPC, TRPCError } from "@trpc/server";
import { Invalid, Refusal, refused, sayRefusal } from "@trunnion/register";
import { type Context, openMember } from "@trunnion/service";
import { ZodError, z } from "zod";
import { fieldErrorsOf } from "./field-error";
import { line } from "./line";
import type { Request } from "./request";

/** Who may call a procedure. One that does not say is refused. */
interface Meta {
  readonly mayCall: "anyone" | "signedIn" | "member";
}

const blank =
  "Something went wrong here, and was written to the log. Try again; if it stays, tell whoever runs this.";

const unreadable = "Something entered cannot be read.";

const t = initTRPC
  .meta<Meta>()
  .context<Request>()
  .create({
    /** The three kinds of error: invalid (by field), refused (by code, worded), bug (blanked). */
    errorFormatter({ shape, error }) {
      const { cause } = error;
      const data = { code: shape.data.code, httpStatus: shape.data.httpStatus };
      if (cause instanceof Refusal) {
        const text = sayRefusal(cause);
        const refusal = { code: cause.code, details: cause.details, ...text };
        return { ...shape, message: text.what, data: { ...data, refusal } };
      }
      // Of anything but the input it is a bug like any other: something the program itself made.
      if (cause instanceof ZodError && error.code === "BAD_REQUEST") {
        const { formErrors } = z.flattenError(cause);
        return {
          ...shape,
          message: unreadable,
          data: { ...data, fieldErrors: fieldErrorsOf(cause), formErrors },
        };
      }
      if (cause instanceof Invalid) {
        return {
          ...shape,
          message: unreadable,
          data: { ...data, fieldErrors: fieldErrorsOf(cause), formErrors: [] },
        };
      }
      return { ...shape, message: error.code === "INTERNAL_SERVER_ERROR" ? blank : error.message, data };
    },
  });

const httpCodes: Partial<Record<Refusal["code"], TRPCError["code"]>> = {
  NOT_SIGNED_IN: "UNAUTHORIZED",
  WRONG_SIGN_IN: "UNAUTHORIZED",
  TOO_MANY_TRIES: "TOO_MANY_REQUESTS",
  NOT_A_MEMBER: "FORBIDDEN",
  ROLE_NEEDED: "FORBIDDEN",
  CLUB_NOT_FOUND: "NOT_FOUND",
  CLUB_EXISTS: "CONFLICT",
  EXTRACT_NOT_OPEN: "NOT_FOUND",
  CAR_NOT_FOUND: "NOT_FOUND",
  CALENDAR_FEED_UNKNOWN: "NOT_FOUND",
  CALENDAR_FEED_TOO_MANY: "CONFLICT",
  SERIES_NOT_FOUND: "NOT_FOUND",
  EVENT_NOT_FOUND: "NOT_FOUND",
  ENTRY_NOT_FOUND: "NOT_FOUND",
  JOURNAL_ENTRY_NOT_FOUND: "NOT_FOUND",
  COMPUTATION_NOT_FOUND: "NOT_FOUND",
  SETUP_PLAN_NOT_READY: "CONFLICT",
  CONSEQUENCE_NOT_FOUND: "NOT_FOUND",
  SPECIFICATION_NOT_FOUND: "NOT_FOUND",
  SPECIFICATION_ENTRY_NOT_FOUND: "NOT_FOUND",
  SPECIFICATION_NOT_DRAFT: "CONFLICT",
  SPECIFICATION_DRAFT_EXISTS: "CONFLICT",
  SPECIFICATION_MOVED_ON: "CONFLICT",
  SERIES_LEAVES_CARS_OUT: "CONFLICT",
  CHARACTERISTIC_NOT_FOUND: "NOT_FOUND",
  CHARACTERISTIC_HAS_VALUES: "CONFLICT",
  FILTER_NOT_FOUND: "NOT_FOUND",
  FILTER_NAME_TAKEN: "CONFLICT",
  FILTER_OF_ANOTHER: "FORBIDDEN",
  FILE_TOO_LARGE: "PAYLOAD_TOO_LARGE",
  RUNNING_NUMBER_TAKEN: "CONFLICT",
  ALREADY_A_MEMBER: "CONFLICT",
  CHANGED_MEANWHILE: "CONFLICT",
  LIST_UNKNOWN: "NOT_FOUND",
  ARCHIVE_EVIDENCE_DAMAGED: "INTERNAL_SERVER_ERROR",
  IMPORT_NOT_FOUND: "NOT_FOUND",
  IMPORT_RUNNING: "CONFLICT",
  IMPORT_NOT_READY: "CONFLICT",
  UNDO_BLOCKED: "CONFLICT",
  WORKBOOK_TOO_LARGE: "PAYLOAD_TOO_LARGE",
  DECIDED_MEANWHILE: "CONFLICT",
  CAR_MERGED: "CONFLICT",
  KEEPER_ERASED: "CONFLICT",
  MERGE_IMPOSSIBLE: "CONFLICT",
  DATABASE_AWAY: "SERVICE_UNAVAILABLE",
  DOUBTFUL: "CONFLICT",
  ROW_NOT_FOUND: "NOT_FOUND",
  KEEPER_NOT_FOUND: "NOT_FOUND",
  CLAIM_NOT_FOUND: "NOT_FOUND",
  FINDING_NOT_FOUND: "NOT_FOUND",
  EVIDENCE_NOT_FOUND: "NOT_FOUND",
  EVIDENCE_TARGET_NOT_FOUND: "NOT_FOUND",
  EVIDENCE_FILE_MISSING: "NOT_FOUND",
  EVIDENCE_WITHDRAWN: "NOT_FOUND",
  EVIDENCE_NOT_YOURS: "FORBIDDEN",
  EVIDENCE_TOO_MANY: "PAYLOAD_TOO_LARGE",
  EVIDENCE_TOO_LARGE: "PAYLOAD_TOO_LARGE",
  EVIDENCE_TOO_MANY_PIXELS: "PAYLOAD_TOO_LARGE",
  EVIDENCE_NO_PICTURE: "UNSUPPORTED_MEDIA_TYPE",
  EVIDENCE_HEIC: "UNSUPPORTED_MEDIA_TYPE",
  EVIDENCE_BROKEN: "UNPROCESSABLE_CONTENT",
  EVIDENCE_NOT_WITHDRAWN: "CONFLICT",
  EVIDENCE_LINKED_ALREADY: "CONFLICT",
  EVIDENCE_LAST_LINK: "CONFLICT",
  SUBMISSION_NOT_FOUND: "NOT_FOUND",
  SUBMISSION_STEP: "CONFLICT",
  SUBMISSION_NOT_YOURS: "FORBIDDEN",
  SUBMISSION_KEY_TAKEN: "CONFLICT",
  SUBMISSION_SUPERSEDED: "CONFLICT",
  CAR_NOT_KEPT: "FORBIDDEN",
  KEEPER_CHANGED: "CONFLICT",
};

/** A refusal as tRPC carries it. */
export function carried(refusal: Refusal): TRPCError {
  return new TRPCError({
    code: httpCodes[refusal.code] ?? "BAD_REQUEST",
    message: refusal.code,
    cause: refusal,
  });
}

/** What every procedure stands on. By itself it declares nothing, so whoever calls it is refused. */
export const undeclared = t.procedure.use(async ({ meta, next }) => {
  if (!meta)
    throw new TRPCError({ code: "FORBIDDEN", message: "this procedure does not say who may call it" });
  const result = await next();
  if (!result.ok && result.error.cause instanceof Refusal && result.error.code === "INTERNAL_SERVER_ERROR") {
    throw carried(result.error.cause);
  }
  if (!result.ok && result.error.cause instanceof Invalid && result.error.code === "INTERNAL_SERVER_ERROR") {
    throw new TRPCError({ code: "BAD_REQUEST", message: unreadable, cause: result.error.cause });
  }
  return result;
});

export const { router, createCallerFactory } = t;

/** For whoever comes: health, invitations. */
export const anyone = undeclared.meta({ mayCall: "anyone" });

/** For whoever is signed in, before a club is chosen. */
export const signedIn = undeclared.meta({ mayCall: "signedIn" }).use(({ ctx, next }) => {
  if (!ctx.signedIn) throw carried(refused("NOT_SIGNED_IN", {}));
  return next({ ctx: { signedIn: ctx.signedIn } });
});

const clubInput = z.object({ club: line(60).min(1) });

/** @param timeout milliseconds the transaction may take; the database's own limit when left out */
const memberWithin = (timeout?: number) =>
  undeclared
    .meta({ mayCall: "member" })
    .input(clubInput)
    .use(async ({ ctx, input, next }) => {
      if (!ctx.signedIn) throw carried(refused("NOT_SIGNED_IN", {}));
      const work = async (scope: Context) => {
        const result = await next({ ctx: { scope } });
        // Thrown, not returned: the transaction must not be kept when the procedure failed.
        if (!result.ok) throw result.error;
        return result;
      };
      return openMember(ctx.database, ctx.signedIn, input.club, work, timeout);
    });

/** For members of the club named in the input: the whole procedure is one transaction of that club. */
export const member = memberWithin();

/** Milliseconds that may go by in working out every car of a series. */
const EVERY_CAR_TIMEOUT = 300_000;

/** The same, for what goes through every car of a series in its one transaction. */
export const memberForEveryCar = memberWithin(EVERY_CAR_TIMEOUT);
