"use server";
import type { ReadEntryList, RouterInputs } from "@trunnion/api";
import { refused } from "@trunnion/register";
import { sendForm, takeForm } from "../../lib/form";
import { enteredOf } from "../../lib/form-entry";
import type { FormState } from "../../lib/form-state";
import { changeEventPath, entryListPath, eventPath, newEntryPath, newEventPath } from "../../lib/path";
import { api } from "../../lib/service";

type Inputs = RouterInputs["event"];

/** Takes the form of a new event; then on to it. */
export async function planEvent(club: string, before: FormState, data: FormData): Promise<FormState> {
  const sent = { before, data, place: newEventPath(club) };
  return sendForm<Omit<Inputs["plan"], "club">>(sent, async (to, entered) =>
    eventPath(club, await to.event.plan({ ...entered, club })),
  );
}

/** Takes the form of an event there is. */
export async function changeEvent(
  club: string,
  event: string,
  before: FormState,
  data: FormData,
): Promise<FormState> {
  const sent = { before, data, place: changeEventPath(club, event) };
  return sendForm<Omit<Inputs["change"], "club" | "event">>(sent, async (to, entered) => {
    await to.event.change({ ...entered, club, event });
    return eventPath(club, event);
  });
}

/** Takes the form of a new entry. */
export async function enterCar(
  club: string,
  event: string,
  before: FormState,
  data: FormData,
): Promise<FormState> {
  const sent = { before, data, place: newEntryPath(club, event) };
  return sendForm<Omit<Inputs["enter"], "club" | "event">>(sent, async (to, entered) => {
    await to.event.enter({ ...entered, club, event });
    return eventPath(club, event);
  });
}

/** Takes the form of an entry there is. */
export async function changeEntry(
  club: string,
  of: { readonly event: string; readonly entry: string },
  before: FormState,
  data: FormData,
): Promise<FormState> {
  const sent = { before, data, place: eventPath(club, of.event) };
  return sendForm<Omit<Inputs["changeEntry"], "club" | "event" | "entry">>(sent, async (to, entered) => {
    await to.event.changeEntry({ ...entered, ...of, club });
    return eventPath(club, of.event);
  });
}

/** A pasted list as it was read, with the form that shows it. */
export interface EntryListState extends FormState {
  readonly read?: Pick<ReadEntryList, "entries" | "unknown">;
}

/** Largest file read into the box, bytes: an entry list is short. */
const FILE_LIMIT = 900_000;

/**
 * Takes a pasted or dropped list: read first, entered when its button is pressed. What stays open comes back with the
 * list as it was read and every choice made.
 */
export async function takeEntryList(
  club: string,
  event: string,
  before: FormState,
  data: FormData,
): Promise<EntryListState> {
  const caller = await api();
  const file = data.get("file");
  if (file instanceof File && file.size > 0) {
    const taken = await takeForm({
      before,
      data,
      place: entryListPath(club, event),
      work: async () => {
        const { name, size } = file;
        if (size > FILE_LIMIT)
          throw refused("FILE_TOO_LARGE", { file: name, bytes: size, limit: FILE_LIMIT });
        const bytes = new Uint8Array(await file.arrayBuffer());
        data.set("text", await caller.event.listText({ club, event, file: name.slice(0, 200), bytes }));
        return { done: "read" };
      },
    });
    if (taken.done === undefined) return taken;
  }
  const { text = "", choices = {} } = enteredOf<{ text?: string; choices?: Record<string, string> }>(data);
  const state = await takeForm({
    before,
    data,
    place: entryListPath(club, event),
    work: async () => {
      if (data.get("do") !== "enter") return { done: "read" };
      const made = Array.isArray(choices) ? Object.fromEntries(Object.entries(choices)) : choices;
      await caller.event.takeList({ club, event, text, choices: chosenLines(data, made) });
      return { to: eventPath(club, event) };
    },
  });
  const typed = { ...state.typed, ...typedAgain(data) };
  if (state.refusal) return { ...state, typed };
  let read: ReadEntryList | undefined;
  const looked = await takeForm({
    before,
    data,
    place: entryListPath(club, event),
    work: async () => {
      read = await caller.event.readList({ club, event, text });
      return { done: "" };
    },
  });
  if (!read) return { ...looked, typed };
  const { done: _done, ...kept } = state;
  return { ...kept, typed, read: { entries: read.entries, unknown: read.unknown } };
}

function typedAgain(data: FormData): Readonly<Record<string, readonly string[]>> {
  const fields = [...data].filter(
    (pair): pair is [string, string] => typeof pair[1] === "string" && !pair[0].startsWith("$ACTION"),
  );
  return Object.fromEntries(fields.map(([name, value]) => [name, [value]]));
}

/** Fields of the choices are named by lines, which need not be in a row. */
function chosenLines(data: FormData, _made: unknown): Inputs["takeList"]["choices"] {
  const pairs = [...data].flatMap(([name, value]) => {
    const line = name.match(/^choices\.(\d{1,6})$/)?.[1];
    return line !== undefined && typeof value === "string" ? [[line, value] as const] : [];
  });
  return Object.fromEntries(pairs) as Inputs["takeList"]["choices"];
}
