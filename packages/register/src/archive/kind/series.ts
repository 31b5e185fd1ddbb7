// table: the fields of these kinds of row, in the order of the schema
import { sourceKindCodes } from "../code";
import { choice, day, id, instant, integer, json, maybe, refersTo, text, texts, yesNo } from "../field";
import { defineKind } from "../kind";

export const marqueKind = defineKind({
  name: "marque",
  meaning: "A maker's name the club looks after.",
  fields: {
    id: id(),
    slug: text("Short name in addresses."),
    name: text("Full name."),
    recordedAt: instant("When the row was recorded."),
  },
});

export const seriesKind = defineKind({
  name: "series",
  meaning: "A marque's model and mark, with its chassis-number pattern and build period.",
  fields: {
    id: id(),
    marqueId: refersTo("marque", "Marque it belongs to."),
    slug: text("Short name in addresses, files and conditions."),
    name: text('Full name, e.g. "Series 2".'),
    ordinal: integer("Order of appearance."),
    numberPrefix: text("Characters before the serial in a chassis number."),
    numberDigits: integer("Digits of the serial."),
    firstSerial: integer("First serial, inclusive."),
    lastSerial: integer("Last serial, inclusive."),
    numberSuffixes: texts("Suffixes a chassis number may end in (body, steering side)."),
    builtFrom: day("First day of build."),
    builtTo: day("Last day of build."),
    builtCount: maybe(integer("How many were built, if known.")),
    recordedAt: instant("When the row was recorded."),
  },
});

export const seriesOptionKind = defineKind({
  name: "seriesOption",
  meaning: "An option the works offered on a series.",
  fields: {
    id: id(),
    seriesId: refersTo("series", "Series it was offered on."),
    code: text("Code in build records."),
    label: text("What it was."),
  },
});

export const characteristicKind = defineKind({
  name: "characteristic",
  meaning: "A club's own characteristic, beside the built-in dictionary.",
  fields: {
    id: id(),
    key: text("Dotted key, distinct from every built-in one."),
    label: text("Plain label."),
    assembly: text("Assembly it belongs to."),
    sided: yesNo("Recorded once per side."),
    kind: text("quantity, choice, designation, text or date."),
    definition: json(
      "Everything its kind needs (dimension, units, choices, …), as the register's schema reads it.",
    ),
    help: text("What is meant, and how to see or measure it."),
    setting: yesNo("Adjusted and measured, rather than fitted."),
    removable: yesNo('"Not fitted" is an answer.'),
    recordedAt: instant("When the row was recorded."),
  },
});

export const sourceKind = defineKind({
  name: "source",
  meaning: "Where statements come from: a manual, a build sheet, a letter, an imported register.",
  fields: {
    id: id(),
    kind: choice(sourceKindCodes, "What kind of thing it is."),
    title: text("Title by which people know it."),
    edition: maybe(text("Edition, number or date as printed.")),
    note: maybe(text("Free note.")),
    recordedAt: instant("When the row was recorded."),
  },
});
