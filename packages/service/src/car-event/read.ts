import { type CarriedFinding, type DecisionOutcome, decisionStanding, shiftDays } from "@trunnion/register";
import { assessAll } from "../assessment";
import { findCar } from "../car";
import { carriedFindings } from "../carried-finding";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { dayOf } from "../day";
import { type ClassStanding, carViewOf, classesOf, classStandings, sayOptions } from "../event-class";
import { mayInspect } from "../inspection/policy";
import { keepsCar } from "../submission";

/** Events of one car that its page names, the latest first. */
const ENTRIES = 12;

/** One event a car was or is entered in. */
export interface CarEntryLine {
  readonly event: string;
  readonly name: string;
  /** ISO day. */
  readonly on: string;
  readonly number: string;
  readonly className: string;
  /** How it was decided, for whom it concerns; missing while it is not, "conflict" where scrutineers differ. */
  readonly outcome?: DecisionOutcome | "conflict";
}

/** What events have to do with one car. */
export interface CarEvents {
  readonly entries: readonly CarEntryLine[];
  /** What was advised or refused and has not been passed since; missing for whom it does not concern. */
  readonly open?: readonly CarriedFinding[];
  /** Every rule set in force with the car's standing in each of its classes. */
  readonly ruleSets: readonly {
    readonly slug: string;
    readonly version: number;
    readonly name: string;
    readonly edition: string;
    readonly classes: readonly ClassStanding[];
  }[];
}

async function entryLines(ctx: Context, carId: string, concerned: boolean): Promise<readonly CarEntryLine[]> {
  const rows = await ctx.db.entry.findMany({
    where: { carId, withdrawnAt: null },
    select: {
      runningNumber: true,
      event: { select: { slug: true, name: true, on: true } },
      eventClass: { select: { code: true, name: true } },
      decisions: { select: { clientKey: true, replaces: true, outcome: true } },
    },
    orderBy: [{ event: { on: "desc" } }, { id: "asc" }],
    take: ENTRIES,
  });
  return rows.map(({ runningNumber, event, eventClass, decisions }) => {
    const standing = decisionStanding(
      decisions.map(({ clientKey, ...one }) => ({
        ...one,
        key: clientKey,
        note: "",
        signedBy: "",
        signature: "",
        by: "",
        at: "",
      })),
    );
    const line = {
      event: event.slug,
      name: event.name,
      on: dayOf(event.on),
      number: runningNumber,
      className: eventClass === null ? "" : `${eventClass.code} ${eventClass.name}`,
    };
    if (!concerned || standing.state === "none") return line;
    return { ...line, outcome: standing.state === "conflict" ? "conflict" : standing.outcome };
  });
}

/**
 * What events have to do with a car: where it is entered, what is open from earlier ones, and which classes it may
 * enter with what is in the way. Findings and decisions are told to whoever keeps the car and to those who inspect.
 *
 * @throws Refusal CAR_NOT_FOUND
 */
export async function carEvents(ctx: Context, reference: string): Promise<CarEvents> {
  const record = await findCar(ctx, reference);
  const concerned = mayInspect(ctx.actor) || (await keepsCar(ctx, record.id, ctx.actor.personId));
  const entries = await entryLines(ctx, record.id, concerned);
  const open = concerned
    ? ((await carriedFindings(ctx, [record.id], shiftDays(ctx.today, 1))).get(record.id) ?? [])
    : undefined;
  const sets = await ctx.db.ruleSet.findMany({
    where: { status: "current", classes: { some: {} } },
    select: { id: true, slug: true, version: true, name: true, edition: true },
    orderBy: { name: "asc" },
    take: 20,
  });
  const told = { entries, ...(open === undefined ? {} : { open }) };
  if (sets.length === 0) return { ...told, ruleSets: [] };
  const book = await bookOf(ctx);
  const { say } = await sayOptions(ctx);
  const [assessment] = await assessAll(ctx, [record], book, ctx.today);
  if (!assessment) throw new Error(`no assessment of ${reference}`);
  const view = carViewOf(assessment, { eventDay: ctx.today, book });
  const ruleSets: CarEvents["ruleSets"][number][] = [];
  for (const { id, ...facts } of sets) {
    const classes = classStandings(await classesOf(ctx, id, { book, say }), view, { book, say });
    ruleSets.push({ ...facts, classes });
  }
  return { ...told, ruleSets };
}
