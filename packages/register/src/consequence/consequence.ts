import type { RunOutput } from "@trunnion/calc";
import type { CharacteristicBook } from "../characteristic/book";
import type { State } from "../state/state";
import { sameValue } from "../value/same";
import type { Binding, Figure } from "./binding";
import { BindingTable } from "./binding-table";
import type { MissingInput, UsedInput } from "./gathering";
import { type Solved, Solver } from "./solve";
import { bindings as builtIn } from "./table";

/** One figure before and after. A text is missing where it cannot be worked out on that side. */
export interface FigureChange {
  readonly label: string;
  readonly output: string;
  readonly before?: string;
  readonly after?: string;
  /** SI numbers, for drawing. */
  readonly numberBefore?: number;
  readonly numberAfter?: number;
  /** After over before; missing where either is not a number other than nought, or the sign changes. */
  readonly ratio?: number;
  /** Absolute values rest on assumptions that cancel: only the ratio is to be told. */
  readonly onlyRatio: boolean;
}

/** A computed effect of a change, with its working. */
export interface Consequence {
  readonly id: string;
  readonly title: string;
  readonly computation: string;
  /** What came out; empty where nothing could be worked out. */
  readonly figures: readonly FigureChange[];
  /** True when any figure moved; false where the change does not touch the result. */
  readonly moved: boolean;
  /**
   * What the computation was given after the change, or for the comparison, to run it again with its working; missing
   * where it could not be run.
   */
  readonly raw?: unknown;
  readonly rawBefore?: unknown;
  readonly warnings: readonly string[];
  /** Where the result could lead somebody to a dangerous act. */
  readonly caution?: string;
  readonly inputs: readonly UsedInput[];
  readonly inputsBefore: readonly UsedInput[];
  /** What is not recorded, and would have to be for this to be worked out. */
  readonly missing: readonly MissingInput[];
  /** Why it was refused for this car, in words. */
  readonly refused?: string;
}

const table = new BindingTable(builtIn);

/** The bindings that any of these characteristics reaches, in order. */
export function bindingsTouchedBy(keys: ReadonlySet<string>): readonly Binding[] {
  return table.bindings.filter(({ id }) => table.isReached(id, keys));
}

/** The characteristics in which two states of a car differ. */
export function changedKeys(before: State, after: State): ReadonlySet<string> {
  const keys = new Set<string>();
  for (const [place, { characteristic, value }] of after) {
    const was = before.get(place);
    if (!was || !sameValue(was.value, value)) keys.add(characteristic);
  }
  for (const [place, { characteristic }] of before) if (!after.has(place)) keys.add(characteristic);
  return keys;
}

const outputsOf = (solved: Solved, { output }: Figure): RunOutput | undefined => {
  if (solved.kind === "run") return solved.answers.outputs[output];
  if (solved.kind !== "notFitted") return undefined;
  const si = solved.outputs[output];
  return si === undefined ? undefined : { si, unit: "", text: "none" };
};

function figureChange(
  figure: Figure,
  before: RunOutput | undefined,
  after: RunOutput | undefined,
): FigureChange {
  const { label, output, only } = figure;
  const [a, b] = [before?.si, after?.si];
  const ratio = typeof a === "number" && typeof b === "number" && a * b > 0 ? b / a : undefined;
  const told: { -readonly [Field in keyof FigureChange]: FigureChange[Field] } = {
    label,
    output,
    onlyRatio: only === "ratio",
  };
  if (before && a != null) told.before = before.text;
  if (after && b != null) told.after = after.text;
  if (typeof a === "number") told.numberBefore = a;
  if (typeof b === "number") told.numberAfter = b;
  if (ratio !== undefined) told.ratio = ratio;
  return told;
}

/** Less than this, relative, is the arithmetic's noise and no news. */
const NOISE = 1e-9;

function moves({ numberBefore: a, numberAfter: b, before, after }: FigureChange): boolean {
  if (a !== undefined && b !== undefined) return Math.abs(b - a) > NOISE * Math.max(Math.abs(a), Math.abs(b));
  return before !== after;
}

