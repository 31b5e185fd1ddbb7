import { Prisma } from "@trunnion/db";
import { type FieldChange, fieldChanges, Refusal, refused, sayAction, shiftDays } from "@trunnion/register";
import { partsOf } from "../car/read";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { dayColumn } from "../day";
import { carReference } from "../record";
import { requireRole } from "../role";
import { type JournalRow, namesOf, personsAndActions, sideWordsOf } from "./policy";

/** A place where the chain does not hold: something was changed behind the journal's back. */
export interface ChainBreak {
  readonly sequence: number;
  readonly problem: "hash" | "link" | "gap";
}

/**
 * Works the hashes of the club's journal out again; empty when the chain holds.
 *
 * @param from place of the first entry to look at; it must follow the one before it. 1 for all of them
 */
export async function verifyJournal(ctx: Context, from = 1): Promise<readonly ChainBreak[]> {
  const rows = await ctx.db.$queryRaw<{ sequence: bigint; problem: ChainBreak["problem"] }[]>`
    WITH chain AS (
      SELECT sequence, hash, previous_hash,
             CASE WHEN sequence >= ${from} THEN journal_entry_hash(j) END AS expected,
             lag(hash, 1, '') OVER (ORDER BY sequence) AS hash_before,
             lag(sequence, 1, 0::bigint) OVER (ORDER BY sequence) AS place_before
      FROM journal_entry j
      WHERE club_id = ${ctx.club.id}::uuid AND sequence >= ${from - 1})
    SELECT sequence, CASE WHEN hash <> expected THEN 'hash' WHEN previous_hash <> hash_before THEN 'link' ELSE 'gap' END AS problem
    FROM chain
    WHERE sequence >= ${from} AND (hash <> expected OR previous_hash <> hash_before OR sequence <> place_before + 1)
    ORDER BY sequence
    LIMIT 100`;
  return rows.map(({ sequence, problem }) => ({ sequence: Number(sequence), problem }));
}

/** Entries that are worked out while somebody waits; `trunnion check` has no such limit. */
export const CHAIN_LIMIT = 200_000;

/** Whether the chain holds, and from where to where it was worked out. */
export interface ChainReport {
  readonly breaks: readonly ChainBreak[];
  /** Place of the first entry worked out again. */
  readonly from: number;
  /** The last one, and its hash: written down elsewhere, it proves later that nothing before it was changed. */
  readonly last?: { readonly sequence: number; readonly at: string; readonly hash: string };
}

/**
 * Works the chain of the club out again, for who answers for the register: all of it, or the last 200,000 entries.
 *
 * @throws Refusal ROLE_NEEDED
 */
export async function checkJournal(ctx: Context): Promise<ChainReport> {
  requireRole(ctx.actor, "registrar", "fleetManager");
  const row = await ctx.db.journalEntry.findFirst({
    where: { clubId: ctx.club.id },
    select: { sequence: true, at: true, hash: true },
    orderBy: { sequence: "desc" },
  });
  if (!row) return { breaks: [], from: 1 };
  const sequence = Number(row.sequence);
  const from = Math.max(1, sequence - CHAIN_LIMIT + 1);
  const last = { sequence, at: row.at.toISOString(), hash: row.hash };
  return { breaks: await verifyJournal(ctx, from), from, last };
}

/** Who did something: a member by name, also one who has left, or whoever held the machine. */
export interface JournalPerson {
  readonly personId: string | null;
  readonly name: string;
  readonly left: boolean;
}

/** One entry of the journal, ready to be read. */
export interface JournalItem {
  readonly sequence: number;
  /** ISO instant in UTC. */
  readonly at: string;
  readonly who: JournalPerson;
  readonly action: string;
  /** What was done, in words. */
  readonly what: string;
  readonly car?: { readonly reference: string; readonly chassis: string };
  /** File it was read in from. */
  readonly file?: string;
  readonly reason?: string;
  readonly changes: readonly FieldChange[];
}

export interface JournalQuery {
  /** Reference of a car. */
  readonly car?: string;
  /** A person's id, or `none` for the command line. */
  readonly person?: string;
  readonly action?: string;
  /** ISO days in UTC, both included. */
  readonly from?: string;
  readonly to?: string;
  /** Place of the last entry of the page before: older ones follow. */
  readonly before?: number;
}

export interface JournalPage {
  readonly items: readonly JournalItem[];
  /** Place to go on from; missing on the last page. */
  readonly next?: number;
  /** Who and what the journal can be narrowed to. */
  readonly persons: readonly JournalPerson[];
  readonly actions: readonly { readonly action: string; readonly what: string }[];
  /** What was asked for and is not there. */
  readonly carNotFound?: string;
}

/** Entries on one page. */
const PAGE = 50;

/** The conditions of a query; every one is answered by an index that ends in the order the page is in. */
function conditionsOf(
  ctx: Context,
  { person, action, from, to, before }: JournalQuery,
  carId: string | undefined,
) {
  const club = Prisma.sql`j.club_id = ${ctx.club.id}::uuid`;
  return [
    club,
    ...(carId === undefined ? [] : [Prisma.sql`j.car_id = ${carId}::uuid`]),
    ...(person === undefined
      ? []
      : [person === "none" ? Prisma.sql`j.person_id IS NULL` : Prisma.sql`j.person_id = ${person}::uuid`]),
    ...(action === undefined ? [] : [Prisma.sql`j.action = ${action}`]),
    ...(from === undefined ? [] : [Prisma.sql`j.at >= ${dayColumn(from)}`]),
    ...(to === undefined ? [] : [Prisma.sql`j.at < ${dayColumn(shiftDays(to, 1))}`]),
    ...(before === undefined
      ? []
      : [
          carId === undefined
            ? Prisma.sql`(j.at, j.sequence) < (SELECT at, sequence FROM journal_entry j WHERE ${club} AND j.sequence = ${before})`
            : Prisma.sql`j.sequence < ${before}`,
        ]),
  ];
}

