// table: the fields of these kinds of row, in the order of the schema
import {
  partFeatureKindCodes,
  partFitStandingCodes,
  partKindCodes,
  partNoteKindCodes,
  trustCodes,
  valueKindCodes,
} from "../code";
import {
  choice,
  day,
  id,
  instant,
  integer,
  maybe,
  person,
  personal,
  refersTo,
  someId,
  sourceFields,
  text,
  valueFields,
  yesNo,
} from "../field";
import { defineKind } from "../kind";

export const partKind = defineKind({
  name: "part",
  meaning: "One part that fits, or might be thought to fit, the club's cars.",
  fields: {
    id: id(),
    slug: text("Short name in addresses."),
    assembly: text("Assembly it belongs to."),
    place: text("Where it sits on the car; parts of one place stand in for one another."),
    placeKey: text("The place folded, for finding its like."),
    name: text("What it is."),
    kind: choice(partKindCodes, "Made by the works, from a donor car, or a substitute."),
    origin: maybe(text("Donor car, its years, or maker; no personal data.")),
    partNumber: maybe(text("Number it is ordered or marked by.")),
    note: maybe(text("Free note; no personal data.")),
    ...sourceFields(trustCodes),
    version: integer("Counts up with every change."),
    madeById: maybe(person("Person who added it; empty for an import.")),
    recordedAt: instant("When the row was recorded."),
    withdrawnAt: maybe(instant("When it was taken off the list; empty while it stands.")),
    withdrawnReason: maybe(text("Why it was taken off the list.")),
  },
});

export const partFitKind = defineKind({
  name: "partFit",
  meaning: "Whether a part fits a series, or some of its cars.",
  fields: {
    id: id(),
    partId: refersTo("part", "The part."),
    seriesId: refersTo("series", "The series."),
    standing: choice(partFitStandingCodes, "Original, fits, fits once altered, does not fit."),
    serialFrom: maybe(integer("First serial it holds for; empty for the first of the series.")),
    serialTo: maybe(integer("Last serial it holds for; empty for the last of the series.")),
    note: maybe(text("What has to be altered, or why it does not fit.")),
  },
});

export const partFeatureKind = defineKind({
  name: "partFeature",
  meaning: "Something about a part that decides whether it goes with another.",
  fields: {
    id: id(),
    partId: refersTo("part", "The part."),
    ordinal: integer("Order within the part, from 1."),
    kind: choice(
      partFeatureKindCodes,
      "Thread, length, offset, stop, or a characteristic of the dictionary.",
    ),
    characteristic: maybe(text("Characteristic's key, for one of the dictionary; else empty.")),
    spot: maybe(text("Where on the part, as its neighbour is named too; empty for one of the dictionary.")),
    tells: yesNo("A car whose record has this value has the part, as far as this tells."),
    ...valueFields({ codes: valueKindCodes }),
  },
});

export const partNoteKind = defineKind({
  name: "partNote",
  meaning: "A dated note about a part: found, looked for in vain, fit confirmed or doubted.",
  fields: {
    id: id(),
    partId: refersTo("part", "The part."),
    on: day("Day it was so."),
    kind: choice(partNoteKindCodes, "Found, looked for in vain, confirmed or doubted."),
    count: maybe(integer("How many were there, where it was found.")),
    text: personal(text("What was seen, where, at what price. Personal data where it names somebody.")),
    carId: maybe(refersTo("car", "Car it was tried on.")),
    madeById: maybe(person("Person who noted it; empty for an import.")),
    clientKey: someId("Key the form made, so that sending twice is one note."),
    recordedAt: instant("When the row was recorded."),
    withdrawnAt: maybe(instant("When it was taken back; empty while it stands.")),
  },
});
