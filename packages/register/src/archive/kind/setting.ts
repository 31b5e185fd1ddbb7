// table: the fields of these kinds of row, in the order of the schema
import { loadStateCodes, sideCodes, trustCodes, valueKindCodes } from "../code";
import {
  choice,
  day,
  id,
  instant,
  integer,
  maybe,
  number,
  refersTo,
  sourceFields,
  text,
  valueFields,
} from "../field";
import { defineKind } from "../kind";

export const instrumentKind = defineKind({
  name: "instrument",
  meaning: "Something readings are taken with.",
  fields: {
    id: id(),
    label: text('What it is, e.g. "gravity gauge no. 2".'),
    dimension: text("Dimension it reads."),
    resolution: number("Smallest step.", "SI"),
    expandedUncertainty: maybe(number("Expanded uncertainty (k = 2); empty when not known.", "SI")),
    calibratedOn: maybe(day("When it was last calibrated.")),
    calibratedUntil: maybe(day("Last day its calibration is good for; empty where nobody says.")),
    number: maybe(text("Its own number, as stamped on it or on its certificate.")),
    retiredAt: maybe(instant("When it was taken out of use; empty while it is offered.")),
    retiredReason: maybe(text("Why it was taken out of use.")),
    version: integer("Counts changes, for optimistic locking."),
    recordedAt: instant("When the row was recorded."),
  },
});

export const settingSheetKind = defineKind({
  name: "settingSheet",
  meaning: "One occasion of measuring a car.",
  fields: {
    id: id(),
    carId: refersTo("car", "The car."),
    submissionId: maybe(
      refersTo("submission", "Submission it was handed in with; empty for findings of an event."),
    ),
    entryId: maybe(
      refersTo("entry", "Entry of an event whose findings it was made of; empty for any other."),
    ),
    on: day("Day of measuring."),
    sequence: integer("Order of acceptance within the car."),
    loadState: choice(loadStateCodes, "How the car was loaded."),
    note: maybe(text("Free note.")),
    ...sourceFields(trustCodes),
    recordedAt: instant("When the row was recorded."),
    supersededAt: maybe(instant("When a superseding submission took its place; empty while it stands.")),
  },
});

export const readingKind = defineKind({
  name: "reading",
  meaning: "One reading of one characteristic.",
  fields: {
    id: id(),
    settingSheetId: refersTo("settingSheet", "The setting sheet."),
    characteristic: text("Characteristic's key."),
    side: choice(sideCodes, "Side."),
    repeat: integer("1, or 2 and up for repeat readings."),
    ...valueFields({ codes: valueKindCodes }),
    expandedUncertainty: maybe(number("Expanded uncertainty (k = 2); empty when not known.", "SI")),
    instrumentId: maybe(refersTo("instrument", "What it was read with.")),
  },
});
