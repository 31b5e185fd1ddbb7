// table: the fields of these kinds of row, in the order of the schema
import { id, instant, integer, maybe, text, texts, yesNo } from "../field";
import { defineKind } from "../kind";

export const publicExtractKind = defineKind({
  name: "publicExtract",
  meaning: "What a club shows to everybody, without personal data. No row: nothing.",
  fields: {
    id: id(),
    open: yesNo("Shown at all."),
    parts: texts("What is shown of a car: parts of the record by name."),
    characteristics: texts("Characteristics shown of a car, by key."),
    series: texts("Series shown, by short name; none named: all."),
    lead: maybe(text("A sentence or two at the head of the extract.")),
    version: integer("Counts up with every change; guards against two editors."),
    recordedAt: instant("When the row was recorded."),
  },
});
