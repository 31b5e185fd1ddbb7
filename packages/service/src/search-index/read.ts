import { Prisma } from "@trunnion/db";
import type { Context } from "../context";
import { maySeeKeepers } from "../keeper/policy";
import { nearWords } from "./policy";
import { readSearch, type Searched } from "./said";

/** A word that no car has to the letter, and what was looked for instead; nothing where no word is like it. */
export interface Correction {
  readonly word: string;
  readonly as: readonly string[];
}

/** Reads what somebody looks for in the register of the club. */
export async function searchedIn(ctx: Context, search: string): Promise<Searched> {
  const rows = await ctx.db.series.findMany({
    select: {
      slug: true,
      name: true,
      numberPrefix: true,
      numberDigits: true,
      marque: { select: { name: true } },
    },
    orderBy: [{ ordinal: "asc" }, { slug: "asc" }],
  });
  return readSearch(
    search,
    rows.map(({ marque, ...series }) => ({ ...series, marque: marque.name })),
  );
}

/** The words of a search that are not in the club's records, with those they are taken for. */
export async function correctionsOf(ctx: Context, { words }: Searched): Promise<readonly Correction[]> {
  const corrections: Correction[] = [];
  for (const word of words) {
    const query = nearWords(word, maySeeKeepers(ctx));
    const near = query === undefined ? [] : await ctx.db.$queryRaw<{ word: string }[]>(query);
    if (near.length > 0) corrections.push({ word: word.folded, as: near.map((one) => one.word) });
  }
  return corrections;
}

const LEFT = Prisma.sql`SELECT count(*)::int AS count FROM (SELECT DISTINCT car_id FROM stale_car) AS car`;

/** How many changed cars are not worked out yet. */
export async function staleCars({ db }: Context): Promise<number> {
  const [left] = await db.$queryRaw<{ count: number }[]>(LEFT);
  return left?.count ?? 0;
}
