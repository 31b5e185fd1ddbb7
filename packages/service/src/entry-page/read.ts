import {
  bestOutcome,
  type CheckStanding,
  checkStandings,
  type DecisionOutcome,
  type DecisionStanding,
  decisionStanding,
  type SheetCheck,
  type SheetDeviation,
  type Side,
  type Tally,
  tallyOf,
} from "@trunnion/register";
import { bookOf } from "../characteristic";
import type { ClubFacts, Context } from "../context";
import { type EventEntry, type EventPage, entriesOf, findEvent } from "../event";
import { type ClassStanding, carViewOf, classesOf, classStandings, sayOptions } from "../event-class";
import { inspectionOf } from "../inspection";
import { inspectors, mayInspect } from "../inspection/policy";
import { makeSheets } from "../printed-sheet";
import { requireRole } from "../role";

/** A check of an entry with how it stands. */
export interface EntryCheck extends SheetCheck {
  readonly standing: CheckStanding;
  /** What is to be read at it, by side; empty where it reads nothing. */
  readonly reads: readonly { readonly characteristic: string; readonly side: Side; readonly label: string }[];
}

/** One entry at scrutineering: what is different about the car, its checks, what was found and decided. */
export interface EntryPage {
  readonly club: ClubFacts;
  readonly event: EventPage;
  readonly entry: EventEntry;
  readonly deviations: readonly SheetDeviation[];
  readonly stations: readonly {
    readonly station: string;
    readonly label: string;
    readonly checks: readonly EntryCheck[];
  }[];
  readonly tally: Tally;
  /** What the findings allow at best; missing while something is open. */
  readonly best?: DecisionOutcome;
  readonly decision: DecisionStanding;
  /** True once the car was refused: only what was not passed is shown. */
  readonly again: boolean;
  /** How many checks are not shown because they were passed before. */
  readonly passedBefore: number;
  readonly mayInspect: boolean;
  /** How the car stands in each class of the rule set; empty for a car that is not on the register. */
  readonly classes: readonly ClassStanding[];
}

/** What is still to be looked at when a refused car comes again. */
function isOpen({ standing }: EntryCheck): boolean {
  if (standing.state !== "found") return true;
  return standing.result === "refuse" || standing.result === "advise";
}

/**
 * One entry for the scrutineer's page. After a refusal only what was open, in conflict, advised or refused is shown,
 * unless `all` asks for everything.
 *
 * @throws Refusal ROLE_NEEDED, EVENT_NOT_FOUND, ENTRY_NOT_FOUND
 */
export async function entryPage(
  ctx: Context,
  input: { readonly event: string; readonly number: string; readonly all?: boolean },
): Promise<EntryPage> {
  requireRole(ctx.actor, ...inspectors);
  const event = await findEvent(ctx, input.event);
  const book = await bookOf(ctx);
  const [made] = await makeSheets(ctx, { event: input.event, number: input.number, book });
  const entry = (await entriesOf(ctx, event.id)).find(({ id }) => id === made?.entryId);
  if (!made || !entry) throw new Error("a sheet was made of no entry");
  const records = await inspectionOf(ctx, event.id);
  const findings = records.findings.filter(({ entryId }) => entryId === entry.id);
  const decision = decisionStanding(records.decisions.filter(({ entryId }) => entryId === entry.id));
  const codes = made.sheet.stations.flatMap(({ checks }) => checks.map(({ id }) => id));
  const standings = checkStandings(codes, findings);
  const again = decision.state !== "none" && refusedBy(decision) && input.all !== true;
  const told = made.sheet.stations.map(({ station, label, checks }) => ({
    station,
    label,
    checks: checks.map((check): EntryCheck => {
      const key = "characteristic" in check.criterion ? check.criterion.characteristic : undefined;
      const characteristic = key === undefined ? undefined : book.find(key);
      const where: readonly Side[] = characteristic?.sided ? ["left", "right"] : ["whole"];
      return {
        ...check,
        standing: standings.get(check.id) ?? { state: "open" },
        reads: characteristic
          ? where.map((side) => ({ characteristic: characteristic.key, side, label: characteristic.label }))
          : [],
      };
    }),
  }));
  const tally = tallyOf(codes.map((code) => standings.get(code) ?? { state: "open" }));
  const best = bestOutcome(tally);
  const saying = { book, say: (await sayOptions(ctx)).say };
  const shown = told
    .map((one) => ({ ...one, checks: again ? one.checks.filter(isOpen) : one.checks }))
    .filter(({ checks }) => checks.length > 0);
  return {
    club: ctx.club,
    event,
    entry,
    deviations: made.sheet.deviations,
    stations: shown,
    tally,
    ...(best === undefined ? {} : { best }),
    decision,
    again,
    passedBefore: codes.length - shown.reduce((sum, { checks }) => sum + checks.length, 0),
    mayInspect: mayInspect(ctx.actor),
    classes: made.assessment
      ? classStandings(
          await classesOf(ctx, event.ruleSetId, saying),
          carViewOf(made.assessment, event.on),
          saying,
        )
      : [],
  };
}

function refusedBy(decision: DecisionStanding): boolean {
  if (decision.state === "none") return false;
  return decision.decisions.some(({ outcome }) => outcome === "refused");
}
