import type { Context } from "../context";

/** A place where the chain does not hold: something was changed behind the journal's back. */
export interface ChainBreak {
  readonly sequence: number;
  readonly problem: "hash" | "link" | "gap";
}

/** Works every hash of the club's journal out again; empty when the chain holds. */
export async function verifyJournal(ctx: Context): Promise<readonly ChainBreak[]> {
  const rows = await ctx.db.$queryRaw<{ sequence: bigint; problem: ChainBreak["problem"] }[]>`
    WITH chain AS (
      SELECT sequence, hash, previous_hash, journal_entry_hash(j) AS expected,
             lag(hash, 1, '') OVER (ORDER BY sequence) AS hash_before,
             row_number() OVER (ORDER BY sequence) AS place
      FROM journal_entry j
      WHERE club_id = ${ctx.club.id}::uuid)
    SELECT sequence, CASE WHEN hash <> expected THEN 'hash' WHEN previous_hash <> hash_before THEN 'link' ELSE 'gap' END AS problem
    FROM chain
    WHERE hash <> expected OR previous_hash <> hash_before OR sequence <> place
    ORDER BY sequence
    LIMIT 100`;
  return rows.map(({ sequence, problem }) => ({ sequence: Number(sequence), problem }));
}
