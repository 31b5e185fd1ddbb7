import type { Criterion } from "../check/check";
import type { Verdict } from "../deviation/deviation";

/** One bracket: limits and value on a common scale, for drawing; all SI, plus the texts to print. */
export interface BracketModel {
  readonly lower?: number;
  readonly upper?: number;
  readonly nominal?: number;
  readonly value?: number;
  readonly expandedUncertainty?: number;
}

export interface SheetDeviation {
  readonly label: string;
  readonly side?: "left" | "right";
  /** Number of the plan's leader this belongs to. */
  readonly leader: number;
  readonly verdict: Verdict;
  readonly verdictText: string;
  readonly specified: string;
  readonly actual: string;
  /** "+4 mm, ×1.25" or empty. */
  readonly difference: string;
  readonly since: string;
  readonly bracket?: BracketModel;
}

export interface SheetSetting {
  /** The characteristic's key: a form field's name, and where a figure read back belongs. */
  readonly key: string;
  readonly label: string;
  readonly unit: string;
  readonly limits: string;
  readonly left?: { readonly text: string; readonly verdictText: string; readonly bracket?: BracketModel };
  readonly right?: { readonly text: string; readonly verdictText: string; readonly bracket?: BracketModel };
  readonly whole?: { readonly text: string; readonly verdictText: string; readonly bracket?: BracketModel };
}

/** One figure a check asks for. */
export interface CheckReading {
  /** Name within the check, for a form's field: "left", "front-right", "whole". */
  readonly key: string;
  /** Characteristic it is a value of; empty where none is named. */
  readonly characteristic: string;
  readonly side: "left" | "right" | "whole";
  /** "L", "FR", or empty. */
  readonly label: string;
}

export interface SheetCheck {
  readonly id: string;
  readonly text: string;
  /** What is printed of it, in a line of a column where the rule set words it so. */
  readonly short: string;
  /** What makes it pass, where neither the car's limit nor the printed wording says it; may be empty. */
  readonly wanted: string;
  readonly method?: string;
  /** What can hurt while doing it. */
  readonly caution?: string;
  readonly criterion: Criterion;
  /** What the car's limits mean for the check: "below 11 mm: refuse". */
  readonly limit?: string;
  /**
   * Places to write what is measured, one a corner or side; none where the figure is asked among the settings, or
   * where nothing is measured.
   */
  readonly readings: readonly CheckReading[];
  readonly why: string;
  /** False for checks that every car gets: those print their reason once, for all. */
  readonly special: boolean;
  readonly undecided: boolean;
  readonly source: string;
}

/** Everything one pre-event sheet says, finished: the drawing adds nothing and works nothing out. */
export interface SheetModel {
  readonly layoutVersion: number;
  /** Hash of the record this sheet was made from (hex). */
  readonly recordHash: string;
  /** ISO instant. */
  readonly preparedAt: string;
  /** Short code of this print: leads to whether the record has changed since. Empty for a sheet that is not kept. */
  readonly code: string;
  /** Address the QR code leads to; empty where the printing program knows none. */
  readonly link: string;
  readonly club: string;
  /** `on` as written: "5 Dec 2026". */
  readonly event: {
    readonly name: string;
    readonly on: string;
    readonly venue: string;
    readonly ruleSet: string;
  };
  readonly entry: {
    readonly runningNumber: string;
    readonly group: string;
    readonly className: string;
    readonly driver: string;
  };
  readonly car: {
    readonly chassis: string;
    readonly marque: string;
    readonly series: string;
    readonly built: string;
    readonly body: string;
    readonly colour: string;
    readonly registration: string;
    readonly onRegister: boolean;
  };
  /** Assemblies of the plan: leader number, name, how many deviations; leaders in walking order. */
  readonly leaders: readonly {
    readonly leader: number;
    readonly assembly: string;
    readonly label: string;
    readonly deviations: number;
  }[];
  readonly deviations: readonly SheetDeviation[];
  /** How many characteristics are not recorded, said on the sheet: unknown is never a pass. */
  readonly notRecorded: number;
  readonly settings: readonly SheetSetting[];
  readonly stations: readonly {
    readonly station: string;
    readonly label: string;
    readonly checks: readonly SheetCheck[];
  }[];
  readonly cautions: readonly string[];
}
