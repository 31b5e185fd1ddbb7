import { type CharacteristicBook, datedItemOf } from "@trunnion/register";
import { v7 as uuid } from "uuid";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { rebuildCurrentValues } from "../current-value";
import { dayColumn, dayOf } from "../day";
import { writeJournal } from "../journal";
import { type EntryReadings, type SheetReading, saidOf, standingReadings } from "./policy";
import { findingsOfEntry, standingSheet } from "./read";

interface Recording {
  readonly ctx: Context;
  readonly book: CharacteristicBook;
  readonly entryId: string;
  readonly carId: string | null;
  readonly runningNumber: string;
  readonly event: { readonly name: string; readonly on: Date };
}

/** The source that an event's findings are: one a club and event. */
async function sourceOf({ ctx, event }: Recording): Promise<string> {
  const title = `Findings of ${event.name}, ${dayOf(event.on)}`;
  const known = await ctx.db.source.findFirst({ where: { title }, select: { id: true } });
  if (known) return known.id;
  const id = uuid();
  await ctx.db.source.create({ data: { id, title, kind: "inspection" } });
  await writeJournal(ctx, [
    { action: "source.add", noun: "source", nounId: id, after: { title, kind: "inspection" } },
  ]);
  return id;
}

/** What the instruments can tell, as it is when the readings are taken down: a later calibration does not change it. */
async function uncertainties({ ctx, book }: Recording, readings: readonly SheetReading[]) {
  const ids = [...new Set(readings.flatMap(({ instrumentId }) => instrumentId ?? []))];
  const rows = await ctx.db.instrument.findMany({ where: { id: { in: ids } } });
  const known = new Map(rows.map((row) => [row.id, row]));
  return ({ characteristic, instrumentId }: SheetReading): number | null => {
    const of = book.find(characteristic);
    const instrument = known.get(instrumentId ?? "");
    const fits = of?.kind === "quantity" && of.dimension === instrument?.dimension;
    return fits ? instrument.expandedUncertainty : null;
  };
}

async function writeSheet(recording: Recording, carId: string, said: EntryReadings): Promise<string> {
  const { ctx, entryId, runningNumber } = recording;
  const id = uuid();
  const last = await ctx.db.settingSheet.aggregate({ where: { carId }, _max: { sequence: true } });
  await ctx.db.settingSheet.create({
    data: {
      id,
      carId,
      entryId,
      on: dayColumn(said.on),
      sequence: (last._max.sequence ?? 0) + 1,
      note: `Scrutineering, number ${runningNumber}`,
      sourceId: await sourceOf(recording),
      trust: "documented",
    },
  });
  const uncertaintyOf = await uncertainties(recording, said.readings);
  await ctx.db.reading.createMany({
    data: said.readings.map((reading) => ({
      ...reading,
      settingSheetId: id,
      expandedUncertainty: uncertaintyOf(reading),
    })),
  });
  return id;
}

/** Items that an entry's findings told before and tell no longer: what they had taken the place of is fitted again. */
async function takeBack({ ctx, entryId }: Recording, keep: ReadonlySet<string>): Promise<void> {
  const own = await ctx.db.datedItem.findMany({ where: { entryId, replacedAt: null } });
  for (const { id, carId, kind, validTo, recordedAt } of own) {
    if (keep.has(`${carId} ${kind} ${validTo === null ? "" : dayOf(validTo)}`)) continue;
    const where = { clubId_id: { clubId: ctx.club.id, id } };
    await ctx.db.datedItem.update({ where, data: { replacedAt: ctx.now } });
    await ctx.db.datedItem.updateMany({
      where: { carId, kind, replacedAt: recordedAt, id: { not: id } },
      data: { replacedAt: null },
    });
  }
}

