import {
  type CharacteristicBook,
  entriesFor,
  refused,
  type Specification,
  type SubmissionBasis,
  type SubmissionParty,
  type SubmissionStep,
  stateOn,
} from "@trunnion/register";
import type { Context } from "../context";
import type { CarRecord } from "../record";

/** Drafts that one person may have at a time. */
export const DRAFT_LIMIT = 50;

/** Who keeps the register, and so may decide and may record for anybody. */
export function keepsRegister({ actor }: Context): boolean {
  return actor.roles.includes("registrar") || actor.roles.includes("fleetManager");
}

/** In what relation the actor stands to a submission. */
export function partiesOf(
  ctx: Context,
  { madeById }: { readonly madeById: string | null },
): ReadonlySet<SubmissionParty> {
  const parties = new Set<SubmissionParty>();
  if (madeById === ctx.actor.personId) parties.add("maker");
  if (keepsRegister(ctx)) parties.add("reviewer");
  return parties;
}

/** @throws Refusal SUBMISSION_NOT_FOUND to who has nothing to do with it */
export function requireParty(ctx: Context, row: { readonly madeById: string | null }): void {
  if (partiesOf(ctx, row).size === 0) throw refused("SUBMISSION_NOT_FOUND", {});
}

/** Steps that only whoever keeps the car, or the register, may take. */
export const stepsOfKeeper: ReadonlySet<SubmissionStep> = new Set(["submit", "answer"]);

interface BasisInput {
  readonly record: CarRecord;
  readonly specification: Specification | undefined;
  readonly book: CharacteristicBook;
  readonly today: string;
  /** Modifications that are to be passed over: those that this submission takes the place of. */
  readonly except?: ReadonlySet<string>;
}

/** What a submission about a car is read against: accepted things only, and not what it takes the place of. */
export function basisOf({ record, specification, book, today, except }: BasisInput): SubmissionBasis {
  const entries = entriesFor(specification, record.basis, book);
  const modifications = record.modifications.filter(({ id }) => except?.has(id) !== true);
  const { built } = record.basis;
  return {
    book,
    today,
    stateOn: (day) => stateOn(day, { ...record, entries, modifications }),
    ...(built === undefined ? {} : { builtEarliest: built.earliest }),
  };
}
