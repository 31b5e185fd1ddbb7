import { list, type Words } from "./words";

/** What the service refuses about specifications, series and a club's own characteristics, apart from the general refusals. */
export interface SpecificationRefusals {
  /** `version` is missing where the series has no current one. */
  SPECIFICATION_NOT_FOUND: { readonly series: string; readonly version?: number };
  SPECIFICATION_ENTRY_NOT_FOUND: { readonly series: string; readonly version: number };
  SPECIFICATION_NOT_DRAFT: {
    readonly series: string;
    readonly version: number;
    readonly status: "current" | "superseded";
  };
  SPECIFICATION_DRAFT_EXISTS: { readonly series: string; readonly version: number };
  /** Somebody changed the draft, or made another version current, since it was looked at. */
  SPECIFICATION_MOVED_ON: {
    readonly series: string;
    readonly version: number;
    readonly what: "draft" | "current";
  };
  SPECIFICATION_SAYS_NOTHING: { readonly series: string; readonly version: number };
  SPECIFICATION_TOO_LONG: { readonly entries: number; readonly limit: number };
  SPECIFICATION_HEADING_UNKNOWN: {
    readonly file: string;
    readonly heading: string;
    readonly known: readonly string[];
  };
  /** `cars` names some of them, each with what would be wrong. */
  SERIES_LEAVES_CARS_OUT: {
    readonly series: string;
    readonly count: number;
    readonly cars: readonly string[];
  };
  CHARACTERISTIC_NOT_FOUND: { readonly characteristic: string };
  CHARACTERISTIC_HAS_VALUES: {
    readonly characteristic: string;
    /** What was to change: "kind", "choice rubber". */
    readonly what: string;
    readonly count: number;
  };
}

const values = (count: number) => (count === 1 ? "1 value" : `${count} values`);
const cars = (count: number) => (count === 1 ? "1 car" : `${count} cars`);

export const specificationWords: Words<SpecificationRefusals> = {
  SPECIFICATION_NOT_FOUND: ({ series, version }) => ({
    what:
      version === undefined
        ? `The series "${series}" has no current specification.`
        : `The series "${series}" has no version ${version} of its specification.`,
    remedy: "Look at the list of versions of the series.",
  }),
  SPECIFICATION_ENTRY_NOT_FOUND: ({ series, version }) => ({
    what: `Version ${version} of the specification of "${series}" has no such entry.`,
    remedy: "Somebody may have taken it out: look at the draft as it stands now.",
  }),
  SPECIFICATION_NOT_DRAFT: ({ series, version, status }) => ({
    what: `Version ${version} of the specification of "${series}" is ${status}, and never changes any more.`,
    remedy: "Begin a new version: it starts as a copy.",
  }),
  SPECIFICATION_DRAFT_EXISTS: ({ series, version }) => ({
    what: `The series "${series}" has a draft already, version ${version}.`,
    remedy: "Go on with that one, or discard it first.",
  }),
  SPECIFICATION_MOVED_ON: ({ series, version, what }) => ({
    what:
      what === "draft"
        ? `Somebody changed version ${version} of the specification of "${series}" since you looked at it.`
        : `Another version of the specification of "${series}" became current since you looked at version ${version}.`,
    remedy: "Nothing was written. Open the page again and look at what changes now.",
  }),
  SPECIFICATION_SAYS_NOTHING: ({ series, version }) => ({
    what: `Version ${version} of the specification of "${series}" has no entries.`,
    remedy: "Add what the works specified before making it current.",
  }),
  SPECIFICATION_TOO_LONG: ({ entries, limit }) => ({
    what: `That would make ${entries} entries; a specification has at most ${limit}.`,
    remedy: "Put what holds for every car into one entry.",
  }),
  SPECIFICATION_HEADING_UNKNOWN: ({ file, heading, known }) => ({
    what: `${file}: the heading "${heading}" is none of a specification's.`,
    remedy: `Headings: ${list(known)}.`,
  }),
  SERIES_LEAVES_CARS_OUT: ({ series, count, cars: told }) => ({
    what: `${cars(count)} of ${series} would fall outside: ${told.join("; ")}${told.length < count ? "; …" : "."}`,
    remedy: "Correct those cars first, or leave the series as wide as it is. Nothing was written.",
  }),
  CHARACTERISTIC_NOT_FOUND: ({ characteristic }) => ({
    what: `No characteristic is called "${characteristic}".`,
    remedy: "Look at the list of characteristics.",
  }),
  CHARACTERISTIC_HAS_VALUES: ({ characteristic, what, count }) => ({
    what: `${characteristic} has ${values(count)}: its ${what} cannot change any more.`,
    remedy: "Add another characteristic instead. Label, help and further choices may change.",
  }),
};
