import { Prisma } from "@trunnion/db";
import type { Searched, Word } from "./said";

const sql = Prisma.sql;

/** Letters from which on a word may be mistyped: of three letters every other word is like it. */
const LIKE = 4;
/** Letters of the longest word that is compared: no longer one is kept among the club's, and comparing takes its square. */
const LONGEST = 40;
/** Characters that may stand anywhere in a word; fewer are looked for at the beginning of one. */
const ANYWHERE = 3;

const escaped = (text: string) => text.replace(/[\\%_]/g, "\\$&");
const patternOf = (text: string) => (text.length < ANYWHERE ? `% ${escaped(text)}%` : `%${escaped(text)}%`);

/** Whether a word may be mistyped: letters alone, and enough of them. */
const mayBeMistyped = ({ folded }: Word) =>
  folded.length >= LIKE && folded.length <= LONGEST && /^\p{L}+$/u.test(folded);

/** Ids of the cars that have the word anywhere on their record, as their number or in the name of their series. */
function carsOf(word: Word, keepers: boolean): Prisma.Sql {
  const number = word.key === "" || word.key === word.folded ? null : patternOf(word.key);
  const wanted = mayBeMistyped(word) ? word.folded : null;
  const written = sql`SELECT cars_like(${wanted}::text, ${patternOf(word.folded)}::text, ${number}::text, ${keepers}::boolean)`;
  const numbered =
    word.number === undefined ? [] : [sql`SELECT n.id FROM car n WHERE n.chassis_key = ${word.number}`];
  const ofSeries =
    word.series.length === 0 ? [] : [sql`SELECT n.id FROM car n WHERE ${seriesHolds("n", word.series)}`];
  return Prisma.join([written, ...numbered, ...ofSeries], " UNION ALL ");
}

const seriesHolds = (car: "c" | "n", slugs: readonly string[]) =>
  sql`${car === "c" ? sql`c` : sql`n`}.series_id IN (SELECT s.id FROM series s WHERE s.slug = ANY(${[...slugs]}::text[]))`;

/** That a car is among those looked for, for a WHERE over `car c`; keepers' names only for those who may see them. */
export function searchHolds({ words, named }: Searched, keepers: boolean): Prisma.Sql {
  const each = [
    ...named.map(({ series }) => seriesHolds("c", series)),
    ...(words.length === 0
      ? []
      : [
          // Few cars have all the words: those are settled before anything is read of a car.
          sql`c.id IN (${Prisma.join(
            words.map((word) => sql`(${carsOf(word, keepers)})`),
            " INTERSECT ",
          )})`,
        ]),
  ];
  return each.length === 0 ? sql`FALSE` : Prisma.join(each, " AND ", "(", ")");
}

/** For one word that may be mistyped: whether anybody has it to the letter, and the words it is like. */
export function nearWords(word: Word, keepers: boolean): Prisma.Sql | undefined {
  if (!mayBeMistyped(word) || word.series.length > 0) return undefined;
  const pattern = patternOf(word.folded);
  return sql`SELECT n.word FROM near_words(${word.folded}, ${keepers}) n
    WHERE NOT (SELECT somebody_has(${pattern}, ${keepers}))`;
}
