import { Prisma } from "@trunnion/db";
import { sayAction } from "@trunnion/register";
import type { Context } from "../context";
import type { JournalPage, JournalPerson } from "./read";

/** An entry as the page's statement gives it. */
export interface JournalRow {
  readonly sequence: bigint;
  readonly at: Date;
  readonly personId: string | null;
  readonly action: string;
  readonly carId: string | null;
  readonly runId: string | null;
  readonly reason: string | null;
  readonly before: unknown;
  readonly after: unknown;
}

/** Words for the sides, in the club's way. */
export const sideWordsOf = (words: "leftRight" | "nearOff") =>
  words === "nearOff" ? { left: "nearside", right: "offside" } : { left: "left", right: "right" };

const machine: JournalPerson = { personId: null, name: "command line", left: false };

async function membersOf(ctx: Context, ids: readonly string[]): Promise<ReadonlyMap<string, JournalPerson>> {
  const rows = await ctx.db.membership.findMany({
    where: { personId: { in: [...ids] } },
    select: { personId: true, leftAt: true, person: { select: { name: true } } },
  });
  return new Map(
    rows.map(({ personId, leftAt, person }) => [
      personId,
      { personId, name: person.name, left: leftAt !== null },
    ]),
  );
}

const known = (members: ReadonlyMap<string, JournalPerson>) => (id: string | null) =>
  id === null
    ? machine
    : (members.get(id) ?? { personId: id, name: "somebody who was no member", left: true });

const unique = (ids: readonly (string | null)[]) => [...new Set(ids.flatMap((id) => id ?? []))];

/** Names of the people, cars and files that some entries speak of. */
export async function namesOf(ctx: Context, rows: readonly JournalRow[]) {
  const members = await membersOf(ctx, unique(rows.map(({ personId }) => personId)));
  const cars = await ctx.db.car.findMany({
    where: { id: { in: unique(rows.map(({ carId }) => carId)) } },
    select: { id: true, chassis: true, claim: true },
  });
  const runs = await ctx.db.importRun.findMany({
    where: { id: { in: unique(rows.map(({ runId }) => runId)) } },
    select: { id: true, fileName: true },
  });
  return {
    persons: known(members),
    cars: new Map(cars.map((car) => [car.id, car])),
    files: new Map(runs.map(({ id, fileName }) => [id, fileName])),
  };
}

/**
 * Distinct values of a column by hopping from one to the next in its index: as many steps as there are values, however
 * long the journal is.
 */
async function distinct(ctx: Context, column: "person_id" | "action"): Promise<readonly string[]> {
  const [name, club] = [Prisma.raw(column), Prisma.sql`j.club_id = ${ctx.club.id}::uuid`];
  const rows = await ctx.db.$queryRaw<{ value: string }[]>`
    WITH RECURSIVE hop AS (
      (SELECT j.${name} AS value FROM journal_entry j WHERE ${club} AND j.${name} IS NOT NULL ORDER BY j.${name} LIMIT 1)
      UNION ALL
      SELECT (SELECT j.${name} FROM journal_entry j WHERE ${club} AND j.${name} > hop.value ORDER BY j.${name} LIMIT 1)
      FROM hop WHERE hop.value IS NOT NULL)
    SELECT value::text AS value FROM hop WHERE value IS NOT NULL`;
  return rows.map(({ value }) => value);
}

/** Everybody who ever did something, and everything that was ever done, as the journal has them. */
export async function personsAndActions(ctx: Context): Promise<Pick<JournalPage, "persons" | "actions">> {
  const ids = await distinct(ctx, "person_id");
  const name = known(await membersOf(ctx, ids));
  const actions = await distinct(ctx, "action");
  const worded = actions.map((action) => ({ action, what: sayAction(action) }));
  return {
    persons: [...ids.map(name).sort((a, b) => a.name.localeCompare(b.name, "en")), machine],
    actions: worded.sort((a, b) => a.what.localeCompare(b.what, "en")),
  };
}
