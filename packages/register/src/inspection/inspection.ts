import type { Side } from "../characteristic/characteristic";

/** A scrutineer's result for one check. */
export const findingResults = ["pass", "advise", "refuse", "notApplicable"] as const;
export type FindingResult = (typeof findingResults)[number];

/** Results in words, as said of a check. */
export const findingResultWords: Readonly<Record<FindingResult, string>> = {
  pass: "passed",
  advise: "advised",
  refuse: "refused",
  notApplicable: "not applicable",
};

/** Outcome of scrutineering one entry. */
export const decisionOutcomes = ["pass", "passWithAdvice", "refused"] as const;
export type DecisionOutcome = (typeof decisionOutcomes)[number];

/** Outcomes in words. */
export const decisionOutcomeWords: Readonly<Record<DecisionOutcome, string>> = {
  pass: "passed",
  passWithAdvice: "passed with advice",
  refused: "refused",
};

/**
 * Something added by a device that may have been out of reach: never changed, it takes the place of those it names.
 * Keys are made by the device, so that sending twice is one record.
 */
export interface Added {
  readonly key: string;
  /** Keys of the records whoever made this had seen, whose place it takes. */
  readonly replaces: readonly string[];
}

/** A reading taken at a check, as entered. */
export interface FindingReading {
  readonly characteristic: string;
  readonly side: Side;
  readonly entered: string;
  /** Id of the instrument it was read with; missing where nobody said. */
  readonly instrument?: string;
}

/** What a scrutineer found at one check of one entry. */
export interface Finding extends Added {
  readonly check: string;
  readonly result: FindingResult;
  readonly note: string;
  readonly readings: readonly FindingReading[];
  /** Name of the scrutineer; empty where nobody signed in. */
  readonly by: string;
  /** ISO instant. */
  readonly at: string;
}

/** What a scrutineer decided on one entry. */
export interface EntryDecision extends Added {
  readonly outcome: DecisionOutcome;
  readonly note: string;
  /** Name under the signature. */
  readonly signedBy: string;
  /** SVG path in a box of 600 by 200; empty for none. */
  readonly signature: string;
  readonly by: string;
  /** ISO instant. */
  readonly at: string;
}

/** Limits on what one finding or decision may carry. */
export const inspectionLimits = {
  /** Characters of a note. */
  note: 2_000,
  /** Characters of one reading. */
  reading: 120,
  /** Readings of one finding. */
  readings: 24,
  /** Records one may take the place of. */
  replaces: 100,
  /** Characters of a signature's path. */
  signature: 20_000,
  /** Characters of the name under a signature. */
  signedBy: 120,
  /** Findings and decisions sent at once. */
  batch: 500,
} as const;
