"use server";
import type { RouterInputs } from "@trunnion/api";
import { takeForm } from "../../lib/form";
import { enteredOf } from "../../lib/form-entry";
import type { FormState } from "../../lib/form-state";
import { specificationEntryPath, specificationPath, specificationReviewPath } from "../../lib/path";
import { api } from "../../lib/service";

/** A draft as an action is bound to it. */
export interface DraftReference {
  readonly series: string;
  readonly version: number;
}

type Inputs = RouterInputs["specification"];
type Entered<K extends keyof Inputs> = Omit<Inputs[K], "club" | "series" | "version">;

const text = (data: FormData, name: string): string => String(data.get(name) ?? "");

/** Takes the form that begins a new version. */
export async function startDraft(
  club: string,
  series: string,
  before: FormState,
  data: FormData,
): Promise<FormState> {
  return takeForm({
    before,
    data,
    place: specificationPath(club, series),
    work: async () => {
      const [from = "", copied] = text(data, "from").split("@");
      const input = { club, series, from, ...(copied === undefined ? {} : { version: Number(copied) }) };
      const version = await (await api()).specification.startDraft(input);
      return { to: specificationPath(club, series, version) };
    },
  });
}

/** Takes the form that gives a draft up. */
export async function discardDraft(
  club: string,
  { series, version }: DraftReference,
  before: FormState,
  data: FormData,
): Promise<FormState> {
  return takeForm({
    before,
    data,
    place: specificationPath(club, series, version),
    work: async () => {
      const entered = enteredOf<Entered<"discardDraft">>(data);
      await (await api()).specification.discardDraft({ ...entered, club, series, version });
      return { to: specificationPath(club, series) };
    },
  });
}

/** A form's `version` is the revision of the draft it was opened with. */
function withRevision<T>(data: FormData): T & { readonly revision: number } {
  return { ...enteredOf<T>(data), revision: Number(text(data, "version")) };
}

/** Takes the form of one entry, new or there already. */
export async function putEntry(
  club: string,
  draft: DraftReference & { readonly entry?: string },
  before: FormState,
  data: FormData,
): Promise<FormState> {
  const { entry, ...reference } = draft;
  return takeForm({
    before,
    data,
    place: specificationEntryPath(club, reference, entry === undefined ? {} : { id: entry }),
    work: async () => {
      const entered = withRevision<Entered<"putEntry">>(data);
      await (await api()).specification.putEntry({
        ...entered,
        ...(entry === undefined ? {} : { entry }),
        ...reference,
        club,
      });
      return { to: specificationPath(club, reference.series, reference.version) };
    },
  });
}

/** Takes the form that takes an entry out. */
export async function removeEntry(
  club: string,
  draft: DraftReference & { readonly entry: string },
  before: FormState,
  data: FormData,
): Promise<FormState> {
  const { entry, ...reference } = draft;
  return takeForm({
    before,
    data,
    place: specificationEntryPath(club, reference, { id: entry }),
    work: async () => {
      const entered = withRevision<Entered<"removeEntry">>(data);
      await (await api()).specification.removeEntry({ ...entered, entry, ...reference, club });
      return { to: specificationPath(club, reference.series, reference.version) };
    },
  });
}

/** Takes the form that makes a draft current. */
export async function makeCurrent(
  club: string,
  { series, version }: DraftReference,
  before: FormState,
  data: FormData,
): Promise<FormState> {
  return takeForm({
    before,
    data,
    place: specificationReviewPath(club, series, version),
    work: async () => {
      const entered = enteredOf<Entered<"makeCurrent">>(data);
      await (await api()).specification.makeCurrent({ ...entered, club, series, version });
      return { to: specificationPath(club, series) };
    },
  });
}
