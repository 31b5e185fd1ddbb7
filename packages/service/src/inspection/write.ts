import {
  type Characteristic,
  type CharacteristicBook,
  decisionInput,
  findingInput,
  inspectionLimits,
  parseValue,
} from "@trunnion/register";
import { v7 as uuid } from "uuid";
import { z } from "zod";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { findEvent } from "../event";
import { deviceInput, hearOf } from "../inspection-device";
import { recordReadings } from "../inspection-record";
import { type JournalLine, writeJournal } from "../journal";
import { requireRole } from "../role";
import { valueColumns } from "../value-columns";
import { inspectors } from "./policy";

/** What a device sends: what was found and decided while it may have been out of reach. */
export const takeInspectionInput = z.object({
  /** The event's short name. */
  event: z.string().trim().min(1).max(60),
  /** The device's clock when it sends this, so that a clock that is wrong dates nothing wrongly. */
  deviceNow: z.iso.datetime(),
  /** What the device says of itself; missing for a page that keeps nothing. */
  device: deviceInput.exactOptional(),
  findings: z.array(findingInput).max(inspectionLimits.batch).default([]),
  decisions: z.array(decisionInput).max(inspectionLimits.batch).default([]),
});
export type TakeInspectionInput = z.output<typeof takeInspectionInput>;

/** What became of one record that a device sent. */
export interface TakenRecord {
  readonly key: string;
  /** Empty where it was taken, now or when it was sent before; else why not. */
  readonly problem: string;
}

type FindingSent = TakeInspectionInput["findings"][number];
type DecisionSent = TakeInspectionInput["decisions"][number];

interface Taking {
  readonly ctx: Context;
  readonly book: CharacteristicBook;
  /** Entry → its car. */
  readonly entries: ReadonlyMap<string, string | null>;
  /** Instruments of the club. */
  readonly instruments: ReadonlySet<string>;
  /** Keys that are there already. */
  readonly known: ReadonlySet<string>;
  readonly at: (deviceInstant: string) => Date;
}

/** A clock that is right to this, milliseconds, is left alone. */
const CLOCK_TOLERANCE = 2_000;

/** Puts a device's instants on the server's clock; nothing lies in the future. */
function putRight(deviceNow: string, now: Date): (instant: string) => Date {
  const off = now.getTime() - Date.parse(deviceNow);
  const shift = Math.abs(off) > CLOCK_TOLERANCE ? off : 0;
  return (instant) => new Date(Math.min(Date.parse(instant) + shift, now.getTime()));
}

function readingRow(characteristic: Characteristic | undefined, entered: string) {
  const parsed = characteristic && parseValue(characteristic, entered);
  return parsed?.ok ? valueColumns(parsed.value) : undefined;
}

/** What cannot be read as a value of its characteristic is kept as written, in the note: nothing written is lost. */
function readingsOf({ readings, note }: FindingSent, { book, instruments }: Taking) {
  const kept: object[] = [];
  const written: string[] = [];
  const taken = new Set<string>();
  for (const { characteristic: key, side, entered, instrument } of readings) {
    const columns = readingRow(book.find(key), entered);
    const instrumentId = instrument !== undefined && instruments.has(instrument) ? instrument : null;
    if (columns && !taken.has(`${key} ${side}`))
      kept.push({ id: uuid(), characteristic: key, side, instrumentId, ...columns });
    else written.push(`${book.find(key)?.label ?? key}${side === "whole" ? "" : `, ${side}`}: “${entered}”`);
    taken.add(`${key} ${side}`);
  }
  const asWritten = written.length === 0 ? "" : `Written as ${written.join("; ")}`;
  return { kept, note: [note, asWritten].filter((part) => part !== "").join("\n") };
}

const orNull = (text: string) => (text === "" ? null : text);

async function takeFinding(taking: Taking, sent: FindingSent): Promise<void> {
  const { ctx, at } = taking;
  const { kept, note } = readingsOf(sent, taking);
  await ctx.db.finding.create({
    data: {
      id: sent.key,
      entryId: sent.entryId,
      checkCode: sent.check,
      result: sent.result,
      note: orNull(note),
      foundById: ctx.actor.personId,
      foundAt: at(sent.at),
      clientKey: sent.key,
      replaces: [...new Set(sent.replaces)],
      readings: { create: kept as never },
    },
  });
}

