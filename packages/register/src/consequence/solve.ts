import {
  type Answers,
  type AnyComputation,
  answerComputation,
  CalcRefusal,
  computationNamed,
} from "@trunnion/calc";
import { ZodError } from "zod";
import type { CharacteristicBook } from "../characteristic/book";
import { stateKey } from "../state/key";
import type { Origin, State } from "../state/state";
import { printValue } from "../value/print";
import type { Value } from "../value/value";
import type { Binding, Feed, Place } from "./binding";
import type { BindingTable } from "./binding-table";

/** An input as it was used, and where it came from. */
export interface UsedInput {
  /** Path in the computation's input: `front.track`. */
  readonly field: string;
  /** What it is: the characteristic's label, or the assumption in words. */
  readonly label: string;
  /** Empty for an assumption, whose label says all. */
  readonly text: string;
  /** `assumed` where nobody measured it; `computed` where another computation gave it. */
  readonly origin: Origin | "assumed" | "computed";
  readonly characteristic?: string;
}

/** A characteristic that is not known of the car, and is needed. */
export interface MissingInput {
  readonly characteristic: string;
  readonly label: string;
}

/** What came of a binding for one state. */
export type Solved =
  | {
      readonly kind: "run";
      readonly answers: Answers;
      /** What the computation was given, to run it again with its working. */
      readonly raw: unknown;
      readonly inputs: readonly UsedInput[];
    }
  | { readonly kind: "notFitted"; readonly outputs: Readonly<Record<string, number>>; readonly label: string }
  | { readonly kind: "missing"; readonly missing: readonly MissingInput[] }
  | { readonly kind: "refused"; readonly because: string };

type Read =
  | { readonly ok: true; readonly raw: unknown; readonly inputs: readonly UsedInput[] }
  | { readonly ok: false; readonly missing: readonly MissingInput[]; readonly because?: string };

/** Left out of the input. */
const nothing: Read = { ok: true, raw: undefined, inputs: [] };

function rawOf(value: Value): unknown {
  switch (value.kind) {
    case "quantity":
      return value.si;
    case "choice":
      return value.code;
    case "designation":
      return value.canonical;
    case "text":
      return value.text;
    case "date":
      return value.date;
    case "absent":
      return undefined;
  }
}

/** Works bindings out for one state of one car; each at most once. */
export class Solver {
  readonly #solved = new Map<string, Solved>();

  /** `unchanged`: a solver of another state, for bindings that no difference between the two reaches. */
  constructor(
    private readonly state: State,
    private readonly book: CharacteristicBook,
    private readonly table: BindingTable,
    private readonly unchanged?: { readonly of: Solver; readonly except: ReadonlySet<string> },
  ) {}

  solve(id: string): Solved {
    const known = this.#solved.get(id);
    if (known) return known;
    const same = this.unchanged;
    const solved =
      same && !this.table.isReached(id, same.except)
        ? same.of.solve(id)
        : this.#solve(this.table.binding(id));
    this.#solved.set(id, solved);
    return solved;
  }

  /** The raw input of a binding that compares, its groups `before` and `after` read from two states. */
  compare(binding: Binding, earlier: Solver): Solved {
    const { before, ...rest } = binding.inputs;
    if (!before) throw new Error(`${binding.id} compares, but reads nothing before`);
    const first = earlier.read({ from: "group", fields: { before } }, "");
    const second = this.read({ from: "group", fields: rest }, "");
    return this.#finish(binding, joined([first, second]));
  }

  #solve(binding: Binding): Solved {
    const { notFitted } = binding;
    if (notFitted) {
      const value = this.#valueAt(notFitted);
      if (value?.value.kind === "absent") {
        return { kind: "notFitted", outputs: notFitted.outputs, label: this.#label(notFitted) };
      }
    }
    return this.#finish(binding, this.read({ from: "group", fields: binding.inputs }, ""));
  }

