// table: the fields of these kinds of row, in the order of the schema
import { sideCodes, submissionStatusCodes, trustCodes, valueKindCodes } from "../code";
import {
  choice,
  dateFields,
  id,
  instant,
  integer,
  json,
  maybe,
  number,
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

export const submissionKind = defineKind({
  name: "submission",
  meaning: "What a member hands in about a car, until a registrar decides.",
  fields: {
    id: id(),
    carId: refersTo("car", "The car."),
    status: choice(submissionStatusCodes, "Where it stands."),
    madeById: maybe(person("Person who made it; empty for an import.")),
    clientKey: someId("Key the client made, so that sending twice is one submission."),
    version: integer("Counts up with every step; guards against two editors."),
    content: json(
      "What it says, as typed: modifications and setting sheets, until they are accepted and become rows of their own.",
    ),
    editorKey: maybe(
      someId(
        "Key of the open form that saved the draft last, so that a form never meets itself as somebody else.",
      ),
    ),
    editorCount: integer("Number of that form's last save: an earlier one that comes late is passed over."),
    stepKey: maybe(
      someId("Key of the last step, made by whoever took it, so that a step sent twice is one step."),
    ),
    savedAt: maybe(instant("When the draft was last saved.")),
    submittedAt: maybe(instant("When it was handed in.")),
    decidedAt: maybe(instant("When it was decided.")),
    decidedById: maybe(person("Who decided; empty for an import.")),
    decisionReason: maybe(text("The reviewer's reason.")),
    supersedesId: maybe(refersTo("submission", "Accepted submission that this one takes the place of.")),
    recordedAt: instant("When the row was recorded."),
  },
});

export const submissionMessageKind = defineKind({
  name: "submissionMessage",
  meaning: "A question or an answer about a submission.",
  fields: {
    id: id(),
    submissionId: refersTo("submission", "The submission."),
    personId: person("Who wrote it."),
    text: text("What was written."),
    recordedAt: instant("When the row was recorded."),
  },
});

export const modificationKind = defineKind({
  name: "modification",
  meaning: "What was changed on a car, on one occasion.",
  fields: {
    id: id(),
    submissionId: refersTo("submission", "Submission it was handed in with."),
    carId: refersTo("car", "The car."),
    ...dateFields("fitted", "When it was fitted"),
    sequence: integer("Order of acceptance within the car."),
    reason: maybe(text("Why it was changed.")),
    donor: maybe(text("Donor car or supplier's part, in the owner's words; no personal data.")),
    odometer: maybe(number("Odometer at the time.", "m")),
    reversible: maybe(yesNo("Can be put back; empty when not said.")),
    oldPartKept: maybe(yesNo("The old part is kept; empty when not said.")),
    note: maybe(text("Free note.")),
    ...sourceFields(trustCodes),
    recordedAt: instant("When the row was recorded."),
    supersededAt: maybe(instant("When a superseding submission took its place; empty while it stands.")),
  },
});

export const modificationChangeKind = defineKind({
  name: "modificationChange",
  meaning: "Before and after of one characteristic.",
  fields: {
    id: id(),
    modificationId: refersTo("modification", "The modification."),
    characteristic: text("Characteristic's key."),
    side: choice(sideCodes, "Side."),
    ...valueFields({ codes: valueKindCodes, prefix: "before", says: "Before" }, true),
    ...valueFields({ codes: valueKindCodes, prefix: "after", says: "After" }),
  },
});

export const modificationFastenerKind = defineKind({
  name: "modificationFastener",
  meaning: "A fastener used with a modification.",
  fields: {
    id: id(),
    modificationId: refersTo("modification", "The modification."),
    place: text('Where it sits, e.g. "rear link to bracket, left".'),
    thread: maybe(text("Thread designation, e.g. M10x1.25.")),
    grade: maybe(text("Grade designation, e.g. 10.9.")),
    length: maybe(number("Length under the head.", "m")),
    spacerStack: maybe(number("Height of the stack of spacers it carries.", "m")),
    count: integer("How many."),
    note: maybe(text("Free note.")),
  },
});

export const noticeKind = defineKind({
  name: "notice",
  meaning: "What somebody is told about a submission, in the app and by e-mail.",
  fields: {
    id: id(),
    personId: person("Who is told."),
    submissionId: refersTo("submission", "What it is about."),
    subject: text("Subject of the e-mail."),
    text: text("The e-mail as plain text, without address and greeting."),
    tries: integer("Tries to send it so far."),
    notBefore: instant("Not tried again before."),
    sentAt: maybe(instant("When it was sent; empty while it waits.")),
    sentBy: maybe(text("How it was sent: by e-mail, or into the outbox folder.")),
    givenUpAt: maybe(instant("When sending was given up; empty while it waits.")),
    problem: personal(text("Why the last try failed.")),
    recordedAt: instant("When the row was recorded."),
  },
});
