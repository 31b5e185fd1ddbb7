import type { Side } from "../characteristic/characteristic";
import type { Verdict } from "../deviation/deviation";

/** A number on the edge of the language, in SI. */
export type Comparison = "eq" | "ne" | "lt" | "le" | "gt" | "ge";

/**
 * The one closed predicate language over a car: rule applicability, class eligibility, fleet search, saved filters.
 * A sided characteristic with `side` left out means "on any side".
 * Three-valued: a predicate over something not recorded is unknown, and `not` keeps it so.
 */
export type Condition =
  | { readonly op: "always" }
  | { readonly op: "all"; readonly of: readonly Condition[] }
  | { readonly op: "any"; readonly of: readonly Condition[] }
  | { readonly op: "not"; readonly of: Condition }
  | { readonly op: "series"; readonly in: readonly string[] }
  | { readonly op: "status"; readonly in: readonly string[] }
  /** Certainly built within the span (whole uncertainty inside it). */
  | { readonly op: "built"; readonly from?: string; readonly to?: string }
  | { readonly op: "recorded"; readonly characteristic: string; readonly side?: Side }
  | { readonly op: "absent"; readonly characteristic: string; readonly side?: Side }
  | {
      readonly op: "number";
      readonly characteristic: string;
      readonly side?: Side;
      readonly is: Comparison;
      readonly si: number;
    }
  | {
      readonly op: "code";
      readonly characteristic: string;
      readonly side?: Side;
      readonly in: readonly string[];
    }
  | { readonly op: "textHas"; readonly characteristic: string; readonly side?: Side; readonly text: string }
  | {
      readonly op: "date";
      readonly characteristic: string;
      readonly side?: Side;
      readonly is: Comparison;
      readonly date: string | "eventDay";
    }
  | {
      readonly op: "verdict";
      readonly characteristic: string;
      readonly side?: Side;
      readonly in: readonly Verdict[];
    }
  /** Actual against nominal: `ratio` actual/nominal, `difference` actual−nominal (SI). */
  | {
      readonly op: "against";
      readonly characteristic: string;
      readonly side?: Side;
      readonly measure: "ratio" | "difference";
      readonly is: Comparison;
      readonly si: number;
    }
  /** Left and right differ by more than this (SI), or at all for codes and designations. */
  | { readonly op: "sidesDiffer"; readonly characteristic: string; readonly by?: number }
  /** Latest reading is older than so many days on the event day; unknown when there is none. */
  | { readonly op: "readingOlderThan"; readonly characteristic: string; readonly days: number };

/** Unknown is never a pass. */
export type Truth = "yes" | "no" | "unknown";
