import type { ArchiveRefusals } from "./archive";
import type { CalendarFeedRefusals } from "./calendar-feed";
import type { CarRefusals } from "./car";
import type { EvidenceRefusals } from "./evidence";
import type { FilterRefusals } from "./filter";
import type { ImportRefusals } from "./import";
import type { JournalRefusals } from "./journal";
import type { SheetRefusals } from "./sheet";
import type { SpecificationRefusals } from "./specification";
import type { SubmissionRefusals } from "./submission";

/** One field that two people changed: what it was, what the other made of it, what you want. */
export interface FieldDifference {
  /** Name of the form's field. */
  readonly field: string;
  readonly label: string;
  readonly was: string;
  readonly theirs: string;
  readonly yours: string;
}

/**
 * Every way the service says no, with what it tells. The second of the three kinds of error
 * (invalid, refused, bug): expected, closed, worded in `refusal-words`.
 */
export interface RefusalDetails
  extends CarRefusals,
    CalendarFeedRefusals,
    EvidenceRefusals,
    SpecificationRefusals,
    ImportRefusals,
    JournalRefusals,
    ArchiveRefusals,
    FilterRefusals,
    SheetRefusals,
    SubmissionRefusals {
  /** It cannot be reached, or the connection was lost; what was under way is taken back. */
  DATABASE_AWAY: Record<never, never>;
  /** What was entered can be, and is unlikely: to be mended, or sent again as it stands. */
  DOUBTFUL: { readonly doubts: readonly string[] };
  NOT_SIGNED_IN: Record<never, never>;
  WRONG_SIGN_IN: Record<never, never>;
  TOO_MANY_TRIES: { readonly seconds: number };
  CLUB_NOT_FOUND: { readonly club: string; readonly known: readonly string[] };
  CLUB_EXISTS: { readonly club: string };
  EXTRACT_NOT_OPEN: { readonly club: string };
  NOT_A_MEMBER: { readonly club: string };
  ROLE_NEEDED: { readonly needed: readonly string[]; readonly has: readonly string[] };
  CAR_NOT_FOUND: { readonly car: string };
  SERIES_NOT_FOUND: { readonly series: string; readonly known: readonly string[] };
  EVENT_NOT_FOUND: { readonly event: string; readonly known: readonly string[] };
  TOO_MANY_PARTS: { readonly limit: number };
  PART_NOT_FOUND: { readonly part: string };
  INSTRUMENT_NOT_FOUND: Record<never, never>;
  EVENT_HAS_NO_ENTRIES: { readonly event: string };
  ENTRY_NOT_FOUND: { readonly event: string; readonly number: string; readonly known: readonly string[] };
  EVENT_SLUG_TAKEN: { readonly slug: string };
  ENTRY_LIST_TOO_LONG: {
    readonly what: "characters" | "entries";
    readonly found: number;
    readonly limit: number;
  };
  RULE_SET_NOT_FOUND: { readonly ruleSet: string; readonly known: readonly string[] };
  RULE_SET_NOT_DRAFT: { readonly ruleSet: string; readonly version: number; readonly status: string };
  RULE_SET_DRAFT_EXISTS: { readonly ruleSet: string; readonly version: number };
  /** Somebody changed the draft since the form was opened. */
  RULE_SET_MOVED_ON: { readonly ruleSet: string; readonly version: number };
  RULE_SET_ROW_NOT_FOUND: { readonly what: string };
  RUNNING_NUMBER_TAKEN: { readonly event: string; readonly number: string };
  INVITATION_NOT_VALID: { readonly because: "unknown" | "expired" | "used" | "revoked" };
  ALREADY_A_MEMBER: { readonly email: string };
  FILE_NOT_FOUND: { readonly path: string };
  FILE_EMPTY: { readonly file: string };
  FILE_TOO_LARGE: { readonly file: string; readonly bytes: number; readonly limit: number };
  FILE_NOT_A_TABLE: { readonly file: string; readonly found: string };
  FILE_ENCODING: { readonly file: string; readonly line: number; readonly found: string };
  TABLE_TOO_WIDE: { readonly file: string; readonly columns: number; readonly limit: number };
  TABLE_TOO_LONG: { readonly file: string; readonly limit: number };
  TABLE_BROKEN: { readonly file: string; readonly line: number; readonly problem: string };
  HEADING_MISSING: {
    readonly file: string;
    readonly wanted: readonly string[];
    readonly found: readonly string[];
  };
  HEADING_TWICE: { readonly file: string; readonly heading: string; readonly columns: readonly string[] };
  INPUT_NOT_JSON: { readonly problem: string };
  /** Something lacks, is wrong, or cannot be planned: the page of the plan says what. */
  SETUP_PLAN_NOT_READY: { readonly car: string };
  CONSEQUENCE_NOT_FOUND: { readonly id: string; readonly known: readonly string[] };
  COMPUTATION_NOT_FOUND: { readonly name: string; readonly known: readonly string[] };
  SPECIFICATION_CONTRADICTS: { readonly problems: readonly string[] };
  /** Nothing was written; `version` is the one that stands now, for saving knowingly over it. */
  CHANGED_MEANWHILE: {
    readonly what: string;
    readonly version: number;
    readonly differences: readonly FieldDifference[];
  };
}

export type RefusalCode = keyof RefusalDetails;

/** A refusal: a code of the closed list with its details. Thrown by the service, worded at the edge. */
export class Refusal<C extends RefusalCode = RefusalCode> extends Error {
  override readonly name = "Refusal";
  constructor(
    readonly code: C,
    readonly details: RefusalDetails[C],
  ) {
    super(code);
  }
}

/** Makes a refusal; the caller throws it, so that control flow stays visible. */
export function refused<C extends RefusalCode>(code: C, details: RefusalDetails[C]): Refusal<C> {
  return new Refusal(code, details);
}
