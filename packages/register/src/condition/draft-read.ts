import { findUnit, NotationError, parseQuantity, parseToe } from "@trunnion/calc";
import type { CharacteristicBook } from "../characteristic/book";
import type { Characteristic, QuantityCharacteristic } from "../characteristic/characteristic";
import { assemblies } from "../characteristic/characteristic";
import { comparedVerdicts, verdicts } from "../deviation/deviation";
import { parsePartialDate } from "../identity/partial-date";
import { parseDateEntry } from "../value/date-entry";
import { parseLimit, parseValue } from "../value/parse";
import type { UnitSystem } from "../value/print";
import { type Condition, knowables } from "./condition";
import {
  childPath,
  type DraftGroup,
  type DraftPart,
  type DraftPath,
  type DraftProblem,
  draftField,
  type ReadDraft,
} from "./draft";
import { questionsFor } from "./question";
import { conditionSchema } from "./schema";
import { likelyCharacteristics } from "./search";

/** What a draft is read with. */
export interface DraftReading {
  readonly book: CharacteristicBook;
  /** Unit of a figure that names none. */
  readonly system: UnitSystem;
  /** ISO day. */
  readonly today: string;
}

/** Something that cannot be read, and in which field of its part. */
class Trouble extends Error {
  constructor(
    readonly field: string,
    message: string,
  ) {
    super(message);
  }
}

/** The characteristic that a name means; `undefined` for none, and for an empty name. */
export function characteristicNamed(book: CharacteristicBook, name: string): Characteristic | undefined {
  return book.find(name.trim()) ?? (name.trim() === "" ? undefined : book.named(name));
}

function characteristicOf({ characteristic: name }: DraftPart, book: CharacteristicBook): Characteristic {
  const found = characteristicNamed(book, name);
  if (found) return found;
  if (name.trim() === "")
    throw new Trouble("characteristic", "Choose what to ask about, or take this part away.");
  const [likely] = likelyCharacteristics(book, name, 1);
  const hint = likely === undefined ? "look in the list for another word" : `"${likely.label}"`;
  throw new Trouble("characteristic", `"${name}" is no characteristic of this club's; for example ${hint}.`);
}

function defaultUnit({ dimension, units, notation }: QuantityCharacteristic, system: UnitSystem) {
  if (notation === "toe" || dimension === "text") return {};
  return findUnit(dimension, units[system]) === undefined ? {} : { defaultUnit: units[system] };
}

function valueFigure(one: QuantityCharacteristic, { figure }: DraftPart, system: UnitSystem): number {
  if (figure.trim() === "")
    throw new Trouble("figure", `Give a figure with its unit, in ${one.units[system] || "numbers"}.`);
  const limit = parseLimit(one, figure, defaultUnit(one, system));
  if (limit.ok) return limit.si;
  throw new Trouble("figure", limit.problem.message);
}

/** A difference in the characteristic's dimension: any size, and no believable range. */
function differenceFigure(one: QuantityCharacteristic, { figure }: DraftPart, system: UnitSystem): number {
  try {
    if (one.notation === "toe") return parseToe(figure).perWheel;
    return parseQuantity(figure, one.dimension, defaultUnit(one, system)).si;
  } catch (error) {
    if (!(error instanceof NotationError)) throw error;
    throw new Trouble(
      "figure",
      `"${figure}" ${error.problem}; ${error.understood.join(" or ")} would be read.`,
    );
  }
}

function plainNumber({ figure }: DraftPart, what: string): number {
  const text = figure.trim().replace(",", ".");
  if (/^-?\d{1,16}(?:\.\d{1,20})?(?:e[+-]?\d{1,3})?$/.test(text) && Number.isFinite(Number(text)))
    return Number(text);
  throw new Trouble("figure", `"${figure}" is no number; ${what}.`);
}

function daysOf(part: DraftPart): number {
  const days = plainNumber(part, "give a number of days, such as 365");
  if (Number.isInteger(days) && days >= 1 && days <= 36_500) return days;
  throw new Trouble("figure", `${part.figure} days cannot be asked for; give 1 to 36500.`);
}

/** A day, or the day one looks; a month or a year stands for its last day. */
function dateOf({ figure }: DraftPart): string {
  if (/^(?:today|event ?day|the day of the event)$/i.test(figure.trim())) return "eventDay";
  const read = parseDateEntry(figure);
  if (read.ok) return read.date;
  throw new Trouble("figure", `"${figure}" is no date; give ${read.expected}, or "today".`);
}

/** Codes as they are kept: ticked ones of a choice, canonical designations of what was typed. */
function codesOf(one: Characteristic, part: DraftPart): readonly string[] {
  if (one.kind === "choice") {
    return ticked(
      part,
      one.choices.map(({ code }) => code),
    );
  }
  const words = part.figure.split(";").map((word) => word.trim());
  return words.map((word) => {
    const read = parseValue(one, word);
    if (!read.ok) throw new Trouble("figure", read.problem.message);
    if (read.value.kind === "designation") return read.value.canonical;
    throw new Trouble(
      "figure",
      `"${word}" is no ${one.label.toLowerCase()}; ask whether it is not fitted instead.`,
    );
  });
}

/** What is ticked; one at least. */
function someOf(part: DraftPart, field: "values" | "series" | "statuses"): readonly string[] {
  const ticked = part[field];
  if (ticked.length === 0) throw new Trouble(`${field}[]`, "Tick at least one.");
  return ticked;
}

