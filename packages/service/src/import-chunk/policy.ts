import {
  type CharacteristicBook,
  chassisKey,
  type PartialDate,
  type RecordedValue,
  type RegisterRow,
  type Side,
  sameValue,
  shiftDays,
  stateKey,
  stateOn,
  type Value,
} from "@trunnion/register";
import type { JournalLine } from "../journal";
import type { PlannedRow } from "../planned-row";
import type { CarRecord } from "../record";

/** Keeper of a car now, as the register has it. Personal data. */
export interface PresentKeeper {
  readonly keepershipId: string;
  readonly keeperId: string;
  /** Kept since, as written. */
  readonly since: string | null;
  readonly name: string | null;
  readonly address: string | null;
  readonly email: string | null;
  readonly phone: string | null;
}

export interface NumberBorne {
  readonly kind: "commission" | "engine" | "body" | "registration";
  readonly number: string;
  readonly key: string;
}

/** A value of the car that a row tells, with how it is recorded. */
export interface NowValue extends RecordedValue {
  /** Changed on a day that the row names, or seen or measured on a day. */
  readonly as: "change" | "reading";
  /** ISO day it is true of. */
  readonly on: string;
  /** What the car had until then, as far as it is known. */
  readonly before?: Value;
}

/** What a row says that the record does not say yet. */
export interface CarChanges {
  /** The car's own columns differ. */
  readonly facts: boolean;
  readonly numbers: readonly NumberBorne[];
  readonly options: readonly string[];
  /** `correct` when only the day since when differs. */
  readonly status: "none" | "change" | "correct";
  /** `correct` when the same keeper's particulars differ. */
  readonly keeper: "none" | "add" | "replace" | "correct";
  readonly asBuilt: readonly RecordedValue[];
  readonly now: readonly NowValue[];
}

/** What a row is read by. */
export interface ChangeBasis {
  /** ISO day the file tells of. */
  readonly asOf: string;
  readonly book: CharacteristicBook;
}

function numbersIn(row: RegisterRow): readonly NumberBorne[] {
  return (["commission", "engine", "body", "registration"] as const).flatMap((kind) => {
    const number = row[kind];
    return number === undefined ? [] : [{ kind, number, key: chassisKey(number) }];
  });
}

function factsDiffer({ row, series, serial }: PlannedRow, record: CarRecord): boolean {
  const moved = series !== null && series.id !== record.series?.id;
  const place = serial !== null && serial !== record.basis.serial;
  const built = row.built !== undefined && row.built.text !== record.built;
  const first = row.firstRegistered !== undefined && row.firstRegistered.text !== record.firstRegistered;
  const remarks = row.remarks !== undefined && row.remarks !== record.remarks;
  return moved || place || built || first || remarks;
}

function statusChange(row: RegisterRow, record: CarRecord): CarChanges["status"] {
  if (row.status === undefined) return "none";
  if (row.status !== record.status) return "change";
  const since = row.statusSince?.text;
  return since !== undefined && since !== record.statusSince ? "correct" : "none";
}

function keeperChange(row: RegisterRow, present: PresentKeeper | undefined): CarChanges["keeper"] {
  if (!row.keeper) return "none";
  if (!present) return "add";
  const { name, address, email, phone } = row.keeper;
  if (name !== undefined && name !== present.name) return "replace";
  const said = { address, email, phone, since: row.keptSince?.text };
  const differs = (["address", "email", "phone", "since"] as const).some(
    (part) => said[part] !== undefined && said[part] !== present[part],
  );
  return differs ? "correct" : "none";
}

interface Place {
  readonly characteristic: string;
  readonly side: Side;
}

const at = ({ characteristic, side }: Place) => stateKey(characteristic, side);
const builtIn = (row: RegisterRow, said: Place) => row.asBuilt.find((value) => at(value) === at(said))?.value;

/** What the record says a car had on a day, the specification apart: that is no knowledge of this car. */
function stateBy(record: CarRecord | undefined) {
  const days = new Map<string, ReturnType<typeof stateOn>>();
  return (day: string, said: Place): Value | undefined => {
    if (!record) return undefined;
    const state = days.get(day) ?? stateOn(day, { entries: new Map(), ...record });
    days.set(day, state);
    return state.get(at(said))?.value;
  };
}

/** Whether the last change, or reading, that the record has of that very day says the same. */
function recordedOnDay(record: CarRecord | undefined, { as, on, ...said }: NowValue): boolean {
  const changes = record?.modifications.flatMap((one) =>
    one.changes.map((change) => ({ ...change, on: one.on, value: change.after })),
  );
  const list: readonly (RecordedValue & { readonly on: string })[] | undefined =
    as === "change" ? changes : record?.readings;
  // Both lists stand in the order they were recorded in.
  const last = list?.findLast((one) => one.on === on && at(one) === at(said));
  return last !== undefined && sameValue(last.value, said.value);
}

/** A day that a person wrote as a day; a month or a year ends "today" while it lasts, and would move with it. */
const isDay = (date: PartialDate | undefined) => date?.precision === "day";

/**
 * How the values of a row are recorded. With a day of change, a part that differs from what the car had is a change;
 * everything else was seen, and a setting measured, on its day.
 */