  /** A refusal, or an input out of bounds, is an answer about this car; anything else is a bug and goes on. */
  #finish({ id, computation }: Binding, read: Read): Solved {
    if (!read.ok) {
      if (read.missing.length > 0) return { kind: "missing", missing: unique(read.missing) };
      return { kind: "refused", because: read.because ?? "an input has no answer" };
    }
    const { raw, inputs } = read;
    try {
      const answers = answerComputation(computationOf(computation), raw, this.table.wanted(id));
      return { kind: "run", answers, raw, inputs };
    } catch (error) {
      if (error instanceof CalcRefusal) return { kind: "refused", because: error.message };
      if (!(error instanceof ZodError)) throw error;
      const because = error.issues.map(({ path, message }) => `${path.join(".")}: ${message}`).join("; ");
      return { kind: "refused", because };
    }
  }

  read(feed: Feed, field: string): Read {
    switch (feed.from) {
      case "characteristic":
        return this.#characteristic(feed, field);
      case "assumption":
        return used(feed.value, { field, label: feed.says, text: "", origin: "assumed" });
      case "result":
        return this.#result(feed, field);
      case "values":
        return this.#values(feed, field);
      case "firstOf":
        return this.#firstOf(feed, field);
      case "group":
        return joined(
          Object.entries(feed.fields).map(([name, part]) =>
            named(name, this.read(part, field === "" ? name : `${field}.${name}`)),
          ),
        );
    }
  }

  #valueAt({ key, side = "whole" }: Place) {
    return this.state.get(stateKey(key, side));
  }

  #label({ key, side }: Place): string {
    const label = this.book.find(key)?.label ?? key;
    return side === undefined || side === "whole" ? label : `${label}, ${side}`;
  }

  #missing(place: Place): MissingInput {
    return { characteristic: place.key, label: this.#label(place) };
  }

  #characteristic(feed: Extract<Feed, { from: "characteristic" }>, field: string): Read {
    const found = this.#valueAt(feed);
    const raw = found && (found.value.kind === "absent" ? feed.absent : rawOf(found.value));
    if (!found || raw === undefined) {
      return feed.optional ? nothing : { ok: false, missing: [this.#missing(feed)] };
    }
    const characteristic = this.book.find(feed.key);
    const text =
      characteristic && found.value.kind !== "absent"
        ? printValue(characteristic, found.value, { system: "asEntered" })
        : "not fitted";
    return used(raw, {
      field,
      label: this.#label(feed),
      text,
      origin: found.origin,
      characteristic: feed.key,
    });
  }

  #result({ binding, output, times, optional }: Extract<Feed, { from: "result" }>, field: string): Read {
    const solved = this.solve(binding);
    if (solved.kind === "missing") return optional ? nothing : { ok: false, missing: solved.missing };
    if (solved.kind === "refused")
      return optional ? nothing : { ok: false, missing: [], because: solved.because };
    const title = this.table.binding(binding).title;
    if (solved.kind === "notFitted") {
      const raw = solved.outputs[output];
      if (raw === undefined)
        return optional ? nothing : { ok: false, missing: [], because: `${solved.label}: not fitted` };
      return used(raw, { field, label: title, text: "not fitted", origin: "computed" });
    }
    const answer = solved.answers.outputs[output];
    if (answer?.si == null)
      return optional ? nothing : { ok: false, missing: [], because: `${title} has no answer` };
    if (times === undefined || typeof answer.si !== "number") {
      return used(answer.si, { field, label: title, text: answer.text, origin: "computed" });
    }
    const label = `${title}: ${times.says}`;
    return used(answer.si * times.factor, { field, label, text: answer.text, origin: "computed" });
  }

  #values({ of, says, value, optional }: Extract<Feed, { from: "values" }>, field: string): Read {
    const found = of.map((place) => ({ place, at: this.#valueAt(place) }));
    const numbers = found.flatMap(({ at }) => (at?.value.kind === "quantity" ? [at.value.si] : []));
    if (numbers.length < of.length) {
      const missing = found
        .filter(({ at }) => at?.value.kind !== "quantity")
        .map(({ place }) => this.#missing(place));
      return optional ? nothing : { ok: false, missing };
    }
    const text = found.map(({ at }) => at?.value.entered ?? "").join(", ");
    const origin = found.some(({ at }) => at?.origin === "specification")
      ? "specification"
      : (found[0]?.at?.origin ?? "reading");
    return used(value(numbers), { field, label: says, text, origin });
  }

  #firstOf({ feeds }: Extract<Feed, { from: "firstOf" }>, field: string): Read {
    const reads = feeds.map((feed) => () => this.read(feed, field));
    let first: Read | undefined;
    for (const attempt of reads) {
      const read = attempt();
      if (read.ok && read.raw !== undefined) return read;
      first ??= read;
    }
    return first ?? nothing;
  }
}

function used(raw: unknown, input: UsedInput): Read {
  return { ok: true, raw, inputs: [input] };
}

/** A read under its name in the object around it. */
function named(name: string, read: Read): Read {
  if (!read.ok || read.raw === undefined) return read;
  return { ...read, raw: { [name]: read.raw } };
}

/** Objects put together; what is missing of any is missing of all. */
function joined(reads: readonly Read[]): Read {
  const lacking = reads.filter((read) => !read.ok);
  if (lacking.length > 0) {
    const because = lacking.map((read) => read.because).find((text) => text !== undefined);
    const missing = lacking.flatMap((read) => read.missing);
    return { ok: false, missing, ...(because === undefined ? {} : { because }) };
  }
  const whole = reads.filter((read) => read.ok);
  return {
    ok: true,
    raw: Object.assign({}, ...whole.map(({ raw }) => raw ?? {})) as object,
    inputs: whole.flatMap(({ inputs }) => inputs),
  };
}

const computations = new Map<string, AnyComputation>();

function computationOf(name: string): AnyComputation {
  const known = computations.get(name) ?? computationNamed(name);
  if (!known) throw new Error(`a binding names the computation "${name}", which there is not`);
  computations.set(name, known);
  return known;
}

function unique(missing: readonly MissingInput[]): readonly MissingInput[] {
  return [...new Map(missing.map((one) => [one.label, one])).values()];
}
