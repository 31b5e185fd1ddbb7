import { clientOf, type Database, transaction } from "./client";
import { Prisma } from "./generated/prisma/client";
import type { ClubKind, Role } from "./generated/prisma/enums";
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

/** Sets what row-level security reads from now on in a transaction; nothing of what it was opened for before remains. */
async function set(tx: Tables, opening: Opening, timeout: number): Promise<void> {
  await tx.$queryRaw`SELECT set_config('trunnion.club', ${opening.club ?? ""}, true),
    set_config('trunnion.person', ${opening.person ?? ""}, true),
    set_config('trunnion.invitation', ${opening.invitation ?? ""}, true),
    set_config('trunnion.sheet', ${opening.sheet ?? ""}, true),
    set_config('trunnion.feed', ${opening.feed ?? ""}, true),
    set_config('statement_timeout', ${String(timeout)}, true)`;
}

function inside<T>(
  database: Database,
  opening: Opening,
  work: (tx: Tables) => Promise<T>,
  timeout: number = LIMITS.timeout,
): Promise<T> {
  return transaction(
    database,
    async (tx) => {
      await set(tx, opening, timeout);
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

/** A club as its row has it. */
export interface ClubRow {
  readonly id: string;
  readonly slug: string;
  readonly name: string;
  readonly kind: ClubKind;
  readonly unitSystem: string;
  readonly sideWords: string;
}

/** That somebody belongs to a club, with their roles there. */
export interface MembershipRow {
  readonly id: string;
  readonly roles: readonly Role[];
  readonly club: ClubRow;
}

/** The columns of a `club c`, as an object. */
const clubColumns = Prisma.sql`json_build_object('id', c.id, 'slug', c.slug, 'name', c.name, 'kind', c.kind,
  'unitSystem', c.unit_system, 'sideWords', c.side_words) AS club`;

const memberships = (tx: Tables, personId: string) =>
  tx.$queryRaw<MembershipRow[]>`SELECT m.id::text AS id, m.roles::text[] AS roles, ${clubColumns}
    FROM membership m JOIN club c ON c.id = m.club_id
    WHERE m.person_id = ${personId}::uuid AND m.left_at IS NULL ORDER BY c.name, c.id`;

/** The clubs a person belongs to now, with their roles there, by club name. */
export const membershipsOf = (database: Database, personId: string): Promise<readonly MembershipRow[]> =>
  inside(database, { person: personId }, (tx) => memberships(tx, personId));

/** A club that was chosen, and what is done in it. */
export interface Entry<T> {
  /** Empty for nobody's: no table of any club has a row then. */
  readonly clubId: string;
  readonly work: (tables: ClubTables) => Promise<T>;
}

const enter = async <T>(tx: Tables, { clubId, work }: Entry<T>, timeout: number): Promise<T> => {
  await set(tx, { club: clubId }, timeout);
  return work(tx as unknown as ClubTables);
};

/**
 * {@link openClub} for one of the clubs a person belongs to now, seen in the same transaction; `choose` says which, or throws.
 */
export function openClubOf<T>(
  database: Database,
  personId: string,
  choose: (memberships: readonly MembershipRow[]) => Entry<T>,
  timeout: number = LIMITS.timeout,
): Promise<T> {
  const work = async (tx: Tables) => enter(tx, choose(await memberships(tx, personId)), timeout);
  return inside(database, { person: personId }, work, timeout);
}

/** {@link openClub} for a club by its short name, seen in the same transaction; `choose` is told when there is none, and throws. */
export function openClubCalled<T>(
  database: Database,
  slug: string,
  choose: (club: ClubRow | undefined) => Entry<T> | Promise<Entry<T>>,
  timeout: number = LIMITS.timeout,
): Promise<T> {
  const work = async (tx: Tables) => {
    const [found] = await tx.$queryRaw<
      { club: ClubRow }[]
    >`SELECT ${clubColumns} FROM club c WHERE c.slug = ${slug}`;
    return enter(tx, await choose(found?.club), timeout);
  };
  return inside(database, {}, work, timeout);
}

/** The invitation whose token has this SHA-256 (hex), whatever club it is for. */
export function invitationByToken(database: Database, tokenHash: string) {
  return inside(database, { invitation: tokenHash }, (tx) =>
    tx.invitation.findUnique({ where: { tokenHash }, include: { club: true } }),
  );
}

/** The club whose printed sheet has this code, whatever club it is; null when none has. */
export function clubOfSheet(database: Database, code: string) {
  return inside(database, { sheet: code }, async (tx) => {
    const sheet = await tx.printedSheet.findUnique({ where: { code }, select: { clubId: true } });
    return sheet && tx.club.findUnique({ where: { id: sheet.clubId }, select: { slug: true } });
  });
}

/** The calendar feed whose token has this SHA-256 (hex) with its club, whatever club it is of; null when none has. */
export function feedByToken(database: Database, tokenHash: string) {
  return inside(database, { feed: tokenHash }, async (tx) => {
    const feed = await tx.calendarFeed.findUnique({
      where: { tokenHash },
      select: { id: true, clubId: true, revokedAt: true },
    });
    const club = feed && (await tx.club.findUnique({ where: { id: feed.clubId }, select: { slug: true } }));
    return feed && club && { ...feed, club: club.slug };
  });
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
