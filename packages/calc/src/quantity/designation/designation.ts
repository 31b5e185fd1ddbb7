import { type Grade, parseGrade } from "./grade";
import type { DesignationKind } from "./kind";
import { parseThread, type Thread } from "./thread";
import { parseTyre, type Tyre } from "./tyre";
import { parseWheel, type Wheel } from "./wheel";

/** What each kind of designation is read into. */
export interface DesignationOf {
  readonly thread: Thread;
  readonly grade: Grade;
  readonly tyre: Tyre;
  readonly wheel: Wheel;
}

/** Any designation; told apart by `kind`. */
export type Designation = DesignationOf[DesignationKind];

const parsers: { readonly [K in DesignationKind]: (entered: string) => DesignationOf[K] } = {
  thread: parseThread,
  grade: parseGrade,
  tyre: parseTyre,
  wheel: parseWheel,
};

/** Readings kept, so that a fleet's few dozen tyre sizes are not each read for every car; when full, all are dropped. */
const mostKept = 500;
const kept: { readonly [K in DesignationKind]: Map<string, DesignationOf[K]> } = {
  thread: new Map(),
  grade: new Map(),
  tyre: new Map(),
  wheel: new Map(),
};

/**
 * Reads a designation of a kind. Two entries mean the same thing exactly when their `canonical` texts are equal,
 * and a canonical text reads into itself.
 * @throws NotationError that quotes the entry and says what would have been understood
 * @example parseDesignation("wheel", "5.5J x 14 ET20").canonical // => "5½J x 14 ET 20"
 */
export function parseDesignation<K extends DesignationKind>(kind: K, entered: string): DesignationOf[K] {
  const known = kept[kind].get(entered);
  if (known !== undefined) return known;
  const read = parsers[kind](entered);
  Object.freeze(read);
  if (kept[kind].size >= mostKept) kept[kind].clear();
  kept[kind].set(entered, read);
  return read;
}
