"use server";
import type { FilterForm, RouterInputs } from "@trunnion/api";
import {
  type Condition,
  characteristicBook,
  draftFields,
  draftFrom,
  editDraft,
  Invalid,
  readDraft,
} from "@trunnion/register";
import { sendForm } from "../../lib/form";
import { enteredOf } from "../../lib/form-entry";
import type { FormState } from "../../lib/form-state";
import { ruleFormPath, ruleSetPath, ruleSetsPath } from "../../lib/path";
import { editOf, refresh } from "../filter/button";

type Inputs = RouterInputs["ruleSet"];

/** A draft of a rule set and the revision its page was made with. */
export interface DraftOf {
  readonly ruleSet: string;
  readonly version: number;
  readonly revision: number;
}

/** Copies a version into next year's draft, and goes there. */
export async function copyRuleSet(
  club: string,
  of: { readonly ruleSet: string; readonly version: number },
  before: FormState,
  data: FormData,
): Promise<FormState> {
  const sent = { before, data, place: ruleSetsPath(club) };
  return sendForm<{ edition: string }>(sent, async (to, { edition }) =>
    ruleSetPath(club, of.ruleSet, await to.ruleSet.copy({ club, ...of, edition })),
  );
}

/** Makes a draft current, or throws it away. */
export async function settleRuleSet(
  club: string,
  draft: DraftOf,
  deed: "makeCurrent" | "discard",
  before: FormState,
  data: FormData,
): Promise<FormState> {
  const place = ruleSetPath(club, draft.ruleSet, draft.version);
  return sendForm({ before, data, place }, async (to) => {
    await to.ruleSet[deed]({ club, ...draft });
    return deed === "discard" ? ruleSetsPath(club) : place;
  });
}

/** Takes a check, class or limit out of a draft. */
export async function removeRow(
  club: string,
  draft: DraftOf,
  row: Pick<Inputs["removeRow"], "kind" | "row">,
  before: FormState,
  data: FormData,
): Promise<FormState> {
  const place = ruleSetPath(club, draft.ruleSet, draft.version);
  return sendForm({ before, data, place }, async (to) => {
    await to.ruleSet.removeRow({ club, ...draft, ...row });
    return place;
  });
}

/** Takes the form of a limit. */
export async function putLimit(
  club: string,
  draft: DraftOf,
  id: string,
  before: FormState,
  data: FormData,
): Promise<FormState> {
  const { ruleSet: slug, version } = draft;
  const sent = { before, data, place: ruleFormPath(club, { slug, version }, "limit") };
  type Entered = Pick<Inputs["putLimit"], "characteristic" | "sourceTitle">;
  return sendForm<Entered>(sent, async (to, entered) => {
    await to.ruleSet.putLimit({ ...entered, ...draft, id, club });
    return ruleSetPath(club, slug, version);
  });
}

/** The condition that the form's parts make; everything wrong with it at its field. */
function conditionOf({ own, system, today }: FilterForm, entered: unknown): Condition {
  const read = readDraft(draftFrom(entered), { book: characteristicBook(own), system, today });
  if (!read.ok) throw new Invalid(read.problems);
  return read.condition;
}

/** A button that changes the parts of the condition gives the form back, with everything else as it was typed. */
function redrawn(before: FormState, data: FormData): FormState | undefined {
  const pressed = String(data.get("do") ?? "");
  const edit = editOf(pressed);
  if (edit === undefined && pressed !== refresh) return undefined;
  const draft = draftFrom(enteredOf<unknown>(data));
  const parts = draftFields(edit === undefined ? draft : editDraft(draft, edit));
  const others = [...data].flatMap(([name, value]) =>
    typeof value === "string" && !/^(?:\$|of\.|do$|kind$|join$)/.test(name) ? [[name, [value]] as const] : [],
  );
  return { tries: before.tries + 1, typed: { ...Object.fromEntries(others), ...parts }, errors: {} };
}

/** Texts of a check are one line each, however wide the box they were written in. */
function withoutBreaks(entered: Readonly<Record<string, unknown>>): Record<string, unknown> {
  return Object.fromEntries(
    Object.entries(entered).map(([name, text]) => [
      name,
      typeof text === "string" ? text.replace(/\s*[\r\n]+\s*/g, " ") : text,
    ]),
  );
}

/** Takes the form of a check or a class, with its condition. `kept`: a condition the form cannot show stays as it is. */
export async function putRuled(
  club: string,
  draft: DraftOf,
  row: { readonly kind: "check" | "class"; readonly was: string; readonly kept?: Condition },
  before: FormState,
  data: FormData,
): Promise<FormState> {
  const again = redrawn(before, data);
  if (again) return again;
  const { ruleSet: slug, version } = draft;
  const sent = { before, data, place: ruleFormPath(club, { slug, version }, row.kind) };
  return sendForm<Record<string, unknown>>(sent, async ({ ruleSet, filter }, all) => {
    const { of: _parts, join: _join, kind: _kind, do: _do, ...entered } = all;
    const condition = row.kept ?? conditionOf(await filter.form({ club }), all);
    const put = { ...withoutBreaks(entered), ...draft, was: row.was, condition, club };
    if (row.kind === "check") await ruleSet.putCheck(put as Inputs["putCheck"]);
    else await ruleSet.putClass(put as Inputs["putClass"]);
    return ruleSetPath(club, slug, version);
  });
}
