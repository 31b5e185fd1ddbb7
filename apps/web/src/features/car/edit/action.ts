"use server";
import type { RouterInputs } from "@trunnion/api";
import { type Caller, sendForm } from "../../../lib/form";
import { enteredOf } from "../../../lib/form-entry";
import type { FormState } from "../../../lib/form-state";
import { addCarPath, carPath, editCarPath } from "../../../lib/path";

type Inputs = RouterInputs["record"];
type Entered<K extends keyof Inputs> = Omit<Inputs[K], "club" | "car" | "id">;

interface Change {
  readonly club: string;
  readonly car: string;
  /** Section of the record one comes back to. */
  readonly section: string;
  readonly before: FormState;
  readonly data: FormData;
  readonly work: (to: Caller) => Promise<unknown>;
}

function change({ club, car, section, before, data, work }: Change): Promise<FormState> {
  return sendForm({ before, data, place: editCarPath(club, car) }, async (to) => {
    await work(to);
    return editCarPath(club, car, section);
  });
}

/** Takes the form that adds a car. */
export async function addCar(club: string, before: FormState, data: FormData): Promise<FormState> {
  const sent = { before, data, place: addCarPath(club) };
  return sendForm<Omit<Inputs["add"], "club">>(sent, async (to, entered) =>
    carPath(club, await to.record.add({ ...entered, club })),
  );
}

/** Takes the form over number and series; the car may be named otherwise afterwards. */
export async function fileCar(
  club: string,
  car: string,
  before: FormState,
  data: FormData,
): Promise<FormState> {
  const sent = { before, data, place: editCarPath(club, car) };
  return sendForm<Entered<"file">>(sent, async (to, entered) =>
    editCarPath(club, await to.record.file({ ...entered, club, car }), "filed"),
  );
}

/** Takes the form over options. */
export async function setOptions(
  club: string,
  car: string,
  before: FormState,
  data: FormData,
): Promise<FormState> {
  const entered = { ...enteredOf<Entered<"setOptions">>(data), club, car };
  return change({ club, car, section: "option", before, data, work: (to) => to.record.setOptions(entered) });
}

/** Takes the form over a number or mark: a new one without an id. */
export async function saveIdentity(
  club: string,
  car: string,
  id: string | undefined,
  before: FormState,
  data: FormData,
): Promise<FormState> {
  const entered = { ...enteredOf<Entered<"addIdentity">>(data), club, car };
  const work = (to: Caller) =>
    id === undefined ? to.record.addIdentity(entered) : to.record.correctIdentity({ ...entered, id });
  return change({ club, car, section: "identity", before, data, work });
}

export async function removeIdentity(
  club: string,
  car: string,
  id: string,
  before: FormState,
  data: FormData,
): Promise<FormState> {
  const entered = { ...enteredOf<Entered<"removeIdentity">>(data), club, car, id };
  return change({
    club,
    car,
    section: "identity",
    before,
    data,
    work: (to) => to.record.removeIdentity(entered),
  });
}

/** Takes the form over a status: a new one without an id. */
export async function saveStatus(
  club: string,
  car: string,
  id: string | undefined,
  before: FormState,
  data: FormData,
): Promise<FormState> {
  const entered = { ...enteredOf<Entered<"addStatus">>(data), club, car };
  const work = (to: Caller) =>
    id === undefined ? to.record.addStatus(entered) : to.record.correctStatus({ ...entered, id });
  return change({ club, car, section: "status", before, data, work });
}

export async function removeStatus(
  club: string,
  car: string,
  id: string,
  before: FormState,
  data: FormData,
): Promise<FormState> {
  const entered = { ...enteredOf<Entered<"removeStatus">>(data), club, car, id };
  return change({
    club,
    car,
    section: "status",
    before,
    data,
    work: (to) => to.record.removeStatus(entered),
  });
}

/** Takes the form over a note of the history: a new one without an id. */
export async function saveNote(
  club: string,
  car: string,
  id: string | undefined,
  before: FormState,
  data: FormData,
): Promise<FormState> {
  const entered = { ...enteredOf<Entered<"addNote">>(data), club, car };
  const work = (to: Caller) =>
    id === undefined ? to.record.addNote(entered) : to.record.correctNote({ ...entered, id });
  return change({ club, car, section: "note", before, data, work });
}

export async function removeNote(
  club: string,
  car: string,
  id: string,
  before: FormState,
  data: FormData,
): Promise<FormState> {
  const entered = { ...enteredOf<Entered<"removeNote">>(data), club, car, id };
  return change({ club, car, section: "note", before, data, work: (to) => to.record.removeNote(entered) });
}

/** Takes the form over an as-built value. */
export async function setAsBuilt(
  club: string,
  car: string,
  characteristic: string,
  before: FormState,
  data: FormData,
): Promise<FormState> {
  const entered = { ...enteredOf<Entered<"setAsBuilt">>(data), club, car, characteristic };
  return change({
    club,
    car,
    section: "as-built",
    before,
    data,
    work: (to) => to.record.setAsBuilt(entered),
  });
}
