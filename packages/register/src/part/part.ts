import type { Assembly } from "../characteristic/characteristic";
import type { Value } from "../value/value";

export const partKinds = ["works", "donor", "substitute"] as const;
/** Made by or for the works, by a donor car's maker, or later to take the place of either. */
export type PartKind = (typeof partKinds)[number];

export const partFitStandings = ["original", "fits", "altered", "doesNotFit"] as const;
/** What the works fitted, what goes on as it is, what goes on once altered, and what only looks as if it did. */
export type PartFitStanding = (typeof partFitStandings)[number];

export const partFeatureKinds = [
  "characteristic",
  "thread",
  "length",
  "diameter",
  "offset",
  "stop",
  "other",
] as const;
/** What kind of thing a feature is; `characteristic` is one of the dictionary's. */
export type PartFeatureKind = (typeof partFeatureKinds)[number];

export const partNoteKinds = ["found", "notFound", "confirmed", "doubted"] as const;
export type PartNoteKind = (typeof partNoteKinds)[number];

/** Whether a part goes with a series, or with some of its cars. Serials are inclusive. */
export interface PartFit {
  /** Short name of the series. */
  readonly series: string;
  readonly standing: PartFitStanding;
  readonly serialFrom?: number;
  readonly serialTo?: number;
  /** What has to be altered, or why it does not fit. */
  readonly note?: string;
}

/** Something about a part that decides whether it goes with another. */
export interface PartFeature {
  readonly kind: PartFeatureKind;
  /** Key of the dictionary; missing where the feature has a spot of its own. */
  readonly characteristic?: string;
  /** What it is called: the characteristic's label, or its spot, as its neighbour is named too ("bolt to upright"). */
  readonly label: string;
  /** Whether a car whose record has this value has the part, as far as this tells. */
  readonly tells: boolean;
  readonly value: Value;
}

/** What a member noted on a day. */
export interface PartNote {
  /** ISO day. */
  readonly on: string;
  readonly kind: PartNoteKind;
  /** How many were there, where it was found; one when left out. */
  readonly count?: number;
}

/** One part of the list, with what decides whether it goes on a car. */
export interface Part {
  readonly slug: string;
  readonly assembly: Assembly;
  /** Where it sits on the car: parts of one place stand in for one another. */
  readonly place: string;
  readonly name: string;
  readonly kind: PartKind;
  readonly fits: readonly PartFit[];
  readonly features: readonly PartFeature[];
}

export const partKindWords: Readonly<Record<PartKind, string>> = {
  works: "works part",
  donor: "donor part",
  substitute: "substitute",
};

export const partFitWords: Readonly<Record<PartFitStanding, string>> = {
  original: "original",
  fits: "fits",
  altered: "fits once altered",
  doesNotFit: "does not fit",
};

export const partFeatureWords: Readonly<Record<PartFeatureKind, string>> = {
  characteristic: "of the dictionary",
  thread: "thread",
  length: "length",
  diameter: "diameter",
  offset: "offset",
  stop: "stop",
  other: "other",
};

export const partNoteWords: Readonly<Record<PartNoteKind, string>> = {
  found: "found",
  notFound: "looked for in vain",
  confirmed: "fit confirmed",
  doubted: "did not fit as the list says",
};
