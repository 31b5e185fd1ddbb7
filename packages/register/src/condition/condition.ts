import type { Assembly, Side } from "../characteristic/characteristic";
import type { ComparedVerdict, Verdict } from "../deviation/deviation";

/** A number on the edge of the language, in SI. */
export type Comparison = "eq" | "ne" | "lt" | "le" | "gt" | "ge";

/** What of a car may not be known at all, beside its characteristics. `decade`: in which decade it was built. */
export const knowables = ["series", "status", "decade"] as const;
export type Knowable = (typeof knowables)[number];

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
  /** That it is known; always decided, so that what is not known can be looked for. */
  | { readonly op: "known"; readonly what: Knowable }
  /** Something recorded of the car, whatever it is, has one of these verdicts; unknown where nothing was compared. */
  | { readonly op: "anyVerdict"; readonly in: readonly ComparedVerdict[] }
  /** A modification of one of these assemblies is recorded and still stands; always decided. */
  | { readonly op: "modified"; readonly in: readonly Assembly[] }
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
