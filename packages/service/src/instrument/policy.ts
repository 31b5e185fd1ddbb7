import { NotationError, parseQuantity, printQuantity } from "@trunnion/calc";
import type { Problems } from "@trunnion/register";
import type { WantedField } from "../car";
import type { ClubFacts, Context } from "../context";
import { dayOf } from "../day";

/** Instruments that one club may have. */
export const INSTRUMENT_LIMIT = 300;

/** What settings are measured in, and so what an instrument may read. */
export const instrumentDimensions = ["angle", "length", "pressure", "mass"] as const;
export type InstrumentDimension = (typeof instrumentDimensions)[number];

/** Unit that a bare number is in, and in which an instrument's figures are told. */
export const instrumentUnit: Readonly<
  Record<InstrumentDimension, Readonly<Record<ClubFacts["unitSystem"], string>>>
> = {
  angle: { metric: "°", imperial: "°" },
  length: { metric: "mm", imperial: "mm" },
  pressure: { metric: "bar", imperial: "psi" },
  mass: { metric: "kg", imperial: "lb" },
};

/** Whether a dimension is one that instruments read. */
export const isInstrumentDimension = (one: string): one is InstrumentDimension =>
  (instrumentDimensions as readonly string[]).includes(one);

/** A figure in the club's unit; angles in minutes, as gauges are marked. */
export function sayInstrumentFigure(ctx: Context, dimension: InstrumentDimension, si: number): string {
  const unit = dimension === "angle" ? "'" : instrumentUnit[dimension][ctx.club.unitSystem];
  return printQuantity(si, { dimension, unit });
}

interface Figure {
  readonly field: string;
  readonly entered: string;
  readonly dimension: InstrumentDimension;
  readonly problems: Problems;
}

/** A figure above nought in SI; nothing for an empty one, or where it is told what is wrong. */
export function readInstrumentFigure(
  ctx: Context,
  { field, entered, dimension, problems }: Figure,
): number | null {
  if (entered === "") return null;
  try {
    const defaultUnit = instrumentUnit[dimension][ctx.club.unitSystem];
    const { si } = parseQuantity(entered.replace(/^±\s*/, ""), dimension, { defaultUnit });
    if (si > 0) return si;
    problems.add(field, `"${entered}" is not above nought: write the step or the uncertainty as a figure.`);
  } catch (error) {
    if (!(error instanceof NotationError)) throw error;
    problems.add(field, error.message);
  }
  return null;
}

/** An instrument as its form and the journal have it. */
export interface InstrumentTexts {
  readonly label: string;
  readonly dimension: string;
  readonly number: string;
  readonly resolution: string;
  readonly uncertainty: string;
  /** ISO days; empty where nobody said. */
  readonly calibratedOn: string;
  readonly calibratedUntil: string;
}

interface Row {
  readonly label: string;
  readonly dimension: string;
  readonly number: string | null;
  readonly resolution: number;
  readonly expandedUncertainty: number | null;
  readonly calibratedOn: Date | null;
  readonly calibratedUntil: Date | null;
}

/** A row as texts, its figures in the club's units. */
export function instrumentTexts(ctx: Context, row: Row): InstrumentTexts {
  const { label, dimension, number, resolution, expandedUncertainty, calibratedOn, calibratedUntil } = row;
  const figure = (si: number | null) =>
    si === null || !isInstrumentDimension(dimension) ? "" : sayInstrumentFigure(ctx, dimension, si);
  return {
    label,
    dimension,
    number: number ?? "",
    resolution: figure(resolution),
    uncertainty: figure(expandedUncertainty),
    calibratedOn: calibratedOn === null ? "" : dayOf(calibratedOn),
    calibratedUntil: calibratedUntil === null ? "" : dayOf(calibratedUntil),
  };
}

const labels: Readonly<Record<keyof InstrumentTexts, string>> = {
  label: "What it is",
  dimension: "It reads",
  number: "Its number",
  resolution: "Smallest step",
  uncertainty: "Uncertainty",
  calibratedOn: "Last calibrated",
  calibratedUntil: "Good until",
};

/** The texts of now and those wanted, field by field, for conflicts and the journal. */
export function wantedInstrument(now: InstrumentTexts, wanted: InstrumentTexts): readonly WantedField[] {
  return (Object.keys(labels) as (keyof InstrumentTexts)[]).map((field) => ({
    field,
    label: labels[field],
    now: now[field],
    wanted: wanted[field],
  }));
}
