import type { ClubTables, Role } from "@trunnion/db";

/** The club a request is about, with its preferences. */
export interface ClubFacts {
  readonly id: string;
  readonly slug: string;
  readonly name: string;
  readonly kind: "ownersClub" | "fleet";
  /** Units shown first. */
  readonly unitSystem: "metric" | "imperial";
  /** Words for the sides. */
  readonly sideWords: "leftRight" | "nearOff";
}

/** Who acts: a signed-in member, or whoever holds the machine (`personId` null, every role). */
export interface Actor {
  readonly personId: string | null;
  readonly membershipId: string | null;
  readonly name: string;
  readonly roles: readonly Role[];
}

/**
 * What every use case gets: one club's tables inside one transaction, who acts, and the day it is.
 * Minted by the gate only; nothing in it reaches another club.
 */
export interface Context {
  readonly db: ClubTables;
  readonly club: ClubFacts;
  readonly actor: Actor;
  /** Today, ISO, in UTC: passed in so that nothing below asks the clock. */
  readonly today: string;
  /** This instant. */
  readonly now: Date;
}
