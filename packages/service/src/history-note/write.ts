import { Problems, refused } from "@trunnion/register";
import { v7 as uuid } from "uuid";
import { z } from "zod";
import { editCar, openCar, readDate, type WantedField } from "../car";
import type { Context } from "../context";
import { carEditFields, dateInput, proseInput, provenanceFields } from "../entry-input";
import { partialDateColumns } from "../partial-date-columns";
import type { CarRecord } from "../record";
import { provenanceOf } from "../source";

const noteFields = { on: dateInput, text: proseInput(4_000), ...provenanceFields } as const;

/** Something known of a car's life, to add to its history. */
export const addNoteInput = z.object({ ...carEditFields, ...noteFields });
export type AddNoteInput = z.infer<typeof addNoteInput>;
export const correctNoteInput = z.object({ ...carEditFields, id: z.uuid(), ...noteFields });
export type CorrectNoteInput = z.infer<typeof correctNoteInput>;
export const removeNoteInput = z.object({ ...carEditFields, id: z.uuid() });
export type RemoveNoteInput = z.infer<typeof removeNoteInput>;

async function noteOf(ctx: Context, record: CarRecord, id: string) {
  const row = await ctx.db.historyNote.findFirst({
    where: { id, carId: record.id },
    include: { source: { select: { title: true } } },
  });
  if (!row) throw refused("ROW_NOT_FOUND", { what: "note", car: record.reference });
  return row;
}
type NoteRow = Awaited<ReturnType<typeof noteOf>>;

async function readNote(ctx: Context, input: AddNoteInput) {
  const problems = new Problems();
  const on = readDate(input.on, { field: "on", today: ctx.today, problems });
  if (input.text === "") problems.add("text", "Write what happened.");
  const provenance = await provenanceOf(ctx, input, problems);
  problems.throwIfAny();
  return { on, provenance };
}
type Read = Awaited<ReturnType<typeof readNote>>;

function fieldsOf(row: NoteRow | undefined, input: AddNoteInput, { on, provenance }: Read) {
  return [
    { field: "on", label: "When", now: row?.onText ?? "", wanted: on?.text ?? "" },
    // Free text may name people, whatever the form says: the journal tells that it changed.
    { field: "text", label: "What happened", now: row?.text ?? "", wanted: input.text, personal: true },
    { field: "source", label: "Source", now: row?.source?.title ?? "", wanted: provenance.title },
    { field: "locus", label: "Page or place", now: row?.locus ?? "", wanted: input.locus },
    { field: "trust", label: "Trust", now: row?.trust ?? "", wanted: input.trust },
  ] satisfies readonly WantedField[];
}

const columnsOf = async ({ text }: AddNoteInput, { on, provenance }: Read) => ({
  text,
  ...partialDateColumns("on", on),
  ...(await provenance.columns()),
});

/**
 * Adds a note to a car's history. Tells the record's version.
 *
 * @throws Refusal ROLE_NEEDED, CAR_NOT_FOUND, CAR_MERGED, CHANGED_MEANWHILE; Invalid for an empty note or a date that cannot be read
 */
export async function addNote(ctx: Context, input: AddNoteInput): Promise<number> {
  const record = await openCar(ctx, input.car);
  const read = await readNote(ctx, input);
  const id = uuid();
  return editCar(ctx, {
    record,
    form: input,
    line: { action: "note.add", noun: "historyNote", nounId: id },
    fields: fieldsOf(undefined, input, read),
    write: async () => {
      await ctx.db.historyNote.create({ data: { id, carId: record.id, ...(await columnsOf(input, read)) } });
    },
  });
}

/**
 * Corrects a note of a car's history. Tells the record's version.
 *
 * @throws as `addNote`; Refusal ROW_NOT_FOUND
 */
export async function correctNote(ctx: Context, input: CorrectNoteInput): Promise<number> {
  const record = await openCar(ctx, input.car);
  const row = await noteOf(ctx, record, input.id);
  const read = await readNote(ctx, input);
  return editCar(ctx, {
    record,
    form: input,
    line: { action: "note.correct", noun: "historyNote", nounId: row.id },
    fields: fieldsOf(row, input, read),
    write: async () => {
      await ctx.db.historyNote.updateMany({ where: { id: row.id }, data: await columnsOf(input, read) });
    },
  });
}

/**
 * Takes a note away from a car's history; evidence that supported it supports the car as a whole afterwards.
 *
 * @throws Refusal ROLE_NEEDED, CAR_NOT_FOUND, CAR_MERGED, ROW_NOT_FOUND, CHANGED_MEANWHILE
 */
export async function removeNote(ctx: Context, input: RemoveNoteInput): Promise<number> {
  const record = await openCar(ctx, input.car);
  const row = await noteOf(ctx, record, input.id);
  return editCar(ctx, {
    record,
    form: input,
    line: { action: "note.remove", noun: "historyNote", nounId: row.id },
    fields: [],
    always: true,
    also: { before: { on: row.onText ?? "", text: "not told here", source: row.source?.title ?? "" } },
    write: async () => {
      await ctx.db.evidenceLink.updateMany({
        where: { historyNoteId: row.id },
        data: { historyNoteId: null, carId: record.id },
      });
      await ctx.db.historyNote.deleteMany({ where: { id: row.id } });
    },
  });
}
