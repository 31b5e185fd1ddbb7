// table: the fields of these kinds of row, in the order of the schema
import { importStatusCodes } from "../code";
import {
  choice,
  id,
  instant,
  integer,
  json,
  maybe,
  person,
  personal,
  refersTo,
  someId,
  text,
  yesNo,
} from "../field";
import { defineKind } from "../kind";

export const journalEntryKind = defineKind({
  name: "journalEntry",
  meaning:
    "One accepted change: who, what, when, why, before and after. Append-only, chained by hash per club; no personal data.",
  order: ["sequence"],
  fields: {
    sequence: integer("Place in the club's chain, from 1; given by the database."),
    at: instant("When it was recorded; given by the database."),
    personId: maybe(person("Person who did it; empty for the command line.")),
    action: text("What was done, e.g. `car.import`."),
    noun: text("Kind of record it was done to."),
    nounId: someId("The record it was done to."),
    carId: maybe(someId("Car concerned, if any.")),
    runId: maybe(someId("Import or other run it was part of.")),
    reason: maybe(text("Why.")),
    before: maybe(json("The record before; empty when made.")),
    after: maybe(json("The record after; empty when taken away.")),
    previousHash: text("Hash of the entry before, hex; given by the database."),
    hash: text("SHA-256 over previous hash and content, hex; given by the database."),
  },
});

export const importRunKind = defineKind({
  name: "importRun",
  meaning: "One reading-in of a file.",
  fields: {
    id: id(),
    fileName: text("Name of the file."),
    sha256: text("SHA-256 of the file, hex."),
    sourceId: refersTo("source", "Source that its rows are recorded under."),
    madeById: maybe(person("Person who read it in; empty for the command line.")),
    status: choice(importStatusCodes, "How far it is."),
    options: maybe(json("How it is read: encoding, sheet, column for each heading, units, day it tells of.")),
    rowsDone: integer("Rows of the file worked through so far."),
    problems: personal(json("What was wrong, row by row: line, column, found, expected.")),
    doubts: personal(json("What to look at, although it was taken.")),
    failure: maybe(text("Why it failed, in words.")),
    rowsRead: integer("Rows read."),
    carsAdded: integer("Cars added."),
    carsChanged: integer("Cars changed."),
    rowsRefused: integer("Rows refused."),
    recordedAt: instant("When the row was recorded."),
    undoneAt: maybe(instant("When it was undone as one step.")),
    startedAt: maybe(instant("When the work began.")),
    beatAt: maybe(instant("When it last wrote something: one that stands still was interrupted.")),
    endedAt: maybe(instant("When it was done.")),
  },
});

export const savedFilterKind = defineKind({
  name: "savedFilter",
  meaning: "A condition somebody keeps under a name.",
  fields: {
    id: id(),
    name: text("Name."),
    condition: json("The condition."),
    personId: person("Whose it is."),
    shared: yesNo("Shown to the whole club."),
    recordedAt: instant("When the row was recorded."),
  },
});

export const importMappingKind = defineKind({
  name: "importMapping",
  meaning: "What the columns of a kind of file mean, remembered for the next one.",
  fields: {
    id: id(),
    headingKey: text("The headings of the file, folded and joined: how the next one is known."),
    fileName: text("Name of the file it was made for."),
    mapping: json("Column for each heading, with its unit."),
    madeById: maybe(person("Person who made it; empty for the command line.")),
    usedAt: instant("When it was last used."),
    recordedAt: instant("When the row was recorded."),
  },
});