const missingOf = (solved: Solved) => (solved.kind === "missing" ? solved.missing : []);
const refusedOf = (solved: Solved) => (solved.kind === "refused" ? solved.because : undefined);
const inputsOf = (solved: Solved) => (solved.kind === "run" ? solved.inputs() : []);

function toldBy(solved: Solved): Pick<Consequence, "raw" | "warnings" | "caution"> {
  if (solved.kind !== "run") return { warnings: [] };
  const { warnings, caution } = solved.answers;
  return { raw: solved.raw, warnings, ...(caution === undefined ? {} : { caution }) };
}

function together(binding: Binding, before: Solved, after: Solved): Consequence {
  const figures = binding.figures
    .map((figure) => figureChange(figure, outputsOf(before, figure), outputsOf(after, figure)))
    .filter(({ before: a, after: b }) => a !== undefined || b !== undefined);
  const because = refusedOf(after) ?? refusedOf(before);
  const lacking = [...missingOf(after), ...missingOf(before)];
  return {
    id: binding.id,
    title: binding.title,
    computation: binding.computation,
    figures,
    moved: figures.some(moves),
    get inputs() {
      return inputsOf(after);
    },
    get inputsBefore() {
      return inputsOf(before);
    },
    missing: [...new Map(lacking.map((one) => [one.label, one])).values()],
    ...toldBy(after),
    ...(before.kind === "run" ? { rawBefore: before.raw } : {}),
    ...(because === undefined ? {} : { refused: because }),
  };
}

/** A comparison has one run; of a figure with a `before` output both are told, else the figure is itself the change. */
function compared(binding: Binding, solved: Solved): Consequence {
  const figures =
    solved.kind === "run"
      ? binding.figures.map((figure) => {
          const before = figure.before === undefined ? undefined : solved.answers.outputs[figure.before];
          return figureChange(figure, before, solved.answers.outputs[figure.output]);
        })
      : [];
  const because = refusedOf(solved);
  return {
    id: binding.id,
    title: binding.title,
    computation: binding.computation,
    figures,
    moved: solved.kind === "run",
    get inputs() {
      return inputsOf(solved);
    },
    inputsBefore: [],
    missing: missingOf(solved),
    ...toldBy(solved),
    ...(because === undefined ? {} : { refused: because }),
  };
}

/**
 * What a change does to a car: every computation that a changed characteristic reaches, run for the state before and the
 * state after, with what is missing where it cannot be. One that says more takes the place of one that says less.
 * Nothing is made up: an assumption is among the inputs, with its words.
 */
export function consequencesOf(
  before: State,
  after: State,
  book: CharacteristicBook,
): readonly Consequence[] {
  const changed = changedKeys(before, after);
  if (changed.size === 0) return [];
  const earlier = new Solver(before, book, table);
  const later = new Solver(after, book, table, { of: earlier, except: changed });
  const touched = bindingsTouchedBy(changed).filter(
    (binding) => earlier.appliesTo(binding) || later.appliesTo(binding),
  );
  const told = touched.map((binding) =>
    binding.mode === "change"
      ? compared(binding, later.compare(binding, earlier))
      : together(binding, earlier.solve(binding.id), later.solve(binding.id)),
  );
  const whole = new Set(
    told.filter(({ figures, missing }) => figures.length > 0 && missing.length === 0).map(({ id }) => id),
  );
  return told.filter(({ id }) => {
    const { unless } = table.byId.get(id) ?? {};
    return unless === undefined || !whole.has(unless);
  });
}

/** What would be known of a car if one more characteristic were: labels of the results that lack just this. */
export function lackingFor(state: State, book: CharacteristicBook): ReadonlyMap<string, readonly string[]> {
  const solver = new Solver(state, book, table);
  const lacking = new Map<string, string[]>();
  for (const { id, title, mode } of table.bindings) {
    const solved = mode === "each" ? solver.solve(id) : undefined;
    const [only, ...more] = solved?.kind === "missing" ? solved.missing : [];
    if (!only || more.length > 0) continue;
    const list = lacking.get(only.characteristic) ?? [];
    list.push(title);
    lacking.set(only.characteristic, list);
  }
  return lacking;
}
