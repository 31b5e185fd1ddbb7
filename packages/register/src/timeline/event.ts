import type { Source } from "../specification/specification";
import type { KnownTime } from "../state/since";

/** What a car's life is told in, one below the other. */
export const lanes = ["life", "number", "keeper", "work", "setting", "event", "note"] as const;
export type Lane = (typeof lanes)[number];

export const laneWords: Readonly<Record<Lane, string>> = {
  life: "Built, status",
  number: "Numbers and marks",
  keeper: "Keepers",
  work: "Modifications",
  setting: "Setting sheets",
  event: "Events",
  note: "History and evidence",
};

/** One characteristic before and after, as written; empty where not known. */
export interface TimelineDetail {
  readonly label: string;
  readonly before?: string;
  readonly after: string;
}

/** Something that happened to a car, or that was so for a time. */
export interface TimelineEvent {
  readonly id: string;
  readonly lane: Lane;
  /** When it happened or began; missing where the record has no date. */
  readonly when?: KnownTime;
  /** For what was so for a time: when it ended, or that it goes on as far as is known. */
  readonly until?: KnownTime | "open";
  /** What it is: "Modified", "In use". */
  readonly title: string;
  readonly text?: string;
  readonly details?: readonly TimelineDetail[];
  readonly source?: Source;
}

/** The day it counts from where a car's state is told: the latest that its date allows. */
export const dayOfEvent = ({ when }: TimelineEvent): string | undefined => when?.latest;

const byText = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0);

/**
 * Events in the order of a car's life: by the latest day their dates allow, as its state counts them, then by the
 * earliest, then by lane. What has no date comes last. The order of the list does not matter.
 */
export function inLifeOrder(events: readonly TimelineEvent[]): readonly TimelineEvent[] {
  const place = (event: TimelineEvent) => dayOfEvent(event) ?? "9999-12-31";
  return [...events].sort(
    (a, b) =>
      byText(place(a), place(b)) ||
      byText(a.when?.earliest ?? "", b.when?.earliest ?? "") ||
      lanes.indexOf(a.lane) - lanes.indexOf(b.lane) ||
      byText(a.id, b.id),
  );
}
