import { refused } from "@trunnion/register";
import { z } from "zod";
import type { ClubFacts, Context } from "../context";
import { dayOf } from "../day";
import { carReference } from "../record";
import { type InstrumentTexts, instrumentTexts, isInstrumentDimension, sayInstrumentFigure } from "./policy";

/** An instrument as a form offers it. */
export interface InstrumentLine {
  readonly id: string;
  readonly label: string;
  readonly dimension: string;
  /** What it shows and how well, in the club's units: "steps of 0°05', ±0°10' (k = 2)"; and that its calibration ran out. */
  readonly known: string;
  /** ISO day; missing where nobody noted it. */
  readonly calibratedOn?: string;
  readonly calibratedUntil?: string;
  /** Why it is offered no longer; missing for one that is in use. */
  readonly retired?: string;
}

type Row = Awaited<ReturnType<Context["db"]["instrument"]["findMany"]>>[number];

function lineOf(ctx: Context, row: Row): InstrumentLine {
  const { id, label, dimension, resolution, expandedUncertainty, calibratedOn, calibratedUntil } = row;
  const until = calibratedUntil === null ? undefined : dayOf(calibratedUntil);
  const known = isInstrumentDimension(dimension)
    ? `steps of ${sayInstrumentFigure(ctx, dimension, resolution)}, ${
        expandedUncertainty === null
          ? "uncertainty not known"
          : `±${sayInstrumentFigure(ctx, dimension, expandedUncertainty)} (k = 2)`
      }`
    : "";
  return {
    id,
    label,
    dimension,
    known: until !== undefined && until < ctx.today ? `${known}; its calibration has run out` : known,
    ...(calibratedOn === null ? {} : { calibratedOn: dayOf(calibratedOn) }),
    ...(until === undefined ? {} : { calibratedUntil: until }),
    ...(row.retiredReason === null ? {} : { retired: row.retiredReason }),
  };
}

/** The club's instruments that are in use, by name. */
export async function listInstruments(ctx: Context): Promise<readonly InstrumentLine[]> {
  const rows = await ctx.db.instrument.findMany({
    where: { retiredAt: null },
    orderBy: { label: "asc" },
    take: 500,
  });
  return rows.map((row) => lineOf(ctx, row));
}

/** Every instrument on the books, for the list that leads to each. */
export interface InstrumentsPage {
  readonly club: ClubFacts;
  readonly inUse: readonly InstrumentLine[];
  readonly retired: readonly InstrumentLine[];
}

/** The club's instruments, those in use and those taken out of it. */
export async function instrumentsPage(ctx: Context): Promise<InstrumentsPage> {
  const rows = await ctx.db.instrument.findMany({ orderBy: { label: "asc" }, take: 500 });
  const lines = rows.map((row) => lineOf(ctx, row));
  return {
    club: ctx.club,
    inUse: lines.filter(({ retired }) => retired === undefined),
    retired: lines.filter(({ retired }) => retired !== undefined),
  };
}

/** Who corrects what the club measures with: those who keep the register, and those who measure at events. */
export function mayChangeInstruments({ actor }: Context): boolean {
  return (["registrar", "fleetManager", "scrutineer"] as const).some((role) => actor.roles.includes(role));
}

/** Sheets that are named of what was read with an instrument, the latest first. */
const SHEETS = 50;

/** One setting sheet with readings of an instrument. */
export interface InstrumentSheet {
  readonly id: string;
  readonly car: { readonly reference: string; readonly chassis: string };
  /** ISO day. */
  readonly on: string;
  readonly readings: number;
}

/** One instrument with everything its page shows. */
export interface InstrumentPage {
  readonly club: ClubFacts;
  readonly line: InstrumentLine;
  readonly texts: InstrumentTexts;
  readonly version: number;
  readonly mayChange: boolean;
  /** The latest; `sheetCount` says how many there are. */
  readonly sheets: readonly InstrumentSheet[];
  readonly sheetCount: number;
  /** Readings taken with it at events. */
  readonly findings: number;
}

/** @throws Refusal INSTRUMENT_NOT_FOUND */
export async function findInstrument(ctx: Context, id: string): Promise<Row> {
  const known = z.uuid().safeParse(id).success;
  const row = known ? await ctx.db.instrument.findFirst({ where: { id } }) : null;
  if (!row) throw refused("INSTRUMENT_NOT_FOUND", {});
  return row;
}

/** Whether anything stands on the record that was read with it. */
export async function isInstrumentUsed({ db }: Context, id: string): Promise<boolean> {
  const [reading, finding] = [
    await db.reading.findFirst({ where: { instrumentId: id }, select: { characteristic: true } }),
    await db.findingReading.findFirst({ where: { instrumentId: id }, select: { characteristic: true } }),
  ];
  return reading !== null || finding !== null;
}

/**
 * One instrument, for every member, with what was read with it.
 *
 * @throws Refusal INSTRUMENT_NOT_FOUND
 */
export async function instrumentPage(ctx: Context, id: string): Promise<InstrumentPage> {
  const row = await findInstrument(ctx, id);
  const readWith = { readings: { some: { instrumentId: id } }, supersededAt: null };
  const sheets = await ctx.db.settingSheet.findMany({
    where: readWith,
    select: {
      id: true,
      on: true,
      car: { select: { chassis: true, claim: true } },
      _count: { select: { readings: { where: { instrumentId: id } } } },
    },
    orderBy: [{ on: "desc" }, { id: "desc" }],
    take: SHEETS,
  });
  return {
    club: ctx.club,
    line: lineOf(ctx, row),
    texts: instrumentTexts(ctx, row),
    version: row.version,
    mayChange: mayChangeInstruments(ctx),
    sheets: sheets.map(({ id: sheet, on, car, _count }) => ({
      id: sheet,
      car: { reference: carReference(car), chassis: car.chassis },
      on: dayOf(on),
      readings: _count.readings,
    })),
    sheetCount: await ctx.db.settingSheet.count({ where: readWith }),
    findings: await ctx.db.findingReading.count({ where: { instrumentId: id } }),
  };
}
