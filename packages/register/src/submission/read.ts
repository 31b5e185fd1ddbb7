import type { CharacteristicBook } from "../characteristic/book";
import type { Characteristic, Side } from "../characteristic/characteristic";
import { type PartialDate, parsePartialDate } from "../identity/partial-date";
import { sayDay } from "../identity/say-day";
import type { FieldProblem } from "../refusal/invalid";
import { stateKey } from "../state/key";
import type { State } from "../state/state";
import { sameValue } from "../value/same";
import type { Value } from "../value/value";
import type { ChangeDraft, FastenerDraft, ModificationDraft, SubmissionContent } from "./content";
import { contradictionsIn } from "./contradiction";
import { problemList, readDesignation, readEntered, readLength, type Tell } from "./read-field";
import { type ReadSheet, readSheet } from "./read-sheet";

/** What a submission is read against. */
export interface SubmissionBasis {
  readonly book: CharacteristicBook;
  /** ISO day. */
  readonly today: string;
  /** What the car was on a day before this submission: accepted things only. */
  readonly stateOn: (day: string) => State;
  /** Earliest day the car may have been built, ISO; missing where it is not known. */
  readonly builtEarliest?: string;
}

/** One characteristic before and after, as values. */
export interface ReadChange {
  readonly characteristic: Characteristic;
  readonly side: Side;
  /** As the owner says, else as the record has it; missing where neither knows. */
  readonly before?: Value;
  readonly after: Value;
  /** Name of the field that `after` was typed into. */
  readonly field: string;
}

/** A fastener with its dimensions in SI. */
export interface ReadFastener {
  readonly place: string;
  readonly thread: string | null;
  readonly grade: string | null;
  readonly length: number | null;
  readonly spacerStack: number | null;
  readonly count: number;
  readonly note: string | null;
}

/** A modification as it would stand on the record. */
export interface ReadModification {
  readonly fitted: PartialDate | null;
  /** Metres. */
  readonly odometer: number | null;
  readonly reason: string | null;
  readonly donor: string | null;
  readonly note: string | null;
  readonly reversible: boolean | null;
  readonly oldPartKept: boolean | null;
  readonly changes: readonly ReadChange[];
  readonly fasteners: readonly ReadFastener[];
}

/** A submission as values, with everything that stands in the way of handing it in. */
export interface ReadSubmission {
  readonly problems: readonly FieldProblem[];
  readonly modifications: readonly ReadModification[];
  readonly sheets: readonly ReadSheet[];
}

const orNull = (text: string) => (text.trim() === "" ? null : text.trim());
const yesNo = (said: "" | "yes" | "no") => (said === "" ? null : said === "yes");

interface At {
  readonly basis: SubmissionBasis;
  readonly content: SubmissionContent;
  readonly field: string;
  readonly tell: Tell;
}

function readFitted(entered: string, { basis, field, tell }: At): PartialDate | null {
  const place = `${field}.fitted`;
  if (entered.trim() === "") {
    tell(
      place,
      "Say when it was fitted, as far as you know: 14 Nov 2026, 3/98, 1998, c. 1985 or before 1990.",
    );
    return null;
  }
  const parsed = parsePartialDate(entered, { today: basis.today });
  if (!parsed.ok) {
    const { message, expected } = parsed.problem;
    tell(place, `${message.charAt(0).toUpperCase()}${message.slice(1)}: write ${expected}.`);
    return null;
  }
  const { builtEarliest } = basis;
  if (builtEarliest !== undefined && parsed.date.latest < builtEarliest) {
    tell(
      place,
      `The car was not built before ${sayDay(builtEarliest)}: nothing can have been fitted in ${entered.trim()}.`,
    );
  }
  return parsed.date;
}

/** Odometers read in the owner's units where he leaves them out. */
const odometerUnit = { metric: "km", imperial: "mile" } as const;
const smallUnit = { metric: "mm", imperial: "in" } as const;
/** A million kilometres: what no car of this age has covered. */
const ODOMETER_MOST = 1e9;

function readOdometer(entered: string, { content, field, tell }: At): number | null {
  const place = `${field}.odometer`;
  const si = readLength(entered, { field: place, unit: odometerUnit[content.units], tell });
  if (si === null || si <= ODOMETER_MOST) return si;
  tell(place, `"${entered}" is more than a million kilometres: check the figure and its unit.`);
  return null;
}

function readFastener(draft: FastenerDraft, { content, field, tell }: At): ReadFastener {
  const at = (part: keyof FastenerDraft) => ({ field: `${field}.${part}`, tell });
  const unit = smallUnit[content.units];
  if (draft.place.trim() === "")
    tell(`${field}.place`, "Say where it sits, e.g. rear link to bracket, left.");
  const count = draft.count.trim() === "" ? 1 : Number(draft.count);
  if (!Number.isInteger(count) || count < 1 || count > 100)
    tell(`${field}.count`, `"${draft.count}" is no count: write a whole number from 1 to 100.`);
  return {
    place: draft.place.trim(),
    thread: readDesignation("thread", draft.thread, at("thread")),
    grade: readDesignation("grade", draft.grade, at("grade")),
    length: readLength(draft.length, { ...at("length"), unit }),
    spacerStack: readLength(draft.spacerStack, { ...at("spacerStack"), unit }),
    count: Number.isInteger(count) ? count : 1,
    note: orNull(draft.note),
  };
}

/** Nothing at all was typed into a fastener's row: a form offers an empty one. */
const isBlank = (fastener: FastenerDraft) => Object.values(fastener).every((text) => text.trim() === "");

interface Seen extends At {
  readonly before: State;
  /** State in which toe in millimetres is read: the rims before, or those of this very submission. */
  readonly rims: State;
  readonly taken: Map<string, Value>;
}

