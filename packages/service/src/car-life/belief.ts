import { CarStatus, IdentityKind, IdentityStanding } from "@trunnion/db";
import {
  believedAt,
  explainNumber,
  type KnownTime,
  parsePartialDate,
  type RowStep,
  rewind,
  rewindRows,
  type Source,
  type Trust,
  trusts,
} from "@trunnion/register";
import {
  type CarLife,
  type Facts,
  factsOf,
  type LifeNote,
  type LifeNumber,
  type LifeStatus,
  lifeOf,
  partsOf,
} from "./policy";
import type { LifeRow, LifeStep } from "./read";

/** A series as a car is filed under it, with what its numbers look like. */
export interface FiledSeries extends NonNullable<CarLife["series"]> {
  readonly numberPrefix: string;
  readonly numberDigits: number;
  readonly firstSerial: number;
  readonly lastSerial: number;
  readonly numberSuffixes: readonly string[];
}

/** What a believed life is worked out from, beside the car's row. */
export interface Belief {
  /** ISO instant in UTC. */
  readonly instant: string;
  /** ISO day of that instant. */
  readonly day: string;
  /** The journal's lines about the car since then, in the order they were written. */
  readonly steps: readonly LifeStep[];
  /** Every series of the club, to find the one the car was filed under. */
  readonly series: readonly FiledSeries[];
}

/** A date that was in a field: the one that is there still, or read anew from the journal's words. */
function timeOf(text: unknown, now: KnownTime | undefined, day: string): KnownTime | undefined {
  if (typeof text !== "string" || text === "") return undefined;
  if (text === now?.text) return now;
  const parsed = parsePartialDate(text, { today: day });
  return parsed.ok ? parsed.date : undefined;
}

const words = (value: unknown) => (typeof value === "string" ? value : "");

function oneOf<T extends string>(list: readonly T[], value: unknown, otherwise: T): T {
  return list.find((one) => one === value) ?? otherwise;
}

const ownSteps = (steps: readonly LifeStep[], noun: string): readonly RowStep[] =>
  steps.filter((step) => step.noun === noun).map(({ nounId, ...step }) => ({ ...step, rowId: nounId }));

interface Said {
  readonly source: string;
  readonly locus: string;
  readonly trust: string;
}

const saidOf = ({ title, locus, trust }: Source): Said => ({ source: title, locus: locus ?? "", trust });
const unsaid: Said = { source: "", locus: "", trust: "unknown" };

function sourceFrom({ source, locus, trust }: Said): Source {
  return {
    title: source === "" ? "no source given" : source,
    trust: oneOf<Trust>(trusts, trust, "unknown"),
    ...(locus === "" ? {} : { locus }),
  };
}

function numbersThen(now: readonly LifeNumber[], { steps, instant, day }: Belief): readonly LifeNumber[] {
  const rows = now.map(({ id, recordedAt, kind, number, standing, from, to, source }) => ({
    id,
    recordedAt,
    fields: {
      kind: kind as string,
      number,
      standing: standing as string,
      from: from?.text ?? "",
      to: to?.text ?? "",
      ...saidOf(source),
    },
  }));
  const blank = { kind: "chassis", number: "", standing: "accepted", from: "", to: "", ...unsaid };
  const then = rewindRows({ rows, steps: ownSteps(steps, "carIdentity"), instant, blank });
  return then.map(({ id, fields }): LifeNumber => {
    const row = now.find((one) => one.id === id);
    const [from, to] = [timeOf(fields.from, row?.from, day), timeOf(fields.to, row?.to, day)];
    return {
      id,
      recordedAt: row?.recordedAt ?? "",
      kind: oneOf(Object.values(IdentityKind), fields.kind, "chassis"),
      number: fields.number,
      standing: oneOf(Object.values(IdentityStanding), fields.standing, "accepted"),
      ...(from ? { from } : {}),
      ...(to ? { to } : {}),
      source: sourceFrom(fields),
    };
  });
}

/** One status stood at any time: where all that were known then have ended since by one learnt later, the last stood. */
function reopened(spans: readonly LifeStatus[], learntLater: boolean): readonly LifeStatus[] {
  if (!learntLater || spans.some(({ to }) => to === undefined)) return spans;
  const last = spans.toSorted((a, b) => (a.to ?? "").localeCompare(b.to ?? "")).at(-1);
  return spans.map((span) => {
    if (span !== last) return span;
    const { to: _ended, ...open } = span;
    return open;
  });
}

/** A reading-in that corrected since when the present status holds says so on the car's own line: as one of its row. */
function correctedByFile(step: LifeStep, now: readonly LifeStatus[]): readonly RowStep[] {
  const { at, before, after } = step;
  if (step.noun !== "car" || before === undefined || !("statusSince" in before)) return [];
  if (before.status !== after?.status) return [];
  const row = now.filter(({ status, recordedAt }) => status === before.status && recordedAt <= at).at(-1);
  if (!row) return [];
  const was = { from: words(before.statusSince) };
  return [{ at, action: "status.correct", rowId: row.id, before: was }];
}

function statusSteps(steps: readonly LifeStep[], now: readonly LifeStatus[]): readonly RowStep[] {
  return steps.flatMap((step) => [...ownSteps([step], "carStatusSpan"), ...correctedByFile(step, now)]);
}

