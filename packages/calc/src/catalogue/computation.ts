import type { z } from "zod";
import type { Dimension, MeasuredDimension } from "../quantity/dimension";

export { type DesignationOptions, designation } from "./designation-field";
export { type QuantityOptions, quantity } from "./field";
export { CalcRefusal } from "./refusal";

/** Where a formula or a figure comes from, and how it was seen. */
export interface Source {
  readonly title: string;
  /** Clause, page, table. */
  readonly locus?: string;
  /** `read`: the value was read there; `read-formula`: the formula was; `memory`: recalled, not looked up. */
  readonly status: "read" | "read-formula" | "memory" | "common practice, no source";
}

/** One answer of a computation. */
export interface OutputSpec {
  /** Sentence case, e.g. "Rate at the bar end". */
  readonly label: string;
  /** `text` for a verdict or another answer in words; `asEntered` for an {@link EnteredQuantity}. */
  readonly dimension: Dimension | "asEntered";
  /** Unit to print in; must be a unit of the dimension. Left out: the dimension's first unit. */
  readonly unit?: string;
  /** Decimals to print in that unit; left out: four significant figures. */
  readonly decimals?: number;
  /**
   * How the working names the answer and what it comes from, in the symbols of its steps or in words: for an answer that
   * no step of the working is. Every answer stands in its working one way or the other, which a test holds.
   */
  readonly how?: readonly [symbol: string, formula: string];
}
export type Outputs = Readonly<Record<string, OutputSpec>>;

/** One line of the working: what was taken, assumed or worked out on the way. */
export interface WorkingStep {
  /** As in the formula, e.g. "k_w". */
  readonly symbol: string;
  readonly label: string;
  /** e.g. "k_s · MR²". */
  readonly formula?: string;
  /** In SI when a number. */
  readonly value: number | string;
  readonly dimension?: Dimension;
  /** Unit to print in; the dimension's first one when left out. */
  readonly unit?: string;
  readonly note?: string;
}

/** An answer whose kind and unit the input decides, as with readings of anything: SI number and how to print it. */
export interface EnteredQuantity {
  readonly si: number;
  readonly dimension: MeasuredDimension;
  /** A unit or compound of the dimension. */
  readonly unit: string;
  /** As in {@link OutputSpec}. */
  readonly decimals?: number | undefined;
}

/** An answer: SI number, words, yes/no, or `null` where there is none (the label or a warning says why). */
export type OutputValue = number | string | boolean | EnteredQuantity | null;

/** What `compute` hands back. */
export interface Computed<O extends Outputs> {
  readonly outputs: { readonly [K in keyof O]: OutputValue };
  /** Called where somebody reads it: most who ask for answers do not. Pure, and refuses nothing the answers did not. */
  readonly working: () => readonly WorkingStep[];
  readonly warnings: readonly string[];
}

/**
 * One computation of the catalogue. Form, API, command line and documentation page all come from it.
 * Inputs are SI inside; each quantity field is made by {@link quantity} and so accepts trade notation too.
 */
export interface Computation<I extends z.ZodObject, O extends Outputs> {
  /** `<topic>.<noun>`, stable, e.g. "bar.rate". */
  readonly name: string;
  readonly title: string;
  /** One sentence. */
  readonly summary: string;
  readonly input: I;
  readonly outputs: O;
  readonly source: readonly Source[];
  /** Where it holds, in words; outside it `compute` warns or refuses. */
  readonly validity: string;
  /** Where a result could lead somebody to a dangerous act. */
  readonly caution?: string;
  /** A believable input that computes; the documentation page shows it and a test runs it. */
  readonly example: z.input<I>;
  /** @throws CalcRefusal (or RangeError) outside its validity; never answers NaN or an infinity */
  compute(input: z.output<I>): Computed<O>;
}

/** A computation whose input and outputs are not known to the compiler. */
export type AnyComputation = Computation<z.ZodObject, Outputs>;

/** Gives a computation its types; changes nothing. */
export function defineComputation<I extends z.ZodObject, const O extends Outputs>(
  computation: Computation<I, O>,
): Computation<I, O> {
  return computation;
}
