import { readFile, stat } from "node:fs/promises";
import { quotedFileName, refused } from "@trunnion/register";
import {
  type Context,
  type FilledSheet,
  filledSheetsInput,
  lookAtForm,
  openMember,
  type SheetLook,
  type TakenRecord,
  takeForm,
} from "@trunnion/service";
import { FORM_FILE_LIMIT, readSheetFormAside } from "@trunnion/sheets";
import type { ReceivedFile } from "./evidence-file";
import type { Request } from "./request";

/** Where a filled-in sheet was dropped. */
export interface SheetFormPlace {
  readonly club: string;
  /** The event's short name. */
  readonly event: string;
}

/** What was read from a dropped file, kept until it is taken. */
export interface FilledForm {
  readonly file: string;
  readonly sheets: readonly FilledSheet[];
}

/**
 * Reads a dropped file, on a thread of its own; takes nothing.
 *
 * @throws Refusal FILE_EMPTY, FILE_TOO_LARGE, SHEET_FILE_DAMAGED, SHEET_FILE_ENCRYPTED, SHEET_FILE_FOREIGN
 */
export async function readDroppedSheet({ name, path }: ReceivedFile): Promise<FilledForm> {
  const file = quotedFileName(name);
  // Before it is read: half a gigabyte would be in memory to be refused.
  const { size } = await stat(path);
  if (size === 0) throw refused("FILE_EMPTY", { file });
  if (size > FORM_FILE_LIMIT) throw refused("FILE_TOO_LARGE", { file, bytes: size, limit: FORM_FILE_LIMIT });
  const bytes = new Uint8Array(await readFile(path));
  const reading = await readSheetFormAside(bytes);
  if (reading.kind === "damaged") throw refused("SHEET_FILE_DAMAGED", { file });
  if (reading.kind === "encrypted") throw refused("SHEET_FILE_ENCRYPTED", { file });
  if (reading.kind === "foreign") throw refused("SHEET_FILE_FOREIGN", { file });
  return { file, sheets: reading.sheets.map((sheet) => ({ ...sheet, fields: { ...sheet.fields } })) };
}

function inClub<T>(request: Request, club: string, work: (ctx: Context) => Promise<T>): Promise<T> {
  if (!request.signedIn) throw refused("NOT_SIGNED_IN", {});
  return openMember(request.database, request.signedIn, club, work);
}

const read = ({ event }: SheetFormPlace, form: FilledForm) => filledSheetsInput.parse({ event, ...form });

/**
 * What a filled-in file would add, beside what was found so far.
 *
 * @throws Refusal NOT_SIGNED_IN, and those of `openMember` and `lookAtForm`
 */
export function lookAtSheetForm(
  request: Request,
  place: SheetFormPlace,
  form: FilledForm,
): Promise<readonly SheetLook[]> {
  return inClub(request, place.club, (ctx) => lookAtForm(ctx, read(place, form)));
}

/**
 * Takes a filled-in file as findings and decisions; twice is once.
 *
 * @throws Refusal NOT_SIGNED_IN, and those of `openMember` and `takeForm`
 */
export function takeSheetForm(
  request: Request,
  place: SheetFormPlace,
  form: FilledForm,
): Promise<readonly TakenRecord[]> {
  return inClub(request, place.club, (ctx) => takeForm(ctx, read(place, form)));
}