function statusesThen(now: readonly LifeStatus[], { steps, instant, day }: Belief): readonly LifeStatus[] {
  const rows = now.map(({ id, recordedAt, status, from, to, source }) => ({
    id,
    recordedAt,
    fields: { status: status as string, from: from?.text ?? "", to: to ?? "", ...saidOf(source) },
  }));
  const blank = { status: "unknown", from: "", to: "", ...unsaid };
  const own = statusSteps(steps, now);
  const then = rewindRows({ rows, steps: own, instant, blank }).map(({ id, fields }): LifeStatus => {
    const row = now.find((one) => one.id === id);
    const from = timeOf(fields.from, row?.from, day);
    return {
      id,
      recordedAt: row?.recordedAt ?? "",
      status: oneOf(Object.values(CarStatus), fields.status, "unknown"),
      ...(from ? { from } : {}),
      ...(words(fields.to) === "" ? {} : { to: fields.to }),
      source: sourceFrom(fields),
    };
  });
  return reopened(
    then,
    now.some(({ recordedAt }) => recordedAt > instant),
  );
}

function notesThen(now: readonly LifeNote[], { steps, instant, day }: Belief): readonly LifeNote[] {
  const rows = now.map(({ id, recordedAt, on, text, source }) => ({
    id,
    recordedAt,
    fields: { on: on?.text ?? "", text, ...saidOf(source) },
  }));
  const blank = { on: "", text: "not told here", ...unsaid };
  const then = rewindRows({ rows, steps: ownSteps(steps, "historyNote"), instant, blank });
  return then.map(({ id, fields, lost }): LifeNote => {
    const row = now.find((one) => one.id === id);
    const on = timeOf(fields.on, row?.on, day);
    const text =
      lost.includes("text") || fields.text === "not told here"
        ? "Worded otherwise then; the journal does not keep the words."
        : fields.text;
    return { id, recordedAt: row?.recordedAt ?? "", ...(on ? { on } : {}), text, source: sourceFrom(fields) };
  });
}

/** Options as the journal writes them: a list, or codes apart by commas. */
function optionsOf(value: unknown): readonly string[] {
  if (Array.isArray(value)) return value.filter((one) => typeof one === "string");
  return words(value) === "" ? [] : words(value).split(", ");
}

function serialThen(chassis: string, series: FiledSeries | undefined): number | null {
  if (!series) return null;
  const {
    name,
    numberPrefix: prefix,
    numberDigits: digits,
    firstSerial: first,
    lastSerial: last,
    numberSuffixes: suffixes,
  } = series;
  const read = explainNumber(chassis, { series: name, prefix, digits, first, last, suffixes });
  return read.ok ? read.serial : null;
}

/** What a field of the car that the journal does not keep is called where it is said. */
const lostWords: Readonly<Record<string, string>> = {
  built: "when it was built",
  firstRegistered: "when it was first registered",
  remarks: "the remarks",
  series: "the series",
  chassis: "the number it was filed under",
  options: "the options",
};

function factsThen(
  row: LifeRow,
  { steps, instant, day, series }: Belief,
): { readonly facts: Facts; readonly lost: readonly string[] } {
  const now = factsOf(row);
  const own = steps.filter(({ noun }) => noun === "car");
  const { fields, lost } = rewind({
    now: {
      chassis: row.chassis as unknown,
      series: (row.series?.slug ?? null) as unknown,
      options: now.options as unknown,
      built: (now.built?.text ?? null) as unknown,
      firstRegistered: (now.firstRegistered?.text ?? null) as unknown,
      remarks: now.remarks as unknown,
    },
    steps: own,
    instant,
    growing: ["options"],
  });
  const filed = series.find(({ slug }) => slug === fields.series);
  const chassis = words(fields.chassis) || row.chassis;
  const moved = chassis !== row.chassis || (filed?.slug ?? null) !== (row.series?.slug ?? null);
  return {
    facts: {
      series: filed ?? null,
      serial: moved ? serialThen(chassis, filed) : now.serial,
      options: optionsOf(fields.options),
      built: timeOf(fields.built, now.built, day),
      firstRegistered: timeOf(fields.firstRegistered, now.firstRegistered, day),
      remarks: words(fields.remarks) || null,
    },
    lost: lost.map((name) => lostWords[name] ?? name),
  };
}

/**
 * The life as the record told it at an instant. Values had been recorded by then and were superseded later if at all;
 * what is changed in place (the car's own fields, numbers, statuses, notes) is taken back by the journal's before and after.
 */
export function believedLife(row: LifeRow, belief: Belief): CarLife {
  const { instant } = belief;
  const now = partsOf(row);
  const { facts, lost } = factsThen(row, belief);
  const parts = {
    statuses: statusesThen(now.statuses, belief),
    numbers: numbersThen(now.numbers, belief),
    notes: notesThen(now.notes, belief),
    asBuilt: believedAt(now.asBuilt, instant),
    modifications: believedAt(now.modifications, instant),
    sheets: believedAt(now.sheets, instant),
  };
  return lifeOf(facts, parts, lost);
}
