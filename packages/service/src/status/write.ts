import { CarStatus } from "@trunnion/db";
import { Problems, refused, sayBeforeBuilt } from "@trunnion/register";
import { v7 as uuid } from "uuid";
import { z } from "zod";
import { editCar, openCar, readDate, type WantedField } from "../car";
import type { Context } from "../context";
import { dayColumn, dayOf, dayOrNothing } from "../day";
import { carEditFields, dateInput, provenanceFields } from "../entry-input";
import { partialDateColumns } from "../partial-date-columns";
import { builtOf, type CarRecord } from "../record";
import { provenanceOf } from "../source";
import { checkSpan, endBefore, type StatusSpan } from "./policy";

const statusFields = {
  status: z.enum(CarStatus),
  from: dateInput,
  /** Last day, taken to the end of what is written; empty for the present status. */
  to: dateInput,
  ...provenanceFields,
} as const;

/** What has become of a car: its present status, or one of an earlier span where an end is given. */
export const addStatusInput = z.object({ ...carEditFields, ...statusFields });
export type AddStatusInput = z.infer<typeof addStatusInput>;
export const correctStatusInput = z.object({ ...carEditFields, id: z.uuid(), ...statusFields });
export type CorrectStatusInput = z.infer<typeof correctStatusInput>;
export const removeStatusInput = z.object({ ...carEditFields, id: z.uuid() });
export type RemoveStatusInput = z.infer<typeof removeStatusInput>;

async function spansOf(ctx: Context, record: CarRecord) {
  return ctx.db.carStatusSpan.findMany({
    where: { carId: record.id },
    include: { source: { select: { title: true } } },
    orderBy: { id: "asc" },
  });
}
type StatusRow = Awaited<ReturnType<typeof spansOf>>[number];

const spanOf = ({ id, status, fromEarliest, fromLatest, to }: StatusRow): StatusSpan => {
  const days = {
    fromEarliest: dayOrNothing(fromEarliest),
    fromLatest: dayOrNothing(fromLatest),
    to: dayOrNothing(to),
  };
  const known = Object.fromEntries(Object.entries(days).filter(([, day]) => day !== undefined));
  return { id, status, ...known };
};

async function rowOf(ctx: Context, record: CarRecord, id: string) {
  const rows = await spansOf(ctx, record);
  const row = rows.find((one) => one.id === id);
  if (!row) throw refused("ROW_NOT_FOUND", { what: "status", car: record.reference });
  return { row, others: rows.filter((one) => one !== row) };
}

async function readStatus(ctx: Context, input: AddStatusInput, others: readonly StatusRow[]) {
  const problems = new Problems();
  const date = (field: "from" | "to") => readDate(input[field], { field, today: ctx.today, problems });
  const [from, end] = [date("from"), date("to")];
  const wanted = { from, to: end?.latest };
  checkSpan(wanted, { others: others.map(spanOf), today: ctx.today, problems });
  const provenance = await provenanceOf(ctx, input, problems);
  problems.throwIfAny();
  return { ...wanted, provenance };
}
type Read = Awaited<ReturnType<typeof readStatus>>;

function fieldsOf(row: StatusRow | undefined, input: AddStatusInput, { from, to, provenance }: Read) {
  return [
    { field: "status", label: "Status", now: row?.status ?? "", wanted: input.status },
    { field: "from", label: "Since", now: row?.fromText ?? "", wanted: from?.text ?? "" },
    { field: "to", label: "Until", now: row?.to ? dayOf(row.to) : "", wanted: to ?? "" },
    { field: "source", label: "Source", now: row?.source?.title ?? "", wanted: provenance.title },
    { field: "locus", label: "Page or place", now: row?.locus ?? "", wanted: input.locus },
    { field: "trust", label: "Trust", now: row?.trust ?? "", wanted: input.trust },
  ] satisfies readonly WantedField[];
}

const columnsOf = async ({ status }: AddStatusInput, { from, to, provenance }: Read) => ({
  status,
  ...partialDateColumns("from", from),
  to: to === undefined ? null : dayColumn(to),
  ...(await provenance.columns()),
});

