import {
  type Characteristic,
  type CharacteristicBook,
  type DeviationLine,
  deviating,
  deviationLine,
  deviationsFromAsBuilt,
  printValue,
  type Value,
} from "@trunnion/register";
import { assessAll } from "../assessment";
import { findCar } from "../car";
import { bookOf } from "../characteristic";
import type { ClubFacts, Context } from "../context";
import { dayOrNothing } from "../day";
import { type CarSupport, carSupport } from "../evidence";
import { type KeeperLine, keepersOf, maySeeKeepers } from "../keeper";
import { claimsOn, type DecisionLine } from "../number";
import type { CarRecord } from "../record";

/** One thing that happened to a car, latest first in lists. */
export interface HistoryLine {
  readonly id: string;
  /** Valid time as written. */
  readonly on: string;
  /** ISO day to sort by. */
  readonly day: string;
  readonly kind: "built" | "modification" | "reading" | "note";
  readonly text: string;
  readonly changes: readonly { readonly label: string; readonly before: string; readonly after: string }[];
}

/** Everything a page says of one car: the record, the engines' results in words, who keeps it if one may know. */
export interface CarPage {
  readonly club: ClubFacts;
  /** ISO day the state is of. */
  readonly on: string;
  readonly car: Pick<
    CarRecord,
    | "reference"
    | "chassis"
    | "claim"
    | "version"
    | "series"
    | "built"
    | "firstRegistered"
    | "status"
    | "statusSince"
    | "identities"
    | "remarks"
  > & { readonly options: readonly string[] };
  /** How many cars claim this number. */
  readonly claims: number;
  /** What was decided about the numbers it bears, and stands. */
  readonly decisions: readonly DecisionLine[];
  /** The car this record turned out to be of, which has everything of it. */
  readonly mergedInto?: string;
  readonly colour: string;
  readonly body: string;
  readonly factory: readonly DeviationLine[];
  /** What differs from factory, worst first. */
  readonly deviating: readonly DeviationLine[];
  readonly asBuilt: readonly DeviationLine[];
  readonly notRecorded: number;
  /** Labels of characteristics neither specified nor recorded, by assembly. */
  readonly unspoken: Readonly<Record<string, readonly string[]>>;
  /** Which characteristics are settings. */
  readonly settings: readonly string[];
  readonly history: readonly HistoryLine[];
  /** Photos and documents, by the key of the value or the id of the record that they support. */
  readonly support: CarSupport["support"];
  /** How many there are. */
  readonly evidence: number;
  /** The reader may change the record. */
  readonly mayEdit: boolean;
  /** Personal data; null when the reader may not see it. */
  readonly keepers: readonly KeeperLine[] | null;
}

function printed(characteristic: Characteristic | undefined, value: Value | undefined): string {
  return characteristic && value ? printValue(characteristic, value, { system: "asEntered" }) : "";
}

function modificationLines({ modifications, asBuilt }: CarRecord, book: CharacteristicBook): HistoryLine[] {
  const built = new Map(
    asBuilt.map(({ characteristic, side, value }) => [`${characteristic} ${side}`, value]),
  );
  const last = new Map<string, Value>(built);
  const lines: HistoryLine[] = [];
  for (const { id, on, fitted, reason, donor, changes } of modifications) {
    const told = changes.map(({ characteristic: key, side, after }) => {
      const characteristic = book.find(key);
      const before = printed(characteristic, last.get(`${key} ${side}`));
      last.set(`${key} ${side}`, after);
      const label =
        side === "whole" ? (characteristic?.label ?? key) : `${characteristic?.label ?? key}, ${side}`;
      return { label, before, after: printed(characteristic, after) };
    });
    const text = [reason, donor === null ? undefined : `from: ${donor}`]
      .filter((part) => part !== undefined)
      .join("; ");
    lines.push({ id, on: fitted, day: on, kind: "modification", text, changes: told });
  }
  return lines;
}

