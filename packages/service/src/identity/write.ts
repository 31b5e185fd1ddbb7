import { IdentityKind, IdentityStanding } from "@trunnion/db";
import { chassisKey, Problems, refused } from "@trunnion/register";
import { v7 as uuid } from "uuid";
import { z } from "zod";
import { editCar, openCar, readDate, type WantedField } from "../car";
import type { Context } from "../context";
import { carEditFields, dateInput, lineInput, provenanceFields } from "../entry-input";
import { partialDateColumns } from "../partial-date-columns";
import type { CarRecord } from "../record";
import { provenanceOf } from "../source";

const identityFields = {
  kind: z.enum(IdentityKind),
  number: lineInput(60),
  standing: z.enum(IdentityStanding).default("accepted"),
  from: dateInput,
  to: dateInput,
  ...provenanceFields,
} as const;

/** A number or mark to add to a car's record. */
export const addIdentityInput = z.object({ ...carEditFields, ...identityFields });
export type AddIdentityInput = z.infer<typeof addIdentityInput>;
/** A number or mark as it should be. */
export const correctIdentityInput = z.object({ ...carEditFields, id: z.uuid(), ...identityFields });
export type CorrectIdentityInput = z.infer<typeof correctIdentityInput>;
/** A number or mark that was never on the car. */
export const removeIdentityInput = z.object({ ...carEditFields, id: z.uuid() });
export type RemoveIdentityInput = z.infer<typeof removeIdentityInput>;

async function identityOf(ctx: Context, record: CarRecord, id: string) {
  const row = await ctx.db.carIdentity.findFirst({
    where: { id, carId: record.id },
    include: { source: { select: { title: true } }, evidenceLinks: { select: { id: true } } },
  });
  if (!row) throw refused("ROW_NOT_FOUND", { what: "number", car: record.reference });
  return row;
}
type IdentityRow = Awaited<ReturnType<typeof identityOf>>;

async function readIdentity(
  ctx: Context,
  record: CarRecord,
  input: AddIdentityInput & { readonly id?: string },
) {
  const problems = new Problems();
  const date = (field: "from" | "to") => readDate(input[field], { field, today: ctx.today, problems });
  const [from, to] = [date("from"), date("to")];
  const key = chassisKey(input.number);
  if (key === "") problems.add("number", "Write the number or mark: letters or figures.");
  if (from && to && from.earliest > to.latest) {
    problems.add(
      "to",
      `"${to.text}" lies before "${from.text}": the end must not come before the beginning.`,
    );
  }
  const same = await ctx.db.carIdentity.findFirst({
    where: {
      carId: record.id,
      kind: input.kind,
      numberKey: key,
      ...(input.id ? { id: { not: input.id } } : {}),
    },
    select: { number: true },
  });
  if (same) problems.add("number", `The record has ${same.number} already: correct that line instead.`);
  const provenance = await provenanceOf(ctx, input, problems);
  problems.throwIfAny();
  return { from, to, key, provenance };
}

type Read = Awaited<ReturnType<typeof readIdentity>>;

function fieldsOf(row: IdentityRow | undefined, input: AddIdentityInput, { from, to, provenance }: Read) {
  return [
    { field: "kind", label: "Kind", now: row?.kind ?? "", wanted: input.kind },
    { field: "number", label: "Number", now: row?.number ?? "", wanted: input.number },
    { field: "standing", label: "Standing", now: row?.standing ?? "", wanted: input.standing },
    { field: "from", label: "From", now: row?.fromText ?? "", wanted: from?.text ?? "" },
    { field: "to", label: "Until", now: row?.toText ?? "", wanted: to?.text ?? "" },
    { field: "source", label: "Source", now: row?.source?.title ?? "", wanted: provenance.title },
    { field: "locus", label: "Page or place", now: row?.locus ?? "", wanted: input.locus },
    { field: "trust", label: "Trust", now: row?.trust ?? "", wanted: input.trust },
  ] satisfies readonly WantedField[];
}

const columnsOf = async (input: AddIdentityInput, { from, to, key, provenance }: Read) => ({
  kind: input.kind,
  number: input.number,
  numberKey: key,
  standing: input.standing,
  ...partialDateColumns("from", from),
  ...partialDateColumns("to", to),
  ...(await provenance.columns()),
});

/**
 * Adds a number or mark to a car's record. Tells the record's version.
 *
 * @throws Refusal ROLE_NEEDED, CAR_NOT_FOUND, CAR_MERGED, CHANGED_MEANWHILE; Invalid for a number the record has
 *   already, a date that cannot be read, an end before the beginning
 */
export async function addIdentity(ctx: Context, input: AddIdentityInput): Promise<number> {
  const record = await openCar(ctx, input.car);
  const read = await readIdentity(ctx, record, input);
  const id = uuid();
  return editCar(ctx, {
    record,
    form: input,
    line: { action: "identity.add", noun: "carIdentity", nounId: id },
    fields: fieldsOf(undefined, input, read),
    write: async () => {
      await ctx.db.carIdentity.create({ data: { id, carId: record.id, ...(await columnsOf(input, read)) } });
    },
  });
}

/**
 * Corrects a number or mark of a car. Tells the record's version.
 *
 * @throws as `addIdentity`; Refusal ROW_NOT_FOUND
 */
export async function correctIdentity(ctx: Context, input: CorrectIdentityInput): Promise<number> {
  const record = await openCar(ctx, input.car);
  const row = await identityOf(ctx, record, input.id);
  const read = await readIdentity(ctx, record, input);
  return editCar(ctx, {
    record,
    form: input,
    line: { action: "identity.correct", noun: "carIdentity", nounId: row.id },
    fields: fieldsOf(row, input, read),
    also: { after: { kind: input.kind, number: input.number } },
    write: async () => {
      await ctx.db.carIdentity.updateMany({ where: { id: row.id }, data: await columnsOf(input, read) });
    },
  });
}

/**
 * Takes away a number or mark that was never on the car; the journal keeps what it said. Evidence that supported it
 * supports the car as a whole afterwards.
 *
 * @throws Refusal ROLE_NEEDED, CAR_NOT_FOUND, CAR_MERGED, ROW_NOT_FOUND, CHANGED_MEANWHILE
 */
export async function removeIdentity(ctx: Context, input: RemoveIdentityInput): Promise<number> {
  const record = await openCar(ctx, input.car);
  const row = await identityOf(ctx, record, input.id);
  const { kind, number, standing, fromText, toText, locus, trust, source } = row;
  const before = {
    kind,
    number,
    standing,
    from: fromText ?? "",
    to: toText ?? "",
    locus: locus ?? "",
    trust,
  };
  return editCar(ctx, {
    record,
    form: input,
    line: { action: "identity.remove", noun: "carIdentity", nounId: row.id },
    fields: [],
    always: true,
    also: { before: { ...before, source: source?.title ?? "" } },
    write: async () => {
      await ctx.db.evidenceLink.updateMany({
        where: { carIdentityId: row.id },
        data: { carIdentityId: null, carId: record.id },
      });
      await ctx.db.carIdentity.deleteMany({ where: { id: row.id } });
    },
  });
}
