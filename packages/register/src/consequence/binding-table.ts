import { type Binding, bindingsOf, type Feed, type Place, placesOf } from "./binding";

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
  readonly #wanted = new Map<string, ReadonlySet<string>>();

  constructor(readonly bindings: readonly Binding[]) {
    this.byId = new Map(bindings.map((binding) => [binding.id, binding]));
    const taken = bindings.flatMap(({ inputs }) => Object.values(inputs).flatMap(resultsIn));
    for (const { id, figures } of bindings) {
      const told = figures.flatMap(({ output, before }) =>
        before === undefined ? [output] : [output, before],
      );
      const fed = taken.filter(({ binding }) => binding === id).map(({ output }) => output);
      this.#wanted.set(id, new Set([...told, ...fed]));
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
    const { inputs, notFitted } = this.binding(id);
    const feeds = Object.values(inputs);
    const places = [
      ...feeds.flatMap(placesOf),
      ...(notFitted ? [notFitted] : []),
      ...feeds.flatMap(bindingsOf).flatMap((other) => this.reach(other)),
    ];
    this.#reach.set(id, places);
    return places;
  }

  /** Whether any of these characteristics reaches a binding. */
  isReached(id: string, keys: ReadonlySet<string>): boolean {
    return this.reach(id).some(({ key }) => keys.has(key));
  }

  /** The outputs of a binding that are told or that feed another. */
  wanted(id: string): readonly string[] {
    return [...(this.#wanted.get(id) ?? [])];
  }
}