function readingLines({ readings }: CarRecord): HistoryLine[] {
  const byDay = new Map<string, number>();
  for (const { on } of readings) byDay.set(on, (byDay.get(on) ?? 0) + 1);
  return [...byDay].map(([on, count]) => ({
    id: `readings-${on}`,
    on,
    day: on,
    kind: "reading",
    text: count === 1 ? "1 characteristic seen or measured" : `${count} characteristics seen or measured`,
    changes: [],
  }));
}

/** Notes without a date stand last: nobody knows where they belong. */
async function noteLines({ db }: Context, carId: string): Promise<readonly HistoryLine[]> {
  const rows = await db.historyNote.findMany({ where: { carId }, orderBy: { id: "asc" } });
  return rows.map(({ id, onText, onEarliest, text }) => ({
    id,
    on: onText ?? "date not known",
    day: dayOrNothing(onEarliest) ?? "",
    kind: "note",
    text,
    changes: [],
  }));
}

function historyOf(
  record: CarRecord,
  book: CharacteristicBook,
  notes: readonly HistoryLine[],
): readonly HistoryLine[] {
  const built = {
    id: "built",
    on: record.built ?? "",
    day: record.basis.built?.earliest ?? "",
    kind: "built" as const,
  };
  const lines = [
    ...modificationLines(record, book),
    ...readingLines(record),
    ...notes,
    ...(record.built === null ? [] : [{ ...built, text: "", changes: [] }]),
  ];
  return lines.sort((a, b) => b.day.localeCompare(a.day));
}

function unspokenOf(spoken: ReadonlySet<string>, book: CharacteristicBook): CarPage["unspoken"] {
  const labels: Record<string, string[]> = {};
  for (const { key, label, assembly } of book.all) {
    // Hardpoints are measured for the calculator; their absence says nothing of the car.
    if (spoken.has(key) || key.includes(".hardpoint.")) continue;
    const list = labels[assembly] ?? [];
    list.push(label);
    labels[assembly] = list;
  }
  return labels;
}

/**
 * Everything a page says of one car, as of today.
 *
 * @throws Refusal CAR_NOT_FOUND
 */
export async function carPage(ctx: Context, reference: string): Promise<CarPage> {
  const record = await findCar(ctx, reference);
  const book = await bookOf(ctx);
  const [assessment] = await assessAll(ctx, [record], book, ctx.today);
  if (!assessment) throw new Error(`no assessment of ${reference}`);
  const { state, deviations } = assessment;
  const words = (list: typeof deviations) => list.map((one) => deviationLine(one, book, ctx.club.unitSystem));
  const spoken = new Set([
    ...deviations.map(({ characteristic }) => characteristic),
    ...[...state.values()].map(({ characteristic }) => characteristic),
  ]);
  const keys = new Set(deviations.map(({ characteristic }) => characteristic));
  const { basis, asBuilt, modifications: _m, readings: _r, mergedInto, ...facts } = record;
  return {
    club: ctx.club,
    on: ctx.today,
    car: { ...facts, options: basis.options },
    ...(await claimsOn(ctx, record)),
    ...(mergedInto === undefined ? {} : { mergedInto }),
    colour: state.get("body.colour whole")?.value.entered ?? "",
    body: printed(book.find("body.style"), state.get("body.style whole")?.value),
    factory: words(deviations),
    deviating: words(deviating(deviations)),
    asBuilt: words(deviating(deviationsFromAsBuilt(state, asBuilt, book))),
    notRecorded: deviations.filter(({ verdict }) => verdict === "notRecorded").length,
    unspoken: unspokenOf(spoken, book),
    settings: book.all.filter(({ key, setting }) => setting && keys.has(key)).map(({ key }) => key),
    history: historyOf(record, book, await noteLines(ctx, record.id)),
    ...(await carSupport(ctx, record.id, state)),
    mayEdit: maySeeKeepers(ctx),
    keepers: await keepersOf(ctx, record.id),
  };
}
