import { CarStatus, type Prisma } from "@trunnion/db";
import { chassisKey, explainNumber, Problems, refused, sayBeforeBuilt, sureOf } from "@trunnion/register";
import { v7 as uuid } from "uuid";
import { z } from "zod";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { rebuildCurrentValues } from "../current-value";
import { carEditFields, dateInput, lineInput, proseInput, provenanceFields } from "../entry-input";
import { type JournalLine, writeJournal } from "../journal";
import { partialDateColumns } from "../partial-date-columns";
import { type CarRecord, carReference } from "../record";
import { requireRole } from "../role";
import { listSeriesDetails, type SeriesDetail } from "../series";
import { provenanceOf } from "../source";
import {
  changedFields,
  chassisProblem,
  differencesOf,
  journalDifferences,
  nextClaim,
  readDate,
  type WantedField,
} from "./policy";
import { openCar } from "./read";

/** Longest remarks, in characters. */
export const REMARKS_LIMIT = 4_000;

/** What a form over a car's record brought: the version it saw, and what the fields said then. */
export interface OpenedForm {
  readonly version: number;
  readonly opened: Readonly<Record<string, string>>;
  readonly openedAt: number;
  readonly reason: string;
  /** Doubts that were shown and are to stand. */
  readonly sure?: string;
}

/** One change of a car's record. */
export interface CarEdit {
  readonly record: CarRecord;
  readonly form: OpenedForm;
  /** What is changed: noun and id, and the action as the journal calls it. */
  readonly line: Pick<JournalLine, "action" | "noun" | "nounId">;
  readonly fields: readonly WantedField[];
  /** Columns of the car itself that change with it. */
  readonly columns?: Omit<Prisma.CarUncheckedUpdateInput, "version">;
  /** Writes everything else; not called when nothing differs. */
  readonly write?: () => Promise<void>;
  /** What can be and is unlikely, in words: asked about once before it is written. */
  readonly doubts?: readonly (string | undefined)[];
  /** Written even where no field differs: something is taken away. */
  readonly always?: boolean;
  /** What the journal says besides the fields. */
  readonly also?: { readonly before?: Prisma.InputJsonObject; readonly after?: Prisma.InputJsonObject };
}

async function refuseIfChanged(ctx: Context, { record, form, fields }: CarEdit): Promise<void> {
  if (record.version === form.version) return;
  const entries = await ctx.db.journalEntry.findMany({
    where: { carId: record.id, sequence: { gt: form.openedAt } },
    select: { sequence: true, action: true, before: true, after: true },
    orderBy: { sequence: "asc" },
    take: 50,
  });
  const own = differencesOf(fields, form.opened);
  const elsewhere =
    form.openedAt === 0 ? [] : journalDifferences(entries, new Set(fields.map(({ field }) => field)));
  throw refused("CHANGED_MEANWHILE", {
    what: "this car",
    version: record.version,
    differences: [...own, ...elsewhere],
  });
}

/** Asks about what is unlikely, unless the form says that this very doubt was seen and is to stand. */
function refuseIfDoubtful({ form, doubts = [] }: CarEdit): void {
  const told = doubts.filter((doubt) => doubt !== undefined);
  if (told.length > 0 && form.sure !== sureOf(told)) throw refused("DOUBTFUL", { doubts: told });
}

/**
 * Changes one part of a car's record in the caller's transaction: the version is checked and counted up, the current
 * values are worked out again, and the journal says what changed, without personal data. The record must have been
 * opened with `openCar`, which lets nobody else in until the transaction ends. Tells the version afterwards.
 *
 * @throws Refusal CHANGED_MEANWHILE with what both made of it, DOUBTFUL; then nothing is written
 */
export async function editCar(ctx: Context, edit: CarEdit): Promise<number> {
  const { record, form, line, fields } = edit;
  await refuseIfChanged(ctx, edit);
  const changed = changedFields(fields);
  if (!changed && edit.always !== true) return record.version;
  refuseIfDoubtful(edit);
  await edit.write?.();
  const { version } = await ctx.db.car.update({
    where: { clubId_id: { clubId: ctx.club.id, id: record.id } },
    data: { ...edit.columns, version: { increment: 1 } },
    select: { version: true },
  });
  await rebuildCurrentValues(ctx, [record.id], await bookOf(ctx));
  const before = { ...changed?.before, ...edit.also?.before };
  const after = { ...changed?.after, ...edit.also?.after };
  await writeJournal(ctx, [
    {
      ...line,
      carId: record.id,
      ...(form.reason === "" ? {} : { reason: form.reason }),
      ...(Object.keys(before).length === 0 ? {} : { before }),
      ...(Object.keys(after).length === 0 ? {} : { after }),
    },
  ]);
  return version;
}

