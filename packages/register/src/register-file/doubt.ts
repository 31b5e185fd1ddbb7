import type { PartialDate } from "../identity/partial-date";
import type { RegisterRow } from "./row";

/** A date as far as it is known, and as it is written. */
type Dated = Pick<PartialDate, "text" | "earliest" | "latest">;

/** True when a date lies wholly before another, as far as both are known. */
const wholly = (early: PartialDate, late: Dated) => early.latest < late.earliest;

type Pair = readonly [
  part: PartialDate | undefined,
  words: string,
  notBefore: Dated | undefined,
  than: string,
];

function outOfOrder(row: RegisterRow, built: Dated | undefined): readonly string[] {
  const pairs: readonly Pair[] = [
    [row.firstRegistered, "first registered", built, "built"],
    [row.keptSince, "kept since", built, "built"],
    [row.statusSince, "status since", built, "built"],
    [row.changedOn, "changed on", built, "built"],
    [row.recordedOn, "recorded on", built, "built"],
    [row.measuredOn, "measured on", built, "built"],
  ];
  return pairs.flatMap(([date, words, notBefore, than]) =>
    date && notBefore && wholly(date, notBefore)
      ? [`${words} ${date.text}, before it was ${than} (${notBefore.text})`]
      : [],
  );
}

/**
 * Pairs that UTF-8 read as Windows-1252 leaves (Ã¸ for ø, â€“ for a dash), what Windows-1252 read as UTF-8 leaves, and
 * question marks inside a word. Names with a true "Ã" before a vowel exist; so it is a doubt, not an error.
 */
const GARBLED =
  /[ÃÂ][\u0080-\u00bf\u0152\u0153\u0160\u0161\u0178\u017d\u017e\u0192\u02c6\u02dc\u2013-\u2122]|â(?:€|„)|\ufffd|\p{L}\?\p{Ll}/u;

/** A text that looks as if it had been read in a wrong encoding on its way here. */
export function looksGarbled(text: string): boolean {
  return GARBLED.test(text);
}

function garbled(row: RegisterRow): readonly string[] {
  const texts: readonly (readonly [string, string | undefined])[] = [
    ["chassis", row.chassis],
    ["commission number", row.commission],
    ["engine number", row.engine],
    ["body number", row.body],
    ["registration", row.registration],
    ["keeper", row.keeper?.name],
    ["keeper address", row.keeper?.address],
    ["remarks", row.remarks],
    ["donor", row.donor],
    ["reason of the change", row.changedBecause],
    ...[...row.asBuilt, ...row.now].map(
      ({ characteristic, value }) =>
        [characteristic, value.kind === "text" ? value.text : undefined] as const,
    ),
  ];
  const bad = texts.flatMap(([name, text]) => (text !== undefined && looksGarbled(text) ? [name] : []));
  if (bad.length === 0) return [];
  // The words themselves may be a person's name, and doubts go into reports.
  return [`${bad.join(", ")}: letters look spoilt by a wrong encoding (as "Ã¸" for "ø")`];
}

/** What is possible in a row and yet unlikely: dates out of order, letters of a wrong encoding. */
export function doubtsOf(row: RegisterRow): readonly string[] {
  return [...outOfOrder(row, row.built), ...garbled(row)];
}

/**
 * What is unlikely beside what the register has of the car already: a keeper since before it was built, where the row does
 * not say itself when that was.
 */
export function doubtsBeside(row: RegisterRow, built: Dated | undefined): readonly string[] {
  return row.built === undefined ? outOfOrder(row, built) : [];
}
