import {
  Invalid,
  readSheetForm,
  readSheetTable,
  type SheetCell,
  type SheetCellReading,
  type SheetDraft,
  type SheetTableReading,
  type SubmissionContent,
  sheetField,
  sides,
  submissionLimits,
} from "@trunnion/register";
import { z } from "zod";
import { findCar } from "../car";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { lineInput, proseInput } from "../entry-input";
import { createDraft, groundOf, type SubmissionMark, stepSubmission } from "../submission";
import { readTable } from "../table";

const cellInput = z.object({
  characteristic: lineInput(80).min(1),
  side: z.enum(sides),
  asFound: proseInput(submissionLimits.line).default(""),
  asLeft: proseInput(submissionLimits.line).default(""),
  instrument: lineInput(36).default(""),
});

/** A setting sheet as its form has it. The keys are made with the form, so that a form sent twice is one sheet. */
export const handInSheetInput = z.object({
  car: lineInput(60).min(1),
  clientKey: z.uuid(),
  stepKey: z.uuid(),
  on: lineInput(60).min(1, "say on which day it was measured"),
  loadState: z.enum(["kerb", "driver", "driverAndPassenger", "unknown"]).default("unknown"),
  note: proseInput(submissionLimits.prose).default(""),
  cells: z.array(cellInput).max(200),
});
export type HandInSheetInput = z.infer<typeof handInSheetInput>;

interface Named {
  readonly sheet: SheetDraft;
  /** Field of the form that each reading stands in. */
  readonly fields: readonly string[];
}

function sheetOf(
  { on, loadState, note }: HandInSheetInput,
  readings: readonly SheetCellReading[],
  moment: "asFound" | "asLeft",
): Named[] {
  if (readings.length === 0) return [];
  return [
    {
      sheet: { on, loadState, note, readings },
      fields: readings.map(({ characteristic, side }) => sheetField(characteristic, side, moment)),
    },
  ];
}

/** What the workflow found wrong, at the fields of this form. */
function inThisForm(error: Invalid, sheets: readonly Named[]): Invalid {
  return new Invalid(
    error.problems.map(({ field, message }) => {
      const [, place = "", rest = ""] = /^sheets\.(\d+)\.(.*)$/.exec(field) ?? [];
      const [, reading = ""] = /^readings\.(\d+)\./.exec(rest) ?? [];
      const cell = sheets[Number(place)]?.fields[Number(reading)];
      if (reading !== "" && cell !== undefined) return { field: cell, message };
      return { field: rest === "" ? field : rest, message };
    }),
  );
}

async function requireInstruments({ db }: Context, cells: readonly SheetCell[]): Promise<void> {
  const named = [...new Set(cells.flatMap(({ instrument }) => (instrument === "" ? [] : [instrument])))];
  if (named.length === 0) return;
  const wellFormed = named.filter((id) => z.uuid().safeParse(id).success);
  const known = await db.instrument.count({ where: { id: { in: wellFormed } } });
  if (known < named.length)
    throw new Invalid([
      { field: "instrument", message: "There is no such instrument of this club: choose one of the list." },
    ]);
}

/**
 * Hands a setting sheet in: what was found and what was left are two sheets of one day, in this order. It goes the way
 * of every submission and is on the record once a registrar accepts it.
 *
 * @throws Refusal CAR_NOT_FOUND, and those of `createDraft` and `stepSubmission`; Invalid with everything that is wrong,
 *   at the form's fields. Then nothing is written.
 */
export async function handInSheet(ctx: Context, input: HandInSheetInput): Promise<SubmissionMark> {
  const record = await findCar(ctx, input.car);
  const { basis } = await groundOf(ctx, { carId: record.id, supersedesId: null });
  const rims = basis.stateOn(ctx.today);
  const units = ctx.club.unitSystem;
  const read = readSheetForm(input.cells, { book: basis.book, units, rims });
  if (read.problems.length > 0) throw new Invalid(read.problems);
  await requireInstruments(ctx, input.cells);
  const sheets = [...sheetOf(input, read.asFound, "asFound"), ...sheetOf(input, read.asLeft, "asLeft")];
  if (sheets.length === 0) throw new Invalid([{ field: "readings", message: "Enter at least one reading." }]);
  const content: SubmissionContent = { units, modifications: [], sheets: sheets.map(({ sheet }) => sheet) };
  try {
    const draft = await createDraft(ctx, { car: input.car, clientKey: input.clientKey, content });
    if (draft.status !== "draft") return draft;
    const step = {
      id: draft.id,
      version: draft.version,
      key: input.stepKey,
      step: "submit",
      text: "",
    } as const;
    return await stepSubmission(ctx, step);
  } catch (error) {
    if (error instanceof Invalid) throw inThisForm(error, sheets);
    throw error;
  }
}

/** A pasted table of readings, or a file's text. */
export const readSheetTableInput = z.object({ table: z.string().min(1).max(200_000) });

/**
 * Takes a pasted table of readings apart, with the reading of tables that imports use. Writes nothing: what it found is
 * put into the form, where it is seen before it is handed in.
 *
 * @throws Refusal where the table cannot be read at all
 */
export async function readPastedSheet(
  ctx: Context,
  { table }: z.infer<typeof readSheetTableInput>,
): Promise<SheetTableReading> {
  const bytes = new TextEncoder().encode(table);
  const { headings, rows } = await readTable(bytes, "the pasted table");
  return readSheetTable([headings, ...rows.map(({ cells }) => cells)], await bookOf(ctx));
}
