import {
  type Candidate,
  type EntryListLine,
  entryLineProblems,
  entryListLimits,
  type KnownCar,
  matchEntry,
  readEntryLines,
  refused,
} from "@trunnion/register";
import type { Context } from "../context";
import { type EventPage, findEvent } from "../event";
import { maySeeKeepers } from "../keeper/policy";
import { carReference } from "../record";
import { requireRole } from "../role";
import { standingRecord } from "../standing-record";
import { readTable } from "../table";

/** A car a line may mean, as a person knows it. */
export interface ListedCar extends Candidate {
  readonly reference: string;
  readonly chassis: string;
  /** Running number it is entered under at this event already; missing when it is not. */
  readonly enteredAs?: string;
}

/** Something about a line to be settled or looked at before it goes in. */
export interface EntryRemark {
  readonly kind:
    | "unfit"
    | "numberMissing"
    | "numberTaken"
    | "numberTwice"
    | "carEntered"
    | "carTwice"
    | "classUnknown";
  readonly text: string;
}

/** One line of the list with what it means. */
export interface ListedEntry extends EntryListLine {
  readonly match:
    | { readonly state: "matched"; readonly car: ListedCar }
    | { readonly state: "doubtful"; readonly candidates: readonly ListedCar[] }
    | { readonly state: "none" };
  /** Id of the class it names; missing where the rule set has none of that code or name. */
  readonly classId?: string;
  readonly remarks: readonly EntryRemark[];
}

/** A list as read against the register and the event; nothing is written. */
export interface ReadEntryList {
  readonly event: EventPage;
  readonly entries: readonly ListedEntry[];
  /** Columns that were not read. */
  readonly unknown: readonly string[];
}

interface RegisterCar extends KnownCar {
  readonly reference: string;
}

/** Every car of the register as far as a list can name it; keepers only for those who may see them. */
async function knownCars(ctx: Context): Promise<readonly RegisterCar[]> {
  const rows = await ctx.db.car.findMany({
    where: standingRecord,
    select: {
      id: true,
      chassis: true,
      claim: true,
      identities: { where: { kind: "registration" }, select: { number: true } },
      keeperships: { where: { to: null }, select: { keeper: { select: { name: true } } } },
    },
    orderBy: [{ chassisKey: "asc" }, { claim: "asc" }],
  });
  const named = maySeeKeepers(ctx);
  return rows.map((row) => ({
    id: row.id,
    chassis: row.chassis,
    reference: carReference(row),
    marks: row.identities.map(({ number }) => number),
    keepers: named ? row.keeperships.flatMap(({ keeper }) => keeper.name ?? []) : [],
  }));
}

function linesOf(text: string) {
  if (text.length > entryListLimits.characters)
    throw refused("ENTRY_LIST_TOO_LONG", {
      what: "characters",
      found: text.length,
      limit: entryListLimits.characters,
    });
  const table = readTable(new TextEncoder().encode(text), "the list");
  const read = readEntryLines(table);
  if (read.lines.length > entryListLimits.entries)
    throw refused("ENTRY_LIST_TOO_LONG", {
      what: "entries",
      found: read.lines.length,
      limit: entryListLimits.entries,
    });
  return read;
}

interface Reading {
  readonly cars: ReadonlyMap<string, RegisterCar>;
  readonly classes: readonly { readonly id: string; readonly code: string; readonly name: string }[];
  /** Running numbers of the event, and of cars entered already. */
  readonly taken: ReadonlySet<string>;
  readonly entered: ReadonlyMap<string, string>;
}

function matchOf(line: EntryListLine, { cars, entered }: Reading): ListedEntry["match"] {
  const match = matchEntry(line, [...cars.values()]);
  const told = (one: Candidate): ListedCar => {
    const car = cars.get(one.car);
    const enteredAs = entered.get(one.car);
    return {
      ...one,
      reference: car?.reference ?? "",
      chassis: car?.chassis ?? "",
      ...(enteredAs === undefined ? {} : { enteredAs }),
    };
  };
  if (match.state === "matched") return { state: "matched", car: told(match) };
  if (match.state === "doubtful") return { state: "doubtful", candidates: match.candidates.map(told) };
  return match;
}

