import type { Words } from "./words";

/** What the service refuses about car records, apart from the general refusals. */
export interface CarRefusals {
  /** The record is a pointer: everything of it is with the other car. */
  CAR_MERGED: { readonly car: string; readonly into: string };
  /** A row of a car's record that somebody took away meanwhile, or that never was. */
  ROW_NOT_FOUND: { readonly what: string; readonly car: string };
  KEEPER_NOT_FOUND: Record<never, never>;
  KEEPER_ERASED: Record<never, never>;
  CLAIM_NOT_FOUND: { readonly number: string };
  FINDING_NOT_FOUND: { readonly finding: string };
  /** Somebody decided about the number since the page was opened. */
  DECIDED_MEANWHILE: { readonly number: string };
  /** Two records that cannot become one: what stands in the way. */
  MERGE_IMPOSSIBLE: { readonly because: string };
}

export const carWords: Words<CarRefusals> = {
  CAR_MERGED: ({ car, into }) => ({
    what: `${car} turned out to be the same car as ${into}; its record is there.`,
    remedy: `Change the record of ${into}.`,
  }),
  ROW_NOT_FOUND: ({ what, car }) => ({
    what: `There is no such ${what} on the record of ${car} any more.`,
    remedy: "Open the record again: somebody may have taken it away.",
  }),
  KEEPER_NOT_FOUND: () => ({
    what: "There is no such keeper in this club's register.",
    remedy: "Open the car's record again and choose from there.",
  }),
  KEEPER_ERASED: () => ({
    what: "The personal data of this keeper were erased.",
    remedy: "Add the keeper anew, if the person wants to be on the register again.",
  }),
  CLAIM_NOT_FOUND: ({ number }) => ({
    what: `Fewer than two cars claim ${number}, so there is nothing to decide.`,
    remedy: "Look at the numbers page for what is open.",
  }),
  FINDING_NOT_FOUND: ({ finding }) => ({
    what: `The register does not show "${finding}" any more.`,
    remedy: "Look at the numbers page again: it may be settled.",
  }),
  DECIDED_MEANWHILE: ({ number }) => ({
    what: `Somebody decided about ${number} since you opened this page.`,
    remedy: "Nothing was written. Read their decision, then decide again if you still want to.",
  }),
  MERGE_IMPOSSIBLE: ({ because }) => ({
    what: `These records cannot become one: ${because}`,
    remedy: "Settle that first; nothing was written.",
  }),
};
