import type { CharacteristicBook, PartialDate, RecordedValue } from "@trunnion/register";
import { v7 as uuid } from "uuid";
import { z } from "zod";
import type { Context } from "../context";
import { rebuildCurrentValues } from "../current-value";
import { dayColumn } from "../day";
import { Inserts } from "../inserts";
import { type JournalLine, writeJournal } from "../journal";
import type { PlannedRow } from "../planned-row";
import { type CarRecord, recordsOf } from "../record";
import { requireRole } from "../role";
import { prefixedValueColumns, valueColumns } from "../value-columns";
import {
  type CarChanges,
  changesOf,
  journalled,
  type NowValue,
  nothingNew,
  type PresentKeeper,
} from "./policy";
import { type RegisterFile, readRegisterFile } from "./read";

export interface ImportInput {
  /** Name of the file, as reports call it. */
  readonly file: string;
  readonly bytes: Uint8Array;
  readonly book: CharacteristicBook;
  /** ISO day the file tells of; what a row says of today gets it, unless the row has a day of its own. */
  readonly asOf: string;
  readonly dryRun: boolean;
}

/** What a reading-in did, or would do. */
export interface ImportReport extends Omit<RegisterFile, "rows"> {
  readonly dryRun: boolean;
  readonly carsAdded: number;
  readonly carsChanged: number;
  readonly carsUnchanged: number;
}

/** Cars looked at in one go. */
const CHUNK = 500;

/** What the statements of one reading-in share. */
interface Run {
  readonly ctx: Context;
  readonly input: ImportInput;
  readonly runId: string;
  readonly sourceId: string;
  readonly inserts: Inserts;
  readonly journal: JournalLine[];
}

/** A row with the car it is about, known or new. */
interface CarRow {
  readonly planned: PlannedRow;
  readonly record: CarRecord | undefined;
  readonly keeper: PresentKeeper | undefined;
  readonly changes: CarChanges;
  readonly carId: string;
}

function dateColumns<P extends string>(prefix: P, date: PartialDate | undefined) {
  if (!date) return {};
  return {
    [`${prefix}Text`]: date.text,
    [`${prefix}Earliest`]: dayColumn(date.earliest),
    [`${prefix}Latest`]: dayColumn(date.latest),
  };
}

function factColumns({ row, series, serial }: PlannedRow) {
  return {
    ...(series === null ? {} : { seriesId: series.id }),
    ...(serial === null ? {} : { serial }),
    ...(row.remarks === undefined ? {} : { remarks: row.remarks }),
    ...dateColumns("built", row.built),
    ...dateColumns("firstRegistered", row.firstRegistered),
  };
}

async function writeFacts({ ctx, inserts }: Run, { planned, record, changes, carId }: CarRow): Promise<void> {
  const facts = factColumns(planned);
  if (!record) {
    inserts.car.push({
      id: carId,
      chassis: planned.row.chassis,
      chassisKey: planned.key,
      claim: planned.claim,
      ...facts,
    });
    return;
  }
  const where = { clubId_id: { clubId: ctx.club.id, id: carId } };
  await ctx.db.car.update({ where, data: { ...(changes.facts ? facts : {}), version: { increment: 1 } } });
}

async function writeStatus(
  { ctx, inserts, sourceId, input }: Run,
  { planned, record, changes, carId }: CarRow,
): Promise<void> {
  const { status, statusSince } = planned.row;
  if (changes.status === "none" || status === undefined) return;
  const since = dateColumns("from", statusSince);
  if (record) {
    const open = { where: { carId, to: null } };
    const ended = dayColumn(statusSince?.latest ?? input.asOf);
    const data = changes.status === "correct" ? since : { to: ended };
    await ctx.db.carStatusSpan.updateMany({ ...open, data });
  }
  if (changes.status === "correct") return;
  inserts.carStatusSpan.push({ id: uuid(), carId, status, sourceId, trust: "stated", ...since });
}

async function correctKeeper({ ctx }: Run, { planned, keeper }: CarRow): Promise<void> {
  if (!keeper) return;
  const of = (id: string) => ({ clubId_id: { clubId: ctx.club.id, id } });
  await ctx.db.keeper.update({ where: of(keeper.keeperId), data: planned.row.keeper ?? {} });
  const since = dateColumns("from", planned.row.keptSince);
  await ctx.db.keepership.update({ where: of(keeper.keepershipId), data: since });
}

