import type { Side } from "../characteristic/characteristic";
import type { UnitSystem } from "../value/print";

/** Most that one submission carries, and longest texts, in characters. Typed text is kept whole or refused, never cut. */
export const submissionLimits = {
  modifications: 10,
  changes: 80,
  fasteners: 40,
  photos: 40,
  sheets: 10,
  readings: 400,
  line: 200,
  value: 2_000,
  prose: 4_000,
  message: 4_000,
} as const;

/** One characteristic before and after, as typed; an empty `before` is what the record says. */
export interface ChangeDraft {
  readonly characteristic: string;
  readonly side: Side;
  readonly before: string;
  readonly after: string;
}

/** A fastener as typed. */
export interface FastenerDraft {
  readonly place: string;
  readonly thread: string;
  readonly grade: string;
  readonly length: string;
  readonly spacerStack: string;
  readonly count: string;
  readonly note: string;
}

export type YesNoDraft = "" | "yes" | "no";

/** What was changed on one occasion, as typed. */
export interface ModificationDraft {
  readonly fitted: string;
  readonly odometer: string;
  readonly reason: string;
  readonly donor: string;
  readonly note: string;
  readonly reversible: YesNoDraft;
  readonly oldPartKept: YesNoDraft;
  readonly changes: readonly ChangeDraft[];
  readonly fasteners: readonly FastenerDraft[];
}

/** One reading as typed. */
export interface ReadingDraft {
  readonly characteristic: string;
  readonly side: Side;
  /** 1, or 2 and up for repeat readings. */
  readonly repeat: number;
  readonly entered: string;
  /** Id of an instrument of the club; empty for none named. */
  readonly instrument: string;
}

/** One occasion of measuring, as typed. */
export interface SheetDraft {
  readonly on: string;
  readonly loadState: "kerb" | "driver" | "driverAndPassenger" | "unknown";
  readonly note: string;
  readonly readings: readonly ReadingDraft[];
}

/**
 * What a submission says, as typed: incomplete and impossible entries included, since a draft must keep them. Read by
 * `readSubmission`; kept beside the rows it became, so that what somebody wrote stays readable.
 */
export interface SubmissionContent {
  /** Units that a bare number is in. */
  readonly units: UnitSystem;
  readonly modifications: readonly ModificationDraft[];
  readonly sheets: readonly SheetDraft[];
  /** A word to the registrar, or the answer, while it is written; once sent it is a message, and no more here. */
  readonly word?: string | undefined;
}

/** A modification that nothing is said of yet. */
export const emptyModification: ModificationDraft = {
  fitted: "",
  odometer: "",
  reason: "",
  donor: "",
  note: "",
  reversible: "",
  oldPartKept: "",
  changes: [],
  fasteners: [],
};

export const emptyFastener: FastenerDraft = {
  place: "",
  thread: "",
  grade: "",
  length: "",
  spacerStack: "",
  count: "",
  note: "",
};

/** A draft that nothing was typed into yet. */
export function emptySubmission(units: UnitSystem): SubmissionContent {
  return { units, modifications: [], sheets: [] };
}
