import {
  type CharacteristicBook,
  carStatusWords,
  endsOf,
  type KnownTime,
  printValue,
  type Side,
  sayDay,
  sayNumberKind,
  stateKey,
  type TimelineDetail,
  type TimelineEvent,
  type Value,
} from "@trunnion/register";
import type { CarLife, LifeModification, LifeNumber } from "../car-life";

type SideWords = Readonly<Record<"left" | "right", string>>;

/** Words for the sides, in the club's way. */
export const sideWordsOf = (words: "leftRight" | "nearOff"): SideWords =>
  words === "nearOff" ? { left: "nearside", right: "offside" } : { left: "left", right: "right" };

/** What every event of a life is worded with. */
export interface Wording {
  readonly book: CharacteristicBook;
  readonly sides: SideWords;
}

interface Placed {
  readonly characteristic: string;
  readonly side: Side;
}

const capital = (text: string) => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

function labelOf({ characteristic, side }: Placed, { book, sides }: Wording): string {
  const label = book.find(characteristic)?.label ?? characteristic;
  return side === "whole" ? label : `${label}, ${sides[side]}`;
}

/** As entered; a choice by its label. */
export function shown(value: Value | undefined, key: string, { book }: Wording): string {
  const characteristic = book.find(key);
  if (value === undefined || !characteristic) return value?.entered ?? "";
  return printValue(characteristic, value, { system: value.kind === "choice" ? "metric" : "asEntered" });
}

const exactly = (day: string): KnownTime => ({ text: day, earliest: day, latest: day });

function builtEvents(
  { built, firstRegistered, asBuilt }: CarLife,
  wording: Wording,
): readonly TimelineEvent[] {
  const details = asBuilt.map(
    (value): TimelineDetail => ({
      label: labelOf(value, wording),
      after: shown(value.value, value.characteristic, wording),
    }),
  );
  const left = details.length > 0 ? { text: "What is known of it as it left the works:", details } : {};
  return [
    ...(built || details.length > 0
      ? [{ id: "built", lane: "life" as const, title: "Built", ...left, ...(built ? { when: built } : {}) }]
      : []),
    ...(firstRegistered
      ? [{ id: "first-registered", lane: "life" as const, title: "First registered", when: firstRegistered }]
      : []),
  ];
}

function statusEvents({ statuses }: CarLife): readonly TimelineEvent[] {
  const ends = endsOf(statuses);
  return statuses.map(({ id, status, from, to, source }, index) => {
    const end = ends[index];
    return {
      id,
      lane: "life",
      title: carStatusWords[status],
      ...(from ? { when: from } : {}),
      until: to === undefined || end === undefined ? "open" : end,
      source,
    };
  });
}

const standingWords = { accepted: "", disputed: "disputed", restamped: "re-stamped" } as const;

function numberEvent({ id, kind, number, standing, from, to, source }: LifeNumber): TimelineEvent {
  const said = standingWords[standing];
  return {
    id,
    lane: "number",
    title: `${capital(sayNumberKind(kind))} ${number}`,
    ...(said === "" ? {} : { text: capital(said) }),
    ...(from ? { when: from } : {}),
    until: to ?? "open",
    source,
  };
}

/** Before as the record tells it, else what the car is known to have had until then. */
function modificationEvents({ modifications, asBuilt }: CarLife, wording: Wording): readonly TimelineEvent[] {
  const last = new Map(
    asBuilt.map(({ characteristic, side, value }) => [stateKey(characteristic, side), value]),
  );
  const inOrder = modifications.toSorted((a, b) => a.on.localeCompare(b.on) || a.sequence - b.sequence);
  return inOrder.map((modification) => {
    const details = modification.changes.map((change, index): TimelineDetail => {
      const { characteristic, side, after } = change;
      const key = stateKey(characteristic, side);
      const before = modification.befores[index] ?? last.get(key);
      last.set(key, after);
      return {
        label: labelOf(change, wording),
        before: shown(before, characteristic, wording),
        after: shown(after, characteristic, wording),
      };
    });
    return { ...modificationFace(modification), details };
  });
}

function modificationFace(modification: LifeModification): TimelineEvent {
  const { id, reason, donor, fitted, on, earliest, said, source } = modification;
  const text = [reason, donor === undefined ? undefined : `from: ${donor}`].filter(
    (part) => part !== undefined,
  );
  return {
    id,
    lane: "work",
    title: "Modified",
    when: fitted ?? { text: said ?? sayDay(on), earliest: earliest ?? on, latest: on },
    ...(text.length === 0 ? {} : { text: text.join("; ") }),
    source,
  };
}

const loadWords = {
  kerb: "at kerb weight",
  driver: "with driver",
  driverAndPassenger: "with driver and passenger",
  unknown: "",
} as const;

function sheetEvents({ sheets }: CarLife, wording: Wording): readonly TimelineEvent[] {
  return sheets.map(({ id, on, loadState, note, readings, source }) => {
    const text = [loadWords[loadState], note ?? ""].filter((part) => part !== "").join("; ");
    return {
      id,
      lane: "setting",
      title: "Seen or measured",
      when: exactly(on),
      ...(text === "" ? {} : { text: capital(text) }),
      details: readings.map((reading) => ({
        label: labelOf(reading, wording),
        after: shown(reading.value, reading.characteristic, wording),
      })),
      source,
    };
  });
}

/** The events that the car's own record tells; what others recorded of it is added by its reader. */
export function lifeEvents(life: CarLife, wording: Wording): readonly TimelineEvent[] {
  return [
    ...builtEvents(life, wording),
    ...statusEvents(life),
    ...life.numbers.map(numberEvent),
    ...modificationEvents(life, wording),
    ...sheetEvents(life, wording),
    ...life.notes.map(
      ({ id, on, text, source }): TimelineEvent => ({
        id,
        lane: "note",
        title: "Noted",
        text,
        source,
        ...(on ? { when: on } : {}),
      }),
    ),
  ];
}