async function writeKeeper(run: Run, car: CarRow): Promise<void> {
  const { planned, keeper, changes, carId } = car;
  const { ctx, inserts, sourceId, input } = run;
  const { keeper: said, keptSince } = planned.row;
  if (!said || changes.keeper === "none") return;
  if (changes.keeper === "correct") return correctKeeper(run, car);
  if (keeper) {
    const where = { clubId_id: { clubId: ctx.club.id, id: keeper.keepershipId } };
    const data = { to: dayColumn(keptSince?.latest ?? input.asOf) };
    await ctx.db.keepership.update({ where, data });
  }
  const keeperId = uuid();
  inserts.keeper.push({ id: keeperId, ...said });
  const kept = { id: uuid(), carId, keeperId, sourceId, trust: "stated" as const };
  inserts.keepership.push({ ...kept, ...dateColumns("from", keptSince) });
}

async function writeAsBuilt(
  { ctx, inserts, sourceId }: Run,
  { record, changes, carId }: CarRow,
): Promise<void> {
  for (const { characteristic, side, value } of changes.asBuilt) {
    if (record) {
      const standing = { carId, characteristic, side, supersededAt: null };
      await ctx.db.asBuiltValue.updateMany({ where: standing, data: { supersededAt: ctx.now } });
    }
    inserts.asBuiltValue.push({
      id: uuid(),
      carId,
      characteristic,
      side,
      sourceId,
      trust: "stated",
      ...valueColumns(value),
    });
  }
}

/** What was changed on a day is a modification; whatever else is seen or measured is a sheet of readings of its day. */
function writeNow(run: Run, car: CarRow): void {
  const { record, changes, carId } = car;
  const parts = changes.now.filter(({ as }) => as === "change");
  if (parts.length > 0) addModification(run, car, parts);
  const readings = changes.now.filter(({ as }) => as === "reading");
  const days = [...new Set(readings.map(({ on }) => on))].sort();
  const first = record?.nextSheetSequence ?? 1;
  for (const [index, day] of days.entries()) {
    const read = readings.filter(({ on }) => on === day);
    addSheet(run, { carId, on: day, sequence: first + index, readings: read });
  }
}

interface SeenValues {
  readonly carId: string;
  readonly on: string;
  readonly sequence: number;
  readonly readings: readonly RecordedValue[];
}

function addSheet({ inserts, sourceId }: Run, { carId, on, sequence, readings }: SeenValues): void {
  const settingSheetId = uuid();
  inserts.settingSheet.push({
    id: settingSheetId,
    carId,
    on: dayColumn(on),
    sequence,
    sourceId,
    trust: "stated",
  });
  for (const { characteristic, side, value } of readings) {
    inserts.reading.push({ id: uuid(), settingSheetId, characteristic, side, ...valueColumns(value) });
  }
}

function addModification(run: Run, { planned, record, carId }: CarRow, parts: readonly NowValue[]): void {
  const { row } = planned;
  const { ctx, inserts, sourceId } = run;
  const submissionId = uuid();
  const modificationId = uuid();
  inserts.submission.push({
    id: submissionId,
    carId,
    clientKey: uuid(),
    status: "accepted",
    submittedAt: ctx.now,
    decidedAt: ctx.now,
    decidedById: ctx.actor.personId,
    decisionReason: `read in from ${run.input.file}`,
  });
  inserts.modification.push({
    id: modificationId,
    submissionId,
    carId,
    sequence: record?.nextModificationSequence ?? 1,
    sourceId,
    trust: "stated",
    ...dateColumns("fitted", row.changedOn),
    ...(row.changedBecause === undefined ? {} : { reason: row.changedBecause }),
    ...(row.donor === undefined ? {} : { donor: row.donor }),
  });
  for (const { characteristic, side, value, before } of parts) {
    inserts.modificationChange.push({
      id: uuid(),
      modificationId,
      characteristic,
      side,
      ...(before ? prefixedValueColumns("before", before) : {}),
      ...prefixedValueColumns("after", value),
    });
  }
}

function journalLine(run: Run, { planned, record, changes, carId }: CarRow): JournalLine {
  return {
    action: record ? "car.change" : "car.add",
    noun: "car",
    nounId: carId,
    carId,
    runId: run.runId,
    reason: `read in from ${run.input.file}, line ${planned.line}`,
    ...journalled(planned, record, changes),
  };
}

async function writeCar(run: Run, car: CarRow): Promise<void> {
  const { inserts, sourceId } = run;
  const { changes, carId } = car;
  await writeFacts(run, car);
  await writeStatus(run, car);
  await writeKeeper(run, car);
  await writeAsBuilt(run, car);
  for (const { kind, number, key } of changes.numbers) {
    inserts.carIdentity.push({ id: uuid(), carId, kind, number, numberKey: key, sourceId, trust: "stated" });
  }
  inserts.carOption.push(...changes.options.map((code) => ({ carId, code })));
  writeNow(run, car);
  run.journal.push(journalLine(run, car));
}