/** What is ticked of a closed list; ticks left over from another question do not count. */
function ticked<T extends string>(part: DraftPart, known: readonly T[]): readonly T[] {
  const found = known.filter((code) => part.values.includes(code));
  if (found.length === 0) throw new Trouble("values[]", "Tick at least one.");
  return found;
}

function askedOf(part: DraftPart, { book, system }: DraftReading): Condition {
  const one = characteristicOf(part, book);
  const questions = questionsFor(one);
  const ask = questions.find((question) => question === part.ask) ?? questions[0];
  const { key: characteristic } = one;
  const side = part.side === "" || !one.sided ? {} : { side: part.side };
  const place = { characteristic, ...side };
  const { is } = part;
  switch (ask) {
    case "recorded":
    case "absent":
      return { op: ask, ...place };
    case "textHas":
      if (part.figure.trim() === "") throw new Trouble("figure", "Give the words to look for.");
      return { op: "textHas", ...place, text: part.figure.trim() };
    case "code":
      return { op: "code", ...place, in: codesOf(one, part) };
    case "date":
      return { op: "date", ...place, is, date: dateOf(part) };
    case "verdict":
      return { op: "verdict", ...place, in: ticked(part, verdicts) };
    case "ratio":
      return {
        op: "against",
        ...place,
        measure: "ratio",
        is,
        si: plainNumber(part, "give a multiple such as 1.2"),
      };
    case "readingOlderThan":
      return { op: "readingOlderThan", characteristic, days: daysOf(part) };
    default:
      return measured(part, one, { ask, place, system });
  }
}

interface Measured {
  readonly ask: string | undefined;
  readonly place: { readonly characteristic: string; readonly side?: "whole" | "left" | "right" };
  readonly system: UnitSystem;
}

function measured(part: DraftPart, one: Characteristic, { ask, place, system }: Measured): Condition {
  const { characteristic } = place;
  if (ask === "sidesDiffer") {
    if (one.kind !== "quantity" || part.figure.trim() === "") return { op: "sidesDiffer", characteristic };
    const by = differenceFigure(one, part, system);
    if (by < 0) throw new Trouble("figure", "A difference between the sides is never below nought.");
    return { op: "sidesDiffer", characteristic, by };
  }
  if (one.kind !== "quantity") throw new Trouble("ask", "Choose what to ask.");
  const { is } = part;
  if (ask === "difference") {
    return { op: "against", ...place, measure: "difference", is, si: differenceFigure(one, part, system) };
  }
  return { op: "number", ...place, is, si: valueFigure(one, part, system) };
}

/** First or last day that a date allows, for the beginning or the end of a span. */
function dayOfSpan(text: string, field: "figure" | "until", today: string): string | undefined {
  if (text.trim() === "") return undefined;
  const read = parsePartialDate(text, { today });
  if (read.ok) return field === "figure" ? read.date.earliest : read.date.latest;
  throw new Trouble(field, `${read.problem.message}; give ${read.problem.expected}.`);
}

function builtOf({ figure, until }: DraftPart, today: string): Condition {
  const from = dayOfSpan(figure, "figure", today);
  const to = dayOfSpan(until, "until", today);
  if (from !== undefined && to !== undefined && from > to) {
    throw new Trouble("until", `${until} lies before ${figure}; give the earlier date first.`);
  }
  return { op: "built", ...(from === undefined ? {} : { from }), ...(to === undefined ? {} : { to }) };
}

function partCondition(part: DraftPart, reading: DraftReading): Condition {
  switch (part.about) {
    case "everyCar":
      return { op: "always" };
    case "series":
      return { op: "series", in: someOf(part, "series") };
    case "status":
      return { op: "status", in: someOf(part, "statuses") };
    case "built":
      return builtOf(part, reading.today);
    case "anyVerdict":
      return { op: "anyVerdict", in: ticked(part, comparedVerdicts) };
    case "modified":
      return { op: "modified", in: ticked(part, assemblies) };
    case "known":
      return { op: "known", what: knowables.find((one) => one === part.figure) ?? "status" };
    case "characteristic":
      return askedOf(part, reading);
  }
}

function groupCondition(
  { join, of }: DraftGroup,
  path: DraftPath,
  { reading, problems }: { readonly reading: DraftReading; readonly problems: DraftProblem[] },
): Condition {
  if (of.length === 0) {
    problems.push({
      field: draftField(path, "join"),
      message: "There is nothing in this group: add a part, or take it away.",
    });
  }
  const parts = of.flatMap((one, index): Condition[] => {
    const at = childPath(path, index);
    if (one.kind === "group") return [groupCondition(one, at, { reading, problems })];
    try {
      return [partCondition(one, reading)];
    } catch (error) {
      if (!(error instanceof Trouble)) throw error;
      problems.push({ field: draftField(at, error.field), message: error.message });
      return [];
    }
  });
  const [only] = parts;
  const joined: Condition =
    parts.length === 1 && only ? only : { op: join === "none" ? "any" : join, of: parts };
  return join === "none" ? { op: "not", of: joined } : joined;
}

/** The condition a draft amounts to, or everything that is wrong with it, each at its field. */
export function readDraft(draft: DraftGroup, reading: DraftReading): ReadDraft {
  const problems: DraftProblem[] = [];
  const raw = groupCondition(draft, "", { reading, problems });
  if (problems.length > 0) return { ok: false, problems };
  const read = conditionSchema.safeParse(raw);
  if (read.success) return { ok: true, condition: read.data };
  const message = read.error.issues[0]?.message ?? "cannot be read";
  return { ok: false, problems: [{ field: "join", message: `The condition cannot be used: ${message}.` }] };
}
