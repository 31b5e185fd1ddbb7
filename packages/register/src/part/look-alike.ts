import { NotationError, parseDesignation, type Thread, threadPair } from "@trunnion/calc";
import { stepOf } from "../value/same";
import type { Value } from "../value/value";

/** Lengths nearer than this, or than this share of the longer, are not told apart by eye; common practice, no source. */
const EYE_LENGTH = 0.003;
const EYE_SHARE = 0.05;

/** A value as a thread, where it is written as one. */
export function threadOf(value: Value): Thread | undefined {
  if (value.kind !== "designation") return undefined;
  try {
    return parseDesignation("thread", value.canonical);
  } catch (error) {
    if (error instanceof NotationError) return undefined;
    throw error;
  }
}

/** What is dangerous about two threads side by side; nothing where they are one, or where neither starts in the other. */
export function threadsAlike(one: Thread, other: Thread): string | undefined {
  const starts = (bolt: Thread, nut: Thread) => threadPair(bolt, nut).verdict === "neverMix";
  const [there, back] = [starts(one, other), starts(other, one)];
  if (!there && !back) return undefined;
  const [bolt, nut] = there ? [one, other] : [other, one];
  const which = there && back ? "each starts in the other" : `${bolt.canonical} starts in ${nut.canonical}`;
  return `${which} and does not hold: never mix them, sort and mark them apart`;
}

function lengthsAlike(one: Value, other: Value): string | undefined {
  if (one.kind !== "quantity" || other.kind !== "quantity") return undefined;
  const apart = Math.abs(one.si - other.si);
  const longer = Math.max(Math.abs(one.si), Math.abs(other.si));
  if (apart < Math.max(stepOf(one), stepOf(other)) / 2) return undefined;
  if (apart > Math.max(EYE_LENGTH, EYE_SHARE * longer)) return undefined;
  return `${(apart * 1000).toFixed(1)} mm apart: not told apart by eye, measure before fitting`;
}

/**
 * In words, why two differing values are easily taken for one another: threads of which one starts in the other, or
 * lengths a few millimetres apart. Nothing where they say the same, or are told apart at once.
 *
 * @param threads whether only threads are looked at
 */
export function looksAlike(one: Value, other: Value, threads = false): string | undefined {
  const [a, b] = [threadOf(one), threadOf(other)];
  if (a && b) return threadsAlike(a, b);
  return threads ? undefined : lengthsAlike(one, other);
}
