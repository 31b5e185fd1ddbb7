import { fromSi, unitNamed } from "@trunnion/calc";
import type { Prisma } from "@trunnion/db";
import {
  type CharacteristicBook,
  type DeviationLine,
  deviationLine,
  deviationsFromFactory,
  entriesFor,
  type QuantityCharacteristic,
  type Reading,
  type SheetGroup,
  type SheetGroupKey,
  type Side,
  sheetGroups,
  sheetSides,
} from "@trunnion/register";
import { findCar } from "../car";
import { bookOf } from "../characteristic";
import type { ClubFacts, Context } from "../context";
import { dayOf } from "../day";
import { mayInspect } from "../inspection/policy";
import { memberNames } from "../member-name";
import { type CarRecord, carReference } from "../record";
import { sourceFields, sourceOf } from "../source-columns";
import { currentSpecifications } from "../specification";
import { standingRecord } from "../standing-record";
import { valueFrom } from "../value-columns";
import {
  type CornerSigns,
  type Repeats,
  readingsAt,
  repeatsOf,
  type SeriesSpread,
  sayDifference,
  signsOf,
  spreadOf,
  stateOfSheet,
  systemOf,
} from "./policy";

/** Most sheets of one car that a page lists and plots, latest first. */
const SHEETS = 200;

/** One occasion of measuring, as a list has it. */
export interface SheetLine {
  readonly id: string;
  /** ISO day. */
  readonly on: string;
  readonly loadState: "kerb" | "driver" | "driverAndPassenger" | "unknown";
  readonly note: string;
  readonly source: string;
  /** How many settings were read. */
  readonly settings: number;
  /** Of two sheets of one day, which came first: as found, then as left. */
  readonly pair?: "asFound" | "asLeft";
  /** Instruments it was read with. */
  readonly instruments: readonly string[];
  /** The event whose findings it was made of; missing for any other. */
  readonly event?: { readonly slug: string; readonly name: string; readonly number: string };
  /** Who found it there, for those who inspect; empty else. */
  readonly by: string;
}

/** One place on a sheet: what was read, and what it is compared with. */
export interface SheetPlace {
  readonly side: Side;
  /** Against specification, as this sheet alone knows it. */
  readonly line: DeviationLine;
  readonly repeats?: Repeats;
  /** The last sheet before this one that has this place. */
  readonly last?: { readonly on: string; readonly entered: string; readonly difference: string };
  readonly series?: SeriesSpread;
}

export interface SheetRow {
  readonly characteristic: string;
  readonly label: string;
  readonly places: readonly SheetPlace[];
}

/** One reading of a plot, in the plot's unit. */
export interface PlotPoint {
  /** ISO day. */
  readonly on: string;
  readonly value: number;
  /** Half length of its whisker (expanded uncertainty, k = 2); 0 where it is not known. */
  readonly uncertainty: number;
  readonly entered: string;
}

/** How a setting went over the years. */
export interface SettingPlot {
  readonly characteristic: string;
  readonly label: string;
  readonly unit: string;
  readonly lower?: number;
  readonly upper?: number;
  readonly lines: readonly { readonly side: Side; readonly points: readonly PlotPoint[] }[];
}

/** A car's setting sheets: the one asked for in full, the others as a list and as plots. */
export interface SettingSheetPage {
  readonly club: ClubFacts;
  readonly car: { readonly reference: string; readonly chassis: string; readonly series: string };
  readonly sheets: readonly SheetLine[];
  /** The sheet that is shown; missing where the car has none, or the id names none of its own. */
  readonly shown?: SheetLine;
  readonly groups: readonly {
    readonly key: SheetGroupKey;
    readonly label: string;
    readonly rows: readonly SheetRow[];
  }[];
  readonly signs: CornerSigns;
  readonly plots: readonly SettingPlot[];
}

const sheetFields = {
  id: true,
  on: true,
  sequence: true,
  loadState: true,
  note: true,
  entry: {
    select: {
      runningNumber: true,
      event: { select: { slug: true, name: true } },
      findings: { where: { readings: { some: {} } }, select: { foundById: true } },
    },
  },
  ...sourceFields,
  readings: {
    select: {
      id: true,
      characteristic: true,
      side: true,
      repeat: true,
      expandedUncertainty: true,
      valueKind: true,
      entered: true,
      number: true,
      resolution: true,
      text: true,
      instrument: { select: { label: true } },
    },
    orderBy: [{ characteristic: "asc" }, { side: "asc" }, { repeat: "asc" }],
  },
} satisfies Prisma.SettingSheetSelect;

async function rowsOf(ctx: Context, carId: string) {
  return ctx.db.settingSheet.findMany({
    where: { carId, supersededAt: null },
    select: sheetFields,
    orderBy: [{ on: "desc" }, { sequence: "desc" }],
    take: SHEETS,
  });
}
type SheetRowOf = Awaited<ReturnType<typeof rowsOf>>[number];

