import type { CarStatus, IdentityKind, IdentityStanding, Prisma } from "@trunnion/db";
import {
  type AcceptedModification,
  type AsBuiltValue,
  type CarBasis,
  noSourceTitle,
  type Reading,
  type Source,
  type Value,
} from "@trunnion/register";
import type { Context } from "../context";
import { fittedOn } from "../fitted-on";
import { valueFrom } from "../value-columns";
import {
  carByClaim,
  carsById,
  type ModificationCells,
  type RecordRow,
  recordSql,
  type SheetCells,
  type SourceCells,
  type ValueCells,
} from "./policy";

/** Everything the engines need of one car, and what a page says of it. */
export interface CarRecord {
  readonly id: string;
  /** How addresses and commands name it: the chassis number, `~2` for a second claimant. */
  readonly reference: string;
  readonly chassis: string;
  readonly chassisKey: string;
  readonly claim: number;
  /** Reference of the car that this record turned out to be of; missing of every other. */
  readonly mergedInto?: string;
  readonly version: number;
  readonly series: {
    readonly id: string;
    readonly slug: string;
    readonly name: string;
    readonly marque: { readonly name: string };
  } | null;
  readonly basis: CarBasis;
  readonly built: string | null;
  readonly firstRegistered: string | null;
  readonly remarks: string | null;
  readonly status: CarStatus;
  readonly statusSince: string | null;
  /** By kind, the latest first. */
  readonly identities: readonly {
    readonly kind: IdentityKind;
    readonly number: string;
    readonly standing: IdentityStanding;
    readonly fromText: string | null;
    readonly toText: string | null;
  }[];
  readonly asBuilt: readonly AsBuiltValue[];
  readonly modifications: readonly (AcceptedModification & {
    readonly fitted: string;
    readonly donor: string | null;
  })[];
  readonly readings: readonly Reading[];
  /** Places for the next modification and setting sheet of this car; superseded ones keep theirs. */
  readonly nextModificationSequence: number;
  readonly nextSheetSequence: number;
}

/** When a car was built, as far as the record knows, with its words; nothing where it does not. */
export function builtOf({ basis, built }: Pick<CarRecord, "basis" | "built">) {
  return basis.built && { ...basis.built, text: built ?? basis.built.earliest };
}

/** How addresses and commands name a car. */
export function carReference(car: { readonly chassis: string; readonly claim: number }): string {
  return car.claim === 1 ? car.chassis : `${car.chassis}~${car.claim}`;
}

function basisOf({ options, serial, builtEarliest, builtLatest }: RecordRow): CarBasis {
  return {
    options: options ?? [],
    ...(serial === null ? {} : { serial }),
    ...(builtEarliest === null || builtLatest === null
      ? {}
      : { built: { earliest: builtEarliest, latest: builtLatest } }),
  };
}

const valueIn = ([valueKind, entered, number, resolution, text]: ValueCells): Value =>
  valueFrom({ valueKind, entered, number, resolution, text });

/** Titles of sources by their ids. */
type Titles = ReadonlyMap<string, string>;

function sourceIn(titles: Titles, [id, locus, trust]: SourceCells): Source {
  const title = (id === null ? undefined : titles.get(id)) ?? noSourceTitle;
  return { title, trust, ...(locus === null ? {} : { locus }) };
}

function modificationOf(cells: ModificationCells, titles: Titles): CarRecord["modifications"][number] {
  const [id, sequence, fittedText, fittedEarliest, fittedLatest, recordedOn, reason, donor, changes] = cells;
  const [, , , , , , , , , ...source] = cells;
  return {
    id,
    ...fittedOn({ fittedText, fittedEarliest, fittedLatest, recordedOn }),
    sequence,
    fitted: fittedText ?? "date not known",
    donor,
    source: sourceIn(titles, source),
    ...(reason === null ? {} : { reason }),
    changes: (changes ?? []).map(([characteristic, side, ...value]) => ({
      characteristic,
      side,
      after: valueIn(value),
    })),
  };
}

function readingsOf([on, sequence, , readings, ...cells]: SheetCells, titles: Titles): readonly Reading[] {
  const source = sourceIn(titles, cells);
  return (readings ?? []).map(([id, characteristic, side, expandedUncertainty, ...value]) => ({
    id,
    on,
    sequence,
    characteristic,
    side,
    value: valueIn(value),
    source,
    ...(expandedUncertainty === null ? {} : { expandedUncertainty }),
  }));
}

function seriesOf(row: RecordRow): CarRecord["series"] {
  if (row.series === null) return null;
  const [id, slug, name, marque] = row.series;
  return { id, slug, name, marque: { name: marque } };
}

