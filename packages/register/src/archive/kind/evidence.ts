// table: the fields of these kinds of row, in the order of the schema
import { dateFields, id, instant, integer, maybe, person, refersTo, text, yesNo } from "../field";
import { defineKind } from "../kind";

export const evidenceKind = defineKind({
  name: "evidence",
  meaning: "A photograph or document, stored outside the database under its content's hash.",
  fields: {
    id: id(),
    sha256: text("SHA-256 of the content, hex."),
    mediaType: text("Media type found in the content, not the one claimed."),
    bytes: integer("Size in bytes.", "B"),
    width: maybe(integer("Width of a picture as it is stored, pixels; empty for a document.", "px")),
    height: maybe(integer("Height of a picture as it is stored, pixels; empty for a document.", "px")),
    keepsLocation: yesNo(
      "The place where it was taken was left in the file, because whoever added it asked for that.",
    ),
    fileName: text("File name it came with."),
    caption: maybe(text("What it shows.")),
    quarterTurns: integer("Quarter turns clockwise to show it upright.", "90°"),
    ...dateFields("taken", "When it was taken"),
    addedById: maybe(person("Person who added it.")),
    withdrawnAt: maybe(
      instant("When it was withdrawn: no longer shown, kept with the journal; empty while it stands."),
    ),
    withdrawnReason: maybe(text("Why it was withdrawn.")),
    version: integer("Counts up with every change; guards against two editors."),
    recordedAt: instant("When the row was recorded."),
  },
});

export const evidenceLinkKind = defineKind({
  name: "evidenceLink",
  meaning: "What a piece of evidence supports; exactly one target.",
  fields: {
    id: id(),
    evidenceId: refersTo("evidence", "The evidence."),
    carId: maybe(refersTo("car", "A car as a whole.")),
    asBuiltValueId: maybe(refersTo("asBuiltValue", "An as-built value.")),
    modificationId: maybe(refersTo("modification", "A modification.")),
    settingSheetId: maybe(refersTo("settingSheet", "A setting sheet.")),
    findingId: maybe(refersTo("finding", "A finding.")),
    carIdentityId: maybe(refersTo("carIdentity", "A number or mark of a car.")),
    carStatusSpanId: maybe(refersTo("carStatusSpan", "A status of a car.")),
    historyNoteId: maybe(refersTo("historyNote", "A note in a car's history.")),
    specificationEntryId: maybe(refersTo("specificationEntry", "An entry of a specification.")),
    numberDecisionId: maybe(refersTo("numberDecision", "A decision about a number that several cars claim.")),
    submissionId: maybe(
      refersTo("submission", "A submission that is not accepted yet; then what it becomes."),
    ),
    partId: maybe(refersTo("part", "A part of the list.")),
    characteristic: maybe(
      text("Key of the one characteristic that it shows of what it supports; empty for all of it."),
    ),
    locus: maybe(text("Page, frame or corner of the evidence that shows it.")),
    recordedAt: instant("When the row was recorded."),
  },
});
