import type { CharacteristicBook } from "../characteristic/book";
import { type ContentBasis, type Fit, fitOf, guessByContent } from "./content";
import {
  type Column,
  columnLetter,
  foldHeading,
  type PlainColumn,
  plainHeadings,
  readHeading,
} from "./heading";
import { textLikeness } from "./likeness";
import { epochUnits, headingOf, holdsDates, keepAsRemarks, type MappedColumn, unitsFor } from "./mapping";
import { synonyms } from "./synonym";

/** How sure a proposal is. Whatever it is, nothing is taken without being shown. */
export type Certainty = "sure" | "likely" | "possible" | "none";

/** What a column of a file is proposed to be taken for, and why. */
export interface ColumnProposal extends MappedColumn {
  readonly index: number;
  readonly certainty: Certainty;
  /** Why, to follow "because": "the heading says so". */
  readonly reason: string;
  /** Units to choose from for bare numbers; empty where no unit is needed. */
  readonly units: readonly string[];
  /** A bare number found that nothing says the unit of: it is asked for, never guessed. */
  readonly bare?: string;
  /** The first different cells, as they stand. */
  readonly examples: readonly string[];
}

interface Candidate {
  readonly column: Column;
  readonly certainty: Certainty;
  readonly reason: string;
}

/** Cells of a column that are looked at. */
const CELLS = 100;
const EXAMPLES = 3;
/** Likeness from which a heading is proposed, and from which it is taken for a slip of the pen. */
const ALIKE = 0.6;
const SLIP = 0.8;

const asBuiltWords =
  /^(?:as built|original(?:ly)?|orig|factory|ex works|works|from new|when new|build)\b[\s:,-]*(.+)$/;
const nowWords = /^(?:now|current(?:ly)?|present(?:ly)?|today|fitted|actual|measured)\b[\s:,-]*(.+)$/;
const UNIT = /^(.*?)[\s,]*(?:\[([^\]]+)\]|\(([^)]+)\)|\bin (mm|inches|inch|psi|bar|degrees|kg|lb))$/;

interface Stem {
  readonly stem: string;
  readonly when: "asBuilt" | "now";
  readonly said: boolean;
  readonly unit?: string;
}

function stemOf(heading: string): Stem {
  const folded = foldHeading(heading);
  const [, before, square, round, word] = UNIT.exec(folded) ?? [];
  const unit = square ?? round ?? word;
  const whole = before === undefined || before === "" || unit === undefined ? folded : before;
  const built = asBuiltWords.exec(whole)?.[1];
  const now = built === undefined ? nowWords.exec(whole)?.[1] : undefined;
  return {
    stem: built ?? now ?? whole,
    when: built === undefined ? "now" : "asBuilt",
    said: built !== undefined || now !== undefined,
    ...(unit === undefined || whole === folded ? {} : { unit }),
  };
}

const plainWords: readonly (readonly [string, PlainColumn])[] = (
  Object.keys(plainHeadings) as PlainColumn[]
).flatMap((column) =>
  [...plainHeadings[column], ...(synonyms[column] ?? [])].map((word) => [foldHeading(word), column] as const),
);
const bySynonym = new Map(plainWords);

const say = (column: Column) => `"${headingOf(column)}"`;
const plainAt = (column: PlainColumn, index: number, heading: string): Column => ({
  kind: "plain",
  index,
  heading,
  column,
});

/** A value's column by a name, with the unit the heading gives where that is one of its units. */
function valueNamed(
  stem: Stem,
  index: number,
  heading: string,
  book: CharacteristicBook,
): Column | undefined {
  const when = stem.when === "now" ? "now" : "as built";
  const unit = stem.unit === undefined ? "" : ` [${stem.unit}]`;
  const column = readHeading(`${when}: ${stem.stem}${unit}`, index, book);
  return column.kind === "value" ? { ...column, heading } : undefined;
}

function taken(stem: Stem): string {
  if (stem.said) return "";
  return ", taken as what is on the car now, since the heading does not say when";
}

/** The word most like the heading, of those that are alike enough. */
function nearest<T>(
  stem: string,
  words: Iterable<readonly [string, T]>,
): readonly [number, string, T] | undefined {
  let best: readonly [number, string, T] | undefined;
  for (const [word, meaning] of words) {
    const alike = textLikeness(stem, word);
    if (alike >= ALIKE && (best === undefined || alike > best[0])) best = [alike, word, meaning];
  }
  return best;
}

function nearCandidate(
  stem: Stem,
  index: number,
  heading: string,
  book: CharacteristicBook,
): Candidate | undefined {
  if (stem.stem.length < 3) return undefined;
  const names = book.all.flatMap(({ label, also = [] }) =>
    [label, ...also].map((name) => [foldHeading(name), name] as const),
  );
  const plain = stem.said ? undefined : nearest(stem.stem, plainWords);
  const value = nearest(stem.stem, names);
  if (plain && plain[0] >= (value?.[0] ?? 0)) {
    const column = plainAt(plain[2], index, heading);
    const certainty = plain[0] >= SLIP ? "likely" : "possible";
    return { column, certainty, reason: `the heading is nearly "${plain[1]}", which is ${say(column)}` };
  }
  const column = value && valueNamed({ ...stem, stem: value[2] }, index, heading, book);
  if (!value || !column) return undefined;
  const certainty = value[0] >= SLIP ? "likely" : "possible";
  return { column, certainty, reason: `the heading is nearly "${value[2]}"${taken(stem)}` };
}