const referenceOf = ([chassis, claim]: readonly [string, number]) => carReference({ chassis, claim });

function recordOf(row: RecordRow, titles: Titles): CarRecord {
  return {
    id: row.id,
    reference: carReference(row),
    chassis: row.chassis,
    chassisKey: row.chassisKey,
    claim: row.claim,
    version: row.version,
    ...(row.mergedInto === null ? {} : { mergedInto: referenceOf(row.mergedInto) }),
    series: seriesOf(row),
    basis: basisOf(row),
    built: row.builtText,
    firstRegistered: row.firstRegisteredText,
    remarks: row.remarks,
    status: row.status?.[0] ?? "unknown",
    statusSince: row.status?.[1] ?? null,
    identities: (row.identities ?? []).map(([kind, number, standing, fromText, toText]) => ({
      kind,
      number,
      standing,
      fromText,
      toText,
    })),
    asBuilt: (row.asBuilt ?? []).map(([id, characteristic, side, ...cells]) => {
      const [kind, entered, number, resolution, text, ...source] = cells;
      const value = valueIn([kind, entered, number, resolution, text]);
      return { id, characteristic, side, value, source: sourceIn(titles, source) };
    }),
    modifications: (row.modifications ?? []).map((cells) => modificationOf(cells, titles)),
    readings: (row.settingSheets ?? []).flatMap((cells) => readingsOf(cells, titles)),
    nextModificationSequence: row.modificationCount + 1,
    nextSheetSequence: row.sheetCount + 1,
  };
}

/** Titles of the sources that some records name: few, however many rows name them. */
async function titlesOf({ db }: Context, rows: readonly RecordRow[]): Promise<Titles> {
  const ids = new Set<string>();
  const note = (id: string | null) => id !== null && ids.add(id);
  for (const row of rows) {
    for (const cells of row.asBuilt ?? []) note(cells[8]);
    for (const cells of row.modifications ?? []) note(cells[9]);
    for (const cells of row.settingSheets ?? []) note(cells[4]);
  }
  if (ids.size === 0) return new Map();
  const found = await db.$queryRaw<{ id: string; title: string }[]>`
    SELECT id::text AS id, title FROM source WHERE id = ANY(${[...ids]}::uuid[])`;
  return new Map(found.map(({ id, title }) => [id, title]));
}

async function rowsOf({ db }: Context, where: Prisma.Sql): Promise<readonly string[]> {
  const found = await db.$queryRaw<{ record: string }[]>(recordSql(where));
  return found.map(({ record }) => record);
}

function* untitled(rows: readonly string[]): Generator<CarRecord> {
  for (const row of rows) yield recordOf(JSON.parse(row) as RecordRow, new Map());
}

/**
 * The records of some cars one after the other, each put together when it is asked for, so that many cars are gone over
 * without holding more than one. Sources are without their titles: for what only reckons with values.
 */
export async function recordsInTurn(ctx: Context, carIds: readonly string[]): Promise<Iterable<CarRecord>> {
  return untitled(await rowsOf(ctx, carsById(carIds)));
}

/** Rows with the titles of the sources they name. */
async function titled(ctx: Context, where: Prisma.Sql) {
  const rows = (await rowsOf(ctx, where)).map((row) => JSON.parse(row) as RecordRow);
  return { rows, titles: await titlesOf(ctx, rows) };
}

/** The record of the car that claims a number in that place; undefined where none does. */
export async function recordByClaim(
  ctx: Context,
  { chassisKey, claim }: Pick<CarRecord, "chassisKey" | "claim">,
): Promise<CarRecord | undefined> {
  const { rows, titles } = await titled(ctx, carByClaim(chassisKey, claim));
  const [row] = rows;
  return row && recordOf(row, titles);
}

/**
 * The records of some cars, in no particular order; a car that is not there is left out.
 *
 * @param beforeEvent id of an event whose own findings are left out, so that what is measured there does not change what
 *   is to be looked at there
 */
export async function recordsOf(
  ctx: Context,
  carIds: readonly string[],
  { beforeEvent }: { readonly beforeEvent?: string } = {},
): Promise<readonly CarRecord[]> {
  const { rows, titles } = await titled(ctx, carsById(carIds));
  return rows.map((row) => {
    if (beforeEvent === undefined) return recordOf(row, titles);
    const settingSheets = row.settingSheets?.filter(([, , eventId]) => eventId !== beforeEvent) ?? null;
    return recordOf({ ...row, settingSheets }, titles);
  });
}
