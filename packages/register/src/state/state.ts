import type { Side } from "../characteristic/characteristic";
import type { Source } from "../specification/specification";
import type { Value } from "../value/value";

/** What the fold needs to know of a car, apart from its values. */
export interface CarBasis {
  /** Serial within the series' numbers (digits of the chassis number), if it can be read. */
  readonly serial?: number;
  /** Earliest and latest day of build that the record allows, ISO. */
  readonly built?: { readonly earliest: string; readonly latest: string };
  readonly options: readonly string[];
}

/** A value the works' own records, or inference, give for this chassis. */
export interface AsBuiltValue {
  readonly id: string;
  readonly characteristic: string;
  readonly side: Side;
  readonly value: Value;
  readonly source: Source;
}

/** One accepted modification; `on` is when it was true of the car (valid time). */
export interface AcceptedModification {
  readonly id: string;
  /** ISO day it was fitted; where only a span is known, its latest day. */
  readonly on: string;
  /** Earliest day it may have been fitted; left out where the day is known. */
  readonly earliest?: string;
  /** When, in the record's own words ("1998"); left out where the day says it all. */
  readonly said?: string;
  /** Order among modifications of one day: the order they were accepted in. */
  readonly sequence: number;
  readonly changes: readonly {
    readonly characteristic: string;
    readonly side: Side;
    readonly after: Value;
  }[];
  readonly source: Source;
  readonly reason?: string;
}

/** One reading of a setting sheet. */
export interface Reading {
  readonly id: string;
  readonly on: string;
  readonly sequence: number;
  readonly characteristic: string;
  readonly side: Side;
  readonly value: Value;
  /** Expanded uncertainty, k = 2, SI; missing when the instrument is not known. */
  readonly expandedUncertainty?: number;
  readonly source: Source;
}

export type Origin = "specification" | "asBuilt" | "modification" | "reading";

/** A value of the car on a date, with where it came from. */
export interface StateValue {
  readonly characteristic: string;
  readonly side: Side;
  readonly value: Value;
  readonly origin: Origin;
  /** Id of the specification entry, as-built value, modification or reading. */
  readonly originId: string;
  /** ISO day since when the record says so; missing for as specified and as built. For reckoning: pages show `saySince`'s words. */
  readonly since?: string;
  /** Since when in the record's own words, where it does not know the day. */
  readonly sinceSaid?: string;
  readonly source: Source;
  readonly expandedUncertainty?: number;
}

/** Characteristic and side → value. Key made by `stateKey`. What is not in it is not known. */
export type State = ReadonlyMap<string, StateValue>;
