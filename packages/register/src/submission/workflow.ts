/** Where a submission can stand, in the order it goes through. */
export const submissionStatuses = [
  "draft",
  "submitted",
  "queried",
  "answered",
  "accepted",
  "declined",
  "withdrawn",
] as const;
export type SubmissionStatus = (typeof submissionStatuses)[number];

/** Statuses in words, as lists and pages say them. */
export const submissionStatusWords: Readonly<Record<SubmissionStatus, string>> = {
  draft: "Draft",
  submitted: "Handed in",
  queried: "Question asked",
  answered: "Answered",
  accepted: "Accepted",
  declined: "Declined",
  withdrawn: "Withdrawn",
};

/** What can be done with a submission. `save` keeps what was typed; the others move it on. */
export const submissionSteps = [
  "save",
  "submit",
  "query",
  "answer",
  "accept",
  "decline",
  "withdraw",
] as const;
export type SubmissionStep = (typeof submissionSteps)[number];

/** Steps as the end of "… cannot be …". */
export const submissionStepWords: Readonly<Record<SubmissionStep, string>> = {
  save: "changed",
  submit: "handed in",
  query: "asked about",
  answer: "answered",
  accept: "accepted",
  decline: "declined",
  withdraw: "withdrawn",
};

/**
 * In what relation somebody stands to a submission: `maker` made it, or keeps the car now; `reviewer` keeps the register.
 * A registrar who owns a car is both.
 */
export type SubmissionParty = "maker" | "reviewer";

interface Rule {
  readonly by: SubmissionParty;
  /** Where it leads from each status it may be taken in. */
  readonly from: Readonly<Partial<Record<SubmissionStatus, SubmissionStatus>>>;
}

/**
 * The workflow, whole: draft → submitted → (queried ↔ answered) → accepted or declined; withdrawn before a decision.
 * What a question was about may be mended while it is open. A decided one never moves again: an accepted one is only
 * superseded, by another submission.
 */
const rules: Readonly<Record<SubmissionStep, Rule>> = {
  save: { by: "maker", from: { draft: "draft", queried: "queried" } },
  submit: { by: "maker", from: { draft: "submitted" } },
  query: { by: "reviewer", from: { submitted: "queried", answered: "queried" } },
  answer: { by: "maker", from: { queried: "answered" } },
  accept: { by: "reviewer", from: { submitted: "accepted", queried: "accepted", answered: "accepted" } },
  decline: { by: "reviewer", from: { submitted: "declined", queried: "declined", answered: "declined" } },
  withdraw: {
    by: "maker",
    from: { draft: "withdrawn", submitted: "withdrawn", queried: "withdrawn", answered: "withdrawn" },
  },
};

/** What became of a step: the status it leads to, or why it cannot be taken. */
export type SubmissionMove =
  | { readonly ok: true; readonly status: SubmissionStatus }
  | { readonly ok: false; readonly because: "party" | "status" };

/**
 * Takes a step of the workflow. Who may not take it at all is told that first, so that nobody learns from the answer
 * where another's submission stands.
 */
export function moveSubmission(
  status: SubmissionStatus,
  step: SubmissionStep,
  parties: ReadonlySet<SubmissionParty>,
): SubmissionMove {
  const { by, from } = rules[step];
  if (!parties.has(by)) return { ok: false, because: "party" };
  const next = from[status];
  return next === undefined ? { ok: false, because: "status" } : { ok: true, status: next };
}

/** The steps somebody may take now, in the order of the list. */
export function submissionStepsFor(
  status: SubmissionStatus,
  parties: ReadonlySet<SubmissionParty>,
): readonly SubmissionStep[] {
  return submissionSteps.filter((step) => moveSubmission(status, step, parties).ok);
}

/** Whether a submission still waits for somebody. */
export function isOpenSubmission(status: SubmissionStatus): boolean {
  return submissionSteps.some((step) => rules[step].from[status] !== undefined);
}
