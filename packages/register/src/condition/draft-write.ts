import type { CharacteristicBook } from "../characteristic/book";
import type { Characteristic } from "../characteristic/characteristic";
import type { UnitSystem } from "../value/print";
import type { Condition } from "./condition";
import { type Draft, type DraftGroup, type DraftPart, draftLimits, draftNodes, emptyPart } from "./draft";
import { exactFigure } from "./figure";
import { questionsFor } from "./question";

/** What a condition is shown in the form with. */
export interface DraftShowing {
  readonly book: CharacteristicBook;
  readonly system: UnitSystem;
}

type About = Extract<Condition, { readonly characteristic: string }>;

/** A whole year by its number, where the day is its first or its last; else the day. */
function spanDay(day: string | undefined, edge: "-01-01" | "-12-31"): string {
  if (day === undefined) return "";
  return day.endsWith(edge) ? day.slice(0, 4) : day;
}

/** In the order the choices have; a code that is none of them the form cannot hold. */
function codePart(codes: readonly string[], characteristic: Characteristic): Partial<DraftPart> | undefined {
  if (characteristic.kind !== "choice") return { ask: "code", figure: codes.join("; ") };
  const known = characteristic.choices.map(({ code }) => code);
  return codes.every((code) => known.includes(code)) ? { ask: "code", values: [...codes] } : undefined;
}

function aboutPart(condition: About, { book, system }: DraftShowing): Partial<DraftPart> | undefined {
  const characteristic = book.find(condition.characteristic);
  if (!characteristic) return undefined;
  const figure = (si: number) =>
    characteristic.kind === "quantity" ? exactFigure(characteristic, si, system) : String(si);
  switch (condition.op) {
    case "recorded":
    case "absent":
      return { ask: condition.op };
    case "number":
      return { ask: "number", is: condition.is, figure: figure(condition.si) };
    case "code":
      return codePart(condition.in, characteristic);
    case "textHas":
      return { ask: "textHas", figure: condition.text };
    case "date":
      return {
        ask: "date",
        is: condition.is,
        figure: condition.date === "eventDay" ? "today" : condition.date,
      };
    case "verdict":
      return { ask: "verdict", values: [...condition.in] };
    case "against": {
      const { measure, is, si } = condition;
      return { ask: measure, is, figure: measure === "ratio" ? String(si) : figure(si) };
    }
    case "sidesDiffer":
      return { ask: "sidesDiffer", figure: condition.by === undefined ? "" : figure(condition.by) };
    case "readingOlderThan":
      return { ask: "readingOlderThan", figure: String(condition.days) };
  }
}

function leaf(condition: Condition, showing: DraftShowing): DraftPart | undefined {
  switch (condition.op) {
    case "always":
      return { ...emptyPart, about: "everyCar" };
    case "series":
      return { ...emptyPart, about: "series", series: [...condition.in] };
    case "status":
      return { ...emptyPart, about: "status", statuses: [...condition.in] };
    case "built":
      return {
        ...emptyPart,
        about: "built",
        figure: spanDay(condition.from, "-01-01"),
        until: spanDay(condition.to, "-12-31"),
      };
    case "anyVerdict":
      return { ...emptyPart, about: "anyVerdict", values: [...condition.in] };
    case "modified":
      return { ...emptyPart, about: "modified", values: [...condition.in] };
    case "known":
      return { ...emptyPart, about: "known", figure: condition.what };
    case "all":
    case "any":
    case "not":
      return undefined;
    default: {
      const characteristic = showing.book.find(condition.characteristic);
      const asked = aboutPart(condition, showing);
      if (!characteristic || !asked?.ask || !questionsFor(characteristic).includes(asked.ask))
        return undefined;
      const side = "side" in condition && condition.side !== undefined ? condition.side : "";
      if (side !== "" && !characteristic.sided) return undefined;
      return { ...emptyPart, characteristic: characteristic.label, side, ...asked };
    }
  }
}

function group(condition: Condition, showing: DraftShowing, level: number): DraftGroup | undefined {
  if (level > draftLimits.depth) return undefined;
  const join = condition.op === "not" ? "none" : condition.op === "any" ? "any" : "all";
  const inner = condition.op === "not" ? condition.of : condition;
  const joinsInner = condition.op === "not" ? inner.op === "any" : inner.op === "all" || inner.op === "any";
  const parts =
    joinsInner && "of" in inner && Array.isArray(inner.of) ? (inner.of as readonly Condition[]) : [inner];
  const drafts = parts.map((one) => shown(one, showing, level));
  return drafts.every((one) => one !== undefined) ? { kind: "group", join, of: drafts } : undefined;
}

function shown(condition: Condition, showing: DraftShowing, level: number): Draft | undefined {
  const isGroup = condition.op === "all" || condition.op === "any" || condition.op === "not";
  return isGroup ? group(condition, showing, level + 1) : leaf(condition, showing);
}

/**
 * A condition as the form shows it. `undefined` for one that the form cannot hold: nested or numerous beyond its
 * limits, about a characteristic that is not in the book, or asking what does not go with its kind. Such a condition
 * still filters, and is said in words.
 */
export function draftOf(condition: Condition, showing: DraftShowing): DraftGroup | undefined {
  const draft = group(condition, showing, 1);
  return draft && draftNodes(draft).length - 1 <= draftLimits.parts ? draft : undefined;
}
