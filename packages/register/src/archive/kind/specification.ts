// table: the fields of these kinds of row, in the order of the schema
import {
  alternativeRoleCodes,
  sideCodes,
  specificationStatusCodes,
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
  number,
  person,
  refersTo,
  sourceFields,
  text,
  valueFields,
} from "../field";
import { defineKind } from "../kind";

export const specificationKind = defineKind({
  name: "specification",
  meaning: "One version of what the works specified for a series.",
  fields: {
    id: id(),
    seriesId: refersTo("series", "Series it speaks of."),
    version: integer("Version, from 1."),
    status: choice(specificationStatusCodes, "Draft, current or superseded; one current version a series."),
    note: maybe(text("What changed, and why.")),
    madeById: maybe(person("Person who made it; empty for an import.")),
    copiedFromId: maybe(
      refersTo(
        "specification",
        "Version or series' specification it was copied from; empty when written anew.",
      ),
    ),
    revision: integer("Counts up with every change of a draft; guards against two editors."),
    madeCurrentAt: maybe(instant("When it became the current one; empty for a draft.")),
    supersededAt: maybe(
      instant("When a later version took its place; empty while it is current or a draft."),
    ),
    recordedAt: instant("When the row was recorded."),
  },
});

export const specificationEntryKind = defineKind({
  name: "specificationEntry",
  meaning: "What the works specified for one characteristic, for a span of the series.",
  fields: {
    id: id(),
    specificationId: refersTo("specification", "Version it belongs to."),
    characteristic: text("Characteristic's key."),
    side: choice(sideCodes, "Side; `whole` also means both sides alike."),
    ...valueFields({ codes: valueKindCodes, prefix: "nominal", says: "Nominal" }, true),
    lower: maybe(number("Lower limit, included; empty where there is none.", "SI")),
    upper: maybe(number("Upper limit, included; empty where there is none.", "SI")),
    serialFrom: maybe(integer("First serial it holds for.")),
    serialTo: maybe(integer("Last serial it holds for.")),
    builtFrom: maybe(day("First day of build it holds for.")),
    builtTo: maybe(day("Last day of build it holds for.")),
    option: maybe(text("Option the car must have been built with.")),
    ...sourceFields(trustCodes),
    note: maybe(text("Free note.")),
  },
});

export const specificationAlternativeKind = defineKind({
  name: "specificationAlternative",
  meaning: "A value accepted in place of the nominal.",
  fields: {
    id: id(),
    entryId: refersTo("specificationEntry", "Entry it belongs to."),
    role: choice(alternativeRoleCodes, "Period option, accepted substitute or later service replacement."),
    ...valueFields({ codes: valueKindCodes }),
    ...sourceFields(trustCodes),
    note: maybe(text("Free note.")),
  },
});
