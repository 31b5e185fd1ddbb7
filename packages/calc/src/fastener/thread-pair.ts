import { CalcRefusal } from "../catalogue/refusal";
import { positive } from "../spring/guard";
import { halfFlankAngle, nutMinorDiameter, pitchDiameter, type ThreadForm } from "./thread-form";
import { ordinaryFit } from "./thread-limit";

/** A thread that can be left-handed; right-handed when left out. */
export interface HandedThread extends ThreadForm {
  readonly hand?: "right" | "left" | undefined;
}

/**
 * What happens when a bolt is offered to a nut. `match`: they are made for each other. `neverMix`: it starts, and does
 * not hold as it should. `doesNotStart`: too thick, too different a pitch, or the other hand. `passesThrough`: so thin
 * that the threads hardly touch.
 */
export type PairVerdict = "match" | "neverMix" | "doesNotStart" | "passesThrough";

/** A bolt in a nut. Lengths m. */
export interface ThreadPair {
  readonly verdict: PairVerdict;
  /** Nut's nominal diameter less the bolt's. */
  readonly diameterDifference: number;
  /** Nut's pitch less the bolt's. */
  readonly pitchDifference: number;
  /** Radial overlap of the threads, (d − D₁)/2; not above zero when they do not touch at all. */
  readonly overlap: number;
  /** Overlap over that of the nut's own bolt. */
  readonly overlapShare: number;
  /** Turns before the flanks bind, at the loosest ordinary fit; infinite at equal pitches. */
  readonly turns: number;
  /** Angle between the flanks of one and of the other, rad (full angle). */
  readonly flankDifference: number;
}

/** A bolt enters a nut that is nominally smaller by so much of the pitch: crests are blunt and taps cut oversize. */
const tightStart = 0.1;
/** With less than this it is felt at once that a thread does not fit. */
const turnsToStart = 1;
/** Pitches that differ by more than this share are felt, and seen, however loose the fit. */
const pitchToStart = 0.2;
/** With less overlap than this share of the nut's own, the bolt pulls through by hand. */
const leastOverlap = 0.15;
/** Equal to within the rounding of a conversion, m. */
const same = 1e-9;

/**
 * Judges a bolt in a nut by basic sizes: radial overlap, and how many turns the pitches agree before the flanks bind,
 * with the play of diameters (ΔD₂·tan α) used up by the pitch difference.
 *
 * Only `match` may be used. The other verdicts say how far one would get, which is what makes the pair dangerous.
 * @throws CalcRefusal for a thread without a core
 */
export function threadPair(bolt: HandedThread, nut: HandedThread): ThreadPair {
  const diameterDifference = nut.majorDiameter - bolt.majorDiameter;
  const pitchDifference = positive(nut.pitch, "nut.pitch") - positive(bolt.pitch, "bolt.pitch");
  const flankDifference = 2 * (halfFlankAngle(nut.system) - halfFlankAngle(bolt.system));
  const overlap = (bolt.majorDiameter - nutMinorDiameter(nut)) / 2;
  const full = (nut.majorDiameter - nutMinorDiameter(nut)) / 2;
  const turns = turnsBeforeBinding(bolt, nut, Math.abs(pitchDifference));
  const found = {
    diameterDifference,
    pitchDifference,
    flankDifference,
    overlap,
    overlapShare: overlap / full,
    turns,
  };
  return { ...found, verdict: verdictOf(bolt, nut, found) };
}

function verdictOf(bolt: HandedThread, nut: HandedThread, found: Omit<ThreadPair, "verdict">): PairVerdict {
  if ((bolt.hand ?? "right") !== (nut.hand ?? "right")) return "doesNotStart";
  const { diameterDifference, pitchDifference, flankDifference, overlapShare, turns } = found;
  const alike = [diameterDifference, pitchDifference].every((difference) => Math.abs(difference) <= same);
  if (alike && flankDifference === 0) return "match";
  if (overlapShare < leastOverlap) return "passesThrough";
  const tight = diameterDifference < -tightStart * nut.pitch;
  const unlike = Math.abs(pitchDifference) > pitchToStart * Math.min(bolt.pitch, nut.pitch);
  return tight || unlike || turns < turnsToStart ? "doesNotStart" : "neverMix";
}

function turnsBeforeBinding(bolt: ThreadForm, nut: ThreadForm, pitchDifference: number): number {
  if (pitchDifference <= same) return Number.POSITIVE_INFINITY;
  const boltPitch = ordinaryFit(bolt)?.boltPitchLeast ?? pitchDiameter(bolt);
  const nutPitch = ordinaryFit(nut)?.nutPitchGreatest ?? pitchDiameter(nut);
  const slope = Math.tan((halfFlankAngle(bolt.system) + halfFlankAngle(nut.system)) / 2);
  return Math.max(0, (nutPitch - boltPitch) * slope) / pitchDifference;
}

/** Error of pitch added up over a length of engagement, m: |ΔP| × number of the bolt's threads. */
export function accumulatedPitchError(pair: Pick<ThreadPair, "pitchDifference">, threads: number): number {
  return Math.abs(pair.pitchDifference) * positive(threads, "threads");
}

/** A candidate that starts in a thread, or in which that thread starts, and must never be mixed with it. */
export interface LookAlike<T extends HandedThread> {
  readonly thread: T;
  /** The thread asked about as the bolt, the candidate as the nut. */
  readonly asBolt: ThreadPair;
  /** The candidate as the bolt. */
  readonly asNut: ThreadPair;
}

/** Most candidates one search goes through. */
export const candidateLimit = 2000;

/**
 * Of the candidates, those that start in the thread or take it, other than itself; the most deceptive (most turns, then
 * most overlap) first.
 * @throws CalcRefusal for more than {@link candidateLimit} candidates
 */
export function lookAlikes<T extends HandedThread>(
  thread: HandedThread,
  candidates: readonly T[],
): LookAlike<T>[] {
  if (candidates.length > candidateLimit)
    throw new CalcRefusal(
      "TOO_MANY",
      `at most ${candidateLimit} candidates, not ${candidates.length}`,
      "candidates",
    );
  return candidates
    .map((each) => ({ thread: each, asBolt: threadPair(thread, each), asNut: threadPair(each, thread) }))
    .filter(({ asBolt, asNut }) => asBolt.verdict === "neverMix" || asNut.verdict === "neverMix")
    .sort((a, b) => deceit(b) - deceit(a));
}

/** Turns beyond a nut's height are all alike; overlap decides between them. */
const turnsOfANut = 8;

function deceit({ asBolt, asNut }: LookAlike<HandedThread>): number {
  const of = ({ verdict, turns, overlapShare }: ThreadPair) =>
    verdict === "neverMix" ? Math.min(turns, turnsOfANut) + Math.min(1, overlapShare) : 0;
  return Math.max(of(asBolt), of(asNut));
}