function readChange(draft: ChangeDraft, seen: Seen): ReadChange | undefined {
  const { basis, content, field, tell, before, rims, taken } = seen;
  const [place, earlier] = [`${field}.after`, `${field}.before`];
  const characteristic = basis.book.find(draft.characteristic);
  if (!characteristic) {
    tell(place, `There is no characteristic "${draft.characteristic}" any more: take this line out.`);
    return undefined;
  }
  if (characteristic.sided === (draft.side === "whole")) {
    tell(
      place,
      `${characteristic.label} is recorded ${characteristic.sided ? "side by side" : "once for the car"}.`,
    );
    return undefined;
  }
  const { units } = content;
  const said =
    draft.before.trim() === ""
      ? undefined
      : readEntered(characteristic, draft.before, { units, rims: before });
  if (said && !said.ok) tell(earlier, `${said.problem.message}.`);
  const known = before.get(stateKey(characteristic.key, draft.side))?.value;
  const was = said?.ok ? said.value : known;
  if (draft.after.trim() === "") {
    tell(place, "Say what is on it now, or take this line out.");
    return undefined;
  }
  const parsed = readEntered(characteristic, draft.after, { units, rims });
  if (!parsed.ok) {
    tell(place, `${parsed.problem.message}.`);
    return undefined;
  }
  const key = stateKey(characteristic.key, draft.side);
  const other = taken.get(key);
  if (other)
    tell(place, `${characteristic.label} is on another line too ("${other.entered}"): keep one of them.`);
  taken.set(key, parsed.value);
  if (was && sameValue(was, parsed.value))
    tell(
      place,
      `This is what the car had before ("${was.entered}"): say what is different, or take this line out.`,
    );
  return {
    characteristic,
    side: draft.side,
    after: parsed.value,
    field: place,
    ...(was ? { before: was } : {}),
  };
}

/** The state after some changes; what only the owner says of before counts there. */
export function stateAfter(before: State, changes: readonly ReadChange[]): State {
  const source = { title: "this submission", trust: "stated" } as const;
  const after = new Map(before);
  for (const { characteristic, side, after: value, field } of changes) {
    after.set(stateKey(characteristic.key, side), {
      characteristic: characteristic.key,
      side,
      value,
      origin: "modification",
      originId: field,
      source,
    });
  }
  return after;
}

/** The state before, with what the owner says of it where that is more than the record knows. */
export function stateBefore(recorded: State, changes: readonly ReadChange[]): State {
  const source = { title: "this submission, before", trust: "stated" } as const;
  const before = new Map(recorded);
  for (const { characteristic, side, before: value, field } of changes) {
    const key = stateKey(characteristic.key, side);
    const known = recorded.get(key)?.value;
    if (value === undefined || (known !== undefined && sameValue(known, value))) continue;
    before.set(key, {
      characteristic: characteristic.key,
      side,
      value,
      origin: "modification",
      originId: field,
      source,
    });
  }
  return before;
}

/** Wheels that a modification itself brings, so that toe in millimetres is read over the rim it is measured on. */
function rimsOf(draft: ModificationDraft, before: State, at: At): State {
  const wheels = draft.changes.flatMap((change): ReadChange[] => {
    const characteristic = at.basis.book.find(change.characteristic);
    if (characteristic?.kind !== "designation" || characteristic.designation !== "wheel") return [];
    const parsed = readEntered(characteristic, change.after, { units: at.content.units, rims: before });
    return parsed.ok ? [{ characteristic, side: change.side, after: parsed.value, field: "" }] : [];
  });
  return stateAfter(before, wheels);
}

function readModification(draft: ModificationDraft, at: At): ReadModification {
  const { basis, field, tell } = at;
  const fitted = readFitted(draft.fitted, at);
  const before = basis.stateOn(fitted?.latest ?? basis.today);
  const seen = { ...at, before, rims: rimsOf(draft, before, at), taken: new Map<string, Value>() };
  const changes = draft.changes.flatMap(
    (change, place) => readChange(change, { ...seen, field: `${field}.changes.${place}` }) ?? [],
  );
  if (draft.changes.length === 0)
    tell(`${field}.changes`, "Choose at least one part, and say what is on it now.");
  contradictionsIn(stateAfter(before, changes), changes, tell);
  const fasteners = draft.fasteners.flatMap((fastener, place) =>
    isBlank(fastener) ? [] : [readFastener(fastener, { ...at, field: `${field}.fasteners.${place}` })],
  );
  return {
    fitted,
    odometer: readOdometer(draft.odometer, at),
    reason: orNull(draft.reason),
    donor: orNull(draft.donor),
    note: orNull(draft.note),
    reversible: yesNo(draft.reversible),
    oldPartKept: yesNo(draft.oldPartKept),
    changes,
    fasteners,
  };
}

/**
 * Reads a submission as values and tells everything that is wrong with it, at the field: what cannot be read, what is
 * beyond belief, what contradicts the record or itself. Pure, so that form and service tell the same. With no problems
 * it can be handed in.
 */
export function readSubmission(content: SubmissionContent, basis: SubmissionBasis): ReadSubmission {
  const { problems, tell } = problemList();
  const at = { basis, content, tell };
  const modifications = content.modifications.map((draft, place) =>
    readModification(draft, { ...at, field: `modifications.${place}` }),
  );
  const sheets = content.sheets.map((draft, place) =>
    readSheet(draft, { ...at, units: content.units, field: `sheets.${place}` }),
  );
  if (modifications.length + sheets.length === 0)
    tell("modifications", "There is nothing in it yet: record a change or a setting sheet.");
  return { problems, modifications, sheets };
}
