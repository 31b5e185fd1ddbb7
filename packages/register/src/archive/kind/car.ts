// table: the fields of these kinds of row, in the order of the schema
import {
  carStatusCodes,
  identityKindCodes,
  identityStandingCodes,
  numberOutcomeCodes,
  sideCodes,
  trustCodes,
  valueKindCodes,
} from "../code";
import {
  choice,
  dateFields,
  day,
  id,
  instant,
  integer,
  maybe,
  person,
  refersTo,
  sourceFields,
  text,
  valueFields,
} from "../field";
import { defineKind } from "../kind";

export const carKind = defineKind({
  name: "car",
  meaning: "One car: one chassis as the register files it. Two cars may claim one number.",
  fields: {
    id: id(),
    seriesId: maybe(refersTo("series", "Series it belongs to; empty while not settled.")),
    chassis: text("Chassis number it is filed under, as the register writes it."),
    chassisKey: text("Chassis number in capitals without spaces, dashes and dots, for finding."),
    claim: integer("1, or 2 and up for a further car that claims the same number."),
    serial: maybe(integer("Serial read from the number; empty when it does not fit the series' pattern.")),
    ...dateFields("built", "Build date"),
    ...dateFields("firstRegistered", "First registration"),
    remarks: maybe(text("What the row of the register said that found no field, kept to the letter.")),
    version: integer("Counts up with every accepted change; guards against two editors."),
    mergedIntoId: maybe(
      refersTo(
        "car",
        "The car that this record turned out to be of, which has everything of it now; the record stays as a pointer.",
      ),
    ),
    recordedAt: instant("When the row was recorded."),
  },
});

export const carIdentityKind = defineKind({
  name: "carIdentity",
  meaning: "A number or mark a car bears or bore, over time.",
  fields: {
    id: id(),
    carId: refersTo("car", "The car."),
    kind: choice(identityKindCodes, "Chassis, commission, engine, body number or registration mark."),
    number: text("As written."),
    numberKey: text("In capitals without spaces, dashes and dots, for finding."),
    standing: choice(identityStandingCodes, "Accepted, disputed or re-stamped."),
    ...dateFields("from", "Borne from"),
    ...dateFields("to", "Borne until"),
    ...sourceFields(trustCodes),
    recordedAt: instant("When the row was recorded."),
  },
});

export const carStatusSpanKind = defineKind({
  name: "carStatusSpan",
  meaning: "What had become of a car over a span of time; the open span is its status now.",
  fields: {
    id: id(),
    carId: refersTo("car", "The car."),
    status: choice(carStatusCodes, "In use, under restoration, laid up, …"),
    ...dateFields("from", "Since"),
    to: maybe(day("Last day of the span; empty while it is the present one.")),
    ...sourceFields(trustCodes),
    recordedAt: instant("When the row was recorded."),
  },
});

export const carOptionKind = defineKind({
  name: "carOption",
  meaning: "An option a car was built with.",
  order: ["carId", "code"],
  fields: {
    carId: refersTo("car", "The car."),
    code: text("The series' option code."),
  },
});

export const asBuiltValueKind = defineKind({
  name: "asBuiltValue",
  meaning: "A value the works' records, or inference, give for one chassis.",
  fields: {
    id: id(),
    carId: refersTo("car", "The car."),
    characteristic: text("Characteristic's key."),
    side: choice(sideCodes, "Side."),
    ...valueFields({ codes: valueKindCodes }),
    ...sourceFields(trustCodes),
    recordedAt: instant("When the row was recorded."),
    supersededAt: maybe(instant("When a correction took its place; empty while it stands.")),
  },
});

export const historyNoteKind = defineKind({
  name: "historyNote",
  meaning: "Something known of a car's life, with its date.",
  fields: {
    id: id(),
    carId: refersTo("car", "The car."),
    ...dateFields("on", "When"),
    text: text("What happened; no personal data."),
    ...sourceFields(trustCodes),
    recordedAt: instant("When the row was recorded."),
  },
});

export const numberDecisionKind = defineKind({
  name: "numberDecision",
  meaning:
    "A reasoned decision about a number that several cars claim; the latest that is not superseded counts.",
  fields: {
    id: id(),
    kind: choice(identityKindCodes, "Kind of number."),
    numberKey: text("The number without blanks, dashes and case."),
    outcome: choice(numberOutcomeCodes, "What was decided."),
    holderId: maybe(refersTo("car", "The car that holds it, where one does.")),
    reason: text("The reasons, in the registrar's words."),
    decidedById: maybe(person("Person who decided; empty for the command line.")),
    recordedAt: instant("When the row was recorded."),
    supersededAt: maybe(instant("When a later decision took its place; empty while it stands.")),
  },
});

export const numberSetAsideKind = defineKind({
  name: "numberSetAside",
  meaning:
    "Something odd about the club's numbers that a registrar looked at and leaves as it is, with the reason.",
  fields: {
    id: id(),
    finding: text("What it is about: kind, and the cars or the number it names."),
    basis: text("What it rested on then; when that changes, it is shown again."),
    reason: text("Why it is left as it is."),
    setAsideById: maybe(person("Person who set it aside; empty for the command line.")),
    recordedAt: instant("When the row was recorded."),
    takenUpAt: maybe(instant("When it was taken up again; empty while it stands.")),
  },
});
