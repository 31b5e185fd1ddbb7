"use server";
import {
  forgetImport,
  goOnWithImport,
  lookAtImportAgain,
  settleImport,
  takeBackImport,
  takeImportSheet,
} from "@trunnion/api";
import { Invalid } from "@trunnion/register";
import { takeForm } from "../../lib/form";
import { enteredOf } from "../../lib/form-entry";
import type { FormState } from "../../lib/form-state";
import { importPath, importsPath } from "../../lib/path";
import { importAction } from "./asked";

interface Settled {
  readonly asOf?: string;
  readonly columns?: readonly { readonly as?: string; readonly unit?: string }[];
}

/** Settles what the columns are taken for; the file is looked through then. */
export async function settleColumns(
  club: string,
  run: string,
  before: FormState,
  data: FormData,
): Promise<FormState> {
  const place = importPath(club, run);
  return takeForm({
    before,
    data,
    place,
    work: async () => {
      const { asOf = "", columns = [] } = enteredOf<Settled>(data);
      const settled = columns.map(({ as = "", unit = "" }) => ({
        as: as.slice(0, 200),
        unit: unit.slice(0, 40),
      }));
      await settleImport(await importAction(club), { run, asOf, columns: settled });
      return { to: place };
    },
  });
}

/** What can be done with an import by one button. */
const deeds = {
  begin: goOnWithImport,
  look: lookAtImportAgain,
  undo: takeBackImport,
  forget: forgetImport,
} as const;
export type Deed = keyof typeof deeds;

/** Begins, goes on with, looks at again, undoes or forgets an import. */
export async function doImport(
  club: string,
  run: string,
  deed: Deed,
  before: FormState,
  data: FormData,
): Promise<FormState> {
  const place = importPath(club, run);
  return takeForm({
    before,
    data,
    place,
    work: async () => {
      await deeds[deed](await importAction(club), run);
      return { to: deed === "forget" ? importsPath(club) : place };
    },
  });
}

/** Takes another sheet of the workbook, or another line for its headings. */
export async function chooseSheet(
  club: string,
  run: string,
  before: FormState,
  data: FormData,
): Promise<FormState> {
  const place = importPath(club, run);
  return takeForm({
    before,
    data,
    place,
    work: async () => {
      const { sheet = "", head = "" } = enteredOf<{ readonly sheet?: string; readonly head?: string }>(data);
      // Where another sheet is taken, its headings are looked for anew.
      const [taken, line] = [sheet.slice(0, 200), head.trim().slice(0, 9)];
      const anew = data.get("sheetBefore") !== null && data.get("sheetBefore") !== sheet;
      if (!anew && line !== "" && !/^[1-9]\d*$/.test(line)) {
        throw new Invalid([{ field: "head", message: `"${line}" is no line: write a number such as 3.` }]);
      }
      await takeImportSheet(await importAction(club), {
        run,
        ...(taken === "" ? {} : { sheet: taken }),
        ...(anew || line === "" ? {} : { head: Number(line) }),
      });
      return { to: place };
    },
  });
}
