import type { CarStatus, IdentityKind, IdentityStanding, LoadState } from "@trunnion/db";
import type {
  AcceptedModification,
  AsBuiltValue,
  CarBasis,
  KnownTime,
  Reading,
  Recorded,
  Source,
  Value,
} from "@trunnion/register";
import { dayOf, dayOrNothing } from "../day";
import { fittedOn } from "../fitted-on";
import { sourceOf } from "../source-columns";
import { valueFrom } from "../value-columns";
import type { LifeRow } from "./read";

type Series = LifeRow["series"];

/** A number or mark as the record has, or had, it. */
export interface LifeNumber extends Recorded {
  readonly id: string;
  readonly kind: IdentityKind;
  readonly number: string;
  readonly standing: IdentityStanding;
  readonly from?: KnownTime;
  readonly to?: KnownTime;
  readonly source: Source;
}

/** What had become of the car for a time. */
export interface LifeStatus extends Recorded {
  readonly id: string;
  readonly status: CarStatus;
  readonly from?: KnownTime;
  /** ISO day: the last one; missing for the one that stands. */
  readonly to?: string;
  readonly source: Source;
}

export interface LifeNote extends Recorded {
  readonly id: string;
  readonly on?: KnownTime;
  readonly text: string;
  readonly source: Source;
}

/** What was changed, as the engines want it, with what the record says was there before. */
export interface LifeModification extends Recorded, AcceptedModification {
  readonly fitted?: KnownTime;
  readonly donor?: string;
  readonly befores: readonly (Value | undefined)[];
}

export interface LifeSheet extends Recorded {
  readonly id: string;
  readonly on: string;
  readonly loadState: LoadState;
  readonly note?: string;
  readonly source: Source;
  readonly readings: readonly Reading[];
}

/** Everything the record says, or said, of one car's life; engines and timeline both start from it. */
export interface CarLife {
  readonly series: Series;
  readonly basis: CarBasis;
  readonly built?: KnownTime;
  readonly firstRegistered?: KnownTime;
  readonly remarks?: string;
  readonly statuses: readonly LifeStatus[];
  readonly numbers: readonly LifeNumber[];
  readonly notes: readonly LifeNote[];
  readonly asBuilt: readonly (AsBuiltValue & Recorded)[];
  readonly modifications: readonly LifeModification[];
  readonly sheets: readonly LifeSheet[];
  /** What was changed since in a way that the journal does not keep: not known as it was then. */
  readonly lost: readonly string[];
}

/** A time from its three columns; nothing where they are empty. */
export function knownTime(
  text: string | null,
  earliest: Date | null,
  latest: Date | null,
): KnownTime | undefined {
  return text === null || earliest === null || latest === null
    ? undefined
    : { text, earliest: dayOf(earliest), latest: dayOf(latest) };
}

interface RecordedColumns {
  readonly recordedAt: Date;
  readonly supersededAt?: Date | null;
  readonly submission?: { readonly decidedAt: Date | null } | null;
}

/** What was handed in counts from when it was accepted, not from when it was typed. */
function recordedOf({ recordedAt, supersededAt, submission }: RecordedColumns): Recorded {
  const accepted = submission?.decidedAt ?? recordedAt;
  return {
    recordedAt: (accepted > recordedAt ? accepted : recordedAt).toISOString(),
    ...(supersededAt == null ? {} : { supersededAt: supersededAt.toISOString() }),
  };
}

const optional = <K extends string, T>(name: K, value: T | null | undefined) =>
  (value === undefined || value === null ? {} : { [name]: value }) as { [P in K]?: T };

function numberOf(row: LifeRow["identities"][number]): LifeNumber {
  return {
    id: row.id,
    kind: row.kind,
    number: row.number,
    standing: row.standing,
    ...optional("from", knownTime(row.fromText, row.fromEarliest, row.fromLatest)),
    ...optional("to", knownTime(row.toText, row.toEarliest, row.toLatest)),
    source: sourceOf(row),
    ...recordedOf(row),
  };
}

function statusOf(row: LifeRow["statuses"][number]): LifeStatus {
  return {
    id: row.id,
    status: row.status,
    ...optional("from", knownTime(row.fromText, row.fromEarliest, row.fromLatest)),
    ...optional("to", row.to === null ? undefined : dayOf(row.to)),
    source: sourceOf(row),
    ...recordedOf(row),
  };
}

function noteOf(row: LifeRow["histories"][number]): LifeNote {
  return {
    id: row.id,
    ...optional("on", knownTime(row.onText, row.onEarliest, row.onLatest)),
    text: row.text,
    source: sourceOf(row),
    ...recordedOf(row),
  };
}

