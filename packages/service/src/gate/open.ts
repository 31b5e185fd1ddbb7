import { type Database, databaseAway, Role } from "@trunnion/db";
import { type ClubRow, listClubs, openClubCalled, openClubOf } from "@trunnion/db/gate";
import { Refusal, refused } from "@trunnion/register";
import type { ClubFacts, Context } from "../context";
import { dayOf } from "../day";

/** A session that the sign-in library has read and found valid. */
export interface SignedIn {
  readonly personId: string;
  readonly name: string;
}

function factsOf(club: ClubRow): ClubFacts {
  return {
    id: club.id,
    slug: club.slug,
    name: club.name,
    kind: club.kind,
    unitSystem: club.unitSystem === "imperial" ? "imperial" : "metric",
    sideWords: club.sideWords === "nearOff" ? "nearOff" : "leftRight",
  };
}

/** Does what asks the database; that it is not there is no bug, but refused with what to do. */
async function reaching<T>(work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    if (error instanceof Refusal || !databaseAway(error)) throw error;
    throw refused("DATABASE_AWAY", {});
  }
}

/**
 * Opens a club for a signed-in member: the one way from a session to the database.
 *
 * @param timeout milliseconds the transaction may take, where what is asked for takes long
 * @throws Refusal NOT_A_MEMBER, also when there is no such club: which clubs exist is nobody's business; DATABASE_AWAY
 */
export function openMember<T>(
  database: Database,
  signedIn: SignedIn,
  clubSlug: string,
  work: (context: Context) => Promise<T>,
  timeout?: number,
): Promise<T> {
  return reaching(() =>
    openClubOf(
      database,
      signedIn.personId,
      (memberships) => {
        const membership = memberships.find((one) => one.club.slug === clubSlug);
        if (!membership) throw refused("NOT_A_MEMBER", { club: clubSlug });
        const now = new Date();
        const actor = {
          personId: signedIn.personId,
          membershipId: membership.id,
          name: signedIn.name,
          roles: membership.roles,
        };
        const club = factsOf(membership.club);
        return { clubId: club.id, work: (db) => work({ db, club, actor, today: dayOf(now), now }) };
      },
      timeout,
    ),
  );
}

/**
 * Opens a club for somebody who is not signed in: an actor without a role, so every use case that asks for one refuses.
 * There is no context where there is no such club.
 */
export function openVisitor<T>(
  database: Database,
  clubSlug: string,
  work: (context: Context | undefined) => Promise<T>,
): Promise<T> {
  return reaching(() =>
    openClubCalled(database, clubSlug, (found) => {
      if (found === undefined) return { clubId: "", work: () => work(undefined) };
      const now = new Date();
      const actor = { personId: null, membershipId: null, name: "visitor", roles: [] };
      const club = factsOf(found);
      return { clubId: club.id, work: (db) => work({ db, club, actor, today: dayOf(now), now }) };
    }),
  );
}

/** The clock of a command; the machine's own when left out. */
export interface Clock {
  readonly now: Date;
}

/** Longest transaction of a command, milliseconds: a large import is one transaction. */
const OPERATOR_TIMEOUT = 600_000;

/**
 * Opens a club for whoever runs commands on this machine; acts with every role, and the journal says so.
 *
 * @throws Refusal CLUB_NOT_FOUND, DATABASE_AWAY
 */
export function openOperator<T>(
  database: Database,
  clubSlug: string,
  work: (context: Context) => Promise<T>,
  { now }: Clock = { now: new Date() },
): Promise<T> {
  const actor = { personId: null, membershipId: null, name: "command line", roles: Object.values(Role) };
  return reaching(() =>
    openClubCalled(
      database,
      clubSlug,
      async (found) => {
        if (found === undefined) {
          const known = (await listClubs(database)).map(({ slug }) => slug);
          throw refused("CLUB_NOT_FOUND", { club: clubSlug, known });
        }
        const club = factsOf(found);
        return { clubId: club.id, work: (db) => work({ db, club, actor, today: dayOf(now), now }) };
      },
      OPERATOR_TIMEOUT,
    ),
  );
}