interface Sheet {
  readonly line: SheetLine;
  readonly readings: readonly Reading[];
}

interface SheetsOf {
  readonly all: readonly SheetRowOf[];
  readonly isSetting: (key: string) => boolean;
  /** Names of those who found it, where they may be told. */
  readonly names: ReadonlyMap<string, string>;
}

const findersOf = ({ entry }: SheetRowOf) =>
  (entry?.findings ?? []).flatMap(({ foundById }) => foundById ?? []);

function sheetOf(row: SheetRowOf, { all, isSetting, names }: SheetsOf): Sheet {
  const on = dayOf(row.on);
  const readings = row.readings
    .filter(({ characteristic }) => isSetting(characteristic))
    .map((reading) => ({
      id: reading.id,
      on,
      sequence: row.sequence,
      characteristic: reading.characteristic,
      side: reading.side,
      value: valueFrom(reading),
      source: sourceOf(row),
      ...(reading.expandedUncertainty === null ? {} : { expandedUncertainty: reading.expandedUncertainty }),
    }));
  const sameDay = all.filter(
    (one) => dayOf(one.on) === on && one.readings.some((r) => isSetting(r.characteristic)),
  );
  const place = [...sameDay].sort((a, b) => a.sequence - b.sequence).findIndex(({ id }) => id === row.id);
  const pair = sameDay.length === 2 ? (["asFound", "asLeft"] as const)[place] : undefined;
  const line: SheetLine = {
    id: row.id,
    on,
    loadState: row.loadState,
    note: row.note ?? "",
    source: sourceOf(row).title,
    settings: new Set(readings.map(({ characteristic, side }) => `${characteristic} ${side}`)).size,
    instruments: [
      ...new Set(row.readings.flatMap(({ instrument }) => (instrument ? [instrument.label] : []))),
    ],
    by: [...new Set(findersOf(row).flatMap((id) => names.get(id) ?? []))].join(", "),
    ...(row.entry ? { event: { ...row.entry.event, number: row.entry.runningNumber } } : {}),
    ...(pair === undefined ? {} : { pair }),
  };
  return { line, readings };
}

/** What the other cars of the series have at each place that is on a setting sheet, SI, by characteristic and side. */
async function seriesValues(ctx: Context, record: CarRecord, keys: readonly string[]) {
  const values = new Map<string, number[]>();
  if (record.series === null) return values;
  const rows = await ctx.db.currentValue.findMany({
    where: {
      characteristic: { in: [...keys] },
      number: { not: null },
      car: { seriesId: record.series.id, ...standingRecord, id: { not: record.id } },
    },
    select: { characteristic: true, side: true, number: true },
  });
  for (const { characteristic, side, number } of rows) {
    if (number === null) continue;
    const key = `${characteristic} ${side}`;
    const list = values.get(key) ?? [];
    list.push(number);
    values.set(key, list);
  }
  return values;
}

interface Comparing {
  readonly ctx: Context;
  readonly book: CharacteristicBook;
  readonly sheet: Sheet;
  /** Sheets before it, latest first. */
  readonly earlier: readonly Sheet[];
  readonly lines: ReadonlyMap<string, DeviationLine>;
  readonly series: ReadonlyMap<string, readonly number[]>;
}

function lastOf(
  one: QuantityCharacteristic,
  side: Side,
  { ctx, sheet, earlier }: Comparing,
): SheetPlace["last"] {
  const here = { characteristic: one.key, side };
  const now = readingsAt(sheet.readings, here).at(-1);
  for (const { line, readings } of earlier) {
    const then = readingsAt(readings, here).at(-1);
    if (then?.value.kind !== "quantity") continue;
    const difference =
      now?.value.kind === "quantity"
        ? sayDifference(one, now.value.si - then.value.si, ctx.club.unitSystem)
        : "";
    return { on: line.on, entered: then.value.entered, difference };
  }
  return undefined;
}

function placeOf(one: QuantityCharacteristic, side: Side, comparing: Comparing): SheetPlace | undefined {
  const { ctx, sheet, lines, series, book } = comparing;
  const key = `${one.key} ${side}`;
  const at = readingsAt(sheet.readings, { characteristic: one.key, side });
  // The specification is silent of it: that is not the same as wanting it off.
  const bare = (): DeviationLine => ({
    ...deviationLine(
      {
        characteristic: one.key,
        side,
        baseline: "factory",
        verdict: "notRecorded",
        ...actualOf(at.at(-1)),
      },
      book,
      ctx.club.unitSystem,
    ),
    specified: "",
  });
  const line = lines.get(key) ?? (at.length > 0 ? bare() : undefined);
  if (!line) return undefined;
  const repeats = repeatsOf(at, one, ctx.club.unitSystem);
  const last = lastOf(one, side, comparing);
  const here = at.at(-1)?.value.entered ?? line.specified;
  const spread = spreadOf(series.get(key) ?? [], one, systemOf(one, here, ctx.club.unitSystem));
  return {
    side,
    line,
    ...(repeats ? { repeats } : {}),
    ...(last ? { last } : {}),
    ...(spread ? { series: spread } : {}),
  };
}

