import { CalcRefusal } from "@trunnion/calc";
import { EmbeddedServerError, MigrationError, ServiceRoleError } from "@trunnion/db/admin";
import { Refusal, sayRefusal } from "@trunnion/register";
import { MailSettingError } from "@trunnion/service";
import { ZodError, z } from "zod";
import { OutputFault } from "./file";

/** What went wrong, as every command reports it. */
interface Failure {
  readonly code: string;
  readonly what: string;
  readonly remedy: string;
}

/** Exit codes: 1 for what the user can mend, 70 (EX_SOFTWARE) for a bug. */
const MENDABLE = 1;
const BUG = 70;

function mendable(error: unknown): Failure | undefined {
  if (error instanceof Refusal) return { code: error.code, ...sayRefusal(error) };
  if (error instanceof CalcRefusal) {
    return { code: error.code, what: error.message, remedy: "Give an input inside the stated range." };
  }
  if (error instanceof ZodError) {
    return { code: "INPUT_NOT_READ", what: z.prettifyError(error), remedy: "Mend the places named." };
  }
  if (error instanceof OutputFault) {
    return { code: "FILE_NOT_WRITTEN", what: error.message, remedy: "Name another file or folder." };
  }
  if (error instanceof MailSettingError) {
    return {
      code: "MAIL_SETTING",
      what: error.message,
      remedy: "Set it so, or leave it out: then messages go into a folder.",
    };
  }
  if (
    error instanceof EmbeddedServerError ||
    error instanceof MigrationError ||
    error instanceof ServiceRoleError
  ) {
    return { code: error.name, what: error.message, remedy: "See README, “When it does not start”." };
  }
  return undefined;
}

/** Tells a failure on standard error (and as JSON on standard output when asked), and gives the exit code. */
export function reportFailure(error: unknown, json: boolean): number {
  const failure = mendable(error);
  if (!failure) {
    // A bug: logged whole, for whoever mends it.
    process.stderr.write(
      `trunnion: this is a fault of the program, not yours.\n${(error as Error)?.stack ?? error}\n`,
    );
    if (json) process.stdout.write(`${JSON.stringify({ ok: false, error: { code: "BUG" } })}\n`);
    return BUG;
  }
  process.stderr.write(`trunnion: ${failure.what}\n  ${failure.remedy}\n`);
  if (json) process.stdout.write(`${JSON.stringify({ ok: false, error: failure })}\n`);
  return MENDABLE;
}
