import { type CarEntries, type CharacteristicBook, entriesFor } from "@trunnion/register";
import {
  bookOf,
  type CarRecord,
  currentSpecifications,
  currentValuesOf,
  type Database,
  openOperator,
  prefixedValueColumns,
  recordsOf,
  valueColumns,
} from "@trunnion/service";
import { drawFrom } from "./draw";
import { rowIdOf } from "./row-id";
import { builtYearOf, type Thick, Thickener } from "./thicken";

/** A new car and the car of the pattern club that it follows. */
export interface Follower {
  readonly copy: number;
  readonly carId: string;
}

/** A row by the names the schema gives its fields. */
export type Row = Readonly<Record<string, unknown>>;
/** Rows by the table they go into, in the order that foreign keys want. */
export type PoolRows = ReadonlyMap<string, readonly Row[]>;

const tables = [
  "history_note",
  "submission",
  "modification",
  "modification_change",
  "modification_fastener",
  "setting_sheet",
  "as_built_value",
  "reading",
  "current_value",
] as const;
type Rows = Record<(typeof tables)[number], Row[]>;

/** Modifications that are handed in together. */
const TOGETHER = 3;

const dated = (prefix: string, { text, earliest, latest }: Thick["stories"][number]["date"]) => ({
  [`${prefix}Text`]: text,
  [`${prefix}Earliest`]: earliest,
  [`${prefix}Latest`]: latest,
});

/** The record of a copy, before anything is drawn for it: with the ids that its rows have. */
function copyOf(record: CarRecord, idOf: (row: string) => string): CarRecord {
  const renamed = <T extends { readonly id: string }>(row: T) => ({ ...row, id: idOf(row.id) });
  return {
    ...record,
    id: idOf(record.id),
    asBuilt: record.asBuilt.map(renamed),
    modifications: record.modifications.map(renamed),
    readings: record.readings.map(renamed),
  };
}

function addModifications(rows: Rows, carId: string, thick: Thick, idOf: (row: string) => string): void {
  for (const [place, modification] of thick.modifications.entries()) {
    const { id, fitted, sequence, reason, donor, fastener, changes } = modification;
    const submissionId = idOf(`submission-${Math.floor(place / TOGETHER)}`);
    if (place % TOGETHER === 0) {
      const clientKey = idOf(`client-${place}`);
      rows.submission.push({
        id: submissionId,
        carId,
        clientKey,
        status: "accepted",
        version: 2,
        content: {},
        editorCount: 0,
      });
    }
    const note = reason === "worn out" ? "old parts kept in a labelled box" : null;
    rows.modification.push({
      id,
      carId,
      submissionId,
      sequence,
      reason,
      donor,
      note,
      reversible: sequence % 3 !== 0,
      trust: "stated",
      ...dated("fitted", fitted),
    });
    for (const [turn, { characteristic, side, after }] of changes.entries()) {
      const columns = prefixedValueColumns("after", after);
      rows.modification_change.push({
        id: idOf(`${id}-change-${turn}`),
        modificationId: id,
        characteristic,
        side,
        ...columns,
      });
    }
    if (fastener !== undefined)
      rows.modification_fastener.push({
        id: idOf(`${id}-fastener`),
        modificationId: id,
        count: 4,
        ...fastener,
      });
  }
}

function addRest(rows: Rows, carId: string, thick: Thick, idOf: (row: string) => string): void {
  for (const { id, characteristic, side, value, source } of thick.asBuilt)
    rows.as_built_value.push({
      id,
      carId,
      characteristic,
      side,
      ...valueColumns(value),
      trust: source.trust,
    });
  for (const { id, on, sequence, trust, readings } of thick.sheets) {
    rows.setting_sheet.push({ id, carId, on, sequence, trust, loadState: "driver" });
    for (const { id: readingId, characteristic, side, value } of readings)
      rows.reading.push({
        id: readingId,
        settingSheetId: id,
        characteristic,
        side,
        repeat: 1,
        ...valueColumns(value),
      });
  }
  for (const [place, { text, date }] of thick.stories.entries())
    rows.history_note.push({
      id: idOf(`story-${place}`),
      carId,
      text,
      trust: "stated",
      ...dated("on", date),
    });
}

function thin(record: CarRecord, entries: CarEntries) {
  return {
    entries,
    known: new Set(record.asBuilt.map(({ characteristic }) => characteristic)),
    builtYear: builtYearOf(record.basis.built),
    nextModification: record.nextModificationSequence,
    nextSheet: record.nextSheetSequence,
  };
}

const merged = (record: CarRecord, { asBuilt, modifications, sheets }: Thick): CarRecord => ({
  ...record,
  asBuilt: [...record.asBuilt, ...asBuilt],
  modifications: [
    ...record.modifications,
    ...modifications.map((one) => ({ ...one, fitted: one.fitted.text })),
  ],
  readings: [...record.readings, ...sheets.flatMap(({ readings }) => readings)],
});

/** Cars in one go. */
const CARS = 200;

/**
 * Draws what well-kept cars have beside what the cars they follow have: a works' card, some ten modifications, setting
 * sheets, stories; and works out their current values by the engines that work them out for everybody.
 *
 * @returns rows by table, to be written beside the copies of what those cars have
 */
export async function drawPool(
  database: Database,
  {
    from,
    seed,
    followers,
  }: { readonly from: string; readonly seed: number; readonly followers: readonly Follower[] },
): Promise<PoolRows> {
  const rows = Object.fromEntries(tables.map((table) => [table, [] as Row[]])) as unknown as Rows;
  await openOperator(database, from, async (ctx) => {
    const book: CharacteristicBook = await bookOf(ctx);
    const patterns = new Map(
      (await recordsOf(ctx, [...new Set(followers.map(({ carId }) => carId))])).map((record) => [
        record.id,
        record,
      ]),
    );
    const seriesIds = [...patterns.values()].flatMap(({ series }) => (series === null ? [] : [series.id]));
    const specifications = await currentSpecifications(ctx, [...new Set(seriesIds)]);
    for (let start = 0; start < followers.length; start += CARS) {
      const records = followers.slice(start, start + CARS).map(({ copy, carId }) => {
        const pattern = patterns.get(carId);
        if (pattern === undefined) throw new Error(`no record of the pattern ${carId}`);
        const idOf = (row: string) => rowIdOf(seed, copy, row);
        const record = copyOf(pattern, idOf);
        const specification = pattern.series === null ? undefined : specifications.get(pattern.series.id);
        const draw = drawFrom(`${seed}/${copy}/thick`);
        const thick = new Thickener(draw, book, idOf).thicken(
          thin(record, entriesFor(specification, record.basis, book)),
        );
        addModifications(rows, record.id, thick, idOf);
        addRest(rows, record.id, thick, idOf);
        return merged(record, thick);
      });
      const values = await currentValuesOf(ctx, records, book);
      rows.current_value.push(...values.map((row) => ({ ...row })));
    }
  });
  return new Map(Object.entries(rows));
}
