import {
  bestOutcome,
  type CharacteristicBook,
  type CheckStanding,
  checkStandings,
  type DecisionOutcome,
  type DecisionStanding,
  decisionStanding,
  judgeReading,
  readingPlaces,
  type SheetCheck,
  type SheetDeviation,
  type Side,
  sayLimits,
  sayPlace,
  type Tally,
  tallyOf,
} from "@trunnion/register";
import { bookOf } from "../characteristic";
import type { ClubFacts, Context } from "../context";
import { type EventEntry, type EventPage, entriesOf, findEvent } from "../event";
import { type ClassStanding, carViewOf, classesOf, classStandings, sayOptions } from "../event-class";
import { type InspectionInstrument, inspectionInstruments, inspectionOf } from "../inspection";
import { inspectors, mayInspect } from "../inspection/policy";
import { type MadeSheet, makeSheets } from "../printed-sheet";
import { requireRole } from "../role";

/** A check of an entry with how it stands. */
export interface EntryCheck extends SheetCheck {
  readonly standing: CheckStanding;
  /** Where it is read; empty where it reads nothing. */
  readonly reads: readonly EntryReading[];
}

/** One place at which a check is read, with what stands there. */
export interface EntryReading {
  /** Name within the check: "front-left". */
  readonly key: string;
  /** Empty where the check names none: what is read stands in the note. */
  readonly characteristic: string;
  readonly side: Side;
  /** "Front camber, left". */
  readonly label: string;
  /** What an instrument must measure to be one for it; empty for what is no quantity. */
  readonly dimension: string;
  /** Limits on this car, as written; empty where none are known. */
  readonly limits: string;
  /** What was read, by the finding that stands; empty for none. */
  readonly entered: string;
  /** Id of what it was read with; empty where nobody said. */
  readonly instrument: string;
  /** What the reading comes to; empty for none. */
  readonly verdict: string;
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
  /** Instruments for what its checks read. */
  readonly instruments: readonly InspectionInstrument[];
  /** How the car stands in each class of the rule set; empty for a car that is not on the register. */
  readonly classes: readonly ClassStanding[];
}

/** What is still to be looked at when a refused car comes again. */
function isOpen({ standing }: EntryCheck): boolean {
  if (standing.state !== "found") return true;
  return standing.result === "refuse" || standing.result === "advise";
}

interface Reading {
  readonly book: CharacteristicBook;
  readonly made: MadeSheet;
  readonly instruments: readonly InspectionInstrument[];
  readonly system: "metric" | "imperial";
}

/** Where a check is read, with what the finding that stands has there; of findings that differ none is shown as read. */
function readsOf(
  { criterion, undecided }: SheetCheck,
  standing: CheckStanding,
  { book, made, instruments, system }: Reading,
): readonly EntryReading[] {
  if (undecided) return [];
  const stands = standing.state === "found" ? standing.findings.flatMap(({ readings }) => readings) : [];
  return readingPlaces(criterion, (key) => book.find(key)).map((place) => {
    const { key, characteristic: named, side } = place;
    const characteristic = book.find(named);
    const limits = made.assessment?.deviations.find(
      (one) => one.characteristic === named && one.side === side,
    )?.limits;
    const read = stands.find((one) => one.characteristic === named && one.side === side);
    const entered = read?.entered ?? "";
    const gauge = instruments.find(({ id }) => id === read?.instrument);
    const where = characteristic ? (side === "whole" ? "" : side) : sayPlace(place);
    const what = characteristic?.label ?? "Measured";
    return {
      key,
      characteristic: named,
      side,
      label: where === "" ? what : `${what}, ${where}`,
      dimension: characteristic?.kind === "quantity" ? characteristic.dimension : "",
      limits: characteristic && limits ? sayLimits(characteristic, limits, system) : "",
      entered,
      instrument: read?.instrument ?? "",
      verdict:
        characteristic && entered !== ""
          ? judgeReading(characteristic, entered, limits, gauge?.expandedUncertainty).text
          : "",
    };
  });
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
  const instruments = await inspectionInstruments(ctx);
  const reading = { book, made, instruments, system: ctx.club.unitSystem };
  const told = made.sheet.stations.map(({ station, label, checks }) => ({
    station,
    label,
    checks: checks.map((check): EntryCheck => {
      const standing = standings.get(check.id) ?? { state: "open" };
      return { ...check, standing, reads: readsOf(check, standing, reading) };
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
    instruments: instruments.filter(
      ({ dimension, retired }) =>
        retired !== true &&
        shown.some(({ checks }) =>
          checks.some(({ reads }) => reads.some((one) => one.dimension === dimension)),
        ),
    ),
    classes: made.assessment
      ? classStandings(
          await classesOf(ctx, event.ruleSetId, saying),
          carViewOf(made.assessment, { eventDay: event.on, book: saying.book }),
          saying,
        )
      : [],
  };
}

function refusedBy(decision: DecisionStanding): boolean {
  if (decision.state === "none") return false;
  return decision.decisions.some(({ outcome }) => outcome === "refused");
}
