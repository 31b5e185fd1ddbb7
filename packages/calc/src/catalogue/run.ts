import type { z } from "zod";
import { symbolNamed } from "../quantity/compound";
import type { Dimension } from "../quantity/dimension";
import { printQuantity } from "../quantity/print";
import type {
  AnyComputation,
  Computed,
  EnteredQuantity,
  OutputSpec,
  Outputs,
  OutputValue,
  WorkingStep,
} from "./computation";
import { issueWords } from "./issue-words";
import { CalcRefusal } from "./refusal";

/** One answer as handed out: the SI number (or the words), the unit it is printed in, and the printed text. */
export interface RunOutput {
  readonly si: number | string | null;
  /** Empty for ratios, counts and words. */
  readonly unit: string;
  readonly text: string;
}

/** A step of the working, with its value printed. */
export interface RunStep extends WorkingStep {
  readonly text: string;
}

/** What a run hands back. */
export interface RunResult {
  readonly outputs: Readonly<Record<string, RunOutput>>;
  readonly working: readonly RunStep[];
  readonly warnings: readonly string[];
  readonly caution?: string;
}

/** The text of an answer that does not exist. */
const noValue = "no value";

/**
 * Checks a raw input against a computation's own schema (an input it does not know is an error, not dropped), runs
 * it, and prints every answer with its unit.
 *
 * @throws ZodError when the input does not fit, with one issue per field
 * @throws CalcRefusal when the computation refuses, or would answer with a number that is not finite
 * @throws Error when the computation breaks its own description (an output missing or undeclared): a bug
 */
export function runComputation(computation: AnyComputation, rawInput: unknown): RunResult {
  const input = readInput(computation, rawInput);
  return refusingOutOfRange(() => printResult(computation, computation.compute(input)));
}

/** Answers without their working. */
export type Answers = Pick<RunResult, "outputs" | "warnings" | "caution">;

/**
 * The answers asked for, each printed, without the working: for telling many results at once. Whoever wants to see how
 * one came about runs {@link runComputation} with the same input.
 *
 * @throws as {@link runComputation}; RangeError for an output that the computation does not have
 */
export function answerComputation(
  computation: AnyComputation,
  rawInput: unknown,
  names: readonly string[],
): Answers {
  const input = readInput(computation, rawInput);
  return refusingOutOfRange(() => {
    const { outputs, warnings } = computation.compute(input);
    const printed = names.map((name) => {
      const spec = computation.outputs[name];
      const value = outputs[name];
      if (spec === undefined) throw new RangeError(`${computation.name} has no output ${name}`);
      if (value === undefined) throw new Error(`${computation.name} leaves ${name} unanswered`);
      return [name, printOutput(value, spec, name)] as const;
    });
    const { caution } = computation;
    return { outputs: Object.fromEntries(printed), warnings, ...(caution === undefined ? {} : { caution }) };
  });
}

function printResult(
  computation: AnyComputation,
  { outputs, working, warnings }: Computed<Outputs>,
): RunResult {
  const undeclared = Object.keys(outputs).filter((key) => !Object.hasOwn(computation.outputs, key));
  if (undeclared.length > 0)
    throw new Error(`${computation.name} answers undeclared ${undeclared.join(", ")}`);
  const printed = Object.entries(computation.outputs).map(([key, spec]) => {
    const value = outputs[key];
    if (value === undefined) throw new Error(`${computation.name} leaves ${key} unanswered`);
    return [key, printOutput(value, spec, key)] as const;
  });
  const steps = working().map((step) => ({ ...step, text: printStep(step) }));
  return {
    outputs: Object.fromEntries(printed),
    working: [...steps, ...answerSteps(computation, printed)],
    warnings,
    ...(computation.caution === undefined ? {} : { caution: computation.caution }),
  };
}

/** The answers that say how they come about, as the last lines of the working; one that does not exist has no line. */
function answerSteps(
  { outputs }: AnyComputation,
  printed: readonly (readonly [name: string, answer: RunOutput])[],
): readonly RunStep[] {
  return printed.flatMap(([name, { si, text }]) => {
    const spec = outputs[name];
    if (spec?.how === undefined || si === null) return [];
    const [symbol, formula] = spec.how;
    const { label, dimension } = spec;
    const step = { symbol, label, formula, value: si, text };
    return [dimension === "text" || dimension === "asEntered" ? step : { ...step, dimension }];
  });
}

/** A field that is wrong says so itself; what only zod could say is said in our words. */
function readInput(computation: AnyComputation, rawInput: unknown): Record<string, unknown> {
  return inputOf(computation).parse(rawInput, { error: issueWords });
}

const strictInputs = new WeakMap<AnyComputation, z.ZodObject>();

/** A computation's input schema as it is run: a field it does not know is refused. Made once, it is compiled once. */
export function inputOf(computation: AnyComputation): z.ZodObject {
  const known = strictInputs.get(computation);
  if (known !== undefined) return known;
  const strict = computation.input.strict();
  strictInputs.set(computation, strict);
  return strict;
}

/** The guards of the functions underneath speak in RangeErrors; outside they are refusals like any other. */
function refusingOutOfRange<T>(run: () => T): T {
  try {
    return run();
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    throw new CalcRefusal("OUT_OF_RANGE", error.message, undefined, { cause: error });
  }
}

function printOutput(value: OutputValue, spec: OutputSpec, key: string): RunOutput {
  const unit = unitOf(spec);
  if (value === null) return { si: null, unit, text: noValue };
  if (typeof value === "boolean") return { si: value ? "yes" : "no", unit: "", text: value ? "yes" : "no" };
  if (typeof value === "string") return { si: value, unit: "", text: value };
  if (typeof value === "object") return printEntered(value, spec, key);
  if (spec.dimension === "asEntered") throw new Error(`${key} is a number without a unit`);
  requireFinite(value, `${spec.label} (${key})`);
  return { si: value, unit, text: printValue(value, { ...spec, dimension: spec.dimension }) };
}

function printEntered(value: EnteredQuantity, { label, dimension }: OutputSpec, key: string): RunOutput {
  if (dimension !== "asEntered") throw new Error(`${key} is declared as ${dimension}, not as entered`);
  requireFinite(value.si, `${label} (${key})`);
  return { si: value.si, unit: unitOf(value), text: printValue(value.si, value) };
}

/**
 * The text of one step of a working: its number in its unit, four significant figures, or its words.
 * @throws CalcRefusal when the number is not finite
 */
export function printStep({ value, label, symbol, dimension, unit }: WorkingStep): string {
  if (typeof value === "string") return value;
  requireFinite(value, `${label} (${symbol})`);
  return printValue(value, { dimension: dimension ?? "ratio", ...(unit === undefined ? {} : { unit }) });
}

interface Printed {
  readonly dimension: Dimension;
  readonly unit?: string;
  readonly decimals?: number | undefined;
}

function printValue(si: number, { dimension, unit, decimals }: Printed): string {
  return dimension === "text" ? String(si) : printQuantity(si, { dimension, unit, decimals });
}

/** Symbol of the unit an output is printed in; empty for words, and where only the input names it. */
export function unitOf({ dimension, unit }: Pick<OutputSpec, "dimension" | "unit">): string {
  return dimension === "text" || dimension === "asEntered" ? "" : symbolNamed(dimension, unit);
}

function requireFinite(value: number, what: string): void {
  if (Number.isFinite(value)) return;
  throw new CalcRefusal("NOT_FINITE", `${what} comes out as ${value}: the inputs do not determine it`);
}
