import type { CarStatus, Prisma } from "@trunnion/db";
import type { AcceptedModification, AsBuiltValue, CarBasis, Reading } from "@trunnion/register";
import type { Context } from "../context";
import { dayOf } from "../day";
import { fittedOn } from "../fitted-on";
import { sourceFields, sourceOf } from "../source-columns";
import { valueFrom } from "../value-columns";

const valueFields = { valueKind: true, entered: true, number: true, resolution: true, text: true } as const;

const recordFields = {
  id: true,
  chassis: true,
  chassisKey: true,
  claim: true,
  serial: true,
  version: true,
  builtText: true,
  builtEarliest: true,
  builtLatest: true,
  firstRegisteredText: true,
  remarks: true,
  series: { select: { id: true, slug: true, name: true, marque: { select: { name: true } } } },
  options: { select: { code: true }, orderBy: { code: "asc" } },
  statuses: { where: { to: null }, select: { status: true, fromText: true } },
  identities: {
    select: { kind: true, number: true, standing: true, fromText: true, toText: true },
    // The latest mark first: who asks for one wants the one it bears.
    orderBy: [{ kind: "asc" }, { id: "desc" }],
  },
  asBuilt: {
    where: { supersededAt: null },
    select: { id: true, characteristic: true, side: true, ...valueFields, ...sourceFields },
    orderBy: { id: "asc" },
  },
  modifications: {
    where: { supersededAt: null, submission: { status: "accepted" } },
    select: {
      id: true,
      sequence: true,
      fittedText: true,
      fittedEarliest: true,
      fittedLatest: true,
      reason: true,
      donor: true,
      recordedAt: true,
      ...sourceFields,
      changes: {
        select: {
          characteristic: true,
          side: true,
          afterValueKind: true,
          afterEntered: true,
          afterNumber: true,
          afterResolution: true,
          afterText: true,
        },
        orderBy: { id: "asc" },
      },
    },
    orderBy: { sequence: "asc" },
  },
  settingSheets: {
    where: { supersededAt: null },
    select: {
      on: true,
      sequence: true,
      loadState: true,
      entry: { select: { eventId: true } },
      ...sourceFields,
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
  // Nothing is ever taken away, so the count is the last place given.
  _count: { select: { modifications: true, settingSheets: true } },
} satisfies Prisma.CarSelect;

type CarRow = Prisma.CarGetPayload<{ select: typeof recordFields }>;

/** Everything the engines need of one car, and what a page says of it. */
export interface CarRecord {
  readonly id: string;
  /** How addresses and commands name it: the chassis number, `~2` for a second claimant. */
  readonly reference: string;
  readonly chassis: string;
  readonly chassisKey: string;
  readonly claim: number;
  readonly version: number;
  readonly series: CarRow["series"];
  readonly basis: CarBasis;
  readonly built: string | null;
  readonly firstRegistered: string | null;
  readonly remarks: string | null;
  readonly status: CarStatus;
  readonly statusSince: string | null;
  readonly identities: CarRow["identities"];
  readonly asBuilt: readonly AsBuiltValue[];
  readonly modifications: readonly (AcceptedModification & {
    readonly fitted: string;
    readonly donor: string | null;
  })[];
  readonly readings: readonly Reading[];
  /** Places for the next modification and setting sheet of this car; superseded ones keep theirs. */
  readonly nextModificationSequence: number;
  readonly nextSheetSequence: number;
}

/** How addresses and commands name a car. */
export function carReference(car: { readonly chassis: string; readonly claim: number }): string {
  return car.claim === 1 ? car.chassis : `${car.chassis}~${car.claim}`;
}

function basisOf(row: CarRow): CarBasis {
  return {
    options: row.options.map(({ code }) => code),
    ...(row.serial === null ? {} : { serial: row.serial }),
    ...(row.builtEarliest === null || row.builtLatest === null
      ? {}
      : { built: { earliest: dayOf(row.builtEarliest), latest: dayOf(row.builtLatest) } }),
  };
}

function modificationOf(row: CarRow["modifications"][number]): CarRecord["modifications"][number] {
  return {
    id: row.id,
    ...fittedOn(row),
    sequence: row.sequence,
    fitted: row.fittedText ?? "date not known",
    donor: row.donor,
    source: sourceOf(row),
    ...(row.reason === null ? {} : { reason: row.reason }),
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
  };
}

function readingsOf(sheet: CarRow["settingSheets"][number]): Reading[] {
  return sheet.readings.map((reading) => ({
    id: reading.id,
    on: dayOf(sheet.on),
    sequence: sheet.sequence,
    characteristic: reading.characteristic,
    side: reading.side,
    value: valueFrom(reading),
    source: sourceOf(sheet),
    ...(reading.expandedUncertainty === null ? {} : { expandedUncertainty: reading.expandedUncertainty }),
  }));
}

function recordOf(row: CarRow): CarRecord {
  const status = row.statuses[0];
  return {
    id: row.id,
    reference: carReference(row),
    chassis: row.chassis,
    chassisKey: row.chassisKey,
    claim: row.claim,
    version: row.version,
    series: row.series,
    basis: basisOf(row),
    built: row.builtText,
    firstRegistered: row.firstRegisteredText,
    remarks: row.remarks,
    status: status?.status ?? "unknown",
    statusSince: status?.fromText ?? null,
    identities: row.identities,
    asBuilt: row.asBuilt.map((value) => ({
      id: value.id,
      characteristic: value.characteristic,
      side: value.side,
      value: valueFrom(value),
      source: sourceOf(value),
    })),
    modifications: row.modifications.map(modificationOf),
    readings: row.settingSheets.flatMap(readingsOf),
    nextModificationSequence: row._count.modifications + 1,
    nextSheetSequence: row._count.settingSheets + 1,
  };
}

/**
 * The records of some cars, in no particular order; a car that is not there is left out.
 *
 * @param beforeEvent id of an event whose own findings are left out, so that what is measured there does not change what
 *   is to be looked at there
 */
export async function recordsOf(
  ctx: Context,
  carIds: readonly string[],
  { beforeEvent }: { readonly beforeEvent?: string } = {},
): Promise<readonly CarRecord[]> {
  const rows = await ctx.db.car.findMany({
    where: { clubId: ctx.club.id, id: { in: [...carIds] } },
    select: recordFields,
  });
  return rows.map((row) => {
    if (beforeEvent === undefined) return recordOf(row);
    const settingSheets = row.settingSheets.filter(({ entry }) => entry?.eventId !== beforeEvent);
    return recordOf({ ...row, settingSheets });
  });
}
