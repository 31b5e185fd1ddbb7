import type { CharacteristicBook } from "../characteristic/book";
import type { FieldDifference } from "../refusal/refusal";
import type { SubmissionContent } from "./content";

/** A typed field under its name, with what a person calls it. */
interface TypedField {
  readonly field: string;
  readonly label: string;
  readonly typed: string;
}

const parts = {
  fitted: "Fitted",
  odometer: "Odometer",
  reason: "Reason",
  donor: "Donor or supplier",
  note: "Note",
  reversible: "Can be put back",
  oldPartKept: "Old part kept",
} as const;

const sideWord = { whole: "", left: ", left", right: ", right" } as const;

/** Every field of a submission that something was typed into. Named by what it is of, not by place, since lines move. */
function typedFields(content: SubmissionContent, book: CharacteristicBook): readonly TypedField[] {
  const name = (key: string) => book.find(key)?.label ?? key;
  const modifications = content.modifications.flatMap((one, place) => {
    const field = `modifications.${place}`;
    const plain = Object.entries(parts).map(([part, label]) => ({
      field: `${field}.${part}`,
      label,
      typed: one[part as keyof typeof parts],
    }));
    const changes = one.changes.flatMap(({ characteristic, side, before, after }) => {
      const label = `${name(characteristic)}${sideWord[side]}`;
      const key = `${field}.${characteristic}.${side}`;
      return [
        { field: `${key}.after`, label, typed: after },
        { field: `${key}.before`, label: `${label}, before`, typed: before },
      ];
    });
    const fasteners = one.fasteners.map((fastener, index) => ({
      field: `${field}.fasteners.${index}`,
      label: `Fastener ${index + 1}`,
      typed: Object.values(fastener)
        .filter((text) => text !== "")
        .join(", "),
    }));
    return [...plain, ...changes, ...fasteners];
  });
  const sheets = content.sheets.flatMap(({ on, note, loadState, readings }, place) => [
    { field: `sheets.${place}.on`, label: "Measured on", typed: on },
    { field: `sheets.${place}.loadState`, label: "Load", typed: loadState },
    { field: `sheets.${place}.note`, label: "Note on the sheet", typed: note },
    ...readings.map(({ characteristic, side, repeat, entered }) => ({
      field: `sheets.${place}.${characteristic}.${side}.${repeat}`,
      label: `${name(characteristic)}${sideWord[side]}${repeat > 1 ? `, repeat ${repeat}` : ""}`,
      typed: entered,
    })),
  ]);
  const word = { field: "word", label: "Word to the registrar", typed: content.word ?? "" };
  return [...modifications, ...sheets, word].filter(({ typed }) => typed !== "");
}

/** Where two versions of a draft differ, to show both beside each other; at most 60 fields. */
export function submissionDifferences(
  theirs: SubmissionContent,
  yours: SubmissionContent,
  book: CharacteristicBook,
): readonly FieldDifference[] {
  const [kept, sent] = [typedFields(theirs, book), typedFields(yours, book)];
  const labels = new Map([...sent, ...kept].map(({ field, label }) => [field, label]));
  const of = (list: readonly TypedField[]) => new Map(list.map(({ field, typed }) => [field, typed]));
  const [a, b] = [of(kept), of(sent)];
  return [...labels]
    .map(([field, label]) => ({
      field,
      label,
      was: "",
      theirs: a.get(field) ?? "",
      yours: b.get(field) ?? "",
    }))
    .filter((one) => one.theirs !== one.yours)
    .slice(0, 60);
}
