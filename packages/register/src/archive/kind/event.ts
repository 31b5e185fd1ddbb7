// table: the fields of these kinds of row, in the order of the schema
import {
  decisionOutcomeCodes,
  findingResultCodes,
  ruleSetStatusCodes,
  sideCodes,
  trustCodes,
  valueKindCodes,
} from "../code";
import {
  choice,
  day,
  id,
  instant,
  integer,
  json,
  maybe,
  number,
  person,
  personal,
  personalAt,
  refersTo,
  someId,
  sourceFields,
  text,
  texts,
  valueFields,
} from "../field";
import { defineKind } from "../kind";

export const ruleSetKind = defineKind({
  name: "ruleSet",
  meaning: "One version of the checks, limits and classes an organiser uses.",
  fields: {
    id: id(),
    slug: text("Short name in addresses and commands."),
    version: integer("Version, from 1."),
    name: text("Full name."),
    edition: text("Edition or year as the organiser gives it."),
    status: choice(ruleSetStatusCodes, "Draft, current or superseded; one current version a rule set."),
    revision: integer("Counts up with every change of a draft."),
    copiedFromId: maybe(refersTo("ruleSet", "Version it was copied from.")),
    note: maybe(text("Free note.")),
    recordedAt: instant("When the row was recorded."),
  },
});

export const ruleCheckKind = defineKind({
  name: "ruleCheck",
  meaning: "One thing to look at, with when it applies and where it comes from.",
  fields: {
    id: id(),
    ruleSetId: refersTo("ruleSet", "Rule set it belongs to."),
    code: text("Stable code within the rule set."),
    ordinal: integer("Order within its station."),
    station: text("Station of the walk round the car."),
    assembly: text("Assembly it looks at."),
    text: text("What to look at, in the imperative."),
    short: maybe(text("The same in a line of a column, for the printed sheet.")),
    method: maybe(text("How to look, where it is not plain.")),
    criterion: json("What makes it pass, as the register's schema reads it."),
    condition: json("When it applies: a condition."),
    why: maybe(text("Why it is on the sheet, with places for the figures.")),
    caution: maybe(text("Caution to read before doing it.")),
    sourceTitle: text("Publication it comes from."),
    sourceEdition: maybe(text("Edition of the publication.")),
    sourceClause: maybe(text("Clause or page.")),
  },
});

export const eventClassKind = defineKind({
  name: "eventClass",
  meaning: "A class cars are entered in.",
  fields: {
    id: id(),
    ruleSetId: refersTo("ruleSet", "Rule set it belongs to."),
    code: text("Code on entry lists."),
    name: text("Full name."),
    eligibility: json("Which cars may enter: a condition."),
  },
});

export const ruleLimitKind = defineKind({
  name: "ruleLimit",
  meaning: "A limit an organiser sets on a characteristic, for all classes or one.",
  fields: {
    id: id(),
    ruleSetId: refersTo("ruleSet", "Rule set it belongs to."),
    eventClassId: maybe(refersTo("eventClass", "Class it is for; empty for all.")),
    characteristic: text("Characteristic's key."),
    side: choice(sideCodes, "Side."),
    lower: maybe(number("Lower limit, included.", "SI")),
    upper: maybe(number("Upper limit, included.", "SI")),
    sourceTitle: text("Publication it comes from."),
    sourceClause: maybe(text("Clause or page.")),
  },
});

export const eventKind = defineKind({
  name: "event",
  meaning: "A track day, hill climb or test day with scrutineering.",
  fields: {
    id: id(),
    slug: text("Short name in addresses and commands."),
    name: text("Full name."),
    on: day("First day."),
    venue: text("Where."),
    ruleSetId: refersTo("ruleSet", "Rule set in force."),
    version: integer("Counts up with every change of the event's facts."),
    recordedAt: instant("When the row was recorded."),
  },
});

export const entryKind = defineKind({
  name: "entry",
  meaning: "A car entered in an event.",
  fields: {
    id: id(),
    eventId: refersTo("event", "The event."),
    runningNumber: text("Number on the car's side, as displayed."),
    runningOrder: integer("Place in running order."),
    carId: maybe(refersTo("car", "The car; empty when it is not on the register.")),
    describedAs: maybe(text("What the entry list said of the car.")),
    driver: personal(text("Driver's name. Personal data.")),
    group: maybe(text("Group or session.")),
    eventClassId: maybe(refersTo("eventClass", "Class entered in.")),
    withdrawnAt: maybe(instant("When it was withdrawn.")),
    version: integer("Counts up with every change by form."),
    recordedAt: instant("When the row was recorded."),
  },
});

