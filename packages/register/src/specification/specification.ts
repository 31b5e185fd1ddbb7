import type { Side } from "../characteristic/characteristic";
import type { Value } from "../value/value";

/** How far a statement is trusted. */
export const trusts = ["documented", "stated", "inferred", "unknown"] as const;
export type Trust = (typeof trusts)[number];

/** Where a statement comes from: a works manual, a build sheet, a letter. */
export interface Source {
  readonly title: string;
  readonly locus?: string;
  readonly trust: Trust;
}

/** Title that stands for the lack of a source, in every table and screen. */
export const noSourceTitle = "no source given";

/** Limits in SI, both included; either may be missing. */
export interface Limits {
  readonly lower?: number;
  readonly upper?: number;
}

/** In the order in which alternatives of an entry stand. */
export const alternativeRoles = ["periodOption", "acceptedSubstitute", "serviceReplacement"] as const;
export type AlternativeRole = (typeof alternativeRoles)[number];

/** Another value that the works or the club accepts in place of the nominal. */
export interface Alternative {
  readonly role: AlternativeRole;
  readonly value: Value;
  readonly note?: string;
  readonly source: Source;
}

/** Which cars of the series an entry speaks of; every part given must hold. Serials and dates are inclusive. */
export interface Applicability {
  readonly serialFrom?: number;
  readonly serialTo?: number;
  /** ISO dates. */
  readonly builtFrom?: string;
  readonly builtTo?: string;
  /** Option code the car must have been built with. */
  readonly option?: string;
}

/** What the works specified for one characteristic of one series. */
export interface SpecificationEntry {
  readonly id: string;
  readonly characteristic: string;
  /** `whole` also for a sided characteristic whose entry holds for both sides. */
  readonly side: Side;
  readonly nominal?: Value;
  readonly limits?: Limits;
  readonly alternatives: readonly Alternative[];
  readonly applicability: Applicability;
  readonly source: Source;
  readonly note?: string;
}

/** One version of what the works specified for a series, or a draft of the next. */
export interface Specification {
  readonly id: string;
  readonly version: number;
  readonly entries: readonly SpecificationEntry[];
}
