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
import type { State } from "../state/state";
import type { Value } from "../value/value";
import type { Binding, Feed, Place } from "./binding";
import type { BindingTable } from "./binding-table";
import { Gathering, type MissingInput, type UsedInput } from "./gathering";
import { type PreparedFeed, type PreparedGroup, prepareFeed } from "./prepared-feed";

/** What came of a binding for one state. */
export type Solved =
  | {
      readonly kind: "run";
      readonly answers: Answers;
      /** What the computation was given, to run it again with its working. */
      readonly raw: unknown;
      /** Made when somebody reads them. */
      readonly inputs: () => readonly UsedInput[];
    }
  | { readonly kind: "notFitted"; readonly outputs: Readonly<Record<string, number>>; readonly label: string }
  /** Says nothing of such a car: it is built another way. */
  | { readonly kind: "otherwise"; readonly because: string }
  | { readonly kind: "missing"; readonly missing: readonly MissingInput[] }
  | { readonly kind: "refused"; readonly because: string };

/** What came of reading a feed; `raw` is undefined where it may be left out. */
type Read =
  | { readonly ok: true; readonly raw: unknown; readonly inputs: readonly UsedInput[] }
  | { readonly ok: false; readonly missing: readonly MissingInput[] };

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

  /** Whether a binding is about a car of this state at all. */
  appliesTo({ onlyFor }: Pick<Binding, "onlyFor">): boolean {
    if (onlyFor === undefined) return true;
    const value = this.state.get(stateKey(onlyFor.key, "whole"))?.value;
    return value?.kind === "choice" ? onlyFor.codes.includes(value.code) : onlyFor.orUnknown === true;
  }

  /** One feed by itself, for whoever asks for an input and not for a result. */
  read(feed: Feed, field: string): Read {
    const into = new Gathering();
    const raw = this.#read(prepareFeed(feed, field), into);
    const inputs = into.used.map((tell) => tell());
    return into.failed ? { ok: false, missing: into.missing } : { ok: true, raw, inputs };
  }

  /** The raw input of a binding that compares, its groups `before` and `after` read from two states. */
  compare(binding: Binding, earlier: Solver): Solved {
    const { before, rest } = this.table.prepared(binding.id);
    const gathering = new Gathering();
    const first = earlier.#group(before, gathering);
    return this.#finish(binding, { ...first, ...this.#group(rest, gathering) }, gathering);
  }

  #solve(binding: Binding): Solved {
    const { notFitted, onlyFor } = binding;
    if (onlyFor && !this.appliesTo(binding))
      return { kind: "otherwise", because: `${binding.title} is not this car's` };
    if (notFitted) {
      const value = this.state.get(stateKey(notFitted.key, notFitted.side ?? "whole"));
      if (value?.value.kind === "absent") {
        return { kind: "notFitted", outputs: notFitted.outputs, label: this.#label(notFitted) };
      }
    }
    const gathering = new Gathering();
    const raw = this.#group(this.table.prepared(binding.id).whole, gathering);
    return this.#finish(binding, raw, gathering);
  }

  /** A refusal, or an input out of bounds, is an answer about this car; anything else is a bug and goes on. */
  #finish({ id, computation }: Binding, raw: object, gathering: Gathering): Solved {
    if (gathering.missing.length > 0) return { kind: "missing", missing: unique(gathering.missing) };
    if (gathering.failed) return { kind: "refused", because: gathering.because ?? "an input has no answer" };
    try {
      const answers = answerComputation(computationOf(computation), raw, this.table.wanted(id));
      return { kind: "run", answers, raw, inputs: () => gathering.used.map((tell) => tell()) };
    } catch (error) {
      if (error instanceof CalcRefusal) return { kind: "refused", because: error.message };
      if (!(error instanceof ZodError)) throw error;
      const because = error.issues.map(({ path, message }) => `${path.join(".")}: ${message}`).join("; ");
      return { kind: "refused", because };
    }
  }

  #group({ fields }: PreparedGroup, into: Gathering): object {
    const raw: Record<string, unknown> = {};
    for (const { name, feed } of fields) {
      const value = this.#read(feed, into);
      if (value !== undefined) raw[name] = value;
    }
    return raw;
  }

  /** The raw value a feed gives; `undefined` where it is left out of the input, or `into` says why it cannot be had. */
  #read(prepared: PreparedFeed, into: Gathering): unknown {
    switch (prepared.from) {
      case "characteristic":
        return this.#characteristic(prepared, into);
      case "assumption": {
        const { feed, field } = prepared;
        return into.use(feed.value, () => ({ field, label: feed.says, text: "", origin: "assumed" }));
      }
      case "result":
        return this.#result(prepared, into);
      case "values":
        return this.#values(prepared, into);
      case "firstOf":
        return this.#firstOf(prepared.feeds, into);
      case "group":
        return this.#group(prepared, into);
    }
  }

  #label({ key, side }: Place): string {
    const label = this.book.find(key)?.label ?? key;
    return side === undefined || side === "whole" ? label : `${label}, ${side}`;
  }

  #missing(place: Place): MissingInput {
    return { characteristic: place.key, label: this.#label(place) };
  }

  #characteristic({ feed, at, field }: Prepared<"characteristic">, into: Gathering): unknown {
    const found = this.state.get(at);
    const raw = found && (found.value.kind === "absent" ? feed.absent : rawOf(found.value));
    if (!found || raw === undefined) return feed.optional ? undefined : into.fail([this.#missing(feed)]);
    return into.use(raw, () => ({
      field,
      label: this.#label(feed),
      text: found.value.kind === "absent" ? "not fitted" : found.value.entered,
      origin: found.origin,
      characteristic: feed.key,
    }));
  }

  #result({ feed, field }: Prepared<"result">, into: Gathering): unknown {
    const { binding, output, times, optional } = feed;
    const solved = this.solve(binding);
    const fail = (missing: readonly MissingInput[], because?: string) =>
      optional ? undefined : into.fail(missing, because);
    if (solved.kind === "missing") return fail(solved.missing);
    if (solved.kind === "refused" || solved.kind === "otherwise") return fail([], solved.because);
    const { title } = this.table.binding(binding);
    if (solved.kind === "notFitted") {
      const raw = solved.outputs[output];
      if (raw === undefined) return fail([], `${solved.label}: not fitted`);
      return into.use(raw, () => ({ field, label: title, text: "not fitted", origin: "computed" }));
    }
    const answer = solved.answers.outputs[output];
    if (answer?.si == null) return fail([], `${title} has no answer`);
    const { si, text } = answer;
    if (times === undefined || typeof si !== "number") {
      return into.use(si, () => ({ field, label: title, text, origin: "computed" }));
    }
    const label = `${title}: ${times.says}`;
    return into.use(si * times.factor, () => ({ field, label, text, origin: "computed" }));
  }

  #values({ feed, of, field }: Prepared<"values">, into: Gathering): unknown {
    const { says, value, optional } = feed;
    const found = of.map(({ at }) => this.state.get(at));
    const numbers = found.flatMap((one) => (one?.value.kind === "quantity" ? [one.value.si] : []));
    if (numbers.length < of.length) {
      const lacking = of.filter((_, index) => found[index]?.value.kind !== "quantity");
      return optional ? undefined : into.fail(lacking.map(({ place }) => this.#missing(place)));
    }
    return into.use(value(numbers), () => {
      const text = found.map((one) => one?.value.entered ?? "").join(", ");
      const origin = found.some((one) => one?.origin === "specification")
        ? "specification"
        : (found[0]?.origin ?? "reading");
      return { field, label: says, text, origin };
    });
  }

  #firstOf(feeds: readonly PreparedFeed[], into: Gathering): unknown {
    let first: Gathering | undefined;
    for (const feed of feeds) {
      const trial = new Gathering();
      const raw = this.#read(feed, trial);
      if (!trial.failed && raw !== undefined) {
        into.take(trial);
        return raw;
      }
      // What lacks can be put on the record; that it is built otherwise cannot.
      if (first === undefined || first.missing.length === 0) first = trial;
    }
    if (first) into.take(first);
    return undefined;
  }
}

type Prepared<From extends PreparedFeed["from"]> = Extract<PreparedFeed, { readonly from: From }>;

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
