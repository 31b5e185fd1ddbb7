import type { Prisma } from "@trunnion/db";
import {
  type Characteristic,
  type CharacteristicBook,
  type EntryDecision,
  type Finding,
  type Limits,
  readingPlaces,
  type SheetModel,
  type Side,
} from "@trunnion/register";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { type EventPage, entriesOf, findEvent } from "../event";
import { memberNames } from "../member-name";
import { makeSheets } from "../printed-sheet";
import { requireRole } from "../role";
import { inspectors } from "./policy";

/** Findings and decisions of an event, by entry. */
export interface EventRecords {
  readonly findings: readonly (Finding & { readonly entryId: string })[];
  readonly decisions: readonly (EntryDecision & { readonly entryId: string })[];
}

/** A characteristic that a check reads, with its limits on this car, SI. */
export interface PackCharacteristic {
  readonly key: string;
  readonly side: Side;
  readonly limits?: Limits;
}

/** An instrument of the club, for the readings of its dimension. */
export interface InspectionInstrument {
  readonly id: string;
  readonly label: string;
  readonly dimension: string;
  /** Expanded uncertainty (k = 2), SI; missing where it is not known. */
  readonly expandedUncertainty?: number;
  /** Out of use: what was read with it keeps its name, and nothing new is. */
  readonly retired?: true;
}

/** One entry, as it is taken along into the paddock. */
export interface PackEntry {
  readonly entryId: string;
  /** The car's reference; missing for a car that is not on the register. */
  readonly car?: string;
  /** What the sheet says, with the checks. */
  readonly sheet: SheetModel;
  /** What this car's checks read. */
  readonly reads: readonly PackCharacteristic[];
}

/** Everything needed to look at every car of an event without a connection. */
export interface EventPack extends EventRecords {
  readonly event: EventPage;
  /** ISO instant by the server's clock. */
  readonly packedAt: string;
  /** Name of whoever takes it along. */
  readonly inspector: string;
  readonly entries: readonly PackEntry[];
  /** What the checks read, to understand what is entered. */
  readonly characteristics: readonly Characteristic[];
  /** What they may be read with. */
  readonly instruments: readonly InspectionInstrument[];
}

const findingFields = {
  clientKey: true,
  entryId: true,
  replaces: true,
  checkCode: true,
  result: true,
  note: true,
  foundById: true,
  foundAt: true,
  readings: {
    select: { characteristic: true, side: true, entered: true, instrumentId: true },
    orderBy: { id: "asc" },
  },
} satisfies Prisma.FindingSelect;

const decisionFields = {
  clientKey: true,
  entryId: true,
  replaces: true,
  outcome: true,
  note: true,
  signedBy: true,
  signature: true,
  decidedById: true,
  decidedAt: true,
} satisfies Prisma.EntryDecisionSelect;

/** Everything found and decided at an event so far, oldest first: what stands of it is worked out by `standing`. */
export async function inspectionOf(ctx: Context, eventId: string): Promise<EventRecords> {
  const where = { entry: { eventId } };
  const findings = await ctx.db.finding.findMany({
    where,
    select: findingFields,
    orderBy: [{ recordedAt: "asc" }, { id: "asc" }],
  });
  const decisions = await ctx.db.entryDecision.findMany({
    where,
    select: decisionFields,
    orderBy: [{ recordedAt: "asc" }, { id: "asc" }],
  });
  const names = await memberNames(ctx, [
    ...findings.map(({ foundById }) => foundById),
    ...decisions.map(({ decidedById }) => decidedById),
  ]);
  return {
    findings: findings.map(({ clientKey, checkCode, foundById, foundAt, note, readings, ...finding }) => ({
      ...finding,
      readings: readings.map(({ instrumentId, ...reading }) => ({
        ...reading,
        ...(instrumentId === null ? {} : { instrument: instrumentId }),
      })),
      key: clientKey,
      check: checkCode,
      note: note ?? "",
      by: names.get(foundById ?? "") ?? "",
      at: foundAt.toISOString(),
    })),
    decisions: decisions.map(
      ({ clientKey, decidedById, decidedAt, note, signedBy, signature, ...decision }) => ({
        ...decision,
        key: clientKey,
        note: note ?? "",
        signedBy: signedBy ?? "",
        signature: signature ?? "",
        by: names.get(decidedById ?? "") ?? "",
        at: decidedAt.toISOString(),
      }),
    ),
  };
}

/** The club's instruments, by what they measure, those out of use too; at most 500. */
export async function inspectionInstruments(ctx: Context): Promise<readonly InspectionInstrument[]> {
  const rows = await ctx.db.instrument.findMany({
    select: { id: true, label: true, dimension: true, expandedUncertainty: true, retiredAt: true },
    orderBy: [{ dimension: "asc" }, { label: "asc" }],
    take: 500,
  });
  return rows.map(({ expandedUncertainty, retiredAt, ...row }) => ({
    ...row,
    ...(retiredAt === null ? {} : { retired: true as const }),
    ...(expandedUncertainty === null ? {} : { expandedUncertainty }),
  }));
}

/** Keys of what a sheet's checks read. */
const characteristicsRead = ({ stations }: SheetModel, book: CharacteristicBook) =>
  new Set(
    stations
      .flatMap(({ checks }) => checks)
      .flatMap(({ criterion }) => readingPlaces(criterion, (key) => book.find(key)))
      .map(({ characteristic }) => characteristic),
  );

/**
 * The event, for whoever may look at its cars.
 *
 * @throws Refusal ROLE_NEEDED, EVENT_NOT_FOUND
 */
export async function eventToInspect(ctx: Context, slug: string): Promise<EventPage> {
  requireRole(ctx.actor, ...inspectors);
  return findEvent(ctx, slug);
}

/**
 * What a scrutineer takes along: every entry's sheet and limits, and what was found so far.
 *
 * @throws Refusal ROLE_NEEDED, EVENT_NOT_FOUND, EVENT_HAS_NO_ENTRIES
 */
export async function eventPack(ctx: Context, slug: string): Promise<EventPack> {
  const event = await eventToInspect(ctx, slug);
  const book = await bookOf(ctx);
  const made = await makeSheets(ctx, { event: slug, book });
  const references = new Map((await entriesOf(ctx, event.id)).map(({ id, car }) => [id, car?.reference]));
  const entries = made.map(({ entryId, sheet, assessment }): PackEntry => {
    const keys = characteristicsRead(sheet, book);
    const deviations = (assessment?.deviations ?? []).filter(({ characteristic }) =>
      keys.has(characteristic),
    );
    const car = references.get(entryId);
    return {
      entryId,
      ...(car === undefined ? {} : { car }),
      sheet,
      reads: deviations.map(({ characteristic, side, limits }) => ({
        key: characteristic,
        side,
        ...(limits === undefined ? {} : { limits }),
      })),
    };
  });
  const read = new Set(entries.flatMap(({ sheet }) => [...characteristicsRead(sheet, book)]));
  return {
    event,
    packedAt: ctx.now.toISOString(),
    inspector: ctx.actor.name,
    entries,
    characteristics: book.all.filter(({ key }) => read.has(key)),
    instruments: await inspectionInstruments(ctx),
    ...(await inspectionOf(ctx, event.id)),
  };
}
