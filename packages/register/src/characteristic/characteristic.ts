import type { DesignationKind, Dimension } from "@trunnion/calc";

/** The assemblies a car is walked round by, in walking order; the numbered leaders of the plan. */
export const assemblies = [
  "frontSuspension",
  "steering",
  "rearSuspension",
  "brakes",
  "wheels",
  "settings",
  "chassis",
  "body",
  "engine",
  "fuel",
  "oil",
  "exhaust",
  "electrical",
  "driveline",
  "safety",
] as const;
export type Assembly = (typeof assemblies)[number];

/** `whole` for a characteristic the car has once, `left`/`right` (seen from the driver's seat) for one per side. */
export const sides = ["whole", "left", "right"] as const;
export type Side = (typeof sides)[number];

interface CharacteristicBase {
  /** Stable dotted key, e.g. `front.antiRollBar.diameter`. */
  readonly key: string;
  /** Plain label in sentence case, e.g. "Front anti-roll bar diameter". */
  readonly label: string;
  readonly assembly: Assembly;
  /** True when recorded once per side. */
  readonly sided: boolean;
  /** What exactly is meant, and how to measure or see it. */
  readonly help: string;
  /** True for what is adjusted and measured (camber, pressures), false for what is fitted (a part). */
  readonly setting: boolean;
  /** True when "not fitted" is an answer (a bar left off, no brake servo). */
  readonly removable: boolean;
  /** Other names people write, for import headings and search. Unique in a book, as labels are. */
  readonly also?: readonly string[];
}

/** Lowest and highest, both included, SI. */
export interface UsualRange {
  readonly lowest: number;
  readonly highest: number;
}

/**
 * A number with a dimension; `minimum` and `maximum` (SI) are what is physically believable, `usual` what is met with: neither
 * is a specification. Beyond the first a value is refused, beyond the second it is asked about.
 */
export interface QuantityCharacteristic extends CharacteristicBase {
  readonly kind: "quantity";
  readonly dimension: Dimension;
  /** Units to show first, e.g. `{ metric: "mm", imperial: "in" }`; each must be a unit of the dimension. */
  readonly units: { readonly metric: string; readonly imperial: string };
  readonly minimum?: number;
  readonly maximum?: number;
  readonly usual?: UsualRange;
  /** `toe`: entered and printed as toe-in or toe-out, per side or total; the SI number is one wheel's toe-in. */
  readonly notation?: "toe";
}
/** One of a closed list; each choice may name other spellings people write. */
export interface ChoiceCharacteristic extends CharacteristicBase {
  readonly kind: "choice";
  readonly choices: readonly {
    readonly code: string;
    readonly label: string;
    readonly also?: readonly string[];
  }[];
}
/** A trade designation with a grammar of its own (thread, grade, tyre, wheel). */
export interface DesignationCharacteristic extends CharacteristicBase {
  readonly kind: "designation";
  readonly designation: DesignationKind;
}
export interface TextCharacteristic extends CharacteristicBase {
  readonly kind: "text";
  readonly maximumLength: number;
}
/** A calendar date: a certificate's end, a manufacture date. */
export interface DateCharacteristic extends CharacteristicBase {
  readonly kind: "date";
}

/** One thing that can be specified, recorded or measured on a car. */
export type Characteristic =
  | QuantityCharacteristic
  | ChoiceCharacteristic
  | DesignationCharacteristic
  | TextCharacteristic
  | DateCharacteristic;
