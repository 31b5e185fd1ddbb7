import type { Assembly } from "../characteristic/characteristic";
import type { Condition } from "../condition/condition";

/** Stations of the walk round the car, in order: once round, then under it, then whoever drives it. */
export const stations = [
  "documents",
  "front",
  "engineBay",
  "driverSide",
  "cockpit",
  "rear",
  "passengerSide",
  "underneath",
  "driver",
] as const;
export type Station = (typeof stations)[number];

/** Names of the stations. */
export const stationLabels: Readonly<Record<Station, string>> = {
  documents: "Documents",
  front: "Front",
  driverSide: "Driver's side",
  cockpit: "Cockpit",
  engineBay: "Engine bay",
  rear: "Rear",
  passengerSide: "Passenger's side",
  underneath: "Underneath",
  driver: "Driver's equipment",
};

/** What makes the check pass. */
export type Criterion =
  | { readonly kind: "seen" }
  /** `perCorner`: four readings, one at each wheel; `characteristic` then is the front one, or left out. */
  | {
      readonly kind: "measured";
      readonly characteristic?: string;
      readonly perCorner?: boolean;
      readonly text: string;
    }
  | { readonly kind: "datedItem"; readonly characteristic?: string; readonly text: string }
  | { readonly kind: "document" };

export interface CheckSource {
  readonly title: string;
  readonly edition?: string;
  readonly clause?: string;
}

/** One thing to look at, as data. A club edits and adds these by form. */
export interface Check {
  readonly id: string;
  readonly station: Station;
  readonly assembly: Assembly;
  /** What to look at, in the imperative: "Rock the wheel at six and twelve o'clock". */
  readonly text: string;
  /**
   * The same in a line of a column, for the printed sheet, with what makes it pass; text and criterion stand there when
   * left out.
   */
  readonly short?: string;
  /** How, where it is not plain. */
  readonly method?: string;
  readonly criterion: Criterion;
  /** When it applies. Unknown applies too, and says that it is unknown. */
  readonly when: Condition;
  /**
   * Why it is on the sheet, one line; `{key}` is replaced by the car's value, `{key:nominal}` by the specification's,
   * `{key:ratio}` by actual over nominal, `{key:stiffness}` by its fourth power, `{key:limits}` by the limits, and
   * `{work:binding/output}` by a figure worked out for the car, or what it lacks. Left out for checks every car gets.
   */
  readonly why?: string;
  readonly source: CheckSource;
  readonly caution?: string;
  /** Set for a check made for one car, whose condition does not tell why it is there. Never stored. */
  readonly reason?: CheckReason;
}

export type CheckReason = "always" | "rule" | "modification" | "carriedAdvisory" | "expiry";

/** A check as it stands on one car's sheet. */
export interface CheckOnSheet {
  readonly check: Check;
  readonly reason: CheckReason;
  readonly why: string;
  /** True when the condition could not be decided from the record. */
  readonly undecided: boolean;
}
