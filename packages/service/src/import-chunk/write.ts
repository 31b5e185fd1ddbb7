import type {
  AsBuiltValue,
  CharacteristicBook,
  PartialDate,
  Reading,
  RecordedValue,
} from "@trunnion/register";
import { v7 as uuid } from "uuid";
import type { Context } from "../context";
import { addCurrentValues, currentValuesOf, rebuildCurrentValues } from "../current-value";
import { dayColumn } from "../day";
import { Steps } from "../import-steps";
import { Inserts } from "../inserts";
import { type JournalLine, writeJournal } from "../journal";
import type { PlannedRow } from "../planned-row";
import type { CarRecord } from "../record";
import { prefixedValueColumns, valueColumns } from "../value-columns";
import { journalled, type NowValue } from "./policy";
import type { CarRow } from "./read";

/** What every row of a reading-in is written under. */
export interface ChunkBasis {
  readonly runId: string;
  readonly sourceId: string;
  /** Title of the source. */
  readonly sourceTitle: string;
  /** Name of the file, for the journal. */
  readonly file: string;
  /** ISO day the file tells of. */
  readonly asOf: string;
  readonly book: CharacteristicBook;
  /** Steps the run has already. */
  readonly steps: number;
}

/** What the statements of one chunk share. */
interface Chunk extends ChunkBasis {
  readonly ctx: Context;
  readonly inserts: Inserts;
  readonly undo: Steps;
  readonly journal: JournalLine[];
  /** Values of cars that are added, by car, as the engines take them. */
  readonly added: Map<string, { readonly asBuilt: AsBuiltValue[]; readonly readings: Reading[] }>;
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

function writeFacts({ inserts, undo }: Chunk, { planned, record, changes, carId }: CarRow): void {
  const facts = factColumns(planned);
  if (record) {
    undo.change(carId, "car", {
      id: carId,
      ...(changes.facts ? facts : {}),
      version: record.version + 1,
    });
    return;
  }
  const { key: chassisKey, claim, row } = planned;
  inserts.car.push({ id: carId, chassis: row.chassis, chassisKey, claim, ...facts });
  // Everything under the car goes with it, so one step is enough.
  undo.add(carId, "car", carId);
}

/** Notes that a row was added to a car the register had; of a new car the car itself is noted. */
function noteAdded({ undo }: Chunk, { record, carId }: CarRow, table: string, rowId: string): void {
  if (record) undo.add(carId, table, rowId);
}

function writeStatus(chunk: Chunk, car: CarRow): void {
  const { planned, openSpanId, changes, carId } = car;
  const { inserts, undo, sourceId, asOf } = chunk;
  const { status, statusSince } = planned.row;
  if (changes.status === "none" || status === undefined) return;
  const since = dateColumns("from", statusSince);
  if (openSpanId !== undefined) {
    const ended = { to: dayColumn(statusSince?.latest ?? asOf) };
    undo.change(carId, "carStatusSpan", {
      id: openSpanId,
      ...(changes.status === "correct" ? since : ended),
    });
  }
  if (changes.status === "correct") return;
  const id = uuid();
  inserts.carStatusSpan.push({ id, carId, status, sourceId, trust: "stated", ...since });
  noteAdded(chunk, car, "carStatusSpan", id);
}

function correctKeeper({ undo }: Chunk, { planned, keeper, carId }: CarRow): void {
  if (!keeper) return;
  undo.change(carId, "keeper", { id: keeper.keeperId, ...planned.row.keeper });
  undo.change(carId, "keepership", {
    id: keeper.keepershipId,
    ...dateColumns("from", planned.row.keptSince),
  });
}

function writeKeeper(chunk: Chunk, car: CarRow): void {
  const { planned, keeper, changes, carId } = car;
  const { inserts, undo, sourceId, asOf } = chunk;
  const { keeper: said, keptSince } = planned.row;
  if (!said || changes.keeper === "none") return;
  if (changes.keeper === "correct") {
    correctKeeper(chunk, car);
    return;
  }
  if (keeper) {
    undo.change(carId, "keepership", {
      id: keeper.keepershipId,
      to: dayColumn(keptSince?.latest ?? asOf),
    });
  }
  const keeperId = uuid();
  const id = uuid();
  inserts.keeper.push({ id: keeperId, ...said });
  const kept = { id, carId, keeperId, sourceId, trust: "stated" as const };
  inserts.keepership.push({ ...kept, ...dateColumns("from", keptSince) });
  noteAdded(chunk, car, "keepership", id);
  noteAdded(chunk, car, "keeper", keeperId);
}

const place = ({ characteristic, side }: Pick<RecordedValue, "characteristic" | "side">) =>
  `${characteristic} ${side}`;

function writeAsBuilt(chunk: Chunk, car: CarRow): void {
  const { ctx, inserts, undo, sourceId } = chunk;
  const { record, changes, carId } = car;
  const standing = new Map(record?.asBuilt.map((value) => [place(value), value.id]));
  for (const said of changes.asBuilt) {
    const { characteristic, side, value } = said;
    const before = standing.get(place(said));
    if (before !== undefined) {
      undo.change(carId, "asBuiltValue", { id: before, supersededAt: ctx.now });
    }
    const id = uuid();
    const columns = { id, carId, characteristic, side, sourceId, trust: "stated" as const };
    inserts.asBuiltValue.push({ ...columns, ...valueColumns(value) });
    noteAdded(chunk, car, "asBuiltValue", id);
    chunk.added.get(carId)?.asBuilt.push({ id, characteristic, side, value, source: sourceOf(chunk) });
  }
}

const sourceOf = ({ sourceTitle }: Chunk) => ({ title: sourceTitle, trust: "stated" as const });

/** What was changed on a day is a modification; whatever else is seen or measured is a sheet of readings of its day. */
function writeNow(chunk: Chunk, car: CarRow): void {
  const { record, changes } = car;
  const parts = changes.now.filter(({ as }) => as === "change");
  if (parts.length > 0) addModification(chunk, car, parts);
  const readings = changes.now.filter(({ as }) => as === "reading");
  const days = [...new Set(readings.map(({ on }) => on))].sort();
  const first = record?.nextSheetSequence ?? 1;
  for (const [index, day] of days.entries()) {
    const read = readings.filter(({ on }) => on === day);
    addSheet(chunk, car, { on: day, sequence: first + index, readings: read });
  }
}

interface SeenValues {
  readonly on: string;
  readonly sequence: number;
  readonly readings: readonly RecordedValue[];
}

function addSheet(chunk: Chunk, car: CarRow, { on, sequence, readings }: SeenValues): void {
  const { inserts, sourceId } = chunk;
  const { carId } = car;
  const settingSheetId = uuid();
  const sheet = { id: settingSheetId, carId, on: dayColumn(on), sequence, sourceId };
  inserts.settingSheet.push({ ...sheet, trust: "stated" });
  noteAdded(chunk, car, "settingSheet", settingSheetId);
  for (const { characteristic, side, value } of readings) {
    const id = uuid();
    inserts.reading.push({ id, settingSheetId, characteristic, side, ...valueColumns(value) });
    const reading = { id, on, sequence, characteristic, side, value, source: sourceOf(chunk) };
    chunk.added.get(carId)?.readings.push(reading);
  }
}

function addModification(chunk: Chunk, car: CarRow, parts: readonly NowValue[]): void {
  const { planned, record, carId } = car;
  const { ctx, inserts, sourceId } = chunk;
  const { row } = planned;
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
    decisionReason: `read in from ${chunk.file}`,
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
  noteAdded(chunk, car, "modification", modificationId);
  noteAdded(chunk, car, "submission", submissionId);
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

function journalLine({ runId, file }: Chunk, { planned, record, changes, carId }: CarRow): JournalLine {
  return {
    action: record ? "car.change" : "car.add",
    noun: "car",
    nounId: carId,
    carId,
    runId,
    reason: `read in from ${file}, line ${planned.line}`,
    ...journalled(planned, record, changes),
  };
}

function writeCar(chunk: Chunk, car: CarRow): void {
  const { inserts, sourceId } = chunk;
  const { record, changes, carId } = car;
  if (!record) chunk.added.set(carId, { asBuilt: [], readings: [] });
  writeFacts(chunk, car);
  writeStatus(chunk, car);
  writeKeeper(chunk, car);
  writeAsBuilt(chunk, car);
  for (const { kind, number, key } of changes.numbers) {
    const id = uuid();
    inserts.carIdentity.push({ id, carId, kind, number, numberKey: key, sourceId, trust: "stated" });
    noteAdded(chunk, car, "carIdentity", id);
  }
  for (const code of changes.options) {
    inserts.carOption.push({ carId, code });
    noteAdded(chunk, car, "carOption", code);
  }
  writeNow(chunk, car);
  chunk.journal.push(journalLine(chunk, car));
}

/** The record of a car as it has just been written: what reading it again from a dozen tables would give. */
function recordAdded({ planned, carId }: CarRow, chunk: Chunk): CarRecord {
  const { row, series, serial, options, key: chassisKey, claim } = planned;
  const values = chunk.added.get(carId) ?? { asBuilt: [], readings: [] };
  const { built } = row;
  return {
    id: carId,
    reference: row.chassis,
    chassis: row.chassis,
    chassisKey,
    claim,
    version: 1,
    series: series && { ...series, name: series.slug, marque: { name: "" } },
    basis: {
      options,
      ...(serial === null ? {} : { serial }),
      ...(built === undefined ? {} : { built: { earliest: built.earliest, latest: built.latest } }),
    },
    built: built?.text ?? null,
    firstRegistered: row.firstRegistered?.text ?? null,
    remarks: row.remarks ?? null,
    status: row.status ?? "unknown",
    statusSince: row.statusSince?.text ?? null,
    identities: [],
    ...values,
    modifications: [],
    nextModificationSequence: 1,
    nextSheetSequence: 1,
  };
}

/** A car that is new and has no modification is assessed as it was written; a modification's date has rules of its own. */
const isPlain = ({ record, changes }: CarRow) => !record && changes.now.every(({ as }) => as === "reading");

/**
 * Writes what some rows say and the register does not, in the context's transaction: records, the steps to take it
 * back, journal, current values.
 *
 * @returns steps the run has then
 */
export async function writeCars(ctx: Context, cars: readonly CarRow[], basis: ChunkBasis): Promise<number> {
  if (cars.length === 0) return basis.steps;
  const chunk: Chunk = {
    ...basis,
    ctx,
    inserts: new Inserts(),
    undo: new Steps(),
    journal: [],
    added: new Map(),
  };
  for (const car of cars) writeCar(chunk, car);
  const steps = await chunk.undo.write(ctx, basis.runId, basis.steps);
  // While the database writes the records, what follows from them is worked out.
  const plain = cars.filter(isPlain).map((car) => recordAdded(car, chunk));
  const [values] = await Promise.all([
    currentValuesOf(ctx, plain, basis.book),
    chunk.inserts.write(ctx).then(() => writeJournal(ctx, chunk.journal)),
  ]);
  await addCurrentValues(ctx, values);
  const others = cars.filter((car) => !isPlain(car)).map(({ carId }) => carId);
  await rebuildCurrentValues(ctx, others, basis.book);
  return steps;
}
