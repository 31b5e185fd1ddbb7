import {
  type SubmissionStatus,
  type SubmissionStep,
  submissionStatusWords,
  submissionStepWords,
} from "../submission/workflow";
import type { Words } from "./words";

/** What the service refuses about submissions, apart from the general refusals. */
export interface SubmissionRefusals {
  /** Also for one that somebody else made: whose it is, is nobody's business. */
  SUBMISSION_NOT_FOUND: Record<never, never>;
  /** The workflow has no such step from where it stands. */
  SUBMISSION_STEP: { readonly step: SubmissionStep; readonly status: SubmissionStatus };
  /** Only who made it, or only who keeps the register, may take this step. */
  SUBMISSION_NOT_YOURS: { readonly step: SubmissionStep };
  /** A key that the client made stands for something else already. */
  SUBMISSION_KEY_TAKEN: Record<never, never>;
  /** Whoever wants to hand something in about a car does not keep it, or does so no longer. */
  CAR_NOT_KEPT: { readonly car: string };
  /** Whoever made it kept the car then and does not now; a reviewer may accept it knowingly. */
  KEEPER_CHANGED: { readonly car: string };
  /** Something accepted has taken its place already. */
  SUBMISSION_SUPERSEDED: Record<never, never>;
  TOO_MANY_DRAFTS: { readonly limit: number };
  SUBMISSION_PHOTOS_FULL: { readonly limit: number };
}

export const submissionWords: Words<SubmissionRefusals> = {
  SUBMISSION_NOT_FOUND: () => ({
    what: "There is no such submission of yours.",
    remedy: "Open My garage and choose from there.",
  }),
  SUBMISSION_STEP: ({ step, status }) => ({
    what: `This is "${submissionStatusWords[status].toLowerCase()}" and cannot be ${submissionStepWords[step]}.`,
    remedy:
      status === "accepted"
        ? "What is accepted stays on the record: hand in a correction, which takes its place."
        : "Open it again to see where it stands.",
  }),
  SUBMISSION_NOT_YOURS: ({ step }) => ({
    what: `This cannot be ${submissionStepWords[step]} by you.`,
    remedy:
      step === "accept" || step === "decline" || step === "query"
        ? "The club's registrar decides about it."
        : "Whoever made it does that.",
  }),
  SUBMISSION_KEY_TAKEN: () => ({
    what: "This was sent under a key that stands for something else.",
    remedy: "Open the page again and start from there; what you typed is still in it.",
  }),
  CAR_NOT_KEPT: ({ car }) => ({
    what: `By the register you do not keep ${car} now.`,
    remedy: "Your draft is kept. Ask the registrar to record you as its keeper, or to record the change.",
  }),
  KEEPER_CHANGED: ({ car }) => ({
    what: `Whoever handed this in does not keep ${car} any more.`,
    remedy: "If the change was made in their time, accept it and tick that you know; else decline it.",
  }),
  SUBMISSION_SUPERSEDED: () => ({
    what: "A correction has taken the place of this one already.",
    remedy: "Correct the one that stands.",
  }),
  SUBMISSION_PHOTOS_FULL: ({ limit }) => ({
    what: `This change has ${limit} photos and documents, which is the most.`,
    remedy: "Remove one first. This one was not kept by the club.",
  }),
  TOO_MANY_DRAFTS: ({ limit }) => ({
    what: `You have ${limit} drafts, which is the most.`,
    remedy: "Hand one in or withdraw it first.",
  }),
};