function nowValues(row: RegisterRow, record: CarRecord | undefined, { asOf, book }: ChangeBasis) {
  const had = stateBy(record);
  const seenOn = row.recordedOn?.latest ?? asOf;
  const measuredOn = row.measuredOn?.latest ?? seenOn;
  const dated = isDay(row.measuredOn) || (row.measuredOn === undefined && isDay(row.recordedOn));
  return row.now.flatMap((said): NowValue[] => {
    const setting = book.find(said.characteristic)?.setting ?? false;
    const changedOn = setting ? undefined : row.changedOn?.latest;
    const before = changedOn && (had(shiftDays(changedOn, -1), said) ?? builtIn(row, said));
    const isChange = changedOn !== undefined && !(before && sameValue(before, said.value));
    const now: NowValue = isChange
      ? { ...said, as: "change", on: changedOn, ...(before ? { before } : {}) }
      : { ...said, as: "reading", on: setting ? measuredOn : seenOn };
    if (recordedOnDay(record, now)) return [];
    // Measured again and found the same is news: how old a reading is decides what is asked for.
    if (setting && dated) return [now];
    const stands = had(now.on, said);
    return stands && sameValue(stands, said.value) ? [] : [now];
  });
}

function newAsBuilt(row: RegisterRow, record: CarRecord | undefined): readonly RecordedValue[] {
  const known = new Map(record?.asBuilt.map((value) => [at(value), value.value]));
  return row.asBuilt.filter((said) => {
    const value = known.get(at(said));
    return !value || !sameValue(value, said.value);
  });
}

/** What a row adds to a car; `record` is missing for a car that is not on the register yet. */
export function changesOf(
  planned: PlannedRow,
  { record, keeper }: { readonly record: CarRecord | undefined; readonly keeper: PresentKeeper | undefined },
  basis: ChangeBasis,
): CarChanges {
  const { row, options } = planned;
  const values = { asBuilt: newAsBuilt(row, record), now: nowValues(row, record, basis) };
  if (!record) {
    const status = row.status === undefined ? "none" : "change";
    return {
      facts: true,
      numbers: numbersIn(row),
      options,
      status,
      keeper: row.keeper ? "add" : "none",
      ...values,
    };
  }
  const borne = new Set(record.identities.map(({ kind, number }) => `${kind} ${chassisKey(number)}`));
  return {
    facts: factsDiffer(planned, record),
    numbers: numbersIn(row).filter(({ kind, key }) => !borne.has(`${kind} ${key}`)),
    options: options.filter((code) => !record.basis.options.includes(code)),
    status: statusChange(row, record),
    keeper: keeperChange(row, keeper),
    ...values,
  };
}

/** True when a row says nothing that the record does not say already. */
export function nothingNew({ facts, status, keeper, numbers, options, asBuilt, now }: CarChanges): boolean {
  const lists = [numbers, options, asBuilt, now];
  return !facts && status === "none" && keeper === "none" && lists.every((list) => list.length === 0);
}

const words = (values: readonly (Place & { readonly value: Value })[]) =>
  Object.fromEntries(values.map((said) => [at(said), said.value.entered]));

/** Facts that a row says, and what the record said of the same. */
function facts({ row, series, serial }: PlannedRow, record: CarRecord | undefined) {
  const said = {
    series: series?.slug,
    serial: serial ?? undefined,
    built: row.built?.text,
    firstRegistered: row.firstRegistered?.text,
  };
  const had = {
    series: record?.series?.slug ?? null,
    serial: record?.basis.serial ?? null,
    built: record?.built ?? null,
    firstRegistered: record?.firstRegistered ?? null,
  };
  const moved = (Object.keys(had) as (keyof typeof had)[]).filter(
    (part) => said[part] !== undefined && said[part] !== had[part],
  );
  const of = (parts: typeof said | typeof had) =>
    Object.fromEntries(moved.map((part) => [part, parts[part] ?? null]));
  return { before: of(had), after: of(said) };
}

/** What the car had of each thing that the row changes, as it was entered. */
export function valuesBefore({ asBuilt, now }: CarChanges, record: CarRecord) {
  const built = new Map(record.asBuilt.map((value) => [at(value), value]));
  const had = stateBy(record);
  const earlier = now.flatMap((said) => {
    const value = had(said.on, said);
    return value ? [{ ...said, value }] : [];
  });
  const earlierBuilt = asBuilt.flatMap((said) => built.get(at(said)) ?? []);
  return { asBuilt: words(earlierBuilt), now: words(earlier) };
}

/**
 * Before and after of one car, as the journal keeps them: what changed and nothing else. The journal cannot be erased,
 * so it says that the keeper or the remarks changed, not what they say: both may name people.
 */
export function journalled(
  planned: PlannedRow,
  record: CarRecord | undefined,
  changes: CarChanges,
): Required<Pick<JournalLine, "after">> & Pick<JournalLine, "before"> {
  const { row, claim } = planned;
  const { before, after } = facts(planned, record);
  const remarks =
    changes.facts && row.remarks !== undefined && row.remarks !== (record?.remarks ?? undefined);
  const hadStatus = { status: record?.status ?? null, statusSince: record?.statusSince ?? null };
  const saysStatus = { status: row.status ?? null, statusSince: row.statusSince?.text ?? null };
  const moved = changes.status !== "none";
  return {
    ...(record
      ? { before: { ...before, ...(moved ? hadStatus : {}), ...valuesBefore(changes, record) } }
      : {}),
    after: {
      chassis: row.chassis,
      claim,
      ...after,
      ...(moved ? saysStatus : {}),
      ...(remarks ? { remarks: record ? "changed" : "given" } : {}),
      keeper: changes.keeper,
      numbers: changes.numbers.map(({ kind, number }) => `${kind} ${number}`),
      options: [...changes.options],
      asBuilt: words(changes.asBuilt),
      now: words(changes.now),
    },
  };
}