/** Days read off labels: a new item in the place of the one there was; of several of a kind none is guessed to be meant. */
async function writeDatedItems(recording: Recording, carId: string | null, said: EntryReadings) {
  const { ctx, entryId } = recording;
  const told = new Map(
    said.readings.flatMap(({ characteristic, valueKind, text }) => {
      const item = datedItemOf(characteristic);
      return item && carId !== null && valueKind === "date" && text !== null
        ? [[item.kind, { ...item, carId, validTo: text }] as const]
        : [];
    }),
  );
  await takeBack(
    recording,
    new Set([...told.values()].map((one) => `${one.carId} ${one.kind} ${one.validTo}`)),
  );
  for (const { kind, label, validTo, carId: car } of told.values()) {
    const fitted = await ctx.db.datedItem.findMany({ where: { carId: car, kind, replacedAt: null } });
    if (fitted.some((one) => one.validTo !== null && dayOf(one.validTo) === validTo)) continue;
    const [only, ...others] = fitted;
    if (only && others.length === 0) {
      const where = { clubId_id: { clubId: ctx.club.id, id: only.id } };
      await ctx.db.datedItem.update({ where, data: { replacedAt: ctx.now } });
    }
    await ctx.db.datedItem.create({
      data: {
        carId: car,
        kind,
        label: only && others.length === 0 ? only.label : label,
        validTo: dayColumn(validTo),
        sourceId: await sourceOf(recording),
        trust: "documented",
        recordedAt: ctx.now,
        entryId,
      },
    });
  }
}

function toldInJournal({ readings }: EntryReadings): Record<string, string> {
  return Object.fromEntries(
    readings.map(({ characteristic, side, repeat, entered }) => {
      const place = side === "whole" ? characteristic : `${characteristic} ${side}`;
      return [repeat === 1 ? place : `${place} (${repeat})`, entered];
    }),
  );
}

async function recordEntry(recording: Recording): Promise<void> {
  const { ctx, entryId, carId, book } = recording;
  const said = standingReadings(await findingsOfEntry(ctx, entryId));
  const before = await standingSheet(ctx, entryId);
  const wanted = carId !== null && said.readings.length > 0 ? saidOf(said) : undefined;
  if (before?.said === wanted && (before === undefined || before.carId === carId)) return;
  const cars = [...new Set([before?.carId, wanted === undefined ? undefined : carId])].filter(
    (id): id is string => typeof id === "string",
  );
  await ctx.db.$queryRaw`
    SELECT 1 FROM car WHERE club_id = ${ctx.club.id}::uuid AND id = ANY(${cars}::uuid[]) ORDER BY id FOR UPDATE`;
  if (before)
    await ctx.db.settingSheet.update({
      where: { clubId_id: { clubId: ctx.club.id, id: before.id } },
      data: { supersededAt: ctx.now },
    });
  const sheet = wanted === undefined || carId === null ? undefined : await writeSheet(recording, carId, said);
  await writeDatedItems(recording, carId, said);
  await ctx.db.car.updateMany({ where: { id: { in: cars } }, data: { version: { increment: 1 } } });
  await rebuildCurrentValues(ctx, cars, book);
  const lines = cars.map((car) => ({
    action: "finding.record",
    noun: "settingSheet",
    nounId: sheet ?? before?.id ?? entryId,
    carId: car,
    after: car === carId ? toldInJournal(said) : {},
  }));
  await writeJournal(ctx, lines);
}

/**
 * Puts what was measured at some entries on their cars' records: one setting sheet an entry, made anew when the findings
 * that stand say something else, the one before it superseded and never changed; dated items follow what was read off
 * their labels. Called in the transaction that changed the findings or the entry; who may is asked there. Says again what
 * it said before when nothing changed: safe to repeat.
 */
export async function recordReadings(ctx: Context, entryIds: readonly string[]): Promise<void> {
  if (entryIds.length === 0) return;
  const book = await bookOf(ctx);
  const entries = await ctx.db.entry.findMany({
    where: { id: { in: [...entryIds] } },
    select: { id: true, carId: true, runningNumber: true, event: { select: { name: true, on: true } } },
    // One order for everybody, so that two of these never wait for each other.
    orderBy: { id: "asc" },
  });
  for (const { id, ...entry } of entries) await recordEntry({ ctx, book, entryId: id, ...entry });
}
