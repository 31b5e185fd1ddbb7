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

/**
 * What a button of the form does to a draft besides saving it; `to` is the place of the change it is about. Parts added to
 * a place where there is no change yet begin one of their own.
 */
export type DraftEdit =
  | { readonly kind: "add"; readonly to: number; readonly keys: readonly string[] }
  | { readonly kind: "remove"; readonly to: number; readonly place: number }
  | { readonly kind: "same"; readonly to: number; readonly place: number }
  | { readonly kind: "addFastener"; readonly to: number }
  | { readonly kind: "removeFastener"; readonly to: number; readonly place: number }
  | { readonly kind: "removeChange"; readonly to: number };

const text = (value: unknown) => (typeof value === "string" ? value.replace(/\r\n?/g, "\n") : "");
const list = (value: unknown) => (Array.isArray(value) ? (value as unknown[]) : []);
const record = (value: unknown) =>
  (typeof value === "object" && value !== null ? value : {}) as Readonly<Record<string, unknown>>;
const yesNo = (value: unknown) => (value === "yes" || value === "no" ? value : "");
const sideOf = (value: unknown) => (value === "left" || value === "right" ? value : "whole");

function changeOf(value: unknown): ChangeDraft {
  const { characteristic, side, before, recorded, after } = record(value);
  return {
    characteristic: text(characteristic),
    side: sideOf(side),
    // The field shows what the record has: left as it is, nothing was said, and the record stands with all its digits.
    before: text(before) === text(recorded) ? "" : text(before),
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

/** What a form says, over what the draft had: sheets, and changes that an older form does not have, stay. */
export function contentOfForm(data: FormData, kept: SubmissionContent): SubmissionContent {
  const form = enteredOf<{ units?: unknown; modifications?: unknown; text?: unknown }>(data);
  const said = list(form.modifications).slice(0, submissionLimits.modifications).map(modificationOf);
  const word = text(form.text);
  return {
    units: form.units === "imperial" ? "imperial" : "metric",
    modifications: [...said, ...kept.modifications.slice(said.length)],
    sheets: kept.sheets,
    ...(word === "" ? {} : { word }),
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

const without = <T>(all: readonly T[], place: number) => all.filter((_, index) => index !== place);

/** A line with what is on the car on the left; what was there before stays each side's own. */
function asLeft(line: ChangeDraft, { changes }: ModificationDraft): ChangeDraft {
  const left = changes.find((one) => one.characteristic === line.characteristic && one.side === "left");
  return left === undefined || left.after === "" ? line : { ...line, after: left.after };
}

function changed(
  one: ModificationDraft,
  edit: Exclude<DraftEdit, { kind: "removeChange" }>,
  book: CharacteristicBook,
): ModificationDraft {
  switch (edit.kind) {
    case "add": {
      const lines = linesFor(edit.keys, one.changes, book);
      return { ...one, changes: [...one.changes, ...lines].slice(0, submissionLimits.changes) };
    }
    case "remove":
      return { ...one, changes: without(one.changes, edit.place) };
    case "same":
      return {
        ...one,
        changes: one.changes.map((line, index) => (index === edit.place ? asLeft(line, one) : line)),
      };
    case "addFastener":
      return { ...one, fasteners: [...one.fasteners, emptyFastener].slice(0, submissionLimits.fasteners) };
    case "removeFastener":
      return { ...one, fasteners: without(one.fasteners, edit.place) };
  }
}

/** A draft with something added or taken away. */
export function editContent(
  content: SubmissionContent,
  edit: DraftEdit,
  book: CharacteristicBook,
): SubmissionContent {
  const { modifications } = content;
  const { to } = edit;
  if (edit.kind === "removeChange") return { ...content, modifications: without(modifications, to) };
  const at = Math.min(to, modifications.length, submissionLimits.modifications - 1);
  const next = changed(modifications[at] ?? emptyModification, edit, book);
  if (next.changes.length === 0 && modifications[at] === undefined) return content;
  return { ...content, modifications: [...modifications.slice(0, at), next, ...modifications.slice(at + 1)] };
}

/** What the pressed button asks of the draft; nothing for one that only saves or moves on. */
export function editOf(pressed: string, data: FormData): DraftEdit | undefined {
  const [what, which = "0", line = ""] = pressed.split(":");
  const [to, place] = [Number(which) || 0, Number(line) || 0];
  if (what === "add")
    return { kind: "add", to, keys: data.getAll("part[]").filter((one) => typeof one === "string") };
  if (what === "fastener") return { kind: "addFastener", to };
  if (what === "same") return { kind: "same", to, place };
  if (what === "remove") return { kind: "remove", to, place };
  if (what === "removeFastener") return { kind: "removeFastener", to, place };
  if (what === "removeChange") return { kind: "removeChange", to };
  return undefined;
}