async function keepersOf(
  ctx: Context,
  carIds: readonly string[],
): Promise<ReadonlyMap<string, PresentKeeper>> {
  const rows = await ctx.db.keepership.findMany({
    where: { carId: { in: [...carIds] }, to: null },
    select: { id: true, carId: true, fromText: true, keeper: true },
  });
  return new Map(
    rows.map(({ id, carId, fromText, keeper }) => [
      carId,
      { ...keeper, since: fromText, keepershipId: id, keeperId: keeper.id },
    ]),
  );
}

/** Puts the rows beside the cars the register has already. */
async function meetRecords(
  ctx: Context,
  input: ImportInput,
  rows: readonly PlannedRow[],
): Promise<readonly CarRow[]> {
  const found = await ctx.db.car.findMany({
    where: { chassisKey: { in: rows.map(({ key }) => key) } },
    select: { id: true, chassisKey: true, claim: true },
  });
  const ids = new Map(found.map(({ id, chassisKey, claim }) => [`${chassisKey} ${claim}`, id]));
  const records = new Map((await recordsOf(ctx, [...ids.values()])).map((record) => [record.id, record]));
  const keepers = await keepersOf(ctx, [...ids.values()]);
  return rows.map((planned) => {
    const known = ids.get(`${planned.key} ${planned.claim}`);
    const record = known === undefined ? undefined : records.get(known);
    const keeper = known === undefined ? undefined : keepers.get(known);
    return {
      planned,
      record,
      keeper,
      changes: changesOf(planned, { record, keeper }, input),
      carId: known ?? uuid(),
    };
  });
}

async function beginRun(ctx: Context, input: ImportInput): Promise<Run> {
  const title = `Register file ${input.file}`;
  const source = await ctx.db.source.upsert({
    where: { clubId_title: { clubId: ctx.club.id, title } },
    create: { title, kind: "registerFile" },
    update: {},
  });
  return { ctx, input, runId: uuid(), sourceId: source.id, inserts: new Inserts(), journal: [] };
}

async function writeRun(run: Run, file: RegisterFile, cars: readonly CarRow[]): Promise<void> {
  const { ctx } = run;
  for (const car of cars) await writeCar(run, car);
  await run.inserts.write(ctx);
  const added = cars.filter(({ record }) => record === undefined).length;
  await ctx.db.importRun.create({
    data: {
      id: run.runId,
      fileName: file.file,
      sha256: file.sha256,
      sourceId: run.sourceId,
      madeById: ctx.actor.personId,
      rowsRead: file.rowsRead,
      carsAdded: added,
      carsChanged: cars.length - added,
      rowsRefused: new Set(file.refusedRows.map(({ line }) => line)).size,
    },
  });
  await writeJournal(ctx, run.journal);
  await rebuildCurrentValues(
    ctx,
    cars.map(({ carId }) => carId),
    run.input.book,
  );
}

/** One reading-in at a time and club: two would each find the other's cars missing. */
async function waitForTurn({ db, club }: Context): Promise<void> {
  await db.$executeRaw`SELECT pg_advisory_xact_lock(hashtextextended(${club.id}, 2))`;
}

/** Refuses a day that is none, or that lies ahead: what is on a car then nobody knows. */
const asOfInput = (today: string) =>
  z.object({
    asOf: z.iso.date().refine((day) => day <= today, `expected a day up to ${today}`),
  });

/**
 * Reads a register file into the club's register. Rows that cannot be read are reported and left out;
 * the others go in together, in the caller's transaction. Reading the same file again changes nothing.
 *
 * @throws Refusal ROLE_NEEDED, and those of `readRegisterFile`; ZodError for an `asOf` that is no day up to today;
 *   then nothing is written
 */
export async function importRegister(ctx: Context, input: ImportInput): Promise<ImportReport> {
  requireRole(ctx.actor, "registrar", "fleetManager");
  asOfInput(ctx.today).parse({ asOf: input.asOf });
  if (!input.dryRun) await waitForTurn(ctx);
  const file = await readRegisterFile(ctx, input);
  const cars: CarRow[] = [];
  for (let start = 0; start < file.rows.length; start += CHUNK) {
    cars.push(...(await meetRecords(ctx, input, file.rows.slice(start, start + CHUNK))));
  }
  const moved = cars.filter(({ changes }) => !nothingNew(changes));
  if (moved.length > 0 && !input.dryRun) await writeRun(await beginRun(ctx, input), file, moved);
  const { rows: _, ...report } = file;
  const carsAdded = moved.filter(({ record }) => record === undefined).length;
  return {
    ...report,
    dryRun: input.dryRun,
    carsAdded,
    carsChanged: moved.length - carsAdded,
    carsUnchanged: cars.length - moved.length,
  };
}
