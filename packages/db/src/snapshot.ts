import { type Database, transaction } from "./client";
import { Prisma } from "./generated/prisma/client";
import type { ClubTables } from "./scope";

/** Longest time one snapshot is held, milliseconds: an archive of 100,000 cars takes minutes. */
const TIMEOUT = 6 * 3_600_000;

/**
 * Opens one transaction for one club that sees the club as it was at its start, whatever is written meanwhile, and mints
 * the scope for it. It only reads: a write fails. For what must hang together over many statements, such as an archive.
 *
 * @param clubId a club that the caller was let into by the gate
 */
export function openClubSnapshot<T>(
  database: Database,
  clubId: string,
  work: (tables: ClubTables) => Promise<T>,
): Promise<T> {
  return transaction(
    database,
    async (tx) => {
      await tx.$queryRaw`SELECT set_config('trunnion.club', ${clubId}, true),
        set_config('trunnion.person', '', true), set_config('trunnion.invitation', '', true), set_config('trunnion.sheet', '', true),
        set_config('transaction_read_only', 'on', true)`;
      return work(tx as unknown as ClubTables);
    },
    {
      maxWait: 10_000,
      timeout: TIMEOUT,
      isolationLevel: Prisma.TransactionIsolationLevel.RepeatableRead,
    },
  );
}
