"use server";
import type { RouterInputs } from "@trunnion/api";
import { type Side, sheetField } from "@trunnion/register";
import { revalidatePath } from "next/cache";
import { takeForm } from "../../lib/form";
import { typedOf } from "../../lib/form-entry";
import type { FormState } from "../../lib/form-state";
import { newSettingSheetPath, settingSheetsPath } from "../../lib/path";
import { api } from "../../lib/service";

type Entered = RouterInputs["settingSheet"]["handIn"];
type InstrumentDimension = RouterInputs["instrument"]["add"]["dimension"];

/** Most of a file that is read as a table of readings, characters. */
const TABLE = 200_000;

const textOf = (data: FormData, name: string): string => {
  const value = data.get(name);
  return typeof value === "string" ? value : "";
};

/** The places the form has, each named by a hidden field. */
function placesOf(data: FormData) {
  return data.getAll("cell").flatMap((cell) => {
    const [characteristic = "", side = "", dimension = ""] = typeof cell === "string" ? cell.split(" ") : [];
    return [{ characteristic, side: side as Side, dimension }];
  });
}

function enteredOf(data: FormData, { club, car }: { readonly club: string; readonly car: string }): Entered {
  return {
    club,
    car,
    clientKey: textOf(data, "clientKey"),
    stepKey: textOf(data, "stepKey"),
    on: textOf(data, "on"),
    loadState: textOf(data, "loadState") as Entered["loadState"],
    note: textOf(data, "note"),
    cells: placesOf(data).map(({ characteristic, side, dimension }) => ({
      characteristic,
      side,
      asFound: textOf(data, sheetField(characteristic, side, "asFound")),
      asLeft: textOf(data, sheetField(characteristic, side, "asLeft")),
      instrument: textOf(data, `instrument-${dimension}`),
    })),
  };
}

async function tableOf(data: FormData): Promise<string> {
  const file = data.get("file");
  const pasted = textOf(data, "table").trim();
  if (pasted !== "" || !(file instanceof File) || file.size === 0) return pasted;
  return file.size > TABLE ? "x".repeat(TABLE + 1) : file.text();
}

/** Hands a setting sheet in; or, where the button for the table was pressed, only puts the table into the form. */
export async function sendSheet(
  club: string,
  car: string,
  before: FormState,
  data: FormData,
): Promise<FormState> {
  const table = data.get("step") === "table" ? await tableOf(data) : "";
  const place = newSettingSheetPath(club, car);
  if (data.get("step") === "instrument") return addToBooks({ club, place, before, data });
  if (table !== "") return fillFrom(table, { club, place, before, data });
  return takeForm({
    before,
    data,
    place,
    work: async () => {
      await (await api()).settingSheet.handIn(enteredOf(data, { club, car }));
      return { to: settingSheetsPath(club, car, { sent: "yes" }) };
    },
  });
}

interface Filling {
  readonly club: string;
  readonly place: string;
  readonly before: FormState;
  readonly data: FormData;
}

/** Puts an instrument on the club's books and chooses it for what it reads; nothing is handed in by it. */
async function addToBooks({ club, place, before, data }: Filling): Promise<FormState> {
  const part = (name: string) => textOf(data, `instrument.${name}`);
  const dimension = part("dimension");
  let id = "";
  const state = await takeForm({
    before,
    data,
    place,
    work: async () => {
      id = await (await api()).instrument.add({
        club,
        label: part("label"),
        dimension: dimension as InstrumentDimension,
        resolution: part("resolution"),
        uncertainty: part("uncertainty"),
        calibratedOn: part("calibratedOn"),
        calibratedUntil: part("calibratedUntil"),
        number: part("number"),
      });
      return { done: "" };
    },
  });
  // The fields stand among others: each is told at its own.
  const errors = Object.fromEntries(
    Object.entries(state.errors).map(([field, told]) => [`instrument.${field}`, told]),
  );
  if (id === "") return { ...state, errors };
  revalidatePath(place);
  const cleared = Object.fromEntries(
    ["label", "dimension", "number", "resolution", "uncertainty", "calibratedOn", "calibratedUntil"].map(
      (name) => [`instrument.${name}`, [""]],
    ),
  );
  return {
    tries: before.tries + 1,
    typed: { ...typedOf(data), ...cleared, [`instrument-${dimension}`]: [id] },
    errors: {},
    done: `"${part("label")}" is on the club's books and chosen here. Nothing was handed in yet.`,
  };
}

/** Puts a table's readings into the places that are still empty; what was typed stays. */
async function fillFrom(table: string, { club, place, before, data }: Filling): Promise<FormState> {
  type Read = Awaited<ReturnType<Awaited<ReturnType<typeof api>>["settingSheet"]["readTable"]>>;
  let read: Read | undefined;
  const state = await takeForm({
    before,
    data,
    place,
    work: async () => {
      read = await (await api()).settingSheet.readTable({ club, table });
      return { done: "" };
    },
  });
  if (read === undefined) return state;
  const typed: Record<string, readonly string[]> = { ...typedOf(data) };
  const problems = [...read.problems];
  const places = new Set(placesOf(data).map(({ characteristic, side }) => `${characteristic} ${side}`));
  let filled = 0;
  for (const { characteristic, side, entered } of read.readings) {
    const field = sheetField(characteristic, side, "asLeft");
    const kept = typed[field]?.at(-1)?.trim() ?? "";
    if (!places.has(`${characteristic} ${side}`))
      problems.push(`"${entered}": this is no setting of the sheet.`);
    else if (kept !== "" && kept !== entered)
      problems.push(`"${entered}" was not taken: "${kept}" stands there already.`);
    else {
      typed[field] = [entered];
      filled += 1;
    }
  }
  const sent = { tries: before.tries + 1, typed };
  if (problems.length > 0) return { ...sent, errors: { table: problems } };
  const what = filled === 1 ? "One reading is" : `${filled} readings are`;
  return {
    ...sent,
    typed: { ...typed, table: [""] },
    errors: {},
    done: `${what} in the form now: look through, then hand in.`,
  };
}
