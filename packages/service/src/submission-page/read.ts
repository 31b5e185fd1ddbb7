import { computationNamed, runComputation } from "@trunnion/calc";
import {
  type Assembly,
  builtInBook,
  type Characteristic,
  consequencesOfSubmission,
  mixesOfSubmission,
  type ProposedConsequences,
  printValue,
  type ReadSubmission,
  refused,
  type Side,
  type StateInput,
  type SubmissionMix,
  sameValue,
  type Value,
} from "@trunnion/register";
import type { WorkedConsequence } from "../consequence";
import type { ClubFacts, Context } from "../context";
import { currentSpecifications } from "../specification";
import { keepsRegister, loadSubmission, type SubmissionGround, type SubmissionView } from "../submission";
import { photosOf, type SubmissionPhoto } from "../submission-photo";
import { foldOf } from "./policy";

/** One line of the difference that a submission makes. */
export interface SubmissionLine {
  readonly characteristic: string;
  readonly label: string;
  readonly assembly: Assembly;
  readonly side: Side;
  readonly before: string;
  /** The owner says what was there before, and the record does not, or has something else. */
  readonly beforeSaid: boolean;
  /** What the record has instead; empty where it has nothing, or the same. */
  readonly recorded: string;
  readonly after: string;
}

/** What the browser runs the engines on while something is typed: the same that the server runs them on. */
export interface BrowserGround {
  readonly today: string;
  readonly builtEarliest?: string;
  readonly fold: StateInput;
  /** Characteristics of the club's own. */
  readonly own: readonly Characteristic[];
}

/** A submission with everything its page shows. */
export interface SubmissionPage {
  readonly club: ClubFacts;
  readonly submission: SubmissionView;
  readonly lines: readonly SubmissionLine[];
  readonly proposed: ProposedConsequences;
  /** Threads and lengths it brings that are taken for others. */
  readonly mixes: readonly SubmissionMix[];
  readonly ground: BrowserGround;
  /** Photos and documents handed in with it. */
  readonly evidence: readonly SubmissionPhoto[];
  /** Whether the reader decides about submissions. */
  readonly reviewer: boolean;
}

/** The difference that a submission makes, line by line. */
export function linesOf(
  ctx: Context,
  read: ReadSubmission,
  { basis }: SubmissionGround,
): readonly SubmissionLine[] {
  const said = (characteristic: Characteristic, value: Value | undefined) =>
    value === undefined ? "" : printValue(characteristic, value, { system: "asEntered" });
  return read.modifications.flatMap(({ fitted, changes }) => {
    const recorded = basis.stateOn(fitted?.latest ?? ctx.today);
    return changes.map(({ characteristic, side, before, after }) => {
      const known = recorded.get(`${characteristic.key} ${side}`)?.value;
      const beforeSaid = before !== undefined && (known === undefined || !sameValue(known, before));
      return {
        characteristic: characteristic.key,
        label: characteristic.label,
        assembly: characteristic.assembly,
        side,
        before: said(characteristic, before),
        beforeSaid,
        recorded: beforeSaid ? said(characteristic, known) : "",
        after: said(characteristic, after),
      };
    });
  });
}

/**
 * A submission with the difference it makes, what that does to the car, what supports it and what was said of it.
 *
 * @throws Refusal SUBMISSION_NOT_FOUND
 */
export async function submissionPage(ctx: Context, id: string): Promise<SubmissionPage> {
  const { view, ground, read } = await loadSubmission(ctx, id);
  const { basis, record } = ground;
  const seriesId = record.series?.id;
  const specifications = await currentSpecifications(ctx, seriesId === undefined ? [] : [seriesId]);
  return {
    club: ctx.club,
    submission: view,
    lines: linesOf(ctx, read, ground),
    proposed: consequencesOfSubmission(read, basis),
    mixes: mixesOfSubmission(read, basis),
    ground: {
      today: ctx.today,
      ...(basis.builtEarliest === undefined ? {} : { builtEarliest: basis.builtEarliest }),
      fold: foldOf(ground, seriesId === undefined ? undefined : specifications.get(seriesId)),
      own: basis.book.all.filter(({ key }) => builtInBook.find(key) === undefined),
    },
    evidence: await photosOf(ctx, id),
    reviewer: keepsRegister(ctx),
  };
}

/**
 * One consequence of a submission with its working on both sides, of what was saved last.
 *
 * @throws Refusal SUBMISSION_NOT_FOUND, CONSEQUENCE_NOT_FOUND
 */
export async function submissionConsequence(
  ctx: Context,
  { id, consequence }: { readonly id: string; readonly consequence: string },
): Promise<WorkedConsequence> {
  const { view, ground, read } = await loadSubmission(ctx, id);
  const { consequences } = consequencesOfSubmission(read, ground.basis);
  const found = consequences.find((one) => one.id === consequence);
  if (!found)
    throw refused("CONSEQUENCE_NOT_FOUND", { id: consequence, known: consequences.map((one) => one.id) });
  const computation = computationNamed(found.computation);
  const run = (raw: unknown) => (raw === undefined ? undefined : runComputation(computation, raw));
  const [before, after] = [run(found.rawBefore), run(found.raw)];
  return {
    ...found,
    car: view.car,
    working: { ...(before ? { before } : {}), ...(after ? { after } : {}) },
    computationTitle: computation.title,
    validity: computation.validity,
    source: computation.source,
  };
}