function modificationOf(row: LifeRow["modifications"][number]): LifeModification {
  const before = (change: LifeRow["modifications"][number]["changes"][number]) =>
    change.beforeValueKind === null || change.beforeEntered === null
      ? undefined
      : valueFrom({
          valueKind: change.beforeValueKind,
          entered: change.beforeEntered,
          number: change.beforeNumber,
          resolution: change.beforeResolution,
          text: change.beforeText,
        });
  return {
    id: row.id,
    ...fittedOn({
      fittedText: row.fittedText,
      fittedEarliest: dayOrNothing(row.fittedEarliest) ?? null,
      fittedLatest: dayOrNothing(row.fittedLatest) ?? null,
      recordedOn: dayOf(row.recordedAt),
    }),
    sequence: row.sequence,
    ...optional("fitted", knownTime(row.fittedText, row.fittedEarliest, row.fittedLatest)),
    ...optional("reason", row.reason),
    ...optional("donor", row.donor),
    changes: row.changes.map((change) => ({
      characteristic: change.characteristic,
      side: change.side,
      after: valueFrom({
        valueKind: change.afterValueKind,
        entered: change.afterEntered,
        number: change.afterNumber,
        resolution: change.afterResolution,
        text: change.afterText,
      }),
    })),
    befores: row.changes.map(before),
    source: sourceOf(row),
    ...recordedOf(row),
  };
}

function sheetOf(row: LifeRow["settingSheets"][number]): LifeSheet {
  const on = dayOf(row.on);
  const source = sourceOf(row);
  return {
    id: row.id,
    on,
    loadState: row.loadState,
    ...optional("note", row.note),
    source,
    readings: row.readings.map((reading) => ({
      id: reading.id,
      on,
      sequence: row.sequence,
      characteristic: reading.characteristic,
      side: reading.side,
      value: valueFrom(reading),
      source,
      ...optional("expandedUncertainty", reading.expandedUncertainty),
    })),
    ...recordedOf(row),
  };
}

const asBuiltOf = (row: LifeRow["asBuilt"][number]): AsBuiltValue & Recorded => ({
  id: row.id,
  characteristic: row.characteristic,
  side: row.side,
  value: valueFrom(row),
  source: sourceOf(row),
  ...recordedOf(row),
});

/** What stands on the car's own row. */
export interface Facts {
  readonly series: Series;
  readonly serial: number | null;
  readonly options: readonly string[];
  readonly built: KnownTime | undefined;
  readonly firstRegistered: KnownTime | undefined;
  readonly remarks: string | null;
}

/** The car's own facts as they are now. */
export function factsOf(row: LifeRow): Facts {
  return {
    series: row.series,
    serial: row.serial,
    options: row.options.map(({ code }) => code),
    built: knownTime(row.builtText, row.builtEarliest, row.builtLatest),
    firstRegistered: knownTime(
      row.firstRegisteredText,
      row.firstRegisteredEarliest,
      row.firstRegisteredLatest,
    ),
    remarks: row.remarks,
  };
}

export type Parts = Pick<CarLife, "statuses" | "numbers" | "notes" | "asBuilt" | "modifications" | "sheets">;

/** Everything else, superseded statements included. */
export function partsOf(row: LifeRow): Parts {
  return {
    statuses: row.statuses.map(statusOf),
    numbers: row.identities.map(numberOf),
    notes: row.histories.map(noteOf),
    asBuilt: row.asBuilt.map(asBuiltOf),
    modifications: row.modifications.map(modificationOf),
    sheets: row.settingSheets.map(sheetOf),
  };
}

/** A life of these facts and parts. */
export function lifeOf(
  { series, serial, options, built, ...facts }: Facts,
  parts: Parts,
  lost: readonly string[],
): CarLife {
  return {
    ...parts,
    series,
    basis: {
      options,
      ...optional("serial", serial),
      ...optional("built", built && { earliest: built.earliest, latest: built.latest }),
    },
    ...optional("built", built),
    ...optional("firstRegistered", facts.firstRegistered),
    ...optional("remarks", facts.remarks),
    lost,
  };
}

const standing = <T extends Recorded>(list: readonly T[]) =>
  list.filter(({ supersededAt }) => supersededAt === undefined);

/** The life as the record stands now. */
export function lifeNow(row: LifeRow): CarLife {
  const parts = partsOf(row);
  return lifeOf(
    factsOf(row),
    {
      ...parts,
      asBuilt: standing(parts.asBuilt),
      modifications: standing(parts.modifications),
      sheets: standing(parts.sheets),
    },
    [],
  );
}