const plain = (text: string) => text.trim().toLowerCase();

function classOf({ className }: EntryListLine, { classes }: Reading): string | undefined {
  const asked = plain(className);
  return classes.find(({ code, name }) => [code, name, `${code} ${name}`].map(plain).includes(asked))?.id;
}

function numberRemarks(
  { number, line }: EntryListLine,
  lines: readonly EntryListLine[],
  { taken }: Reading,
): readonly EntryRemark[] {
  if (number === "") return [{ kind: "numberMissing", text: "It has no running number." }];
  if (taken.has(number))
    return [{ kind: "numberTaken", text: `Running number ${number} is taken at this event.` }];
  const twin = lines.find((other) => other.number === number && other.line !== line);
  if (!twin) return [];
  return [{ kind: "numberTwice", text: `Running number ${number} stands on line ${twin.line} too.` }];
}

type Matched = Pick<ListedEntry, "line" | "match">;

function carRemarks({ line, match }: Matched, all: readonly Matched[]): readonly EntryRemark[] {
  if (match.state !== "matched") return [];
  const { car, chassis, enteredAs } = match.car;
  const twin = all.find(
    (other) => other.line !== line && other.match.state === "matched" && other.match.car.car === car,
  );
  const remarks: EntryRemark[] = [];
  if (enteredAs !== undefined)
    remarks.push({ kind: "carEntered", text: `${chassis} is entered already, as number ${enteredAs}.` });
  if (twin)
    remarks.push({
      kind: "carTwice",
      text: `${chassis} stands on line ${twin.line} too: the same car twice.`,
    });
  return remarks;
}

/**
 * Reads a pasted list of entries against the register and the event, and writes nothing.
 *
 * @throws Refusal ROLE_NEEDED, EVENT_NOT_FOUND, ENTRY_LIST_TOO_LONG, and those of `readTable`
 */
export async function readEntryList(
  ctx: Context,
  input: { readonly event: string; readonly text: string },
): Promise<ReadEntryList> {
  requireRole(ctx.actor, "registrar", "scrutineer", "fleetManager");
  const event = await findEvent(ctx, input.event);
  const { lines, unknown } = linesOf(input.text);
  const entries = await ctx.db.entry.findMany({
    where: { eventId: event.id },
    select: { runningNumber: true, carId: true, withdrawnAt: true },
  });
  const reading: Reading = {
    cars: new Map((await knownCars(ctx)).map((car) => [car.id, car])),
    classes: await ctx.db.eventClass.findMany({
      where: { ruleSetId: event.ruleSetId },
      select: { id: true, code: true, name: true },
    }),
    taken: new Set(entries.map(({ runningNumber }) => runningNumber)),
    entered: new Map(
      entries.flatMap(({ carId, runningNumber, withdrawnAt }) =>
        carId === null || withdrawnAt !== null ? [] : [[carId, runningNumber] as const],
      ),
    ),
  };
  const matched = lines.map((line) => ({ ...line, match: matchOf(line, reading) }));
  return {
    event,
    unknown,
    entries: matched.map((one) => {
      const classId = classOf(one, reading);
      const unfit = entryLineProblems(one).map((text): EntryRemark => ({ kind: "unfit", text }));
      const remarks = [...unfit, ...numberRemarks(one, lines, reading), ...carRemarks(one, matched)];
      if (one.className !== "" && classId === undefined)
        remarks.push({ kind: "classUnknown", text: `The rule set has no class "${one.className}".` });
      return { ...one, remarks, ...(classId === undefined ? {} : { classId }) };
    }),
  };
}
