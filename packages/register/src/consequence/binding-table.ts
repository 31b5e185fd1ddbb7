import { type Binding, bindingsOf, type Feed, type Place, placesOf } from "./binding";
import { type PreparedGroup, prepareGroup } from "./prepared-feed";

function resultsIn(feed: Feed): readonly { readonly binding: string; readonly output: string }[] {
  switch (feed.from) {
    case "result":
      return [feed];
    case "firstOf":
      return feed.feeds.flatMap(resultsIn);
    case "group":
      return Object.values(feed.fields).flatMap(resultsIn);
    default:
      return [];
  }
}

/** Bindings in reading order, with what follows from the table alone. */
export class BindingTable {
  readonly byId: ReadonlyMap<string, Binding>;
  readonly #reach = new Map<string, readonly Place[]>();
  readonly #keys = new Map<string, ReadonlySet<string>>();
  readonly #wanted = new Map<string, readonly string[]>();
  readonly #prepared = new Map<string, PreparedInputs>();

  constructor(readonly bindings: readonly Binding[]) {
    this.byId = new Map(bindings.map((binding) => [binding.id, binding]));
    const taken = bindings.flatMap(({ inputs }) => Object.values(inputs).flatMap(resultsIn));
    for (const { id, figures } of bindings) {
      const told = figures.flatMap(({ output, before }) =>
        before === undefined ? [output] : [output, before],
      );
      const fed = taken.filter(({ binding }) => binding === id).map(({ output }) => output);
      this.#wanted.set(id, [...new Set([...told, ...fed])]);
    }
  }

  /** @throws Error when there is no such binding: a bug of the table */
  binding(id: string): Binding {
    const found = this.byId.get(id);
    if (!found) throw new Error(`there is no binding "${id}"`);
    return found;
  }

  /** Every characteristic that reaches a binding, through others too. */
  reach(id: string): readonly Place[] {
    const known = this.#reach.get(id);
    if (known) return known;
    const { inputs, notFitted, onlyFor } = this.binding(id);
    const feeds = Object.values(inputs);
    const places = [
      ...feeds.flatMap(placesOf),
      ...(notFitted ? [notFitted] : []),
      ...(onlyFor ? [{ key: onlyFor.key }] : []),
      ...feeds.flatMap(bindingsOf).flatMap((other) => this.reach(other)),
    ];
    this.#reach.set(id, places);
    return places;
  }

  /** Whether any of these characteristics reaches a binding. */
  isReached(id: string, keys: ReadonlySet<string>): boolean {
    const reached = this.#keys.get(id) ?? new Set(this.reach(id).map(({ key }) => key));
    this.#keys.set(id, reached);
    for (const key of keys) if (reached.has(key)) return true;
    return false;
  }

  /** The outputs of a binding that are told or that feed another. */
  wanted(id: string): readonly string[] {
    return this.#wanted.get(id) ?? [];
  }

  /** A binding's inputs, ready to be read for one car after another. */
  prepared(id: string): PreparedInputs {
    const known = this.#prepared.get(id);
    if (known) return known;
    const { inputs } = this.binding(id);
    const { before, ...rest } = inputs;
    const made = {
      whole: prepareGroup(inputs, ""),
      before: prepareGroup(before === undefined ? {} : { before }, ""),
      rest: prepareGroup(rest, ""),
    };
    this.#prepared.set(id, made);
    return made;
  }
}

/** Of a binding that compares, `before` is read from the earlier state and `rest` from the later. */
interface PreparedInputs {
  readonly whole: PreparedGroup;
  readonly before: PreparedGroup;
  readonly rest: PreparedGroup;
}
