import { createHash, randomBytes } from "node:crypto";
import type { Prisma } from "@trunnion/db";
import {
  buildSheet,
  type CharacteristicBook,
  type Check,
  carriedChecks,
  limitChecks,
  refused,
  type SheetModel,
} from "@trunnion/register";
import { v7 as uuid } from "uuid";
import { type Assessment, assessAll } from "../assessment";
import { carriedFindings } from "../carried-finding";
import type { Context } from "../context";
import { type EventEntry, type EventPage, entriesOf, findEvent } from "../event";
import { recordsOf } from "../record";
import { requireRole } from "../role";
import { checksOf, limitsFor, limitsOf } from "../rule-set";
import { printers } from "./policy";

export interface PrintSheetsInput {
  /** The event's short name. */
  readonly event: string;
  /** One running number; the whole event when left out. */
  readonly number?: string;
  readonly book: CharacteristicBook;
  /** Where this installation is reached, "https://register.example": the printed code leads there. */
  readonly origin?: string;
}

const codeLetters = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";

/** Forty random bits as eight letters and figures, none of which is taken for another when read off paper. */
function newCode(): string {
  let bits = randomBytes(5).reduce((sum, byte) => sum * 256n + BigInt(byte), 0n);
  let code = "";
  for (let at = 0; at < 8; at++) {
    code += codeLetters[Number(bits % 32n)];
    bits /= 32n;
  }
  return code;
}

function withCode(sheet: SheetModel, origin: string | undefined): SheetModel {
  const code = newCode();
  return { ...sheet, code, link: origin === undefined ? "" : `${origin.replace(/\/+$/, "")}/s/${code}` };
}

function chosen(
  entries: readonly EventEntry[],
  event: string,
  number: string | undefined,
): readonly EventEntry[] {
  if (entries.length === 0) throw refused("EVENT_HAS_NO_ENTRIES", { event });
  if (number === undefined) return entries;
  const entry = entries.find(({ runningNumber }) => runningNumber === number);
  if (entry) return [entry];
  const known = entries.map(({ runningNumber }) => runningNumber);
  throw refused("ENTRY_NOT_FOUND", { event, number, known });
}

/**
 * Hash of everything a sheet says of a car, so that a later look tells whether the record has moved on. What counts up
 * with any change at all is left out: a keeper's new address is no news on a sheet.
 */
function recordHash(assessment: Assessment | undefined, checks: readonly Check[]): string {
  const told = assessment && {
    ...assessment,
    record: saidOnSheets(assessment),
    state: [...assessment.state],
  };
  return createHash("sha256").update(JSON.stringify({ told, checks })).digest("hex");
}

function saidOnSheets({ record }: Assessment): object {
  const { version: _version, nextModificationSequence: _next, nextSheetSequence: _sheet, ...said } = record;
  return said;
}

interface Printing {
  readonly ctx: Context;
  readonly event: EventPage;
  readonly checks: readonly Check[];
  readonly book: CharacteristicBook;
}

function sheetOf(
  { ctx, event, checks, book }: Printing,
  entry: EventEntry,
  assessment: Assessment | undefined,
): SheetModel {
  const { club } = ctx;
  return buildSheet({
    club: { name: club.name, unitSystem: club.unitSystem },
    event,
    entry,
    checks,
    book,
    recordHash: recordHash(assessment, checks),
    preparedAt: ctx.now.toISOString(),
    ...(assessment ? { car: { ...assessment, ...assessment.record } } : {}),
  });
}

/** A sheet of one entry, with what it was made from. */
export interface MadeSheet {
  readonly entryId: string;
  readonly sheet: SheetModel;
  /** Missing for a car that is not on the register. */
  readonly assessment?: Assessment;
}

/**
 * Makes the sheets of an event, in running order, and keeps nothing.
 *
 * @throws Refusal EVENT_NOT_FOUND, EVENT_HAS_NO_ENTRIES, ENTRY_NOT_FOUND
 */
export async function makeSheets(ctx: Context, input: PrintSheetsInput): Promise<readonly MadeSheet[]> {
  const event = await findEvent(ctx, input.event);
  const entries = chosen(await entriesOf(ctx, event.id), event.slug, input.number);
  const carIds = entries.flatMap(({ carId }) => (carId === null ? [] : [carId]));
  const records = await recordsOf(ctx, carIds, { beforeEvent: event.id });
  const assessments = await assessAll(ctx, records, input.book, event.on);
  const byCar = new Map(assessments.map((assessment) => [assessment.record.id, assessment]));
  const { book } = input;
  const checks = await checksOf(ctx, event.ruleSetId);
  const limits = await limitsOf(ctx, event.ruleSetId);
  const carried = await carriedFindings(ctx, carIds, event.on);
  return entries.map((entry) => {
    const assessment = byCar.get(entry.carId ?? "");
    const asked = limitChecks(limitsFor(limits, entry.classId), {
      state: assessment?.state ?? new Map(),
      book,
      system: ctx.club.unitSystem,
    });
    const open = carriedChecks(carried.get(entry.carId ?? "") ?? []);
    const printing = { ctx, event, checks: [...open, ...checks, ...asked], book };
    const sheet = sheetOf(printing, entry, assessment);
    return { entryId: entry.id, sheet, ...(assessment ? { assessment } : {}) };
  });
}

/**
 * Makes the pre-event sheets of an event, in running order, and keeps each model: from it the same bytes come again.
 *
 * @throws Refusal ROLE_NEEDED, EVENT_NOT_FOUND, EVENT_HAS_NO_ENTRIES, ENTRY_NOT_FOUND
 */
export async function printSheets(ctx: Context, input: PrintSheetsInput): Promise<readonly SheetModel[]> {
  requireRole(ctx.actor, ...printers);
  const made = (await makeSheets(ctx, input)).map(({ entryId, sheet }) => ({
    entryId,
    sheet: withCode(sheet, input.origin),
  }));
  await ctx.db.printedSheet.createMany({
    data: made.map(({ entryId, sheet }) => ({
      id: uuid(),
      entryId,
      code: sheet.code,
      layoutVersion: sheet.layoutVersion,
      recordHash: sheet.recordHash,
      model: sheet as unknown as Prisma.InputJsonValue,
      printedById: ctx.actor.personId,
      printedAt: ctx.now,
    })),
  });
  return made.map(({ sheet }) => sheet);
}

const noEntry = { runningNumber: "", group: "", className: "", driver: "", describedAs: "" } as const;

/**
 * A sheet with the checks every car gets and nobody's name, for who turns up unannounced. It is not kept, so it has no
 * code, and what is filled in on it is entered by hand.
 *
 * @throws Refusal ROLE_NEEDED, EVENT_NOT_FOUND
 */
export async function blankSheet(
  ctx: Context,
  { event: slug, book }: Pick<PrintSheetsInput, "event" | "book">,
): Promise<SheetModel> {
  requireRole(ctx.actor, ...printers);
  const event = await findEvent(ctx, slug);
  const checks = await checksOf(ctx, event.ruleSetId);
  const { club } = ctx;
  return buildSheet({
    club: { name: club.name, unitSystem: club.unitSystem },
    event,
    entry: noEntry,
    checks,
    book,
    recordHash: recordHash(undefined, checks),
    preparedAt: ctx.now.toISOString(),
  });
}
