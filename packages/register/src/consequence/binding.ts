import type { Side } from "../characteristic/characteristic";

/** A characteristic of a car, on one side or the car's only one. */
export interface Place {
  readonly key: string;
  /** Left out: `whole`. */
  readonly side?: Side;
}

/** Where a computation's input comes from. */
export type Feed =
  /** The value the car has. `absent` is what it counts as where the part is not fitted. */
  | (Place & { readonly from: "characteristic"; readonly optional?: true; readonly absent?: unknown })
  /** Taken for granted and said so, figure and all; `value` in SI. */
  | { readonly from: "assumption"; readonly value: unknown; readonly says: string }
  /** An answer of another binding for the same state. */
  | {
      readonly from: "result";
      readonly binding: string;
      readonly output: string;
      /** Multiplied by this, and why: half a diameter is a radius. */
      readonly times?: { readonly factor: number; readonly says: string };
      readonly optional?: true;
    }
  /** Worked out from several values of the car; `value` gets their SI numbers in order. */
  | {
      readonly from: "values";
      readonly of: readonly Place[];
      readonly says: string;
      readonly value: (numbers: readonly number[]) => unknown;
      readonly optional?: true;
    }
  /** The first that can be had. */
  | { readonly from: "firstOf"; readonly feeds: readonly Feed[] }
  /** An object of inputs. */
  | { readonly from: "group"; readonly fields: Readonly<Record<string, Feed>> };

/** An answer of a computation that is worth telling. */
export interface Figure {
  /** Name of the output. Of a computation that compares, the one after; `before` names the other. */
  readonly output: string;
  readonly before?: string;
  /** How it is called on the car: "Front bar at the wheel". */
  readonly label: string;
  /** `ratio` where the absolute values rest on assumptions that cancel. */
  readonly only?: "ratio";
}

/**
 * What a computation of the catalogue says of a car: which characteristics feed which of its inputs, and which of its
 * answers are worth telling. Everything else follows from this table: what a change does, what is missing to say more.
 */
export interface Binding {
  /** Stable, e.g. `front.bar.rate`. */
  readonly id: string;
  /** What it is of, in sentence case: "Front anti-roll bar". */
  readonly title: string;
  /** Name of the catalogue's computation. */
  readonly computation: string;
  /**
   * `each`: run for the state before and the state after. `change`: the computation compares by itself; its inputs
   * `before` and `after` are groups, read from the one state and the other, and all else from the state after.
   */
  readonly mode: "each" | "change";
  readonly inputs: Readonly<Record<string, Feed>>;
  readonly figures: readonly Figure[];
  /** Answers where a part is not fitted at all: an anti-roll bar that was left off has no rate. */
  readonly notFitted?: Place & { readonly outputs: Readonly<Record<string, number>> };
  /** Says nothing of a car whose choice here is another; of one whose choice nobody recorded only if `orUnknown`. */
  readonly onlyFor?: { readonly key: string; readonly codes: readonly string[]; readonly orUnknown?: true };
  /** Another binding that says more: this one is told only where that one cannot be worked out. */
  readonly unless?: string;
}

/** Every characteristic that a feed reads, results of other bindings apart. */
export function placesOf(feed: Feed): readonly Place[] {
  switch (feed.from) {
    case "characteristic":
      return [feed];
    case "values":
      return feed.of;
    case "firstOf":
      return feed.feeds.flatMap(placesOf);
    case "group":
      return Object.values(feed.fields).flatMap(placesOf);
    case "assumption":
    case "result":
      return [];
  }
}

/** The bindings that a feed takes results of. */
export function bindingsOf(feed: Feed): readonly string[] {
  switch (feed.from) {
    case "result":
      return [feed.binding];
    case "firstOf":
      return feed.feeds.flatMap(bindingsOf);
    case "group":
      return Object.values(feed.fields).flatMap(bindingsOf);
    default:
      return [];
  }
}
