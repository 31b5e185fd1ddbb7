import {
  type EntryChangeLine,
  entryPlace,
  type SpecificationEntry,
  type TableProblem,
} from "@trunnion/register";

/** What came, or would come, of reading a table into a draft. */
export interface SpecificationImport {
  readonly file: string;
  readonly rows: number;
  /** Entries the draft has now, and would have. */
  readonly before: number;
  readonly after: number;
  /** Everything that is wrong, cell by cell; with any, nothing is written. */
  readonly problems: readonly TableProblem[];
  /** What the table changes in the draft. */
  readonly changes: readonly EntryChangeLine[];
  /** Contradictions between entries that the draft would have: it could not be made current. */
  readonly contradictions: readonly string[];
  /** Titles of sources the club does not have yet. */
  readonly newSources: readonly string[];
  readonly written: boolean;
  /** Revision of the draft after it. */
  readonly revision: number;
}

/** What a draft should say after a table was read into it: its rows instead of what holds for the same cars, or of all. */
export function mergedEntries(
  draft: readonly SpecificationEntry[],
  read: readonly SpecificationEntry[],
  mode: "merge" | "replace",
): readonly SpecificationEntry[] {
  if (mode === "replace") return read;
  const places = new Set(read.map(entryPlace));
  return [...draft.filter((entry) => !places.has(entryPlace(entry))), ...read];
}
