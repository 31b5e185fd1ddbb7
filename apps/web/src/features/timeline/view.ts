import type { CarTimeline } from "@trunnion/api";
import {
  assemblies,
  assemblyLabels,
  type Characteristic,
  type CharacteristicBook,
  changesBetween,
  characteristicBook,
  type Deviation,
  deviating,
  deviationLine,
  deviationsFromAsBuilt,
  deviationsFromFactory,
  doubtsOn,
  type Known,
  printValue,
  type Side,
  type State,
  type StateInput,
  type StateValue,
  saySince,
  sayUncertainty,
  shiftDays,
  stateKey,
  stateOn,
  turningDays,
} from "@trunnion/register";
import type { ValueRow } from "../../components/value-table";
import { sideWords } from "../../lib/assembly";
import type { AssemblyState } from "../car/assembly-section";
import { rowOf } from "../car/present";

type Club = CarTimeline["club"];

/** The register's engines over one car, for any day. */
export interface LifeEngine {
  readonly input: StateInput;
  readonly book: CharacteristicBook;
  readonly club: Club;
  /** Days on which the state, or what is open about it, changes; in order. Between two of them nothing does. */
  readonly turns: readonly string[];
  /** Days on which the state itself changes. */
  readonly changes: readonly string[];
  /** Rows made so far. */
  readonly rows: Map<string, ValueRow>;
}

const inOrder = (days: Iterable<string>) => [...new Set(days)].sort();

/** Sets the engines up from what was sent; cheap, and the same on server and browser. */
export function lifeEngine({ data, club }: Pick<CarTimeline, "data" | "club">): LifeEngine {
  const { entries, asBuilt, modifications, readings, own } = data;
  const changes = [...modifications, ...readings].map(({ on }) => on);
  return {
    input: {
      entries: new Map(entries.map((entry) => [stateKey(entry.characteristic, entry.side), entry])),
      asBuilt,
      modifications,
      readings,
    },
    book: characteristicBook(own),
    club,
    turns: turningDays({ modifications, readings }),
    changes: inOrder(changes),
    rows: new Map(),
  };
}

/** The last of some days up to a day. */
export function lastUpTo(days: readonly string[], day: string): string | undefined {
  return days.findLast((one) => one <= day);
}

/** A day before any turn stands for all of them. */
const beforeAll = "1000-01-01";

/** The day that stands for a day: the turn it lies behind. States on both are the same. */
export function turnBefore({ turns }: LifeEngine, day: string): string {
  return lastUpTo(turns, day) ?? beforeAll;
}

/** One characteristic on two days, in words. */
export interface ChangeLine {
  readonly key: string;
  readonly label: string;
  /** Empty where not known. */
  readonly before: string;
  readonly after: string;
  /** How the later value is known: "1998", "12 Mar 1998". */
  readonly since: string;
}

/** A characteristic of which the dates leave open what it was. */
export interface DoubtLine {
  readonly key: string;
  readonly label: string;
  readonly stands: string;
  readonly instead: readonly string[];
}

/** A value that nothing is specified for: a colour, a tread depth. */
export interface PlainLine {
  readonly key: string;
  readonly label: string;
  readonly value: string;
  readonly known: Known;
}

/** What a car is on a day, in words and figures ready to be drawn. */
export interface DayView {
  readonly deviating: readonly ValueRow[];
  readonly fromAsBuilt: readonly ValueRow[];
  readonly assemblies: readonly AssemblyState[];
  /** Recorded, with nothing to compare it with. */
  readonly plain: readonly PlainLine[];
  readonly notRecorded: number;
  /** Characteristics that could be compared: none that differ of none known is no praise. */
  readonly compared: number;
  /** Day of the last change, and what it changed. */
  readonly changedOn?: string;
  readonly changed: readonly ChangeLine[];
  readonly doubts: readonly DoubtLine[];
}

function shown(characteristic: Characteristic | undefined, value: StateValue | undefined): string {
  if (!characteristic || !value) return value?.value.entered ?? "";
  const system = value.value.kind === "choice" ? "metric" : "asEntered";
  return printValue(characteristic, value.value, { system });
}

function labelOf(characteristic: string, side: Side, { book, club }: LifeEngine): string {
  const label = book.find(characteristic)?.label ?? characteristic;
  return side === "whole" ? label : `${label}, ${sideWords[club.sideWords][side].toLowerCase()}`;
}

const isOfCar = (value: StateValue | undefined) => value !== undefined && value.origin !== "specification";

