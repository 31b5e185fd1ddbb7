import {
  asksUnit,
  type CharacteristicBook,
  type Column,
  type ColumnProposal,
  columnName,
  columnsAs,
  type ImportMapping,
  Problems,
} from "@trunnion/register";
import type { DoubtfulRow } from "../planned-row";

/** Doubts of one kind, however many rows they are of. */
export interface DoubtGroup {
  readonly rows: number;
  /** The first of them, in the file's order. */
  readonly first: readonly DoubtfulRow[];
}

/** Doubts of one kind that are told one by one. */
const TOLD_OF_KIND = 5;

/** Words with a figure in them, and what stands in brackets, are what differs between doubts of one kind. */
const kindOf = (text: string) => text.replace(/\([^)]*\)|\S*\d\S*/g, "#");

/**
 * Doubts by their kind, the rarest kind first: the one keeper who had his car before it was built is not to be lost among
 * four hundred numbers without a hyphen.
 */
export function groupDoubts(doubts: readonly DoubtfulRow[]): readonly DoubtGroup[] {
  const kinds = new Map<string, DoubtfulRow[]>();
  for (const doubt of doubts) {
    const kind = `${doubt.column ?? ""} ${kindOf(doubt.text)}`;
    const group = kinds.get(kind) ?? [];
    group.push(doubt);
    kinds.set(kind, group);
  }
  return [...kinds.values()]
    .map((rows) => ({ rows: rows.length, first: rows.slice(0, TOLD_OF_KIND) }))
    .sort((one, other) => one.rows - other.rows);
}

/** What somebody settled for one column: the words of a heading, and the unit of bare numbers. */
export interface SettledColumn {
  readonly as: string;
  /** Empty where none was given; "as written" where bare numbers are to be refused. */
  readonly unit: string;
}

/** The word for a column whose bare numbers are left out rather than given a unit. */
export const AS_WRITTEN = "as written";

/** The mapping that was settled, column by column in the file's order. */
export function mappingFrom(headings: readonly string[], settled: readonly SettledColumn[]): ImportMapping {
  return {
    columns: headings.map((heading, index) => {
      const { as = "", unit = "" } = settled[index] ?? {};
      const given = unit.trim();
      const hasUnit = given !== "" && given !== AS_WRITTEN;
      return {
        heading,
        as: as.trim() === "" ? "keep as remarks" : as.trim(),
        ...(hasUnit ? { unit: given } : {}),
      };
    }),
  };
}

/** A bare number in a column that needs a unit and has none; it is asked for, never guessed. */
function bareIn(column: Column, sample: readonly (readonly string[])[]): string | undefined {
  if (column.kind !== "value" || column.defaultUnit !== undefined) return undefined;
  return sample.map((row) => row[column.index] ?? "").find((cell) => asksUnit(column.characteristic, cell));
}

export interface SettleInput {
  readonly headings: readonly string[];
  readonly settled: readonly SettledColumn[];
  readonly sample: readonly (readonly string[])[];
  readonly book: CharacteristicBook;
}

/**
 * Checks what was settled, column by column, and gives it as a mapping.
 *
 * @throws Invalid at `columns.<place>.as` for words that are no heading, at `columns.<place>.unit` for a unit that is
 *   none, or that is missing where bare numbers stand
 */
export function settle({ headings, settled, sample, book }: SettleInput): ImportMapping {
  const mapping = mappingFrom(headings, settled);
  const read = columnsAs(headings, mapping, book);
  const problems = new Problems();
  const at = (index: number) => `Column ${columnName(index, headings[index] ?? "")}`;
  if (!read.ok) {
    for (const { index, part, message } of read.problems) {
      problems.add(`columns.${index}.${part}`, `${at(index)}: ${message}`);
    }
  } else {
    for (const column of read.columns) {
      const { index } = column;
      const bare = settled[index]?.unit === AS_WRITTEN ? undefined : bareIn(column, sample);
      if (bare === undefined) continue;
      const message = `${at(index)}: numbers such as ${bare} stand here without a unit. Say which, or that such rows are to be left out.`;
      problems.add(`columns.${index}.unit`, message);
    }
  }
  problems.throwIfAny();
  return mapping;
}

/** Proposals with what the last file of these headings was taken for in place of what would be guessed. */
export function withRemembered(
  proposals: readonly ColumnProposal[],
  remembered: ImportMapping | undefined,
): readonly ColumnProposal[] {
  if (!remembered) return proposals;
  return proposals.map((proposal) => {
    const kept = remembered.columns[proposal.index];
    if (!kept) return proposal;
    const { unit: _, bare: __, ...rest } = proposal;
    const asked = kept.unit === undefined && proposal.bare !== undefined ? { bare: proposal.bare } : {};
    return {
      ...rest,
      ...asked,
      as: kept.as,
      ...(kept.unit === undefined ? {} : { unit: kept.unit }),
      certainty: "sure" as const,
      reason: "the last file with these headings was read so",
    };
  });
}
