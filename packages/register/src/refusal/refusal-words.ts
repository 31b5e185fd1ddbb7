import { archiveWords } from "./archive";
import { calendarFeedWords } from "./calendar-feed";
import { carWords } from "./car";
import { evidenceWords } from "./evidence";
import { filterWords } from "./filter";
import { importWords } from "./import";
import { journalWords } from "./journal";
import type { Refusal, RefusalCode, RefusalDetails } from "./refusal";
import { sheetWords } from "./sheet";
import { specificationWords } from "./specification";
import { submissionWords } from "./submission";
import { list, megabytes, type RefusalText, type Words } from "./words";

export type { RefusalText } from "./words";

const roleNames: Readonly<Record<string, string>> = {
  registrar: "registrar",
  owner: "owner",
  scrutineer: "scrutineer",
  fleetManager: "fleet manager",
};
const roles = (codes: readonly string[]) => list(codes.map((code) => roleNames[code] ?? code));

const invitationReasons = {
  unknown: "This invitation link is not known here.",
  expired: "This invitation has run out.",
  used: "This invitation has been used already.",
  revoked: "This invitation was taken back.",
} as const;

/** One wording per code: a code without one does not compile. */
const words: Words<RefusalDetails> = {
  ...carWords,
  ...calendarFeedWords,
  ...evidenceWords,
  ...specificationWords,
  ...importWords,
  ...journalWords,
  ...archiveWords,
  ...filterWords,
  ...sheetWords,
  ...submissionWords,

  DATABASE_AWAY: () => ({
    what: "The database does not answer, or the connection to it was lost.",
    remedy: "Nothing of this step was written, nothing before it is lost: try again in a moment.",
  }),
  DOUBTFUL: ({ doubts }) => ({
    what: `Is this right? ${doubts.map((doubt) => `${doubt.charAt(0).toUpperCase()}${doubt.slice(1)}.`).join(" ")}`,
    remedy: "Nothing was saved yet. Mend it, or save it as it stands.",
  }),
  NOT_SIGNED_IN: () => ({ what: "You are not signed in.", remedy: "Sign in, then open this page again." }),
  WRONG_SIGN_IN: () => ({
    what: "That e-mail address and password do not belong together.",
    remedy: "Check both, and that capitals lock is off.",
  }),
  TOO_MANY_TRIES: ({ seconds }) => ({
    what: "Too many tries to sign in.",
    remedy: `Wait ${seconds} seconds, then try again.`,
  }),
  CLUB_NOT_FOUND: ({ club, known }) => ({
    what: `There is no club "${club}".`,
    remedy: `Clubs here: ${list(known)}.`,
  }),
  CLUB_EXISTS: ({ club }) => ({
    what: `There is a club "${club}" here already; nothing was written.`,
    remedy: "Give another seed, or use another database.",
  }),
  EXTRACT_NOT_OPEN: ({ club }) => ({
    what: `There is no public register "${club}" here.`,
    remedy: "Check the address, or ask the club: it chooses what it shows.",
  }),
  NOT_A_MEMBER: ({ club }) => ({
    what: `You are not a member of "${club}".`,
    remedy: "Ask its registrar for an invitation.",
  }),
  ROLE_NEEDED: ({ needed, has }) => ({
    what: `This is for: ${roles(needed)}. You are: ${roles(has)}.`,
    remedy: "Ask the registrar to do it, or to give you the role.",
  }),
  CAR_NOT_FOUND: ({ car }) => ({
    what: `No car "${car}" in this club's register.`,
    remedy: "Look for it by another number or mark.",
  }),
  SERIES_NOT_FOUND: ({ series, known }) => ({
    what: `There is no series "${series}".`,
    remedy: `Series of this club: ${list(known)}.`,
  }),
  EVENT_NOT_FOUND: ({ event, known }) => ({
    what: `There is no event "${event}" in this club.`,
    remedy: `Events: ${list(known)}.`,
  }),
  TOO_MANY_PARTS: ({ limit }) => ({
    what: `There are ${limit} parts on the list, which is the most.`,
    remedy: "Take one off first that nobody needs.",
  }),
  PART_NOT_FOUND: ({ part }) => ({
    what: `There is no part "${part}" on the club's list.`,
    remedy: "Open the list of parts and choose from there: it may have been taken off.",
  }),
  INSTRUMENT_NOT_FOUND: () => ({
    what: "There is no such instrument on the club's books.",
    remedy: "Open the list of instruments and choose from there.",
  }),
  EVENT_HAS_NO_ENTRIES: ({ event }) => ({
    what: `The event "${event}" has no entries, so there is no sheet to print.`,
    remedy: "Add entries first.",
  }),
  ENTRY_NOT_FOUND: ({ event, number, known }) => ({
    what: `The event "${event}" has no running number ${number}.`,
    remedy: `Running numbers: ${list(known)}.`,
  }),
  EVENT_SLUG_TAKEN: ({ slug }) => ({
    what: `Another event has the short name "${slug}".`,
    remedy: "Give another one; the year makes it plain.",
  }),
  ENTRY_LIST_TOO_LONG: ({ what, found, limit }) => ({
    what: `The list has ${found} ${what}; at most ${limit} are read at once.`,
    remedy: "Paste it in parts: what is entered already is told.",
  }),
  RULE_SET_NOT_FOUND: ({ ruleSet, known }) => ({
    what: `There is no rule set "${ruleSet}" in this club.`,
    remedy: `Rule sets: ${list(known)}.`,
  }),
  RULE_SET_NOT_DRAFT: ({ ruleSet, version, status }) => ({
    what: `Version ${version} of "${ruleSet}" is ${status}, and never changes any more.`,
    remedy: "Copy it: the copy is a draft.",
  }),
  RULE_SET_DRAFT_EXISTS: ({ ruleSet, version }) => ({
    what: `Version ${version} of "${ruleSet}" is a draft already.`,
    remedy: "Go on with it, or discard it first.",
  }),
  RULE_SET_MOVED_ON: ({ ruleSet, version }) => ({
    what: `Somebody changed version ${version} of "${ruleSet}" since you opened it.`,
    remedy: "Nothing was written. Open it again and look what is there now.",
  }),
  RULE_SET_ROW_NOT_FOUND: ({ what }) => ({
    what: `The draft has no such ${what}.`,
    remedy: "Somebody may have taken it out: look at the draft as it stands now.",
  }),
  RUNNING_NUMBER_TAKEN: ({ event, number }) => ({
    what: `Running number ${number} is taken at "${event}".`,
    remedy: "Give another number.",
  }),
  INVITATION_NOT_VALID: ({ because }) => ({
    what: invitationReasons[because],
    remedy: "Ask the registrar for a new one.",
  }),
  ALREADY_A_MEMBER: ({ email }) => ({
    what: `${email} is a member already.`,
    remedy: "Change their roles instead of inviting them again.",
  }),
  FILE_NOT_FOUND: ({ path }) => ({
    what: `There is no file ${path}.`,
    remedy: "Check the name and the folder.",
  }),
  FILE_EMPTY: ({ file }) => ({
    what: `${file} is empty.`,
    remedy: "Give a CSV file with a line of headings and a line per car.",
  }),
  FILE_TOO_LARGE: ({ file, bytes, limit }) => ({
    what: `${file} is ${megabytes(bytes)}; at most ${megabytes(limit)} is read.`,
    remedy: "Split it, or leave out what is not a register of cars.",
  }),
  FILE_NOT_A_TABLE: ({ file, found }) => ({
    what: `${file} is not a CSV table: it looks like ${found}.`,
    remedy: "Save the sheet as CSV (comma or semicolon separated text), then try again.",
  }),
  FILE_ENCODING: ({ file, line, found }) => ({
    what: `${file}, line ${line}: ${found} is not text in UTF-8 or Windows-1252.`,
    remedy: "Save the file as CSV in UTF-8.",
  }),
  TABLE_TOO_WIDE: ({ file, columns, limit }) => ({
    what: `${file} has more than ${columns - 1} columns; at most ${limit} are read.`,
    remedy: "Check the separator, and leave out columns that say nothing of a car.",
  }),
  TABLE_TOO_LONG: ({ file, limit }) => ({
    what: `${file} has more than ${limit} rows.`,
    remedy: "Split it into several files.",
  }),
  TABLE_BROKEN: ({ file, line, problem }) => ({
    what: `${file}, line ${line}: ${problem}.`,
    remedy: "Mend the line (most often a quotation mark that is never closed), then try again.",
  }),
  HEADING_MISSING: ({ file, wanted, found }) => ({
    what: `${file} has no heading ${wanted.map((heading) => `"${heading}"`).join(" or ")}; found: ${list(found.filter((heading) => heading !== ""))}.`,
    remedy:
      "Say which column holds it, or which line the headings stand on. `trunnion import --help` lists what they may say.",
  }),
  HEADING_TWICE: ({ file, heading, columns }) => ({
    what: `${file}: columns ${list(columns)} both say "${heading}".`,
    remedy: "Keep one of them, or name the other differently.",
  }),
  INPUT_NOT_JSON: ({ problem }) => ({
    what: `Standard input is not JSON: ${problem}.`,
    remedy: "Give one JSON object, as `trunnion work --list --json` describes it.",
  }),
  SETUP_PLAN_NOT_READY: ({ car }) => ({
    what: `There is no plan for ${car} yet that could be printed.`,
    remedy: "Open the plan's own page: it names each figure that lacks or cannot be read.",
  }),
  CONSEQUENCE_NOT_FOUND: ({ id, known }) => ({
    what: `Nothing called "${id}" follows from this car's differences.`,
    remedy: `What follows: ${list(known)}.`,
  }),
  COMPUTATION_NOT_FOUND: ({ name, known }) => ({
    what: `There is no computation "${name}".`,
    remedy: `There are: ${list(known)}.`,
  }),
  SPECIFICATION_CONTRADICTS: ({ problems }) => ({
    what: `The specification cannot stand as it is: ${problems.join(" ")}`,
    remedy: "Mend each of these; nothing was written.",
  }),
  CHANGED_MEANWHILE: ({ what }) => ({
    what: `Somebody changed ${what} since you opened it.`,
    remedy: "Nothing was written. Look at what both of you changed, then save again or leave it.",
  }),
};

/** The wording of a refusal, as plain British English. */
export function sayRefusal<C extends RefusalCode>(refusal: Refusal<C>): RefusalText {
  // The code and its details belong together by the refusal's type; the compiler cannot follow that through the union.
  const say = words[refusal.code] as (details: RefusalDetails[C]) => RefusalText;
  return say(refusal.details);
}
