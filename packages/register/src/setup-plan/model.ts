/** Layout of the page that this version draws. */
export const SETUP_PLAN_LAYOUT = 2;

/** What a gauge shows, printed; empty where there is none. */
export interface PlanReadingText {
  readonly camber: string;
  readonly castor: string;
  readonly toe: string;
}

/** A set-up plan as one page for the garage: every text made, nothing left to work out. */
export interface SetupPlanModel {
  readonly layoutVersion: number;
  /** SHA-256 of what it was worked out from. */
  readonly hash: string;
  /** ISO instant. */
  readonly preparedAt: string;
  readonly club: string;
  readonly car: { readonly chassis: string; readonly marque: string; readonly series: string };
  /** "front nearside wheel". */
  readonly wheel: string;
  readonly wanted: readonly { readonly label: string; readonly value: string }[];
  readonly before: PlanReadingText;
  /** In the order of work, each with the reading to expect after it. */
  readonly steps: readonly (PlanReadingText & { readonly what: string })[];
  /** What is left over after the last step, reached less wanted; empty for what was not asked for. */
  readonly left: PlanReadingText;
  /** What else the plan moves, e.g. "Kingpin inclination +12'". */
  readonly sideEffects: readonly string[];
  readonly verdict: string;
  readonly remarks: readonly string[];
  readonly cautions: readonly string[];
}
