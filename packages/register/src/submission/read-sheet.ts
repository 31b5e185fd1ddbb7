import type { CharacteristicBook } from "../characteristic/book";
import type { Characteristic, Side } from "../characteristic/characteristic";
import { parsePartialDate } from "../identity/partial-date";
import { sayDay } from "../identity/say-day";
import type { State } from "../state/state";
import type { UnitSystem } from "../value/print";
import type { Value } from "../value/value";
import type { SheetDraft } from "./content";
import { readEntered, type Tell } from "./read-field";

/** One reading of a sheet, as a value. */
export interface ReadReading {
  readonly characteristic: Characteristic;
  readonly side: Side;
  readonly repeat: number;
  readonly value: Value;
  /** Id of an instrument; null where none was named. */
  readonly instrument: string | null;
}

/** A setting sheet as it would stand on the record. */
export interface ReadSheet {
  /** ISO day; null where it cannot be read. */
  readonly on: string | null;
  readonly loadState: SheetDraft["loadState"];
  readonly note: string | null;
  readonly readings: readonly ReadReading[];
}

interface SheetAt {
  readonly basis: {
    readonly book: CharacteristicBook;
    readonly today: string;
    readonly stateOn: (day: string) => State;
    readonly builtEarliest?: string;
  };
  readonly units: UnitSystem;
  readonly field: string;
  readonly tell: Tell;
}

/** Readings are of a day: somebody stood beside the car. */
function readDay(entered: string, { basis, field, tell }: SheetAt): string | null {
  const place = `${field}.on`;
  const parsed = parsePartialDate(entered, { today: basis.today });
  if (!parsed.ok || parsed.date.earliest !== parsed.date.latest) {
    tell(place, "Say on which day it was measured, e.g. 14 Nov 2026.");
    return null;
  }
  const { latest } = parsed.date;
  if (basis.builtEarliest !== undefined && latest < basis.builtEarliest)
    tell(place, `The car was not built before ${sayDay(basis.builtEarliest)}.`);
  return latest;
}

/** Reads a setting sheet; empty readings are left out, since a form shows a place for each. */
export function readSheet(draft: SheetDraft, at: SheetAt): ReadSheet {
  const { basis, units, field, tell } = at;
  const on = readDay(draft.on, at);
  const rims = basis.stateOn(on ?? basis.today);
  const taken = new Set<string>();
  const readings = draft.readings.flatMap((reading, index): ReadReading[] => {
    if (reading.entered.trim() === "") return [];
    const place = `${field}.readings.${index}.entered`;
    const characteristic = basis.book.find(reading.characteristic);
    if (!characteristic) {
      tell(place, `There is no characteristic "${reading.characteristic}" any more: take it out.`);
      return [];
    }
    const key = `${reading.characteristic} ${reading.side} ${reading.repeat}`;
    if (taken.has(key))
      tell(place, `${characteristic.label} is there twice: make one of them a repeat reading.`);
    taken.add(key);
    const parsed = readEntered(characteristic, reading.entered, { units, rims });
    if (!parsed.ok) {
      tell(place, `${parsed.problem.message}.`);
      return [];
    }
    const instrument = reading.instrument === "" ? null : reading.instrument;
    return [{ characteristic, side: reading.side, repeat: reading.repeat, value: parsed.value, instrument }];
  });
  if (readings.length === 0) tell(`${field}.readings`, "Enter at least one reading.");
  return {
    on,
    loadState: draft.loadState,
    note: draft.note.trim() === "" ? null : draft.note.trim(),
    readings,
  };
}