/** Ends the status that is open where a present one takes its place, and says so for the journal. */
function ending(ctx: Context, others: readonly StatusRow[], read: Read) {
  const open = read.to === undefined ? others.find((one) => one.to === null) : undefined;
  if (!open) return { also: {}, end: async () => undefined };
  const to = endBefore(read, ctx.today);
  return {
    also: { after: { ended: `${open.status} ${to}` } },
    end: async () => {
      await ctx.db.carStatusSpan.updateMany({ where: { id: open.id }, data: { to: dayColumn(to) } });
    },
  };
}

/**
 * Says what has become of a car. Without an end it is the present status, and ends the one before; with one it is a
 * span of earlier. Tells the record's version.
 *
 * @throws Refusal ROLE_NEEDED, CAR_NOT_FOUND, CAR_MERGED, CHANGED_MEANWHILE; Invalid for spans that surely overlap, end
 *   before they begin, or dates that cannot be read
 */
export async function addStatus(ctx: Context, input: AddStatusInput): Promise<number> {
  const record = await openCar(ctx, input.car);
  const others = await spansOf(ctx, record);
  const read = await readStatus(ctx, input, others);
  const { also, end } = ending(ctx, others, read);
  const id = uuid();
  return editCar(ctx, {
    record,
    form: input,
    line: { action: "status.add", noun: "carStatusSpan", nounId: id },
    fields: fieldsOf(undefined, input, read),
    doubts: [sayBeforeBuilt("status since", read.from, builtOf(record))],
    also,
    write: async () => {
      await end();
      await ctx.db.carStatusSpan.create({
        data: { id, carId: record.id, ...(await columnsOf(input, read)) },
      });
    },
  });
}

/**
 * Corrects a status of a car. One opened again ends the one that was open. Tells the record's version.
 *
 * @throws as `addStatus`; Refusal ROW_NOT_FOUND
 */
export async function correctStatus(ctx: Context, input: CorrectStatusInput): Promise<number> {
  const record = await openCar(ctx, input.car);
  const { row, others } = await rowOf(ctx, record, input.id);
  const read = await readStatus(ctx, input, others);
  const { also, end } = ending(ctx, others, read);
  return editCar(ctx, {
    record,
    form: input,
    line: { action: "status.correct", noun: "carStatusSpan", nounId: row.id },
    fields: fieldsOf(row, input, read),
    doubts: [sayBeforeBuilt("status since", read.from, builtOf(record))],
    also,
    write: async () => {
      await end();
      await ctx.db.carStatusSpan.updateMany({ where: { id: row.id }, data: await columnsOf(input, read) });
    },
  });
}

/** The status that the one taken away had ended: it ended on the very day that one began. */
function endedBy(row: StatusRow, others: readonly StatusRow[]): StatusRow | undefined {
  if (row.to !== null) return undefined;
  const last = others.toSorted((a, b) => Number(b.to ?? 0) - Number(a.to ?? 0))[0];
  const begun = row.fromLatest ?? row.recordedAt;
  return last?.to && dayOf(last.to) === dayOf(begun) ? last : undefined;
}

/**
 * Takes away a status that was wrong; where it was the present one, the one it ended holds again. Evidence that
 * supported it supports the car as a whole afterwards. Tells the record's version.
 *
 * @throws Refusal ROLE_NEEDED, CAR_NOT_FOUND, CAR_MERGED, ROW_NOT_FOUND, CHANGED_MEANWHILE
 */
export async function removeStatus(ctx: Context, input: RemoveStatusInput): Promise<number> {
  const record = await openCar(ctx, input.car);
  const { row, others } = await rowOf(ctx, record, input.id);
  const again = endedBy(row, others);
  const { status, fromText, to, locus, trust, source } = row;
  const before = { status, from: fromText ?? "", to: to ? dayOf(to) : "", locus: locus ?? "", trust };
  return editCar(ctx, {
    record,
    form: input,
    line: { action: "status.remove", noun: "carStatusSpan", nounId: row.id },
    fields: [],
    always: true,
    also: {
      before: { ...before, source: source?.title ?? "" },
      ...(again ? { after: { holdsAgain: again.status } } : {}),
    },
    write: async () => {
      await ctx.db.evidenceLink.updateMany({
        where: { carStatusSpanId: row.id },
        data: { carStatusSpanId: null, carId: record.id },
      });
      await ctx.db.carStatusSpan.deleteMany({ where: { id: row.id } });
      if (again) await ctx.db.carStatusSpan.updateMany({ where: { id: again.id }, data: { to: null } });
    },
  });
}
