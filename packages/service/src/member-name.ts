import type { Context } from "./context";

/** Names of members by their ids as persons, of those who left too; nobody's (an import, the command line) are left out. */
export async function memberNames(
  ctx: Context,
  personIds: readonly (string | null)[],
): Promise<ReadonlyMap<string, string>> {
  const asked = [...new Set(personIds.filter((id) => id !== null))];
  if (asked.length === 0) return new Map();
  const rows = await ctx.db.membership.findMany({
    where: { personId: { in: asked } },
    select: { personId: true, person: { select: { name: true } } },
  });
  return new Map(rows.map(({ personId, person }) => [personId, person.name]));
}
