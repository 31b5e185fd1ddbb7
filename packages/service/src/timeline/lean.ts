import {
  builtInBook,
  type CarEntries,
  type CarEntry,
  type Characteristic,
  type CharacteristicBook,
  type Source,
} from "@trunnion/register";
import type { CarLife } from "../car-life";
import type { EngineData } from "./read";

/** Sources that say the same become one object, which is then sent once. */
function sharing(): (source: Source) => Source {
  const known = new Map<string, Source>();
  return (source) => {
    const key = `${source.title}\n${source.locus ?? ""}\n${source.trust}`;
    const shared = known.get(key) ?? source;
    known.set(key, shared);
    return shared;
  };
}

/** What the engines do not look at stays behind: whom an entry applies to is decided, its notes are for its own page. */
function leanEntry({ note: _note, ...entry }: CarEntry, shared: (source: Source) => Source): CarEntry {
  const alternatives = entry.alternatives.map(({ note: _said, ...alternative }) => ({
    ...alternative,
    source: shared(alternative.source),
  }));
  return { ...entry, applicability: {}, alternatives, source: shared(entry.source) };
}

/** Characteristics of the club's own that a car's values speak of. */
function ownAmong(keys: Iterable<string>, book: CharacteristicBook): readonly Characteristic[] {
  return [...new Set(keys)].flatMap((key) =>
    builtInBook.find(key) === undefined ? (book.find(key) ?? []) : [],
  );
}

/** The data that a car's state on any day follows from, without what the engines do not read. */
export function leanData(life: CarLife, entries: CarEntries, book: CharacteristicBook): EngineData {
  const shared = sharing();
  const data = {
    entries: [...entries.values()].map((entry) => leanEntry(entry, shared)),
    asBuilt: life.asBuilt.map(({ id, characteristic, side, value, source }) => ({
      id,
      characteristic,
      side,
      value,
      source: shared(source),
    })),
    modifications: life.modifications.map(({ id, on, earliest, said, sequence, changes, source }) => ({
      id,
      on,
      sequence,
      changes,
      source: shared(source),
      ...(earliest === undefined ? {} : { earliest }),
      ...(said === undefined ? {} : { said }),
    })),
    readings: life.sheets.flatMap(({ readings }) =>
      readings.map((reading) => ({ ...reading, source: shared(reading.source) })),
    ),
  };
  const spoken = [
    ...data.entries,
    ...data.asBuilt,
    ...data.readings,
    ...data.modifications.flatMap(({ changes }) => changes),
  ].map(({ characteristic }) => characteristic);
  return { ...data, own: ownAmong(spoken, book) };
}