export const printedSheetKind = defineKind({
  name: "printedSheet",
  meaning: "A sheet as it was printed: from model and layout version the same bytes come again.",
  fields: {
    id: id(),
    entryId: refersTo("entry", "The entry it was printed for."),
    code: maybe(text("Short code printed on it.")),
    layoutVersion: integer("Version of the drawing."),
    recordHash: text("Hash of the record it was made from, hex."),
    model: personalAt(["entry", "driver"], json("The finished model.")),
    printedById: maybe(person("Person who printed it; empty for the command line.")),
    printedAt: instant("When it was printed."),
  },
});

export const findingKind = defineKind({
  name: "finding",
  meaning: "What a scrutineer found at one check.",
  fields: {
    id: id(),
    entryId: refersTo("entry", "The entry looked at."),
    printedSheetId: maybe(refersTo("printedSheet", "Sheet it was written on; empty when taken without one.")),
    checkCode: text("Code of the check."),
    result: choice(findingResultCodes, "Pass, advise, refuse or not applicable."),
    note: maybe(text("Note.")),
    foundById: maybe(person("Scrutineer.")),
    foundAt: instant("When, by the server's clock: the device's, put right by how far it was off."),
    clientKey: someId("Key the device made, so that sending twice is one finding."),
    replaces: texts("Keys of the findings whose place this takes."),
    recordedAt: instant("When the row was recorded."),
  },
});

export const findingReadingKind = defineKind({
  name: "findingReading",
  meaning: "A reading a scrutineer took at one check.",
  fields: {
    id: id(),
    findingId: refersTo("finding", "The finding it belongs to."),
    characteristic: text("Characteristic's key."),
    side: choice(sideCodes, "Side."),
    ...valueFields({ codes: valueKindCodes }),
    instrumentId: maybe(refersTo("instrument", "What it was read with; empty where nobody said.")),
  },
});

export const entryDecisionKind = defineKind({
  name: "entryDecision",
  meaning: "A scrutineer's decision on an entry; it takes the place of those it names.",
  fields: {
    id: id(),
    entryId: refersTo("entry", "The entry."),
    outcome: choice(decisionOutcomeCodes, "Pass, pass with advice, refused."),
    decidedById: maybe(person("Scrutineer.")),
    decidedAt: instant("When, by the server's clock: the device's, put right by how far it was off."),
    note: maybe(text("Note.")),
    signedBy: personal(text("Name written under the signature. Personal data.")),
    signature: personal(text("Signature as strokes: an SVG path in a box of 600 by 200. Personal data.")),
    clientKey: someId("Key the device made, so that sending twice is one decision."),
    replaces: texts("Keys of the decisions whose place this takes."),
    recordedAt: instant("When the row was recorded."),
  },
});

export const inspectionDeviceKind = defineKind({
  name: "inspectionDevice",
  meaning: "A phone or tablet that took an event along, and what it said of itself when last heard of.",
  fields: {
    id: id(),
    eventId: refersTo("event", "The event it took along."),
    personId: maybe(person("Person signed in on it when it was last heard of.")),
    takenAt: instant("When it was first heard of, by the server's clock."),
    heardAt: instant("When it was last heard of, by the server's clock."),
    made: integer("Findings and decisions it had made in all, by its own count."),
    held: integer("Findings, decisions and photos it still held and had not sent, by its own count."),
    clockOff: integer("How far its clock was ahead of the server's, seconds."),
  },
});

export const datedItemKind = defineKind({
  name: "datedItem",
  meaning: "Something on a car that is valid until a day: harness, extinguisher, inspection.",
  fields: {
    id: id(),
    carId: refersTo("car", "The car."),
    kind: text("harness, extinguisher, seat, inspection, …"),
    label: text("What it is."),
    validFrom: maybe(day("First day it is valid.")),
    validTo: maybe(day("Last day it is valid; empty when not known.")),
    ...sourceFields(trustCodes),
    recordedAt: instant("When the row was recorded."),
    replacedAt: maybe(instant("When it was replaced; empty while fitted.")),
    entryId: maybe(
      refersTo("entry", "Entry of an event whose findings told it; empty where it was entered otherwise."),
    ),
  },
});
