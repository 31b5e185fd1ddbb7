import {
  type ChangeDraft,
  type CharacteristicBook,
  emptyFastener,
  emptyModification,
  type ModificationDraft,
  type SubmissionContent,
  submissionLimits,
} from "@trunnion/register";
import { enteredOf } from "../../lib/form-entry";

/** What a button of the form does to a draft besides saving it. */
export type DraftEdit =
  | { readonly kind: "add"; readonly keys: readonly string[] }
  | { readonly kind: "remove"; readonly place: number }
  | { readonly kind: "addFastener" }
  | { readonly kind: "removeFastener"; readonly place: number };

const text = (value: unknown) => (typeof value === "string" ? value.replace(/\r\n?/g, "\n") : "");
const list = (value: unknown) => (Array.isArray(value) ? (value as unknown[]) : []);
const record = (value: unknown) =>
  (typeof value === "object" && value !== null ? value : {}) as Readonly<Record<string, unknown>>;
const yesNo = (value: unknown) => (value === "yes" || value === "no" ? value : "");
const sideOf = (value: unknown) => (value === "left" || value === "right" ? value : "whole");

function changeOf(value: unknown): ChangeDraft {
  const { characteristic, side, before, after } = record(value);
  return {
    characteristic: text(characteristic),
    side: sideOf(side),
    before: text(before),
    after: text(after),
  };
}

function fastenerOf(value: unknown) {
  const said = record(value);
  return Object.fromEntries(
    Object.keys(emptyFastener).map((part) => [part, text(said[part])]),
  ) as unknown as typeof emptyFastener;
}

function modificationOf(value: unknown): ModificationDraft {
  const said = record(value);
  return {
    fitted: text(said.fitted),
    odometer: text(said.odometer),
    reason: text(said.reason),
    donor: text(said.donor),
    note: text(said.note),
    reversible: yesNo(said.reversible),
    oldPartKept: yesNo(said.oldPartKept),
    changes: list(said.changes).map(changeOf),
    fasteners: list(said.fasteners).map(fastenerOf),
  };
}

/** What a form says, over what the draft had: sheets, and modifications after the first, are not on this form and stay. */
export function contentOfForm(data: FormData, kept: SubmissionContent): SubmissionContent {
  const { units, modifications } = enteredOf<{ units?: unknown; modifications?: unknown }>(data);
  const said = list(modifications).slice(0, 1).map(modificationOf);
  return {
    units: units === "imperial" ? "imperial" : "metric",
    modifications: [...said, ...kept.modifications.slice(said.length)],
    sheets: kept.sheets,
  };
}

/** Lines for some characteristics: one per side where there are sides; those that are there already are passed over. */
function linesFor(
  keys: readonly string[],
  have: readonly ChangeDraft[],
  book: CharacteristicBook,
): readonly ChangeDraft[] {
  return keys.flatMap((key): ChangeDraft[] => {
    const characteristic = book.find(key);
    if (!characteristic) return [];
    const sides = characteristic.sided ? (["left", "right"] as const) : (["whole"] as const);
    return sides
      .filter((side) => !have.some((one) => one.characteristic === key && one.side === side))
      .map((side) => ({ characteristic: key, side, before: "", after: "" }));
  });
}

/** A draft with something added or taken away. The form is of one occasion: the first modification. */
export function editContent(
  content: SubmissionContent,
  edit: DraftEdit,
  book: CharacteristicBook,
): SubmissionContent {
  const [first = emptyModification, ...rest] = content.modifications;
  const without = <T>(all: readonly T[], place: number) => all.filter((_, index) => index !== place);
  const change = (): ModificationDraft => {
    switch (edit.kind) {
      case "add":
        return {
          ...first,
          changes: [...first.changes, ...linesFor(edit.keys, first.changes, book)].slice(
            0,
            submissionLimits.changes,
          ),
        };
      case "remove":
        return { ...first, changes: without(first.changes, edit.place) };
      case "addFastener":
        return {
          ...first,
          fasteners: [...first.fasteners, emptyFastener].slice(0, submissionLimits.fasteners),
        };
      case "removeFastener":
        return { ...first, fasteners: without(first.fasteners, edit.place) };
    }
  };
  return { ...content, modifications: [change(), ...rest] };
}

/** What the pressed button asks of the draft; nothing for one that only saves or moves on. */
export function editOf(pressed: string, data: FormData): DraftEdit | undefined {
  const [what, place = ""] = pressed.split(":");
  if (what === "add")
    return { kind: "add", keys: data.getAll("part[]").filter((one) => typeof one === "string") };
  if (what === "fastener") return { kind: "addFastener" };
  if (what === "remove") return { kind: "remove", place: Number(place) };
  if (what === "removeFastener") return { kind: "removeFastener", place: Number(place) };
  return undefined;
}
