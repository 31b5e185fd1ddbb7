import type { EventPack, EventRecords } from "@trunnion/api";

/** A finding or decision with the entry it is of. */
export type EntryFinding = EventRecords["findings"][number];
export type DecidedEntry = EventRecords["decisions"][number];

interface Kept {
  /** Key of the record, made by this device. */
  readonly key: string;
  /** Club and event it belongs to, as `placeOf` names them. */
  readonly place: string;
  /** The server has it. */
  readonly sent: boolean;
  /** Why the server does not take it; empty while it has not said so. */
  readonly problem: string;
}

/** What was found or decided with this device, kept until long after the server has it. */
export type KeptRecord = Kept &
  (
    | { readonly kind: "finding"; readonly record: EntryFinding }
    | { readonly kind: "decision"; readonly record: DecidedEntry }
  );

/** A photo taken at a finding. */
export interface KeptPhoto extends Kept {
  readonly finding: string;
  readonly name: string;
  readonly content: Blob;
}

/** What was typed at a check before a result was given. */
export interface Draft {
  readonly note: string;
  /** Characteristic and side, with a space between, → as typed. */
  readonly readings: Readonly<Record<string, string>>;
}

/** Everything this device keeps of one event. */
export interface KeptEvent {
  readonly pack?: EventPack;
  readonly records: readonly KeptRecord[];
  readonly photos: readonly Omit<KeptPhoto, "content">[];
  /** Entry and check, with a space between, → what was typed. */
  readonly drafts: ReadonlyMap<string, Draft>;
  /** Dimension → id of the instrument used on this device. */
  readonly gauges: ReadonlyMap<string, string>;
}

/** One event of one club, as the device files it. */
export const placeOf = (club: string, event: string): string => `${club}/${event}`;

export const emptyDraft: Draft = { note: "", readings: {} };
