import type { Prisma } from "@trunnion/db";
import type { Check, Condition } from "@trunnion/register";
import { v7 as uuid } from "uuid";
import type { Context } from "../context";
import { writeJournal } from "../journal";
import { requireRole } from "../role";

export interface AddRuleSetInput {
  readonly slug: string;
  readonly name: string;
  readonly edition: string;
  readonly note?: string;
  readonly checks: readonly Check[];
  readonly classes: readonly {
    readonly code: string;
    readonly name: string;
    readonly eligibility: Condition;
  }[];
}

const json = (part: object) => part as unknown as Prisma.InputJsonValue;

/** A check as the database keeps it. */
export function checkColumns(check: Check, ordinal: number) {
  return {
    code: check.id,
    ordinal,
    station: check.station,
    assembly: check.assembly,
    text: check.text,
    short: check.short ?? null,
    method: check.method ?? null,
    criterion: json(check.criterion),
    condition: json(check.when),
    why: check.why ?? null,
    caution: check.caution ?? null,
    sourceTitle: check.source.title,
    sourceEdition: check.source.edition ?? null,
    sourceClause: check.source.clause ?? null,
  };
}

/** Adds the next version of a rule set with its checks and classes, and tells its id. */
export async function addRuleSet(ctx: Context, input: AddRuleSetInput): Promise<string> {
  requireRole(ctx.actor, "registrar", "scrutineer", "fleetManager");
  const { slug, name, edition } = input;
  const latest = await ctx.db.ruleSet.findFirst({ where: { slug }, orderBy: { version: "desc" } });
  const version = (latest?.version ?? 0) + 1;
  const id = uuid();
  const note = input.note ?? null;
  await ctx.db.ruleSet.updateMany({ where: { slug, status: "current" }, data: { status: "superseded" } });
  await ctx.db.ruleSet.create({
    data: { id, slug, version, name, edition, note, status: "current", copiedFromId: latest?.id ?? null },
  });
  await ctx.db.ruleCheck.createMany({
    data: input.checks.map((check, index) => ({ ...checkColumns(check, index + 1), ruleSetId: id })),
  });
  await ctx.db.eventClass.createMany({
    data: input.classes.map((one) => ({ ...one, ruleSetId: id, eligibility: json(one.eligibility) })),
  });
  const after = { slug, version, name, edition, checks: input.checks.length, classes: input.classes.length };
  await writeJournal(ctx, [{ action: "ruleSet.add", noun: "ruleSet", nounId: id, after }]);
  return id;
}