/** What the car's facts should be: text as a person writes it; empty for not known. */
export const correctCarInput = z.object({
  ...carEditFields,
  built: dateInput,
  firstRegistered: dateInput,
  remarks: proseInput(REMARKS_LIMIT),
});
export type CorrectCarInput = z.infer<typeof correctCarInput>;

/**
 * Corrects when a car was built and first registered, and the remarks. Tells the record's version afterwards.
 *
 * @throws Refusal ROLE_NEEDED, CAR_NOT_FOUND, CHANGED_MEANWHILE; Invalid for a date that cannot be read. Then nothing is written.
 */
export async function correctCar(ctx: Context, input: CorrectCarInput): Promise<number> {
  const record = await openCar(ctx, input.car);
  const problems = new Problems();
  const built = readDate(input.built, { field: "built", today: ctx.today, problems });
  const first = readDate(input.firstRegistered, { field: "firstRegistered", today: ctx.today, problems });
  problems.throwIfAny();
  const { remarks } = input;
  return editCar(ctx, {
    record,
    form: input,
    line: { action: "car.correct", noun: "car", nounId: record.id },
    fields: [
      { field: "built", label: "Built", now: record.built ?? "", wanted: built?.text ?? "" },
      {
        field: "firstRegistered",
        label: "First registered",
        now: record.firstRegistered ?? "",
        wanted: first?.text ?? "",
      },
      { field: "remarks", label: "Remarks", now: record.remarks ?? "", wanted: remarks, personal: true },
    ],
    doubts: [sayBeforeBuilt("first registered", first, built ?? undefined)],
    columns: {
      ...partialDateColumns("built", built),
      ...partialDateColumns("firstRegistered", first),
      remarks: remarks === "" ? null : remarks,
    },
  });
}

interface Filed {
  readonly chassis: string;
  readonly key: string;
  readonly claim: number;
  readonly series: SeriesDetail | undefined;
  readonly serial: number | null;
}

interface Filing {
  readonly chassis: string;
  readonly series: string;
  readonly another: "yes" | "no";
}

/** Reads what a car is to be filed under; `self` is the car that has the number already. */
async function filedUnder(
  ctx: Context,
  { chassis, series: slug, another }: Filing,
  { problems, self }: { readonly problems: Problems; readonly self?: CarRecord },
): Promise<Filed> {
  const key = chassisKey(chassis);
  await waitForNumber(ctx, key);
  const unfit = chassisProblem(chassis);
  if (unfit !== undefined) problems.add("chassis", unfit);
  const all = await listSeriesDetails(ctx);
  const series = all.find((one) => one.slug === slug);
  if (slug !== "" && !series) problems.add("series", `There is no series "${slug}": choose one of the list.`);
  const reading = series && explainNumber(chassis, series.pattern);
  const filed = { chassis, key, series, serial: reading?.ok === true ? reading.serial : null };
  if (self?.chassisKey === key) return { ...filed, claim: self.claim };
  const taken = await ctx.db.car.findMany({
    where: { chassisKey: key },
    select: { chassis: true, claim: true },
    orderBy: { claim: "asc" },
  });
  const claims = taken.map(({ claim }) => claim);
  const next = nextClaim(chassis, { references: taken.map(carReference), claims }, another === "yes");
  if ("problem" in next) problems.add("chassis", next.problem);
  return { ...filed, claim: "claim" in next ? next.claim : 0 };
}

const filingFields = {
  chassis: lineInput(60),
  /** Short name of the series; empty while not settled. */
  series: lineInput(60),
  /** Another car is known to claim the number, and this is not that one. */
  another: z.enum(["yes", "no"]).default("no"),
} as const;

/** Under which number and series a car is filed. */
export const fileCarInput = z.object({ ...carEditFields, ...filingFields });
export type FileCarInput = z.infer<typeof fileCarInput>;

/**
 * Files a car under another number or series. A number that does not fit the series is taken as it is: the numbers page
 * tells of it. Tells the car's reference afterwards.
 *
 * @throws Refusal ROLE_NEEDED, CAR_NOT_FOUND, CAR_MERGED, CHANGED_MEANWHILE; Invalid for a number that is taken or none
 */
export async function fileCar(ctx: Context, input: FileCarInput): Promise<string> {
  const record = await openCar(ctx, input.car);
  const problems = new Problems();
  const { chassis, key, claim, series, serial } = await filedUnder(ctx, input, { problems, self: record });
  problems.throwIfAny();
  await editCar(ctx, {
    record,
    form: input,
    line: { action: "car.file", noun: "car", nounId: record.id },
    fields: [
      { field: "chassis", label: "Chassis number", now: record.chassis, wanted: chassis },
      { field: "series", label: "Series", now: record.series?.slug ?? "", wanted: series?.slug ?? "" },
    ],
    columns: { chassis, chassisKey: key, claim, serial, seriesId: series?.id ?? null },
    also: record.claim === claim ? {} : { before: { claim: record.claim }, after: { claim } },
  });
  return carReference({ chassis, claim });
}