/** A reading that the specification is silent of still is what the car has. */
function actualOf(reading: Reading | undefined) {
  const [actual] = reading === undefined ? [] : [...stateOfSheet([reading]).values()];
  return actual === undefined ? {} : { actual };
}

function plotOf(
  one: QuantityCharacteristic,
  sheets: readonly Sheet[],
  { ctx, line }: { readonly ctx: Context; readonly line: DeviationLine | undefined },
): SettingPlot | undefined {
  if (one.dimension === "text") return undefined;
  const symbol = one.dimension === "angle" && one.notation !== "toe" ? "°" : one.units[ctx.club.unitSystem];
  const unit = unitNamed(one.dimension, symbol);
  const inUnit = (si: number) => fromSi(si, unit);
  const lines = sheetSides(one).map((side) => ({
    side,
    points: sheets.toReversed().flatMap(({ line: { on }, readings }) => {
      const reading = readingsAt(readings, { characteristic: one.key, side }).at(-1);
      if (reading?.value.kind !== "quantity") return [];
      const whisker = reading.expandedUncertainty ?? 0;
      const { si, entered } = reading.value;
      return [{ on, value: inUnit(si), uncertainty: inUnit(whisker) - inUnit(0), entered }];
    }),
  }));
  if (!lines.some(({ points }) => points.length > 1)) return undefined;
  const { lower, upper } = line?.bracket ?? {};
  return {
    characteristic: one.key,
    label: one.label,
    unit: symbol,
    lines: lines.filter(({ points }) => points.length > 0),
    ...(lower === undefined ? {} : { lower: inUnit(lower) }),
    ...(upper === undefined ? {} : { upper: inUnit(upper) }),
  };
}

function groupsOf(groups: readonly SheetGroup[], comparing: Comparing): SettingSheetPage["groups"] {
  return groups
    .map(({ key, label, rows }) => ({
      key,
      label,
      rows: rows.flatMap((one) => {
        const places = sheetSides(one).flatMap((side) => placeOf(one, side, comparing) ?? []);
        return places.length === 0 ? [] : [{ characteristic: one.key, label: one.label, places }];
      }),
    }))
    .filter(({ rows }) => rows.length > 0);
}

/**
 * A car's setting sheets. The one named, else the latest, is told in full: each reading judged against specification
 * with its uncertainty, beside the sheet before it and the other cars of its series.
 *
 * @throws Refusal CAR_NOT_FOUND
 */
export async function settingSheetPage(
  ctx: Context,
  input: { readonly car: string; readonly sheet?: string | undefined },
): Promise<SettingSheetPage> {
  const record = await findCar(ctx, input.car);
  const book = await bookOf(ctx);
  const groups = sheetGroups(book);
  const settings = new Map(groups.flatMap(({ rows }) => rows.map((one) => [one.key, one] as const)));
  const rows = await rowsOf(ctx, record.id);
  const names = mayInspect(ctx.actor) ? await memberNames(ctx, rows.flatMap(findersOf)) : new Map();
  const sheets = rows
    .map((row) => sheetOf(row, { all: rows, isSetting: (key) => settings.has(key), names }))
    .filter(({ readings }) => readings.length > 0);
  const sheet = input.sheet === undefined ? sheets[0] : sheets.find(({ line }) => line.id === input.sheet);
  const specifications = await currentSpecifications(ctx, record.series === null ? [] : [record.series.id]);
  const specification = record.series === null ? undefined : specifications.get(record.series.id);
  const entries = entriesFor(specification, record.basis, book);
  const shown: Sheet["readings"] = sheet?.readings ?? [];
  const lines = new Map(
    deviationsFromFactory(stateOfSheet(shown), entries, book)
      .filter(({ characteristic }) => settings.has(characteristic))
      .map((one) => [`${one.characteristic} ${one.side}`, deviationLine(one, book, ctx.club.unitSystem)]),
  );
  const series = await seriesValues(ctx, record, [...settings.keys()]);
  const earlier = sheet ? sheets.slice(sheets.indexOf(sheet) + 1) : [];
  const plots = [...settings.values()].flatMap((one) => {
    const line = lines.get(`${one.key} ${sheetSides(one)[0]}`);
    return plotOf(one, sheets, { ctx, line }) ?? [];
  });
  const car = { reference: carReference(record), chassis: record.chassis };
  return {
    club: ctx.club,
    car: {
      ...car,
      series: record.series === null ? "" : `${record.series.marque.name} ${record.series.name}`,
    },
    sheets: sheets.map(({ line }) => line),
    ...(sheet ? { shown: sheet.line } : {}),
    groups: sheet ? groupsOf(groups, { ctx, book, sheet, earlier, lines, series }) : [],
    signs: signsOf(shown),
    plots,
  };
}
