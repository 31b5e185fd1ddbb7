import { z } from "zod";
import { symbolNamed } from "../quantity/compound";
import { type MeasuredDimension, siUnits } from "../quantity/dimension";
import { parseQuantity } from "../quantity/parse";
import { printQuantity } from "../quantity/print";
import { readAsField } from "./notation-issue";
import { quickly } from "./quick-field";

/** How a quantity field is labelled and bounded. All bounds in SI. */
export interface QuantityOptions {
  /** Sentence case, e.g. "Bar diameter". */
  readonly label: string;
  /** How to measure it, or which of several is meant. */
  readonly help?: string;
  /** Smallest value allowed, itself included. */
  readonly min?: number;
  /** Largest value allowed, itself included. */
  readonly max?: number;
  /** The value must be greater than this. */
  readonly above?: number;
  /** The value must be less than this. */
  readonly below?: number;
  /** Unit the limits and the form are shown in; must be a unit of the dimension. */
  readonly unit?: string;
}

type Bound = "min" | "max" | "above" | "below";
const boundRules: Readonly<Record<Bound, { words: string; broken: (si: number, limit: number) => boolean }>> =
  {
    min: { words: "at least", broken: (si, limit) => si < limit },
    max: { words: "at most", broken: (si, limit) => si > limit },
    above: { words: "more than", broken: (si, limit) => si <= limit },
    below: { words: "less than", broken: (si, limit) => si >= limit },
  };

/**
 * A zod field for one quantity: takes an SI number, or text in trade notation (`9/16 in`, `0°12'`), and yields the
 * SI number. Text must carry its unit (ratios and counts aside). A number that is not finite, text that cannot be
 * read and a value outside the bounds are field errors that quote what was found.
 * A default is given by `.prefault("1 g")`, which the JSON Schema shows; `.default()` it would not.
 */
export function quantity(dimension: MeasuredDimension, options: QuantityOptions) {
  const unit = symbolNamed(dimension, options.unit);
  const read = rememberingLast((text: string) => parseQuantity(text, dimension).si);
  const field = z
    .union([z.number(), z.string()], {
      error: () => `a number (${siName(dimension)}) or text with its unit is wanted`,
    })
    .transform((value, context) => {
      const si = typeof value === "number" ? value : readAsField(() => read(value), context);
      if (si === undefined) return z.NEVER;
      const problem = boundProblem(si, dimension, { ...options, unit });
      if (problem === undefined) return si;
      context.addIssue({
        code: "custom",
        message: `${JSON.stringify(value)}: ${problem}`,
        params: { code: "OUT_OF_RANGE" },
      });
      return z.NEVER;
    })
    .meta({ title: options.label, description: describe(dimension, { ...options, unit }), dimension, unit });
  return quickly(field, (value) => typeof value === "number" && isWithin(value, options));
}

/** A default is a text, and the same one each time. */
function rememberingLast(read: (text: string) => number): (text: string) => number {
  let last: { readonly text: string; readonly si: number } | undefined;
  return (text) => {
    if (last?.text !== text) last = { text, si: read(text) };
    return last.si;
  };
}

function isWithin(si: number, { min, max, above, below }: QuantityOptions): boolean {
  if (!Number.isFinite(si) || (min !== undefined && si < min) || (max !== undefined && si > max))
    return false;
  return !(above !== undefined && si <= above) && !(below !== undefined && si >= below);
}

function siName(dimension: MeasuredDimension): string {
  return siUnits[dimension] === "" ? "without unit" : `in ${siUnits[dimension]}`;
}

function boundProblem(
  si: number,
  dimension: MeasuredDimension,
  options: QuantityOptions,
): string | undefined {
  for (const bound of Object.keys(boundRules) as Bound[]) {
    const limit = options[bound];
    if (limit === undefined || !boundRules[bound].broken(si, limit)) continue;
    const allowed = printQuantity(limit, { dimension, unit: options.unit });
    return `${options.label} must be ${boundRules[bound].words} ${allowed}, but is ${printAnySize(si, dimension, options.unit)}`;
  }
  return undefined;
}

/** What is refused for its size may be beyond what a unit can be printed in; then the SI number stands as it is. */
function printAnySize(si: number, dimension: MeasuredDimension, unit: string | undefined): string {
  try {
    return printQuantity(si, { dimension, unit });
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return `${si} ${siUnits[dimension]}`.trim();
  }
}

function describe(dimension: MeasuredDimension, options: QuantityOptions): string {
  const limits = (Object.keys(boundRules) as Bound[]).flatMap((bound) => {
    const limit = options[bound];
    return limit === undefined
      ? []
      : [`${boundRules[bound].words} ${printQuantity(limit, { dimension, unit: options.unit })}`];
  });
  const range = limits.length > 0 ? `, ${limits.join(", ")}` : "";
  const help = options.help === undefined ? "" : `${options.help}. `;
  return `${help}A number ${siName(dimension)}, or text with its unit${range}.`;
}
