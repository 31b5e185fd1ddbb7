/** Version of the event report's layout that this program draws. */
export const EVENT_REPORT_LAYOUT = 1;

/** How a check stands that somebody has to hear of: everything but passed and not applicable. */
export type PointKind = "refused" | "differ" | "advised" | "open";

/** Points in words, worst first. */
export const pointWords: Readonly<Record<PointKind, string>> = {
  refused: "Refused",
  differ: "Scrutineers differ",
  advised: "Advised",
  open: "Not looked at",
};

/** A check of one entry that was not simply passed. */
export interface ReportPoint {
  readonly kind: PointKind;
  readonly check: string;
  /** Notes of the scrutineers; empty for none. */
  readonly note: string;
  /** Who found it; empty where nobody did. */
  readonly by: string;
}

/** A figure measured at one entry. */
export interface ReportFigure {
  /** With its side: "Front camber, left". */
  readonly label: string;
  readonly entered: string;
  /** Limits as they are written; empty where none are known. */
  readonly limits: string;
  /** "inside limits", "outside limits", "too near the limit to tell"; empty without limits. */
  readonly verdict: string;
  /** What it was read with; empty where nobody said. */
  readonly instrument: string;
}

/** One car at an event, with what became of it. */
export interface ReportEntry {
  readonly number: string;
  /** Chassis number; empty for a car that is not on the register. */
  readonly chassis: string;
  /** Series, or what the entry list said of the car. */
  readonly car: string;
  readonly driver: string;
  readonly group: string;
  readonly className: string;
  /** "passed", "refused", "decided twice, differently", "not decided". */
  readonly outcome: string;
  /** "Åse Ørnhøi, 26 Sep 2026 09:14 UTC"; empty while not decided. */
  readonly decided: string;
  readonly decisionNote: string;
  readonly signedBy: string;
  /** How often it was refused before. */
  readonly presented: number;
  readonly counts: Readonly<
    Record<"passed" | "advised" | "refused" | "differ" | "open" | "notApplicable", number>
  >;
  readonly points: readonly ReportPoint[];
  readonly figures: readonly ReportFigure[];
}

/** What became of an event: every text made, nothing left to work out. */
export interface EventReportModel {
  readonly layoutVersion: number;
  /** SHA-256 of everything below, so that two prints are told apart. */
  readonly hash: string;
  /** ISO instant. */
  readonly preparedAt: string;
  readonly club: string;
  readonly event: {
    readonly name: string;
    /** Written: "26 Sep 2026". */
    readonly on: string;
    readonly venue: string;
    readonly ruleSet: string;
  };
  readonly totals: readonly { readonly label: string; readonly value: string }[];
  /** In running order. */
  readonly entries: readonly ReportEntry[];
  /** What may be missing: phones that had not sent everything when they were last heard of. */
  readonly missing: readonly string[];
  readonly cautions: readonly string[];
}
