import { printQuantity } from "@trunnion/calc";
import type { Context } from "../context";
import { dayOf } from "../day";
import { type InstrumentDimension, instrumentDimensions, instrumentUnit } from "./policy";

/** An instrument as a form offers it. */
export interface InstrumentLine {
  readonly id: string;
  readonly label: string;
  readonly dimension: string;
  /** What it shows and how well, in the club's units: "steps of 0°05', ±0°10' (k = 2)". */
  readonly known: string;
  /** ISO day; missing where nobody noted it. */
  readonly calibratedOn?: string;
}

const isDimension = (one: string): one is InstrumentDimension =>
  (instrumentDimensions as readonly string[]).includes(one);

/** A figure in the club's unit; angles in minutes, as gauges are marked. */
function said(ctx: Context, dimension: InstrumentDimension, si: number): string {
  const unit = dimension === "angle" ? "'" : instrumentUnit[dimension][ctx.club.unitSystem];
  return printQuantity(si, { dimension, unit });
}

/** The club's instruments, by name. */
export async function listInstruments(ctx: Context): Promise<readonly InstrumentLine[]> {
  const rows = await ctx.db.instrument.findMany({ orderBy: { label: "asc" }, take: 500 });
  return rows.map(({ id, label, dimension, resolution, expandedUncertainty, calibratedOn }) => ({
    id,
    label,
    dimension,
    known: isDimension(dimension)
      ? `steps of ${said(ctx, dimension, resolution)}, ${
          expandedUncertainty === null
            ? "uncertainty not known"
            : `±${said(ctx, dimension, expandedUncertainty)} (k = 2)`
        }`
      : "",
    ...(calibratedOn === null ? {} : { calibratedOn: dayOf(calibratedOn) }),
  }));
}
