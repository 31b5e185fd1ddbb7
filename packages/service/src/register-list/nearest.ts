import { Prisma } from "@trunnion/db";
import type { Context } from "../context";
import { carReference } from "../record";
import type { Searched } from "../search-index";
import { standingRecordSql } from "../standing-record";
import { type CarChoice, choiceSql } from "./policy";

const sql = Prisma.sql;

/** Characters that a number beside the one looked for begins with alike. */
const ALIKE = 2;
/** Numbers shown on either side. */
const BESIDE = 2;

/** What comes nearest to a search that finds nothing. */
export type Nearest =
  /** Cars that fit with one word, as typed, left out; `search` is what then remains of it. */
  | { readonly kind: "word"; readonly without: string; readonly search: string; readonly cars: number }
  /** Cars that have all the words, the condition aside. */
  | { readonly kind: "condition"; readonly cars: number }
  /** A car whose number is next to the one looked for. */
  | { readonly kind: "number"; readonly reference: string; readonly chassis: string };

interface Less {
  readonly without: string;
  readonly search: string;
  readonly choice: CarChoice;
}

const quotedWhereNeeded = (said: string) => (/\s/.test(said) ? `"${said}"` : said);

/** The searches with one word, or one series named, left out each. */
function lesserOf({ search, ...choice }: CarChoice): readonly Less[] {
  if (search === undefined || search.words.length + search.named.length < 2) return [];
  const less = (without: string, left: Searched): Less => ({
    without,
    search: [
      ...left.words.map(({ said }) => quotedWhereNeeded(said)),
      ...left.named.map(({ said }) => said),
    ].join(" "),
    choice: { ...choice, search: left },
  });
  return [
    ...search.words.map((word) =>
      less(word.said, { ...search, words: search.words.filter((one) => one !== word) }),
    ),
    ...search.named.map((name) =>
      less(name.said, { ...search, named: search.named.filter((one) => one !== name) }),
    ),
  ];
}

async function countEach(ctx: Context, choices: readonly CarChoice[]): Promise<readonly number[]> {
  if (choices.length === 0) return [];
  const each = choices.map(
    (choice, place) =>
      sql`SELECT ${place}::int AS place, count(*)::int AS cars FROM car c WHERE ${choiceSql(ctx, choice)}`,
  );
  const rows = await ctx.db.$queryRaw<{ readonly place: number; readonly cars: number }[]>(
    Prisma.join(each, " UNION ALL "),
  );
  return choices.map((_, place) => rows.find((row) => row.place === place)?.cars ?? 0);
}

interface NumberRow {
  readonly chassis: string;
  readonly claim: number;
  readonly key: string;
}

/** Cars whose chassis numbers stand on either side of a number that nobody has. */
async function besideNumber(ctx: Context, { words, named }: Searched): Promise<readonly Nearest[]> {
  const [word] = words;
  if (words.length !== 1 || named.length > 0 || !word || !/\d/.test(word.key)) return [];
  const key = word.number ?? word.key.toUpperCase();
  const side = (
    is: Prisma.Sql,
    order: Prisma.Sql,
  ) => sql`(SELECT c.chassis, c.claim, c.chassis_key AS key FROM car c
    WHERE ${standingRecordSql} AND c.chassis_key ${is} ${key} ORDER BY c.chassis_key ${order}, c.claim LIMIT ${BESIDE}::int)`;
  const rows = await ctx.db.$queryRaw<NumberRow[]>(
    sql`SELECT * FROM (${side(sql`<`, sql`DESC`)} UNION ALL ${side(sql`>`, sql`ASC`)}) AS beside ORDER BY key, claim`,
  );
  return rows
    .filter((row) => row.key.slice(0, ALIKE) === key.slice(0, ALIKE))
    .map((row) => ({ kind: "number", reference: carReference(row), chassis: row.chassis }));
}

/** What comes nearest to a choice that no car fits; nothing where nothing does. Only what is found by somebody is named. */
export async function nearestOf(ctx: Context, choice: CarChoice): Promise<readonly Nearest[]> {
  if (choice.search === undefined) return [];
  const lesser = lesserOf(choice);
  const { condition, ...wordsAlone } = choice;
  const counts = await countEach(ctx, [
    ...lesser.map((less) => less.choice),
    ...(condition === undefined ? [] : [wordsAlone]),
  ]);
  const fewer: readonly Nearest[] = lesser.map(({ without, search }, place) => ({
    kind: "word",
    without,
    search,
    cars: counts[place] ?? 0,
  }));
  const aside: readonly Nearest[] =
    condition === undefined ? [] : [{ kind: "condition", cars: counts[lesser.length] ?? 0 }];
  const found = [...fewer, ...aside].filter((one) => !("cars" in one) || one.cars > 0);
  return [...found, ...(await besideNumber(ctx, choice.search))];
}
