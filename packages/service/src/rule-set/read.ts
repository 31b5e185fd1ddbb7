import { type Check, checkSchema, type RuleLimit } from "@trunnion/register";
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
        ...filled({ short: row.short, method: row.method, why: row.why, caution: row.caution }),
        source: {
          title: row.sourceTitle,
          ...filled({ edition: row.sourceEdition, clause: row.sourceClause }),
        },
      },
      `check "${row.code}"`,
    ),
  );
}

/** A limit of a rule set, with the class it is for. */
export interface StoredLimit extends RuleLimit {
  readonly id: string;
  /** Id of the class; empty for all. */
  readonly classId: string;
}

/** The limits of a rule set, in the order they were written. */
export async function limitsOf(ctx: Context, ruleSetId: string): Promise<readonly StoredLimit[]> {
  const rows = await ctx.db.ruleLimit.findMany({ where: { ruleSetId }, orderBy: { id: "asc" } });
  return rows.map((row) => ({
    id: row.id,
    classId: row.eventClassId ?? "",
    characteristic: row.characteristic,
    side: row.side,
    limits: {
      ...(row.lower === null ? {} : { lower: row.lower }),
      ...(row.upper === null ? {} : { upper: row.upper }),
    },
    source: {
      title: row.sourceTitle,
      ...(row.sourceClause === null ? {} : { clause: row.sourceClause }),
    },
  }));
}

/** The limits for a car in a class: those for all, and its class's own in their place. */
export function limitsFor(limits: readonly StoredLimit[], classId: string): readonly StoredLimit[] {
  const own = limits.filter((limit) => limit.classId !== "" && limit.classId === classId);
  const taken = new Set(own.map(({ characteristic, side }) => `${characteristic} ${side}`));
  const general = limits.filter((limit) => limit.classId === "");
  return [...own, ...general.filter(({ characteristic, side }) => !taken.has(`${characteristic} ${side}`))];
}