/** What differs between two days; what the specification alone says is no knowledge of the car. */
export function changesOver(engine: LifeEngine, from: string, to: string): readonly ChangeLine[] {
  const [before, after] = [from, to].map((day) => stateOn(day, engine.input));
  if (!before || !after) return [];
  return changesBetween(before, after).flatMap(({ characteristic, side, before: was, after: is }) => {
    if (!isOfCar(was) && !isOfCar(is)) return [];
    const found = engine.book.find(characteristic);
    return {
      key: stateKey(characteristic, side),
      label: labelOf(characteristic, side, engine),
      before: isOfCar(was) ? shown(found, was) : "",
      after: isOfCar(is) ? shown(found, is) : "",
      since: (is && saySince(is)) ?? "",
    };
  });
}

function changesAt(engine: LifeEngine, day: string): Pick<DayView, "changed" | "changedOn"> {
  const last = lastUpTo(engine.changes, day);
  if (last === undefined) return { changed: [] };
  return { changedOn: last, changed: changesOver(engine, shiftDays(last, -1), last) };
}

function doubtLines(engine: LifeEngine, day: string): readonly DoubtLine[] {
  const standing = stateOn(day, engine.input);
  return [...doubtsOn(day, engine.input)].flatMap(([key, values]) => {
    const [first] = values;
    if (!first) return [];
    const { characteristic, side } = first;
    const found = engine.book.find(characteristic);
    const stands = standing.get(key);
    const said = values.map((value) => {
      const since = saySince(value);
      return since === undefined ? shown(found, value) : `${shown(found, value)} (${since})`;
    });
    return {
      key,
      label: labelOf(characteristic, side, engine),
      stands: isOfCar(stands) ? shown(found, stands) : "",
      instead: said,
    };
  });
}

/** What a row says follows from the baseline and from the one statement that the value comes from. */
const rowKey = ({ baseline, characteristic, side, actual, entry }: Deviation, across: boolean) =>
  [baseline, characteristic, side, actual?.originId ?? "", entry?.id ?? "", across].join(" ");

/**
 * Rows with the uncertainty that their verdicts were given with. A row that was made for another day is the very same
 * object again: it is neither worded nor drawn anew.
 */
function rowsOf(deviations: readonly Deviation[], engine: LifeEngine, across: boolean): readonly ValueRow[] {
  return deviations.map((deviation) => {
    const key = rowKey(deviation, across);
    const row = engine.rows.get(key) ?? rowFor(deviation, engine, across);
    engine.rows.set(key, row);
    return row;
  });
}

function rowFor(deviation: Deviation, { book, club }: LifeEngine, across: boolean): ValueRow {
  const line = deviationLine(deviation, book, club.unitSystem);
  const leader = across ? assemblies.indexOf(line.assembly) + 1 : undefined;
  const row = rowOf(line, club.sideWords, leader);
  const uncertainty = deviation.limits ? sayUncertainty(deviation, book, club.unitSystem) : "";
  return uncertainty === "" ? row : { ...row, uncertainty };
}

function byAssembly(deviations: readonly Deviation[], engine: LifeEngine): readonly AssemblyState[] {
  return assemblies.flatMap((assembly, index) => {
    const here = deviations.filter(
      ({ characteristic }) => engine.book.find(characteristic)?.assembly === assembly,
    );
    if (here.length === 0) return [];
    return {
      assembly,
      label: assemblyLabels[assembly],
      leader: index + 1,
      deviations: deviating(here).length,
      rows: rowsOf(here, engine, false),
      notRecorded: [],
    };
  });
}

function plainLines(state: State, compared: readonly Deviation[], engine: LifeEngine): readonly PlainLine[] {
  const told = new Set(compared.map(({ characteristic, side }) => stateKey(characteristic, side)));
  return [...state].flatMap(([key, value]) => {
    if (told.has(key) || !isOfCar(value)) return [];
    const { characteristic, side, origin, source } = value;
    const since = saySince(value);
    return {
      key,
      label: labelOf(characteristic, side, engine),
      value: shown(engine.book.find(characteristic), value),
      known: { origin, source, ...(since === undefined ? {} : { since }) },
    };
  });
}

/** Everything the page shows of a car's state on a day. */
export function dayView(engine: LifeEngine, day: string): DayView {
  const { input, book } = engine;
  const state = stateOn(day, input);
  const factory = deviationsFromFactory(state, input.entries, book);
  const notRecorded = factory.filter(({ verdict }) => verdict === "notRecorded").length;
  return {
    deviating: rowsOf(deviating(factory), engine, true),
    fromAsBuilt: rowsOf(deviating(deviationsFromAsBuilt(state, input.asBuilt, book)), engine, true),
    assemblies: byAssembly(factory, engine),
    plain: plainLines(state, factory, engine),
    notRecorded,
    compared: factory.length - notRecorded,
    ...changesAt(engine, day),
    doubts: doubtLines(engine, day),
  };
}