async function takeDecision({ ctx, at }: Taking, sent: DecisionSent): Promise<void> {
  await ctx.db.entryDecision.create({
    data: {
      id: sent.key,
      entryId: sent.entryId,
      outcome: sent.outcome,
      note: orNull(sent.note),
      signedBy: orNull(sent.signedBy),
      signature: orNull(sent.signature),
      decidedById: ctx.actor.personId,
      decidedAt: at(sent.at),
      clientKey: sent.key,
      replaces: [...new Set(sent.replaces)],
    },
  });
}

/** One event's records come one batch after the other, so that one sent twice at once is found to be there. */
async function holdEvent({ db, club }: Context, eventId: string): Promise<void> {
  await db.$queryRaw`SELECT 1 FROM event WHERE club_id = ${club.id}::uuid AND id = ${eventId}::uuid FOR UPDATE`;
}

async function knownKeys(ctx: Context, keys: readonly string[]): Promise<ReadonlySet<string>> {
  const where = { clientKey: { in: [...keys] } };
  const select = { clientKey: true } as const;
  const rows = [
    ...(await ctx.db.finding.findMany({ where, select })),
    ...(await ctx.db.entryDecision.findMany({ where, select })),
  ];
  return new Set(rows.map(({ clientKey }) => clientKey));
}

async function instrumentIds(
  { db }: Context,
  findings: readonly FindingSent[],
): Promise<ReadonlySet<string>> {
  const named = findings.flatMap(({ readings }) => readings.flatMap(({ instrument }) => instrument ?? []));
  if (named.length === 0) return new Set();
  const rows = await db.instrument.findMany({
    where: { id: { in: [...new Set(named)] } },
    select: { id: true },
  });
  return new Set(rows.map(({ id }) => id));
}

const notOfThis = "That entry is not, or no longer, one of this event.";

async function takeEach<T extends { readonly key: string; readonly entryId: string }>(
  taking: Taking,
  sent: readonly T[],
  take: (taking: Taking, one: T) => Promise<void>,
) {
  const taken: T[] = [];
  const told: TakenRecord[] = [];
  const seen = new Set(taking.known);
  for (const one of sent) {
    const { key, entryId } = one;
    if (!taking.entries.has(entryId)) told.push({ key, problem: notOfThis });
    else {
      if (!seen.has(key)) {
        await take(taking, one);
        taken.push(one);
      }
      seen.add(key);
      told.push({ key, problem: "" });
    }
  }
  return { taken, told };
}

/**
 * Takes in what a device found and decided. Every record is added once, whenever and in whatever order it comes; what it
 * takes the place of stays. One that cannot be taken does not keep the others back. What was measured goes on the cars'
 * records in the same transaction.
 *
 * @returns what became of each record, in the order sent: findings, then decisions
 * @throws Refusal ROLE_NEEDED, EVENT_NOT_FOUND
 */
export async function takeInspection(
  ctx: Context,
  input: TakeInspectionInput,
): Promise<readonly TakenRecord[]> {
  requireRole(ctx.actor, ...inspectors);
  const event = await findEvent(ctx, input.event);
  await holdEvent(ctx, event.id);
  const entries = await ctx.db.entry.findMany({
    where: { eventId: event.id },
    select: { id: true, carId: true },
  });
  const taking: Taking = {
    ctx,
    book: await bookOf(ctx),
    entries: new Map(entries.map(({ id, carId }) => [id, carId])),
    instruments: await instrumentIds(ctx, input.findings),
    known: await knownKeys(
      ctx,
      [...input.findings, ...input.decisions].map(({ key }) => key),
    ),
    at: putRight(input.deviceNow, ctx.now),
  };
  const findings = await takeEach(taking, input.findings, takeFinding);
  const decisions = await takeEach(taking, input.decisions, takeDecision);
  const all = [...findings.told, ...decisions.told];
  const { device, deviceNow } = input;
  if (device) {
    const kept = all.filter(({ problem }) => problem !== "").length;
    await hearOf(ctx, { eventId: event.id, device, deviceNow, refused: kept });
  }
  const line = (entryId: string): Pick<JournalLine, "carId"> => {
    const carId = taking.entries.get(entryId);
    return carId ? { carId } : {};
  };
  await writeJournal(ctx, [
    ...findings.taken.map(({ key, entryId, check, result, replaces }) => ({
      action: "finding.add",
      noun: "finding",
      nounId: key,
      after: { entryId, check, result, replaces },
      ...line(entryId),
    })),
    ...decisions.taken.map(({ key, entryId, outcome, replaces }) => ({
      action: "decision.add",
      noun: "entryDecision",
      nounId: key,
      after: { entryId, outcome, replaces },
      ...line(entryId),
    })),
  ]);
  await recordReadings(ctx, [...new Set(findings.taken.map(({ entryId }) => entryId))]);
  return all;
}
