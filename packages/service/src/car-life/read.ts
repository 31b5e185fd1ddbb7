import type { Prisma } from "@trunnion/db";
import { endOfDay, refused, type Specification } from "@trunnion/register";
import { partsOf } from "../car/read";
import type { Context } from "../context";
import { dayOf } from "../day";
import { carReference } from "../record";
import { sourceFields } from "../source-columns";
import { currentSpecifications, specificationAt } from "../specification";
import { believedLife } from "./belief";
import { type CarLife, lifeNow } from "./policy";

const valueFields = { valueKind: true, entered: true, number: true, resolution: true, text: true } as const;
const recorded = { recordedAt: true, supersededAt: true } as const;
const decided = { select: { status: true, decidedAt: true } } as const;

export const lifeFields = {
  id: true,
  chassis: true,
  chassisKey: true,
  claim: true,
  version: true,
  serial: true,
  recordedAt: true,
  builtText: true,
  builtEarliest: true,
  builtLatest: true,
  firstRegisteredText: true,
  firstRegisteredEarliest: true,
  firstRegisteredLatest: true,
  remarks: true,
  series: { select: { id: true, slug: true, name: true, marque: { select: { name: true } } } },
  options: { select: { code: true }, orderBy: { code: "asc" } },
  statuses: {
    select: {
      id: true,
      status: true,
      fromText: true,
      fromEarliest: true,
      fromLatest: true,
      to: true,
      recordedAt: true,
      ...sourceFields,
    },
    orderBy: { id: "asc" },
  },
  identities: {
    select: {
      id: true,
      kind: true,
      number: true,
      standing: true,
      fromText: true,
      fromEarliest: true,
      fromLatest: true,
      toText: true,
      toEarliest: true,
      toLatest: true,
      recordedAt: true,
      ...sourceFields,
    },
    orderBy: { id: "asc" },
  },
  histories: {
    select: {
      id: true,
      onText: true,
      onEarliest: true,
      onLatest: true,
      text: true,
      recordedAt: true,
      ...sourceFields,
    },
    orderBy: { id: "asc" },
  },
  asBuilt: {
    select: { id: true, characteristic: true, side: true, ...valueFields, ...recorded, ...sourceFields },
    orderBy: { id: "asc" },
  },
  modifications: {
    where: { submission: { status: "accepted" } },
    select: {
      id: true,
      sequence: true,
      fittedText: true,
      fittedEarliest: true,
      fittedLatest: true,
      reason: true,
      donor: true,
      ...recorded,
      ...sourceFields,
      submission: decided,
      changes: { orderBy: { id: "asc" } },
    },
    orderBy: { sequence: "asc" },
  },
  settingSheets: {
    select: {
      id: true,
      on: true,
      sequence: true,
      loadState: true,
      note: true,
      ...recorded,
      ...sourceFields,
      submission: decided,
      readings: {
        select: {
          id: true,
          characteristic: true,
          side: true,
          repeat: true,
          expandedUncertainty: true,
          ...valueFields,
        },
        orderBy: { id: "asc" },
      },
    },
    orderBy: { sequence: "asc" },
  },
} satisfies Prisma.CarSelect;

export type LifeRow = Prisma.CarGetPayload<{ select: typeof lifeFields }>;

/** A line of the journal about a record that is changed in place. */
export interface LifeStep {
  readonly at: string;
  readonly action: string;
  readonly noun: string;
  readonly nounId: string;
  readonly before?: Readonly<Record<string, unknown>>;
  readonly after?: Readonly<Record<string, unknown>>;
}

const object = (json: Prisma.JsonValue) =>
  json !== null && typeof json === "object" && !Array.isArray(json) ? json : undefined;

async function stepsSince(ctx: Context, carId: string, instant: string): Promise<readonly LifeStep[]> {
  const rows = await ctx.db.journalEntry.findMany({
    where: { carId, at: { gt: new Date(instant) } },
    select: { at: true, action: true, noun: true, nounId: true, before: true, after: true },
    orderBy: { sequence: "asc" },
  });
  return rows.map(({ at, action, noun, nounId, before, after }) => {
    const [was, became] = [object(before), object(after)];
    return {
      at: at.toISOString(),
      action,
      noun,
      nounId,
      ...(was === undefined ? {} : { before: was }),
      ...(became === undefined ? {} : { after: became }),
    };
  });
}

const fileWords = "what a file said that has been taken back";

/**
 * Whether a file that had been read in by then was taken back since: its rows are gone, and only the journal has what it
 * said.
 */
async function fileTakenBack(ctx: Context, carId: string, instant: string): Promise<boolean> {
  const since = new Date(instant);
  const later = await ctx.db.journalEntry.findMany({
    where: { carId, at: { gt: since }, runId: { not: null } },
    select: { runId: true },
  });
  const runIds = [...new Set(later.flatMap(({ runId }) => runId ?? []))];
  if (runIds.length === 0) return false;
  const of = { carId, runId: { in: runIds }, at: { lte: since } };
  return (await ctx.db.journalEntry.findFirst({ where: of, select: { sequence: true } })) !== null;
}

/** A car's life as far as it is, or was, known, with the specification that it is compared with. */
export interface LoadedLife {
  readonly car: {
    readonly id: string;
    readonly reference: string;
    readonly chassis: string;
    readonly chassisKey: string;
    readonly claim: number;
    readonly version: number;
  };
  readonly life: CarLife;
  readonly specification: Specification | undefined;
  /** Whether the register knew of the car at all. */
  readonly known: boolean;
}

/**
 * Everything the record says of a car's life. With a day: everything it said when that day ended in UTC, whatever has
 * been corrected since, beside the specification that was the current one then.
 *
 * @param believedOn ISO day; left out: as the record stands now
 * @throws Refusal CAR_NOT_FOUND
 */
export async function loadLife(ctx: Context, reference: string, believedOn?: string): Promise<LoadedLife> {
  const parts = partsOf(reference);
  const row = await ctx.db.car.findUnique({
    where: { clubId_chassisKey_claim: { clubId: ctx.club.id, ...parts } },
    select: lifeFields,
  });
  if (!row) throw refused("CAR_NOT_FOUND", { car: reference });
  const { id, chassis, chassisKey, claim, version } = row;
  const car = { id, reference: carReference(row), chassis, chassisKey, claim, version };
  if (believedOn === undefined) {
    const life = lifeNow(row);
    const current = life.series === null ? undefined : await currentSpecifications(ctx, [life.series.id]);
    return { car, life, specification: current?.get(life.series?.id ?? ""), known: true };
  }
  const instant = endOfDay(believedOn);
  const series = await ctx.db.series.findMany({
    select: {
      id: true,
      slug: true,
      name: true,
      marque: { select: { name: true } },
      numberPrefix: true,
      numberDigits: true,
      firstSerial: true,
      lastSerial: true,
      numberSuffixes: true,
    },
  });
  const steps = await stepsSince(ctx, row.id, instant);
  const told = believedLife(row, { instant, day: believedOn, steps, series });
  const takenBack = await fileTakenBack(ctx, row.id, instant);
  const life = takenBack ? { ...told, lost: [...told.lost, fileWords] } : told;
  const specification =
    life.series === null ? undefined : await specificationAt(ctx, life.series.id, new Date(instant));
  return { car, life, specification, known: dayOf(row.recordedAt) <= believedOn };
}
