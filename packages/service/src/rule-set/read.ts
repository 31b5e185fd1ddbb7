import { type Check, checkSchema } from "@trunnion/register";
import type { Context } from "../context";
import { readStored } from "../stored-row";

/** Drops what the database says is empty, so that an optional key is absent. */
function filled<T extends object>(parts: T): object {
  return Object.fromEntries(Object.entries(parts).filter(([, part]) => part !== null));
}

/**
 * The checks of a rule set, in walking order within their stations. A row that does not read as a check
 * is a bug and stops the reading: a check left out silently would look like a pass.
 */
export async function checksOf(ctx: Context, ruleSetId: string): Promise<readonly Check[]> {
  const rows = await ctx.db.ruleCheck.findMany({ where: { ruleSetId }, orderBy: { ordinal: "asc" } });
  return rows.map((row) =>
    readStored(
      checkSchema,
      {
        id: row.code,
        station: row.station,
        assembly: row.assembly,
        text: row.text,
        criterion: row.criterion,
        when: row.condition,
        ...filled({ method: row.method, why: row.why, caution: row.caution }),
        source: {
          title: row.sourceTitle,
          ...filled({ edition: row.sourceEdition, clause: row.sourceClause }),
        },
      },
      `check "${row.code}"`,
    ),
  );
}