/** A car that comes onto the register, with what is known of it at once; the rest is added to its record. */
export const addCarInput = z.object({
  ...filingFields,
  ...provenanceFields,
  built: dateInput,
  firstRegistered: dateInput,
  engine: lineInput(60),
  registration: lineInput(60),
  status: z.enum(CarStatus).default("unknown"),
  since: dateInput,
  remarks: proseInput(REMARKS_LIMIT),
  reason: lineInput(500).default(""),
});
export type AddCarInput = z.infer<typeof addCarInput>;

/**
 * Adds a car. Tells its reference.
 *
 * @throws Refusal ROLE_NEEDED; Invalid for a number that is taken or none, a date that cannot be read. Then nothing is written.
 */
export async function addCar(ctx: Context, input: AddCarInput): Promise<string> {
  requireRole(ctx.actor, "registrar", "fleetManager");
  const problems = new Problems();
  const { chassis, key, claim, series, serial } = await filedUnder(ctx, input, { problems });
  const date = (field: "built" | "firstRegistered" | "since") =>
    readDate(input[field], { field, today: ctx.today, problems });
  const [built, first, since] = [date("built"), date("firstRegistered"), date("since")];
  const provenance = await provenanceOf(ctx, input, problems);
  problems.throwIfAny();
  const known = await provenance.columns();
  const id = uuid();
  const { remarks, status, reason } = input;
  await ctx.db.car.create({
    data: {
      id,
      chassis,
      chassisKey: key,
      claim,
      serial,
      seriesId: series?.id ?? null,
      ...partialDateColumns("built", built),
      ...partialDateColumns("firstRegistered", first),
      remarks: remarks === "" ? null : remarks,
    },
  });
  const numbers = (["engine", "registration"] as const).flatMap((kind) =>
    chassisKey(input[kind]) === "" ? [] : [{ kind, number: input[kind], numberKey: chassisKey(input[kind]) }],
  );
  await ctx.db.carIdentity.createMany({ data: numbers.map((one) => ({ carId: id, ...one, ...known })) });
  if (status !== "unknown") {
    const from = partialDateColumns("from", since);
    await ctx.db.carStatusSpan.create({ data: { carId: id, status, ...from, ...known } });
  }
  await rebuildCurrentValues(ctx, [id], await bookOf(ctx));
  const after = {
    chassis,
    claim,
    series: series?.slug ?? "",
    built: built?.text ?? "",
    firstRegistered: first?.text ?? "",
    status,
    since: since?.text ?? "",
    numbers: numbers.map(({ kind, number }) => `${kind} ${number}`),
    source: provenance.title,
    ...(remarks === "" ? {} : { remarks: "given" }),
  };
  await writeJournal(ctx, [
    { action: "car.add", noun: "car", nounId: id, carId: id, after, ...(reason === "" ? {} : { reason }) },
  ]);
  return carReference({ chassis, claim });
}

/** Two who add one number at once come one after the other, or both would be its first claimant. */
async function waitForNumber({ db, club }: Context, key: string): Promise<void> {
  await db.$executeRaw`SELECT pg_advisory_xact_lock(hashtextextended(${`${club.id} ${key}`}, 3))`;
}

/** Options a car was built with. */
export const setOptionsInput = z.object({
  ...carEditFields,
  /** Codes of the series that are ticked. */
  options: z.array(lineInput(20)).max(100).default([]),
  /** Codes that the series does not list, apart by commas. */
  others: lineInput(200).default(""),
});
export type SetOptionsInput = z.infer<typeof setOptionsInput>;

/**
 * Says which options a car was built with; which entries of the specification apply may follow from that.
 *
 * @throws Refusal ROLE_NEEDED, CAR_NOT_FOUND, CAR_MERGED, CHANGED_MEANWHILE; Invalid for a code of more than 20 characters
 */
export async function setOptions(ctx: Context, input: SetOptionsInput): Promise<number> {
  const record = await openCar(ctx, input.car);
  const others = input.others.split(/[,;]/).map((code) => code.trim());
  const codes = [...new Set([...input.options, ...others])].filter((code) => code !== "").sort();
  const problems = new Problems();
  const long = codes.find((code) => code.length > 20);
  if (long !== undefined)
    problems.add("others", `"${long}" has more than 20 characters: write the code alone.`);
  problems.throwIfAny();
  const wanted = codes.join(", ");
  const now = [...record.basis.options].sort().join(", ");
  return editCar(ctx, {
    record,
    form: input,
    line: { action: "option.set", noun: "car", nounId: record.id },
    fields: [{ field: "options", label: "Options", now, wanted }],
    write: async () => {
      await ctx.db.carOption.deleteMany({ where: { carId: record.id } });
      await ctx.db.carOption.createMany({ data: codes.map((code) => ({ carId: record.id, code })) });
    },
  });
}
