import type { CharacteristicBook, PartialDate, RecordedValue } from "@trunnion/register";
import { v7 as uuid } from "uuid";
import type { Context } from "../context";
import { rebuildCurrentValues } from "../current-value";
import { dayColumn } from "../day";
import { Inserts } from "../inserts";
import { type JournalLine, writeJournal } from "../journal";
import { type CarRecord, recordsOf } from "../record";
import { requireRole } from "../role";
import { prefixedValueColumns, valueColumns } from "../value-columns";
import { type CarChanges, changesOf, nothingNew, type PresentKeeper } from "./policy";
import { type PlannedRow, type RegisterFile, readRegisterFile } from "./read";

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

function factColumns({ row, seriesId, serial }: PlannedRow) {
  return {
    ...(seriesId === null ? {} : { seriesId }),
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
  if (!changes.status || status === undefined) return;
  if (record) {
    await ctx.db.carStatusSpan.updateMany({
      where: { carId, to: null },
      data: { to: dayColumn(input.asOf) },
    });
  }
  inserts.carStatusSpan.push({
    id: uuid(),
    carId,
    status,
    sourceId,
    trust: "stated",
    ...dateColumns("from", statusSince),
  });
}

async function writeKeeper(run: Run, { planned, keeper, changes, carId }: CarRow): Promise<void> {
  const { ctx, inserts, sourceId, input } = run;
  const said = planned.row.keeper;
  if (!said || changes.keeper === "none") return;
  if (changes.keeper === "correct" && keeper) {
    await ctx.db.keeper.update({
      where: { clubId_id: { clubId: ctx.club.id, id: keeper.keeperId } },
      data: said,
    });
    return;
  }
  if (keeper) {
    const where = { clubId_id: { clubId: ctx.club.id, id: keeper.keepershipId } };
    await ctx.db.keepership.update({ where, data: { to: dayColumn(input.asOf) } });
  }
  const keeperId = uuid();
  inserts.keeper.push({ id: keeperId, ...said });
  const kept = { id: uuid(), carId, keeperId, sourceId, trust: "stated" as const };
  inserts.keepership.push({ ...kept, ...dateColumns("from", planned.row.keptSince) });
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

function isSetting(run: Run, { characteristic }: RecordedValue): boolean {
  return run.input.book.find(characteristic)?.setting ?? false;
}

/** Parts with a day of change are a modification; whatever else is seen on the car is a reading of that day. */
function writeNow(run: Run, { planned, record, changes, carId }: CarRow): void {
  const { row } = planned;
  const seenOn = row.recordedOn?.latest ?? run.input.asOf;
  const measuredOn = row.measuredOn?.latest ?? seenOn;
  const settings = changes.now.filter((said) => isSetting(run, said));
  const parts = changes.now.filter((said) => !isSetting(run, said));
  const changed = row.changedOn !== undefined;
  if (changed) addModification(run, { planned, record, carId, parts });
  const seen = changed ? [] : parts;
  const sheets =
    seenOn === measuredOn
      ? [{ on: seenOn, readings: [...seen, ...settings] }]
      : [
          { on: seenOn, readings: seen },
          { on: measuredOn, readings: settings },
        ].sort((a, b) => a.on.localeCompare(b.on));
  let sequence = record?.nextSheetSequence ?? 1;
  for (const { on, readings } of sheets) {
    if (readings.length > 0) addSheet(run, { carId, on, sequence: sequence++, readings });
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

interface ChangedParts extends Pick<CarRow, "planned" | "record" | "carId"> {
  readonly parts: readonly RecordedValue[];
}

function addModification(run: Run, { planned, record, carId, parts }: ChangedParts): void {
  if (parts.length === 0) return;
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
  for (const { characteristic, side, value } of parts) {
    const before = beforeColumns(planned, characteristic, side);
    const after = prefixedValueColumns("after", value);
    inserts.modificationChange.push({
      id: uuid(),
      modificationId,
      characteristic,
      side,
      ...before,
      ...after,
    });
  }
}

/** Before a change read in from a file stands what the same row says was built; else it is not known. */
function beforeColumns({ row }: PlannedRow, characteristic: string, side: RecordedValue["side"]) {
  const built = row.asBuilt.find((said) => said.characteristic === characteristic && said.side === side);
  return built ? prefixedValueColumns("before", built.value) : {};
}

function journalLine(run: Run, { planned, record, changes, carId }: CarRow): JournalLine {
  const { row } = planned;
  const words = (values: readonly RecordedValue[]) =>
    Object.fromEntries(
      values.map(({ characteristic, side, value }) => [`${characteristic} ${side}`, value.entered]),
    );
  const facts = { built: row.built?.text ?? null, remarks: row.remarks ?? null, serial: planned.serial };
  return {
    action: record ? "car.change" : "car.add",
    noun: "car",
    nounId: carId,
    carId,
    runId: run.runId,
    reason: `read in from ${run.input.file}, line ${planned.line}`,
    ...(record ? { before: { built: record.built, remarks: record.remarks, status: record.status } } : {}),
    after: {
      chassis: row.chassis,
      claim: planned.claim,
      ...(changes.facts ? facts : {}),
      ...(changes.status ? { status: row.status ?? null } : {}),
      // Who keeps the car is personal: the journal says that it changed, not to whom.
      keeper: changes.keeper,
      numbers: changes.numbers.map(({ kind, number }) => `${kind} ${number}`),
      options: [...changes.options],
      asBuilt: words(changes.asBuilt),
      now: words(changes.now),
    },
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
    select: { id: true, carId: true, keeper: true },
  });
  return new Map(
    rows.map(({ id, carId, keeper }) => [carId, { ...keeper, keepershipId: id, keeperId: keeper.id }]),
  );
}

/** Puts the rows beside the cars the register has already. */
async function meetRecords(ctx: Context, rows: readonly PlannedRow[]): Promise<readonly CarRow[]> {
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
      changes: changesOf(planned, record, keeper, ctx.today),
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

/**
 * Reads a register file into the club's register. Rows that cannot be read are reported and left out;
 * the others go in together, in the caller's transaction. Reading the same file again changes nothing.
 *
 * @throws Refusal ROLE_NEEDED, and those of `readRegisterFile`; then nothing is written
 */
export async function importRegister(ctx: Context, input: ImportInput): Promise<ImportReport> {
  requireRole(ctx.actor, "registrar", "fleetManager");
  const file = await readRegisterFile(ctx, input);
  const cars: CarRow[] = [];
  for (let start = 0; start < file.rows.length; start += CHUNK) {
    cars.push(...(await meetRecords(ctx, file.rows.slice(start, start + CHUNK))));
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
