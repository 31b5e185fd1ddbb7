import { readFile } from "node:fs/promises";
import { ENGINE_VERSION, starterChecks, starterClasses } from "@trunnion/register";
import {
  addEntries,
  addEvent,
  addKeepership,
  addKeepershipInput,
  addMarque,
  addPart,
  addPartNote,
  addPartNoteInput,
  addRuleSet,
  addSeries,
  addSpecification,
  bookOf,
  type Clock,
  type Context,
  carForm,
  createMember,
  createSignIn,
  Database,
  importRegister,
  openOperator,
  type SignIn,
  writeJournal,
} from "@trunnion/service";
import { clubs, DEMO_PASSWORD, type DemoClub, people } from "./demo/club";
import { addDatedItems } from "./demo/dated-item";
import { demoEntries, demoEvent } from "./demo/event";
import { type DemoKeeping, keepings } from "./demo/keeper";
import { type DemoPart, parts } from "./demo/part";
import { specifications } from "./demo/specification";
import { asOwner, DEMO_FILLED } from "./state";

export interface SeedInput {
  readonly ownerUrl: string;
  readonly serviceUrl: string;
  /** ISO day the demo is dated by. */
  readonly today: string;
  readonly log: (line: string) => void;
}

/** Clubs stand outside the tenancies: the service's role may not make them. */
async function addClubs(ownerUrl: string): Promise<void> {
  await asOwner(ownerUrl, async (client) => {
    for (const { slug, name, kind } of clubs) {
      const sql = `INSERT INTO club (id, slug, name, kind, worked_out_by) VALUES (gen_random_uuid(), $1, $2, $3::"ClubKind", $4)
        ON CONFLICT (slug) DO NOTHING`;
      await client.query(sql, [slug, name, kind, ENGINE_VERSION]);
    }
  });
}

async function addCars(ctx: Context, club: DemoClub, log: SeedInput["log"]): Promise<void> {
  const book = await bookOf(ctx);
  const marqueId = await addMarque(ctx, club.marque);
  for (const one of club.series) {
    const seriesId = await addSeries(ctx, { ...one, marqueId });
    const specification = specifications[one.slug];
    if (specification) await addSpecification(ctx, { ...specification, seriesId, book });
  }
  const bytes = await readFile(new URL(`demo/${club.file}`, import.meta.url));
  const report = await importRegister(ctx, { file: club.file, bytes, book, asOf: ctx.today, dryRun: false });
  const refusedRows = new Set(report.refusedRows.map(({ line }) => line)).size;
  log(
    `${club.name}: ${report.carsAdded} cars read in from ${club.file}, ${refusedRows} rows left out as unreadable.`,
  );
}

async function addEventDay(ctx: Context, club: DemoClub): Promise<void> {
  const rules = { slug: "track-day", name: "Starter rules for track days", edition: ctx.today.slice(0, 4) };
  const note = "Drawn up from public regulations; the organiser's current regulations decide.";
  const ruleSetId = await addRuleSet(ctx, { ...rules, note, checks: starterChecks, classes: starterClasses });
  const eventId = await addEvent(ctx, { ...demoEvent(club.slug, ctx.today), ruleSetId });
  await addEntries(ctx, eventId, await demoEntries(ctx, ruleSetId));
}

/** All of a club's demo in one transaction, so that a filling cut short leaves the club empty or whole. */
async function fillClub(ctx: Context, club: DemoClub, log: SeedInput["log"]): Promise<void> {
  if ((await ctx.db.series.count()) > 0) return;
  await addCars(ctx, club, log);
  await addDatedItems(ctx);
  await addEventDay(ctx, club);
}

async function addPeople(database: Database, signIn: SignIn, clock: Clock): Promise<void> {
  for (const { name, email, roles } of people) {
    for (const [club, given] of Object.entries(roles)) {
      const member = { name, email, password: DEMO_PASSWORD, roles: given };
      await openOperator(database, club, (ctx) => createMember(ctx, signIn, member), clock);
    }
  }
}

/** Links a member to the car he keeps; does nothing where he has it already. */
async function addKeeping(ctx: Context, { car, member, address, from }: DemoKeeping): Promise<void> {
  const membership = await ctx.db.membership.findFirst({
    where: { person: { email: member } },
    select: { id: true, person: { select: { name: true, email: true } } },
  });
  const form = await carForm(ctx, car);
  if (!membership || form.keepers.some(({ isMember }) => isMember)) return;
  const { id, person } = membership;
  const keeper = { ...person, address, membership: id };
  const input = { car, version: form.version, ...keeper, from, to: "", trust: "stated" };
  await addKeepership(ctx, addKeepershipInput.parse(input));
}

function daysBefore(today: string, days: number): string {
  const day = new Date(`${today}T00:00:00Z`);
  day.setUTCDate(day.getUTCDate() - days);
  return day.toISOString().slice(0, 10);
}

/** Puts the demo's parts on the list, each note by the member who saw it; does nothing where there are parts. */
async function addParts(ctx: Context, list: readonly DemoPart[]): Promise<void> {
  if ((await ctx.db.part.count()) > 0) return;
  const members = await ctx.db.membership.findMany({
    select: { personId: true, person: { select: { email: true } } },
  });
  const idOf = new Map(members.map(({ person, personId }) => [person.email, personId]));
  for (const { part, notes } of list) {
    const slug = await addPart(ctx, part);
    for (const { daysAgo, by = "", ...note } of notes) {
      const seen = {
        ...note,
        part: slug,
        on: daysBefore(ctx.today, daysAgo),
        clientKey: crypto.randomUUID(),
      };
      const actor = { ...ctx.actor, personId: idOf.get(by) ?? null };
      await addPartNote({ ...ctx, actor }, addPartNoteInput.parse(seen));
    }
  }
}

/** Last of all, so that the next start knows whether there is anything left to do. */
async function markFilled(ctx: Context): Promise<void> {
  await writeJournal(ctx, [{ action: DEMO_FILLED, noun: "club", nounId: ctx.club.id }]);
}

/**
 * Fills an empty database with the invented scenario, through the same use cases as everybody else's data; finishes
 * one whose filling was cut short.
 */
export async function seedDemo({ ownerUrl, serviceUrl, today, log }: SeedInput): Promise<void> {
  await addClubs(ownerUrl);
  const database = new Database(serviceUrl);
  const clock = { now: new Date(`${today}T00:00:00Z`) };
  try {
    for (const club of clubs) {
      await openOperator(database, club.slug, (ctx) => fillClub(ctx, club, log), clock);
    }
    const signIn = createSignIn(database, { secret: crypto.randomUUID(), baseUrl: "http://localhost" });
    await addPeople(database, signIn, clock);
    for (const keeping of keepings) {
      await openOperator(database, keeping.club, (ctx) => addKeeping(ctx, keeping), clock);
    }
    await openOperator(database, "sandvaer", (ctx) => addParts(ctx, parts), clock);
    for (const { slug } of clubs) await openOperator(database, slug, markFilled, clock);
  } finally {
    await database.close();
  }
}
