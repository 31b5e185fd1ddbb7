import type { WorkingStep } from "../catalogue/computation";
import { type RawReading, type Reader, readingStep } from "./reader";
import { meanOf, repeatability } from "./series";
import {
  type Contribution,
  certificateUncertainty,
  combinedUncertainty,
  coverageFactor,
  effectiveDegreesOfFreedom,
  rectangularUncertainty,
  resolutionUncertainty,
} from "./uncertainty";

/** What was read, and what is known of how well. */
export interface BudgetInput {
  readonly readings: readonly RawReading[];
  readonly resolution?: RawReading | undefined;
  readonly accuracy?: RawReading | undefined;
  readonly calibration?: RawReading | undefined;
  readonly scatter?: RawReading | undefined;
}

/** One line of an uncertainty budget. */
interface Part extends Contribution {
  readonly symbol: string;
  readonly label: string;
  readonly formula: string;
  readonly note?: string;
}

/** The mean of the readings and its uncertainty budget. */
export interface Budget {
  readonly value: number;
  /** u and U; `undefined` where nothing is known of either instrument or scatter. */
  readonly known?: { readonly standard: number; readonly expanded: number; readonly largest: string };
  readonly working: readonly WorkingStep[];
  readonly warnings: readonly string[];
}

/**
 * The uncertainty budget of one or more readings of one thing: resolution, instrument, scatter, root-sum-square.
 * Invents nothing: what is not given is left out and a warning says so.
 * @throws CalcRefusal when an entry cannot be read, or an uncertainty is negative
 */
export function budgetOf(reader: Reader, input: BudgetInput): Budget {
  const readings = input.readings.map((raw, index) => reader.read(raw, `readings.${index}`));
  const values = readings.map(({ si }) => si);
  const value = meanOf(values);
  const implied = coarsest(readings.map(({ resolution }) => resolution));
  const parts = [
    resolutionPart(reader.readDifference(input.resolution, "resolution"), implied),
    accuracyPart(reader.readDifference(input.accuracy, "accuracy")),
    calibrationPart(reader.readDifference(input.calibration, "calibration")),
    scatterPart(values, reader.readDifference(input.scatter, "scatter")),
  ].filter((part) => part !== undefined);
  const mean = readingStep(reader, ["y", "Mean of the readings", "Σx/n", value], "value");
  const lines = parts.map((part) =>
    readingStep(reader, [part.symbol, part.label, part.formula, part.standard, ...optional(part.note)]),
  );
  if (parts.length === 0) return { value, working: [mean], warnings: [nothingKnown] };
  const standard = combinedUncertainty(parts);
  const expanded = coverageFactor * standard;
  const total = [
    readingStep(reader, ["u", "Combined standard uncertainty", "√Σu²", standard]),
    readingStep(reader, ["U", "Expanded uncertainty", "k·u", expanded, "k = 2, GUM"]),
  ];
  const known = { standard, expanded, largest: largestOf(parts) };
  return { value, known, working: [mean, ...lines, ...total], warnings: warningsOf(parts, input) };
}

const optional = (note: string | undefined): [] | [string] => (note === undefined ? [] : [note]);
const nothingKnown =
  "Nothing is known of the instrument or of the scatter, so the uncertainty is not known: give the resolution, the maker's accuracy, a certificate or repeated readings.";

function coarsest(steps: readonly (number | undefined)[]): number | undefined {
  const known = steps.filter((step) => step !== undefined);
  return known.length === 0 ? undefined : known.reduce((a, b) => Math.max(a, b));
}

function resolutionPart(given: number | undefined, implied: number | undefined): Part | undefined {
  const step = given ?? implied;
  if (step === undefined) return undefined;
  const line = {
    symbol: "u_r",
    label: "Resolution",
    formula: "step/√12",
    standard: resolutionUncertainty(step),
  };
  return given === undefined
    ? { ...line, note: "taken: the step that the readings' own text implies" }
    : line;
}

function accuracyPart(halfWidth: number | undefined): Part | undefined {
  if (halfWidth === undefined) return undefined;
  const standard = rectangularUncertainty(halfWidth);
  return { symbol: "u_i", label: "Instrument, maker's accuracy", formula: "a/√3", standard };
}

function calibrationPart(expanded: number | undefined): Part | undefined {
  if (expanded === undefined) return undefined;
  const standard = certificateUncertainty(expanded);
  return { symbol: "u_c", label: "Instrument, calibration", formula: "U_c/2", standard };
}

/** The scatter found earlier, where there is one, else that of the readings themselves. */
function scatterPart(values: readonly number[], scatter: number | undefined): Part | undefined {
  const line = { symbol: "u_s", label: "Scatter of the mean", formula: "s/√n" };
  if (scatter !== undefined) return { ...line, standard: scatter / Math.sqrt(values.length) };
  if (values.length < 2) return undefined;
  const { uncertaintyOfMean, degreesOfFreedom } = repeatability(values);
  return { ...line, standard: uncertaintyOfMean, degreesOfFreedom };
}

function largestOf(parts: readonly Part[]): string {
  return parts.reduce((a, b) => (b.standard > a.standard ? b : a)).label.toLowerCase();
}

/** Below ten degrees of freedom k = 2 covers less than 93 % of a t distribution. */
const fewDegrees = 10;

function warningsOf(parts: readonly Part[], { readings }: BudgetInput): string[] {
  const warnings: string[] = [];
  const has = (...symbols: string[]) => parts.some(({ symbol }) => symbols.includes(symbol));
  if (!has("u_i", "u_c"))
    warnings.push("Nothing is known of the instrument's own error: the uncertainty is at least this.");
  if (!has("u_s"))
    warnings.push("One reading says nothing of the scatter of setting up: the uncertainty is at least this.");
  const degrees = effectiveDegreesOfFreedom(parts);
  if (degrees < fewDegrees)
    warnings.push(
      `${readings.length} readings give only ${degrees.toPrecision(2)} effective degrees of freedom: k = 2 covers less than 95 %. Take more.`,
    );
  return warnings;
}
