import {
  type CharacteristicBook,
  type EntryText,
  entryText,
  type FieldDifference,
  type SpecificationEntry,
} from "@trunnion/register";

const labels: Readonly<Record<Exclude<keyof EntryText, "alternatives">, string>> = {
  characteristic: "Characteristic",
  side: "Side",
  nominal: "Nominal",
  lower: "Lower limit",
  upper: "Upper limit",
  serialFrom: "Chassis from",
  serialTo: "Chassis to",
  builtFrom: "Built from",
  builtTo: "Built to",
  option: "Option",
  source: "Source",
  locus: "Page",
  trust: "Trust",
  note: "Note",
};

/** An entry's texts by the names of its form's fields: what a form sends along as `opened`. */
export function openedTexts(text: EntryText): Readonly<Record<string, string>> {
  const { alternatives, ...plain } = text;
  const others = alternatives.map(({ role, value, note, source, locus, trust }) =>
    [role, value, note, source, locus, trust].join(" | "),
  );
  return { ...plain, alternatives: others.join("\n") };
}

export interface TwoEditors {
  readonly opened: Readonly<Record<string, string>>;
  readonly theirs: EntryText;
  readonly yours: EntryText;
}

/** What somebody else changed of an entry since a form was opened, with what the form wants there; empty for nothing. */
export function entryDifferences({ opened, theirs, yours }: TwoEditors): readonly FieldDifference[] {
  const [now, wanted] = [openedTexts(theirs), openedTexts(yours)];
  return Object.keys(now).flatMap((field) => {
    const was = opened[field] ?? "";
    const is = now[field] ?? "";
    if (was === is) return [];
    const label = labels[field as keyof typeof labels] ?? "Alternatives";
    return [{ field, label, was, theirs: is, yours: wanted[field] ?? "" }];
  });
}

/** An entry for the journal, as text: what was said, without its id. */
export function journalEntry(entry: SpecificationEntry, book: CharacteristicBook) {
  const { alternatives, ...plain } = entryText(entry, book);
  const said = Object.fromEntries(Object.entries(plain).filter(([, text]) => text !== ""));
  if (alternatives.length === 0) return said;
  return { ...said, alternatives: alternatives.map(({ role, value }) => `${role}: ${value}`) };
}
