import type { Context } from "../context";
import { maySeeKeepers } from "../keeper/policy";
import { nearWords, readWords } from "./policy";

/** A word that no car has to the letter, and what was looked for instead; nothing where no word is like it. */
export interface Correction {
  readonly word: string;
  readonly as: readonly string[];
}

/** The words of a search that are not in the club's records, with those they are taken for. */
export async function correctionsOf(ctx: Context, search: string): Promise<readonly Correction[]> {
  const corrections: Correction[] = [];
  for (const word of readWords(search)) {
    const query = nearWords(word, maySeeKeepers(ctx));
    const near = query === undefined ? [] : await ctx.db.$queryRaw<{ word: string }[]>(query);
    if (near.length > 0) corrections.push({ word: word.folded, as: near.map((one) => one.word) });
  }
  return corrections;
}
