import type { CharacteristicBook } from "../characteristic/book";
import { type Assembly, assemblies, type Side } from "../characteristic/characteristic";
import { type Verdict, verdicts } from "../deviation/deviation";
import { printBeside } from "../value/beside";
import type { UnitSystem } from "../value/print";
import { sameValue } from "../value/same";
import type { Value } from "../value/value";

/** One present value of one of the cars compared. */
export interface ComparedValue {
  /** Place of the car among those compared. */
  readonly car: number;
  readonly characteristic: string;
  readonly side: Side;
  readonly value: Value;
  /** Against its own specification. */
  readonly verdict: Verdict;
}

/** What one car has there. Missing from its row where nothing is recorded: unknown is never the same. */
export interface ComparedCell {
  readonly car: number;
  readonly text: string;
  readonly verdict: Verdict;
  /** Against the reference, or where there is none against what most of the others have. */
  readonly differs: boolean;
}

/** A characteristic at which the cars differ. */
export interface ComparedRow {
  readonly characteristic: string;
  readonly label: string;
  readonly assembly: Assembly;
  readonly side: Side;
  readonly cells: readonly ComparedCell[];
  /** What the cars are held against: the reference's value, or the commonest. */
  readonly against: string;
  /** Cars of which nothing is recorded there. */
  readonly unknown: readonly number[];
}

/** Values of one car that want somebody to look. */
export interface CarStanding {
  readonly outside: number;
  readonly cannotTell: number;
}

export interface CarComparison {
  /** What differs, worst first. */
  readonly rows: readonly ComparedRow[];
  /** How often each car differs, by its place. */
  readonly differing: readonly number[];
  /** How each car stands against its own specification, by its place: whether what it has there differs or not. */
  readonly standing: readonly CarStanding[];
  /** Characteristics at which every car is known and all are the same. */
  readonly same: number;
  /** Those at which the known ones are the same but some car is not known, the reference among them. */
  readonly open: readonly {
    readonly label: string;
    readonly side: Side;
    readonly unknown: readonly number[];
  }[];
}

export interface CompareCarsInput {
  readonly cars: number;
  readonly values: readonly ComparedValue[];
  readonly book: CharacteristicBook;
  /** Place of the car the others are held against; the commonest value of each row when left out. */
  readonly reference?: number;
  readonly system: UnitSystem;
}

/** Every car at one characteristic and side. */
interface Place {
  readonly characteristic: string;
  readonly side: Side;
  readonly values: readonly ComparedValue[];
}

function placesOf(values: readonly ComparedValue[]): readonly Place[] {
  const map = new Map<string, ComparedValue[]>();
  for (const value of values) {
    const key = `${value.characteristic} ${value.side}`;
    map.set(key, [...(map.get(key) ?? []), value]);
  }
  return [...map.values()].flatMap((of) => {
    const [first] = of;
    return first ? [{ characteristic: first.characteristic, side: first.side, values: of }] : [];
  });
}

/** The value that most have; of equally common ones the first car's. */
function commonest(values: readonly ComparedValue[]): ComparedValue | undefined {
  const support = (one: ComparedValue) => values.filter(({ value }) => sameValue(value, one.value)).length;
  return values.reduce<ComparedValue | undefined>(
    (best, one) => (best === undefined || support(one) > support(best) ? one : best),
    undefined,
  );
}

const severity = (verdict: Verdict) => verdicts.indexOf(verdict);

/** How bad a row is: the worst verdict among the cars that differ, then how many differ, then the walk round the car. */
function inOrder(a: ComparedRow, b: ComparedRow): number {
  const worst = ({ cells }: ComparedRow) =>
    Math.min(...cells.filter(({ differs }) => differs).map(({ verdict }) => severity(verdict)));
  const many = ({ cells }: ComparedRow) => cells.filter(({ differs }) => differs).length;
  return (
    worst(a) - worst(b) ||
    many(b) - many(a) ||
    assemblies.indexOf(a.assembly) - assemblies.indexOf(b.assembly) ||
    (a.label < b.label ? -1 : a.label > b.label ? 1 : 0)
  );
}

function absentFrom({ values }: Place, cars: number): readonly number[] {
  const known = new Set(values.map(({ car }) => car));
  return Array.from({ length: cars }, (_, car) => car).filter((car) => !known.has(car));
}

type Told =
  | { readonly as: "same" }
  | { readonly as: "open"; readonly line: CarComparison["open"][number] }
  | { readonly as: "differs"; readonly row: ComparedRow };

/** What there is to say of one place. */
function told(
  place: Place,
  held: ComparedValue | undefined,
  { cars, book, system }: CompareCarsInput,
): Told | undefined {
  const characteristic = book.find(place.characteristic);
  if (!characteristic) return undefined;
  const { label, assembly, key } = characteristic;
  const { side, values } = place;
  const unknown = absentFrom(place, cars);
  if (held === undefined || values.every(({ value }) => sameValue(value, held.value)))
    return unknown.length === 0 ? { as: "same" } : { as: "open", line: { label, side, unknown } };
  const print = (value: Value) => printBeside(characteristic, value, system);
  const cells = values
    .map(({ car, value, verdict }) => ({
      car,
      text: print(value),
      verdict,
      differs: !sameValue(value, held.value),
    }))
    .sort((a, b) => a.car - b.car);
  return {
    as: "differs",
    row: { characteristic: key, label, assembly, side, cells, against: print(held.value), unknown },
  };
}

/**
 * Cars side by side: only what differs, worst first, the values of a row in one notation. Two values are the same by
 * `sameValue`: no sharper than they were read. A car of which nothing is recorded is neither the same nor different, and
 * said to be unknown.
 */
export function compareCars(input: CompareCarsInput): CarComparison {
  const { cars, values, reference } = input;
  const all = placesOf(values).flatMap((place) => {
    const held =
      reference === undefined ? commonest(place.values) : place.values.find(({ car }) => car === reference);
    return told(place, held, input) ?? [];
  });
  const rows = all.flatMap((one) => (one.as === "differs" ? [one.row] : [])).sort(inOrder);
  const differing = Array.from(
    { length: cars },
    (_, car) => rows.filter(({ cells }) => cells.some((cell) => cell.car === car && cell.differs)).length,
  );
  const many = (car: number, verdict: Verdict) =>
    values.filter((value) => value.car === car && value.verdict === verdict).length;
  return {
    rows,
    differing,
    standing: Array.from({ length: cars }, (_, car) => ({
      outside: many(car, "outsideLimits"),
      cannotTell: many(car, "cannotTell"),
    })),
    same: all.filter(({ as }) => as === "same").length,
    open: all.flatMap((one) => (one.as === "open" ? [one.line] : [])),
  };
}
