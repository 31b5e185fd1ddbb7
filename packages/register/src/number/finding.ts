import type { OutOfOrder } from "../identity/build-order";
import type { NearMiss } from "../identity/near-miss";
import type { NumberPattern } from "../identity/number";
import type { DatePrecision } from "../identity/partial-date";
import type { BorneSpan } from "../identity/span";

/** What a number identifies. */
export const numberKinds = ["chassis", "commission", "engine", "body", "registration"] as const;
export type NumberKind = (typeof numberKinds)[number];

/** A number or mark a car bears or bore. */
export interface BorneNumber {
  readonly kind: NumberKind;
  readonly number: string;
  readonly span: BorneSpan;
}

/** A car as far as its numbers and dates say who it is. */
export interface NumberedCar {
  /** How addresses name it. */
  readonly reference: string;
  /** The number it is filed under. */
  readonly chassis: string;
  /** Short name of its series; left out while not settled. */
  readonly series?: string;
  /** Other numbers and marks it bears or bore; chassis numbers it is also stamped with among them. */
  readonly numbers: readonly BorneNumber[];
  /** When it was built, as far as it is known. */
  readonly built?: {
    readonly text: string;
    readonly earliest: string;
    readonly latest: string;
    readonly precision: DatePrecision;
  };
}

/** A series as the numbers page needs it. */
export interface NumberedSeries {
  readonly slug: string;
  readonly pattern: NumberPattern;
  /** ISO days, both included. */
  readonly builtFrom: string;
  readonly builtTo: string;
}

interface Found {
  /** Stays the same as long as it is about the same thing: what setting aside refers to. */
  readonly key: string;
  /** What it rests on; another text means that something changed since. */
  readonly basis: string;
}

/** A chassis number that its series' pattern does not fit. */
export interface NumberDoesNotFit extends Found {
  readonly kind: "doesNotFit";
  readonly car: NumberedCar;
  readonly problem: string;
  /** Near misses; `heldBy` names the cars that bear such a number already. */
  readonly proposals: readonly (NearMiss & { readonly series: string; readonly heldBy: readonly string[] })[];
}

/** One number on several cars. */
export interface NumberClaimed extends Found {
  readonly kind: "claimed";
  readonly numberKind: NumberKind;
  /** As the first of the cars writes it. */
  readonly number: string;
  readonly numberKey: string;
  readonly cars: readonly NumberedCar[];
  /** `certain` where the spans are known to overlap, or time does not matter (chassis, commission); else `possible`. */
  readonly sure: "certain" | "possible";
}

/** Two numbers on two cars that differ by letters taken for digits only. */
export interface NumbersLookAlike extends Found {
  readonly kind: "lookAlike";
  readonly numberKind: NumberKind;
  readonly numbers: readonly [string, string];
  readonly cars: readonly [NumberedCar, NumberedCar];
}

/** A build date that lies outside the time its series was built in. */
export interface BuiltOutsideSeries extends Found {
  readonly kind: "outsideSeries";
  readonly car: NumberedCar;
  readonly series: NumberedSeries;
  readonly sure: "certain" | "likely";
}

/** A build date out of order with the serial. */
export interface BuiltOutOfOrder extends Found {
  readonly kind: "outOfOrder";
  readonly car: NumberedCar;
  readonly series: NumberedSeries;
  readonly order: OutOfOrder;
}

export type NumberFinding =
  | NumberDoesNotFit
  | NumberClaimed
  | NumbersLookAlike
  | BuiltOutsideSeries
  | BuiltOutOfOrder;
