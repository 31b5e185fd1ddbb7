import { insertRows, type Prisma } from "@trunnion/db";
import type { Context } from "../context";

/** One accepted change, as the journal keeps it. No personal data in `before` and `after`. */
export interface JournalLine {
  readonly action: string;
  readonly noun: string;
  readonly nounId: string;
  readonly carId?: string;
  readonly runId?: string;
  readonly reason?: string;
  readonly before?: Prisma.InputJsonValue;
  readonly after?: Prisma.InputJsonValue;
}

/** Appends to the club's journal, in order, in the transaction of the change itself. The database chains the hashes. */
export async function writeJournal(ctx: Context, lines: readonly JournalLine[]): Promise<void> {
  const { personId } = ctx.actor;
  await insertRows(
    ctx.db,
    "journalEntry",
    lines.map((line) => ({ ...line, personId })),
  );
}
