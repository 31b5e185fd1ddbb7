import { Prisma } from "@trunnion/db";
import { chassisKey, foldText } from "@trunnion/register";

const sql = Prisma.sql;

/** Words of one search; further ones are passed over. */
const WORDS = 8;
/** Letters from which on a word may be mistyped: of three letters every other word is like it. */
const LIKE = 4;
/** Characters that may stand anywhere in a word; fewer are looked for at the beginning of one. */
const ANYWHERE = 3;

/** One word looked for: folded, and as a number is keyed. */
export interface Word {
  readonly folded: string;
  readonly key: string;
}

/** The words of what somebody looks for, dashes between them left out. Empty where nothing is left of it, which no car has. */
export function readWords(search: string): readonly Word[] {
  const folded = foldText(search)
    .split(/\s+/u)
    .filter((word) => word !== "" && !/^[\p{Pd}/·.,;:]+$/u.test(word));
  return [...new Set(folded)]
    .slice(0, WORDS)
    .map((word) => ({ folded: word, key: chassisKey(word).toLowerCase() }));
}

const escaped = (text: string) => text.replace(/[\\%_]/g, "\\$&");
const patternOf = (text: string) => (text.length < ANYWHERE ? `% ${escaped(text)}%` : `%${escaped(text)}%`);

/** Whether a word may be mistyped: letters alone, and enough of them. */
const mayBeMistyped = ({ folded }: Word) => folded.length >= LIKE && /^\p{L}+$/u.test(folded);

/** Ids of the cars that have the word, for a WHERE over ids; keepers' names only for those who may see them. */
export function wordsHold(words: readonly Word[], keepers: boolean): Prisma.Sql {
  const each = words.map((word) => {
    const number = word.key === "" || word.key === word.folded ? null : patternOf(word.key);
    const wanted = mayBeMistyped(word) ? word.folded : null;
    return sql`c.id IN (SELECT cars_like(${wanted}::text, ${patternOf(word.folded)}::text, ${number}::text, ${keepers}::boolean))`;
  });
  return each.length === 0 ? sql`FALSE` : Prisma.join(each, " AND ", "(", ")");
}

/** For one word that may be mistyped: whether anybody has it to the letter, and the words it is like. */
export function nearWords(word: Word, keepers: boolean): Prisma.Sql | undefined {
  if (!mayBeMistyped(word)) return undefined;
  const pattern = patternOf(word.folded);
  return sql`SELECT n.word FROM near_words(${word.folded}, ${keepers}) n
    WHERE NOT EXISTS (SELECT FROM cars_with(${pattern}, NULL, ${keepers}))`;
}