/**
 * The entries of a page and one more, latest first: by time, or, of one car, by place, which is the same but for changes
 * made at the same moment and has an index by car. Exported so that a test can look at its plan.
 */
export function pageStatement(ctx: Context, query: JournalQuery, carId?: string): Prisma.Sql {
  const order = carId === undefined ? Prisma.sql`j.at DESC, j.sequence DESC` : Prisma.sql`j.sequence DESC`;
  return Prisma.sql`
    SELECT j.sequence, j.at, j.person_id::text AS "personId", j.action, j.noun, j.car_id::text AS "carId",
           j.run_id::text AS "runId", j.reason, j.before, j.after
    FROM journal_entry j
    WHERE ${Prisma.join(conditionsOf(ctx, query, carId), " AND ")}
    ORDER BY ${order}
    LIMIT ${PAGE + 1}`;
}

async function wordRows(ctx: Context, rows: readonly JournalRow[]): Promise<readonly JournalItem[]> {
  const wording = { book: await bookOf(ctx), sides: sideWordsOf(ctx.club.sideWords) };
  const { persons, cars, files } = await namesOf(ctx, rows);
  return rows.map((row) => {
    const car = row.carId === null ? undefined : cars.get(row.carId);
    const file = row.runId === null ? undefined : files.get(row.runId);
    return {
      sequence: Number(row.sequence),
      at: row.at.toISOString(),
      who: persons(row.personId),
      action: row.action,
      what: sayAction(row.action),
      ...(car ? { car: { reference: carReference(car), chassis: car.chassis } } : {}),
      ...(file === undefined ? {} : { file }),
      ...(row.reason === null ? {} : { reason: row.reason }),
      changes: fieldChanges(row.before, row.after, wording),
    };
  });
}

/** @throws Refusal CAR_NOT_FOUND */
async function carOf(ctx: Context, reference: string) {
  const found = await ctx.db.car.findUnique({
    where: { clubId_chassisKey_claim: { clubId: ctx.club.id, ...partsOf(reference) } },
    select: { id: true, chassis: true, claim: true },
  });
  if (!found) throw refused("CAR_NOT_FOUND", { car: reference });
  return { id: found.id, reference: carReference(found) };
}

async function pageOf(
  ctx: Context,
  query: JournalQuery,
  carId?: string,
): Promise<Omit<JournalPage, "persons" | "actions">> {
  const rows = await ctx.db.$queryRaw<JournalRow[]>(pageStatement(ctx, query, carId));
  const items = await wordRows(ctx, rows.slice(0, PAGE));
  const last = items.at(-1);
  return { items, ...(rows.length > PAGE && last ? { next: last.sequence } : {}) };
}

/**
 * A page of the club's journal, latest first: who did what, when and why, and what it changed in words. For every
 * member; the journal holds no personal data of keepers. A car to narrow it to that is not there is told, not refused.
 */
export async function journalPage(ctx: Context, query: JournalQuery): Promise<JournalPage> {
  const choices = await personsAndActions(ctx);
  try {
    const carId = query.car === undefined ? undefined : (await carOf(ctx, query.car)).id;
    return { ...choices, ...(await pageOf(ctx, query, carId)) };
  } catch (error) {
    if (!(error instanceof Refusal) || error.code !== "CAR_NOT_FOUND") throw error;
    return { ...choices, items: [], ...(query.car === undefined ? {} : { carNotFound: query.car }) };
  }
}

/** A page of the journal of one car. */
export interface CarJournalPage extends JournalPage {
  readonly reference: string;
}

/**
 * The same of one car.
 *
 * @throws Refusal CAR_NOT_FOUND
 */
export async function carJournal(
  ctx: Context,
  query: JournalQuery & { readonly car: string },
): Promise<CarJournalPage> {
  const { id, reference } = await carOf(ctx, query.car);
  return { reference, ...(await personsAndActions(ctx)), ...(await pageOf(ctx, query, id)) };
}

/** One entry whole: in words, as it is kept, and its place in the chain. */
export interface JournalEntryPage extends JournalItem {
  readonly noun: string;
  readonly nounId: string;
  /** As kept. */
  readonly before: unknown;
  readonly after: unknown;
  readonly previousHash: string;
  readonly hash: string;
}

/**
 * One entry of the journal by its place.
 *
 * @throws Refusal JOURNAL_ENTRY_NOT_FOUND
 */
export async function journalEntry(ctx: Context, sequence: number): Promise<JournalEntryPage> {
  const row = await ctx.db.journalEntry.findUnique({
    where: { clubId_sequence: { clubId: ctx.club.id, sequence } },
  });
  if (!row) throw refused("JOURNAL_ENTRY_NOT_FOUND", { sequence });
  const [item] = await wordRows(ctx, [row]);
  if (!item) throw new Error(`entry ${sequence} was not worded`);
  const { noun, nounId, before, after, previousHash, hash } = row;
  return { ...item, noun, nounId, before, after, previousHash, hash };
}