function byHeading(heading: string, index: number, book: CharacteristicBook): Candidate | undefined {
  const exact = readHeading(heading, index, book);
  if (exact.kind === "ignored")
    return { column: exact, certainty: "sure", reason: "this program works it out from the record itself" };
  if (exact.kind !== "unknown") return { column: exact, certainty: "sure", reason: "the heading says so" };
  const stem = stemOf(heading);
  if (stem.stem === "") return undefined;
  const synonym = stem.said ? undefined : bySynonym.get(stem.stem);
  if (synonym) {
    const column = plainAt(synonym, index, heading);
    return { column, certainty: "likely", reason: `"${heading.trim()}" is another word for ${say(column)}` };
  }
  const value = valueNamed(stem, index, heading, book);
  if (value?.kind === "value") {
    const { label } = value.characteristic;
    const certainty = stem.said ? "sure" : "likely";
    return { column: value, certainty, reason: `the heading names "${label}"${taken(stem)}` };
  }
  return nearCandidate(stem, index, heading, book);
}

const lower: Readonly<Record<Certainty, Certainty>> = {
  sure: "likely",
  likely: "possible",
  possible: "none",
  none: "none",
};

/** A proposal once the cells have been looked at: borne out, or less sure where they read as something else. */
function weighed(candidate: Candidate, fit: Fit | undefined): Candidate {
  if (!fit || fit.of === 0) return candidate;
  const share = `${fit.read} of ${fit.of} cells read as such`;
  if (fit.read >= 0.8 * fit.of) return { ...candidate, reason: `${candidate.reason}, and ${share}` };
  const certainty = fit.read >= 0.5 * fit.of ? candidate.certainty : lower[candidate.certainty];
  return { ...candidate, certainty, reason: `${candidate.reason}, but only ${share}` };
}

function cellsOf(rows: readonly (readonly string[])[], index: number): readonly string[] {
  const cells: string[] = [];
  for (const row of rows) {
    const cell = row[index] ?? "";
    if (cell !== "") cells.push(cell);
    if (cells.length === CELLS) break;
  }
  return cells;
}

function propose(heading: string, index: number, cells: readonly string[], basis: ContentBasis): Candidate {
  const named = byHeading(heading, index, basis.book);
  const weighedName = named && weighed(named, fitOf(named.column, cells, basis));
  const guess = guessByContent(cells, basis);
  // What a column surely holds says more than a heading that is merely like another word.
  const told = guess?.certainty === "likely" && weighedName?.certainty === "possible";
  if (weighedName && weighedName.certainty !== "none" && !told) return weighedName;
  if (guess) {
    const column: Column = guess.column
      ? { ...guess.column, index, heading }
      : { kind: "unknown", index, heading };
    return { column, certainty: guess.certainty, reason: guess.reason };
  }
  const reason = cells.length === 0 ? "the column is empty" : "nothing here is called so";
  return { column: { kind: "unknown", index, heading }, certainty: "none", reason };
}

const rank: Readonly<Record<Certainty, number>> = { sure: 3, likely: 2, possible: 1, none: 0 };

/** Two columns cannot hold one thing: the surer keeps it, the other goes to the remarks and says why. */
function withoutClashes(candidates: readonly Candidate[]): readonly Candidate[] {
  const holders = new Map<string, Candidate>();
  const inOrder = [...candidates].sort((a, b) => rank[b.certainty] - rank[a.certainty]);
  return inOrder
    .map((candidate): Candidate => {
      const { column } = candidate;
      if (column.kind === "unknown" || column.kind === "ignored") return candidate;
      const keys =
        column.kind === "plain"
          ? [column.column]
          : column.sides.map((side) => `${column.when} ${column.characteristic.key} ${side}`);
      const holder = keys.map((key) => holders.get(key)).find((one) => one !== undefined);
      if (!holder) {
        for (const key of keys) holders.set(key, candidate);
        return candidate;
      }
      const where = columnLetter(holder.column.index);
      return {
        column: { kind: "unknown", index: column.index, heading: column.heading },
        certainty: "none",
        reason: `column ${where} holds ${say(column)} already`,
      };
    })
    .sort((a, b) => a.column.index - b.column.index);
}

function unitsOfColumn(column: Column, { unitSystem }: ContentBasis): readonly string[] {
  if (column.kind === "plain") return plainDates(column) ? epochUnits : [];
  if (column.kind !== "value" || column.characteristic.kind !== "quantity") return [];
  const own = column.defaultUnit === undefined ? [] : [column.defaultUnit];
  return [...new Set([...own, ...unitsFor(column.characteristic, unitSystem)])];
}

const plainDates = (column: Column & { kind: "plain" }) => holdsDates(column.column);

/**
 * Proposes what the columns of a file are to be taken for, by their headings (as they stand, folded, by other words,
 * nearly) and by what stands in them, each with its reason and how sure that is. A bare number's unit is never guessed:
 * `bare` quotes one that nothing says the unit of.
 *
 * @param rows some rows of the file, without the headings
 */
export function proposeColumns(
  headings: readonly string[],
  rows: readonly (readonly string[])[],
  basis: ContentBasis,
): readonly ColumnProposal[] {
  const candidates = headings.map((heading, index) => propose(heading, index, cellsOf(rows, index), basis));
  return withoutClashes(candidates).map(({ column, certainty, reason }) => {
    const cells = cellsOf(rows, column.index);
    const fit = fitOf(column, cells, basis);
    const asked = fit?.bare ?? fit?.serial;
    const unit = column.kind === "value" ? column.defaultUnit : undefined;
    return {
      index: column.index,
      heading: column.heading,
      as: column.kind === "unknown" ? keepAsRemarks : headingOf(column),
      certainty,
      reason,
      units: fit?.serial === undefined && column.kind === "plain" ? [] : unitsOfColumn(column, basis),
      ...(unit === undefined ? {} : { unit }),
      ...(asked === undefined ? {} : { bare: asked }),
      examples: [...new Set(cells)].slice(0, EXAMPLES),
    };
  });
}
