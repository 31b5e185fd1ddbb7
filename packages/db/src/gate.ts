import { clientOf, type Database, transaction } from "./client";
import type { Prisma } from "./generated/prisma/client";
import type { ClubTables, Tables } from "./scope";

/** Times in milliseconds: waiting for a connection, and the whole transaction. */
const LIMITS = { maxWait: 10_000, timeout: 20_000 } as const;

/** What a transaction is opened for; each is a setting that row-level security reads. */
interface Opening {
  readonly club?: string;
  readonly person?: string;
  readonly invitation?: string;
  readonly sheet?: string;
  readonly feed?: string;
}

function inside<T>(
  database: Database,
  opening: Opening,
  work: (tx: Tables) => Promise<T>,
  timeout: number,
): Promise<T> {
  return transaction(
    database,
    async (tx) => {
      await tx.$queryRaw`SELECT set_config('trunnion.club', ${opening.club ?? ""}, true),
        set_config('trunnion.person', ${opening.person ?? ""}, true),
        set_config('trunnion.invitation', ${opening.invitation ?? ""}, true),
        set_config('trunnion.sheet', ${opening.sheet ?? ""}, true),
        set_config('trunnion.feed', ${opening.feed ?? ""}, true),
        set_config('statement_timeout', ${String(timeout)}, true)`;
      return work(tx);
    },
    { ...LIMITS, timeout },
  );
}

/**
 * Opens one transaction for one club and mints the scope for it. Everything inside sees and writes that club only.
 * Call it from the service's session gate and the command line's operator gate, nowhere else (lint holds that).
 */
export function openClub<T>(
  database: Database,
  clubId: string,
  work: (tables: ClubTables) => Promise<T>,
  timeout: number = LIMITS.timeout,
): Promise<T> {
  return inside(database, { club: clubId }, (tx) => work(tx as unknown as ClubTables), timeout);
}

const membershipFields = {
  id: true,
  roles: true,
  club: { select: { id: true, slug: true, name: true, kind: true, unitSystem: true, sideWords: true } },
} satisfies Prisma.MembershipSelect;

/** The clubs a person belongs to now, with their roles there, by club name. */
export function membershipsOf(database: Database, personId: string) {
  return inside(
    database,
    { person: personId },
    (tx) =>
      tx.membership.findMany({
        where: { personId, leftAt: null },
        select: membershipFields,
        orderBy: { club: { name: "asc" } },
      }),
    LIMITS.timeout,
  );
}

/** The invitation whose token has this SHA-256 (hex), whatever club it is for. */
export function invitationByToken(database: Database, tokenHash: string) {
  return inside(
    database,
    { invitation: tokenHash },
    (tx) => tx.invitation.findUnique({ where: { tokenHash }, include: { club: true } }),
    LIMITS.timeout,
  );
}

/** The club whose printed sheet has this code, whatever club it is; null when none has. */
export function clubOfSheet(database: Database, code: string) {
  return inside(
    database,
    { sheet: code },
    async (tx) => {
      const sheet = await tx.printedSheet.findUnique({ where: { code }, select: { clubId: true } });
      return sheet && tx.club.findUnique({ where: { id: sheet.clubId }, select: { slug: true } });
    },
    LIMITS.timeout,
  );
}

/** The calendar feed whose token has this SHA-256 (hex) with its club, whatever club it is of; null when none has. */
export function feedByToken(database: Database, tokenHash: string) {
  return inside(
    database,
    { feed: tokenHash },
    async (tx) => {
      const feed = await tx.calendarFeed.findUnique({
        where: { tokenHash },
        select: { id: true, clubId: true, revokedAt: true },
      });
      const club = feed && (await tx.club.findUnique({ where: { id: feed.clubId }, select: { slug: true } }));
      return feed && club && { ...feed, club: club.slug };
    },
    LIMITS.timeout,
  );
}

/** A club by its short name; clubs themselves stand outside the tenancies. */
export function findClub(database: Database, slug: string) {
  return clientOf(database).club.findUnique({ where: { slug } });
}

/** Every club, by short name: for the command line. */
export function listClubs(database: Database) {
  return clientOf(database).club.findMany({ orderBy: { slug: "asc" } });
}

/** Clubs, by short name, whose current values were not last worked out by a version of the engines. */
export async function clubsNotWorkedOutBy(database: Database, version: number): Promise<readonly string[]> {
  const clubs = await clientOf(database).club.findMany({
    where: { workedOutBy: { not: version } },
    select: { slug: true },
    orderBy: { slug: "asc" },
  });
  return clubs.map(({ slug }) => slug);
}

/** Sign-in's own tables, for the sign-in library. */
export function signInTables(
  database: Database,
): Pick<ReturnType<typeof clientOf>, "person" | "session" | "credential" | "verification" | "$transaction"> {
  return clientOf(database);
}

/** True when the database answers. */
export async function answers(database: Database): Promise<boolean> {
  return clientOf(database).$queryRaw`SELECT 1`.then(() => true).catch(() => false);
}

export { openClubSnapshot } from "./snapshot";
