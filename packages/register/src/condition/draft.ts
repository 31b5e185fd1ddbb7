import { z } from "zod";
import { sides } from "../characteristic/characteristic";
import type { Condition } from "./condition";
import { conditionLimits } from "./schema";

/** How far the form goes: groups within groups, the outermost counted, as deep as a condition may go; and parts in all. */
export const draftLimits = { depth: conditionLimits.depth - 1, parts: 40, text: 200, values: 100 } as const;

/** What a part of the form asks about. */
export const draftSubjects = [
  "characteristic",
  "series",
  "status",
  "built",
  "anyVerdict",
  "modified",
  "known",
  "everyCar",
] as const;
export type DraftSubject = (typeof draftSubjects)[number];

/** What a part asks of a characteristic. */
export const draftQuestions = [
  "number",
  "code",
  "textHas",
  "date",
  "verdict",
  "difference",
  "ratio",
  "sidesDiffer",
  "readingOlderThan",
  "recorded",
  "absent",
] as const;
export type DraftQuestion = (typeof draftQuestions)[number];

const text = z.string().max(draftLimits.text).catch("");

const ticks = z.array(text).max(draftLimits.values).catch([]);

const part = z.object({
  kind: z.literal("part"),
  about: z.enum(draftSubjects).catch("characteristic"),
  /** The characteristic's label, key or another name, as typed. */
  characteristic: text,
  side: z.enum(["", ...sides]).catch(""),
  ask: z.enum(["", ...draftQuestions]).catch(""),
  is: z.enum(["eq", "ne", "lt", "le", "gt", "ge"]).catch("eq"),
  /** The figure, words, day or number of days asked for; the first day of a span; what is to be known. */
  figure: text,
  /** The last day of a span. */
  until: text,
  /** Codes of a choice, verdicts or assemblies that are ticked. */
  values: ticks,
  /** Short names of the series ticked. */
  series: ticks,
  statuses: ticks,
});
export type DraftPart = Readonly<z.infer<typeof part>>;

/** How the parts of a group go together; `none` is none of them. */
export const draftJoins = ["all", "any", "none"] as const;
export type DraftJoin = (typeof draftJoins)[number];

/** A condition as the form holds it: everything as typed, nothing yet believed. */
export interface DraftGroup {
  readonly kind: "group";
  readonly join: DraftJoin;
  readonly of: readonly Draft[];
}
export type Draft = DraftGroup | DraftPart;

const join = z.enum(draftJoins).catch("all");

/** Reads what a form sent, level by level; what it cannot have sent becomes nothing, what is too deep is left out. */
function groupFrom(raw: unknown, level: number, room: { parts: number }): DraftGroup {
  const { join: how, of } = z
    .object({ join, of: z.array(z.unknown()).catch([]) })
    .catch({ join: "all", of: [] })
    .parse(raw);
  const parts = of.flatMap((one): Draft[] => {
    if (room.parts <= 0) return [];
    room.parts -= 1;
    const read = part.safeParse(one);
    if (read.success) return [read.data];
    const isGroup = z.object({ kind: z.literal("group") }).safeParse(one).success;
    return isGroup && level < draftLimits.depth ? [groupFrom(one, level + 1, room)] : [];
  });
  return { kind: "group", join: how, of: parts };
}

/** The draft that a form's fields amount to; never refuses, since a form is filled in piece by piece. */
export function draftFrom(raw: unknown): DraftGroup {
  return groupFrom(raw, 1, { parts: draftLimits.parts });
}

/** A part nobody has filled in yet. */
export const emptyPart: DraftPart = {
  kind: "part",
  about: "characteristic",
  characteristic: "",
  side: "",
  ask: "",
  is: "eq",
  figure: "",
  until: "",
  values: [],
  series: [],
  statuses: [],
};

/** The form before anything was asked. */
export const emptyDraft: DraftGroup = { kind: "group", join: "all", of: [emptyPart] };

/** Every group and part of a draft, itself first. */
export function draftNodes(draft: Draft): readonly Draft[] {
  return draft.kind === "part" ? [draft] : [draft, ...draft.of.flatMap(draftNodes)];
}

/** Where a part of a draft stands, as names of form fields have it: "" the outermost group, "of.0.of.2" within. */
export type DraftPath = string;

export const childPath = (group: DraftPath, index: number): DraftPath =>
  group === "" ? `of.${index}` : `${group}.of.${index}`;

/** Name of a form's field: `of.0.figure`. */
export const draftField = (path: DraftPath, field: string): string =>
  path === "" ? field : `${path}.${field}`;

/** What a button of the form does. */
export type DraftEdit =
  | { readonly do: "addPart" | "addGroup" | "remove"; readonly at: DraftPath }
  | { readonly do: "pick"; readonly at: DraftPath; readonly characteristic: string };

function changed(
  draft: Draft,
  path: readonly number[],
  change: (one: Draft) => readonly Draft[],
): readonly Draft[] {
  const [head, ...rest] = path;
  if (head === undefined) return change(draft);
  if (draft.kind === "part") return [draft];
  const of = draft.of.flatMap((one, index) => (index === head ? changed(one, rest, change) : [one]));
  return [{ ...draft, of }];
}

const indexesOf = (path: DraftPath) => (path.match(/\d+/g) ?? []).map(Number);

/** Whether a group at this path may hold another group, and whether there is room for one more part. */
export function roomIn(
  draft: DraftGroup,
  path: DraftPath,
): { readonly part: boolean; readonly group: boolean } {
  const part = draftNodes(draft).length - 1 < draftLimits.parts;
  return { part, group: part && indexesOf(path).length + 1 < draftLimits.depth };
}

function edited(one: Draft, edit: DraftEdit, room: ReturnType<typeof roomIn>): readonly Draft[] {
  if (edit.do === "remove") return [];
  if (edit.do === "pick")
    return one.kind === "part" ? [{ ...one, characteristic: edit.characteristic }] : [one];
  if (one.kind === "part" || !(edit.do === "addPart" ? room.part : room.group)) return [one];
  const added: Draft = edit.do === "addPart" ? emptyPart : { kind: "group", join: "any", of: [emptyPart] };
  return [{ ...one, of: [...one.of, added] }];
}

/** The draft after a button was pressed. What would go beyond the limits, or points nowhere, changes nothing. */
export function editDraft(draft: DraftGroup, edit: DraftEdit): DraftGroup {
  const room = roomIn(draft, edit.at);
  const [root] = changed(draft, indexesOf(edit.at), (one) => edited(one, edit, room));
  return root?.kind === "group" ? root : { kind: "group", join: "all", of: [] };
}

/** The form's fields, by name, that a draft amounts to: what {@link draftFrom} reads back. */
export function draftFields(draft: Draft, path: DraftPath = ""): Readonly<Record<string, readonly string[]>> {
  const name = (field: string) => draftField(path, field);
  if (draft.kind === "group") {
    const inner = draft.of.map((one, index) => draftFields(one, childPath(path, index)));
    return Object.assign({ [name("kind")]: ["group"], [name("join")]: [draft.join] }, ...inner);
  }
  const fields = Object.entries(draft).map(([field, value]) =>
    typeof value === "string" ? [name(field), [value]] : [name(`${field}[]`), value],
  );
  return Object.fromEntries(fields);
}

/** What stands between a draft and a condition, told at the field. */
export interface DraftProblem {
  readonly field: string;
  readonly message: string;
}

export type ReadDraft =
  | { readonly ok: true; readonly condition: Condition }
  | { readonly ok: false; readonly problems: readonly DraftProblem[] };
