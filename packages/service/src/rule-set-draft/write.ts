import type { Prisma } from "@trunnion/db";
import {
  assemblies,
  type Check,
  checkSchema,
  conditionSchema,
  Invalid,
  Problems,
  parseLimit,
  refused,
  sides,
  staleFigures,
  stations,
  whyProblems,
} from "@trunnion/register";
import { v7 as uuid } from "uuid";
import { z } from "zod";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { lineInput } from "../entry-input";
import { writeJournal } from "../journal";
import { requireRole } from "../role";
import { checkColumns } from "../rule-set/write";
import { ruleKeepers } from "./policy";

const json = (part: object) => part as unknown as Prisma.InputJsonValue;

/** A version of a rule set, and the revision its form was opened with. */
export const draftRef = z.object({
  ruleSet: lineInput(60).min(1),
  version: z.coerce.number().int().min(1),
  revision: z.coerce.number().int().min(1),
});
export type DraftRef = z.infer<typeof draftRef>;

/** Opens a draft for changing; nobody else until this transaction ends. */
async function openDraft(ctx: Context, { ruleSet, version, revision }: DraftRef) {
  requireRole(ctx.actor, ...ruleKeepers);
  await ctx.db.$queryRaw`
    SELECT 1 FROM rule_set WHERE club_id = ${ctx.club.id}::uuid AND slug = ${ruleSet} FOR UPDATE`;
  const draft = await ctx.db.ruleSet.findFirst({ where: { slug: ruleSet, version } });
  if (!draft) throw refused("RULE_SET_NOT_FOUND", { ruleSet: `${ruleSet}, version ${version}`, known: [] });
  if (draft.status !== "draft")
    throw refused("RULE_SET_NOT_DRAFT", { ruleSet, version, status: draft.status });
  if (draft.revision !== revision) throw refused("RULE_SET_MOVED_ON", { ruleSet, version });
  return draft;
}

type Draft = Awaited<ReturnType<typeof openDraft>>;

/** Counts the change and notes it down. */
async function noteChange(
  ctx: Context,
  draft: Draft,
  change: { readonly before?: object; readonly after?: object },
): Promise<void> {
  const where = { clubId_id: { clubId: ctx.club.id, id: draft.id } };
  await ctx.db.ruleSet.update({ where, data: { revision: draft.revision + 1 } });
  await writeJournal(ctx, [
    {
      action: "ruleSet.change",
      noun: "ruleSet",
      nounId: draft.id,
      ...(change.before ? { before: { ...change.before } } : {}),
      after: { slug: draft.slug, version: draft.version, ...change.after },
    },
  ]);
}

export const copyRuleSetInput = z.object({
  ruleSet: lineInput(60).min(1),
  /** Version copied. */
  version: z.coerce.number().int().min(1),
  /** Edition of the copy: next year. */
  edition: lineInput(60).min(1, "say which edition or year"),
});
export type CopyRuleSetInput = z.infer<typeof copyRuleSetInput>;

/**
 * Copies a version with its checks, classes and limits into a draft, and tells the draft's number.
 *
 * @throws Refusal ROLE_NEEDED, RULE_SET_NOT_FOUND, RULE_SET_DRAFT_EXISTS
 */
export async function copyRuleSet(ctx: Context, input: CopyRuleSetInput): Promise<number> {
  requireRole(ctx.actor, ...ruleKeepers);
  const { ruleSet: slug, edition } = input;
  await ctx.db.$queryRaw`
    SELECT 1 FROM rule_set WHERE club_id = ${ctx.club.id}::uuid AND slug = ${slug} FOR UPDATE`;
  const versions = await ctx.db.ruleSet.findMany({
    where: { slug },
    include: { checks: true, classes: true, limits: true },
    orderBy: { version: "desc" },
  });
  const from = versions.find(({ version }) => version === input.version);
  if (!from) throw refused("RULE_SET_NOT_FOUND", { ruleSet: `${slug}, version ${input.version}`, known: [] });
  const open = versions.find(({ status }) => status === "draft");
  if (open) throw refused("RULE_SET_DRAFT_EXISTS", { ruleSet: slug, version: open.version });
  const id = uuid();
  const version = (versions[0]?.version ?? 0) + 1;
  const { name, note } = from;
  await ctx.db.ruleSet.create({
    data: { id, slug, version, name, edition, note, status: "draft", copiedFromId: from.id },
  });
  await ctx.db.ruleCheck.createMany({
    data: from.checks.map(({ criterion, condition, ...row }) => ({
      ...row,
      id: uuid(),
      ruleSetId: id,
      criterion: json(criterion as object),
      condition: json(condition as object),
    })),
  });
  const classes = new Map(from.classes.map((row) => [row.id, uuid()]));
  await ctx.db.eventClass.createMany({
    data: from.classes.map(({ eligibility, ...row }) => ({
      ...row,
      id: classes.get(row.id) ?? uuid(),
      ruleSetId: id,
      eligibility: json(eligibility as object),
    })),
  });
  await ctx.db.ruleLimit.createMany({
    data: from.limits.map((row) => ({
      ...row,
      id: uuid(),
      ruleSetId: id,
      eventClassId: row.eventClassId === null ? null : (classes.get(row.eventClassId) ?? null),
    })),
  });
  const after = { slug, version, edition, from: from.version, checks: from.checks.length };
  await writeJournal(ctx, [{ action: "ruleSet.copy", noun: "ruleSet", nounId: id, after }]);
  return version;
}

const short = lineInput(200).default("");

export const putCheckInput = draftRef.extend({
  /** Code of the check changed; empty for a new one. */
  was: lineInput(80).default(""),
  code: lineInput(80).min(1, "give it a code, such as front-tow-eye"),
  station: z.enum(stations),
  assembly: z.enum(assemblies),
  text: lineInput(240).min(1, "say what to look at"),
  /** The same in a line of the printed sheet; empty for the text itself. */
  short: lineInput(60).default(""),
  method: lineInput(400).default(""),
  criterion: z.enum(["seen", "measured", "datedItem", "document"]),
  /** Characteristic read, by its key; empty for none. */
  characteristic: short,
  perCorner: z.enum(["yes", "no"]).default("no"),
  /** What makes it pass, for what is measured or dated. */
  passIf: short,
  condition: conditionSchema,
  why: lineInput(240).default(""),
  caution: lineInput(240).default(""),
  sourceTitle: lineInput(200).min(1, "say where it comes from; common practice will do"),
  sourceEdition: lineInput(60).default(""),
  sourceClause: lineInput(60).default(""),
});
export type PutCheckInput = z.infer<typeof putCheckInput>;

const given = <K extends string>(name: K, text: string) =>
  (text === "" ? {} : { [name]: text }) as { readonly [key in K]?: string };

function criterionOf(input: PutCheckInput, problems: Problems): Check["criterion"] {
  const { criterion: kind, characteristic, passIf: text } = input;
  if (kind === "seen" || kind === "document") return { kind };
  if (text === "") problems.add("passIf", "say what makes it pass");
  const read = given("characteristic", characteristic);
  if (kind === "datedItem") return { kind, ...read, text };
  return { kind, ...read, ...(input.perCorner === "yes" ? { perCorner: true } : {}), text };
}

/** Adds a check to a draft or changes one. @throws Refusal ROLE_NEEDED, RULE_SET_…; Invalid at the field */
export async function putCheck(ctx: Context, input: PutCheckInput): Promise<void> {
  const draft = await openDraft(ctx, input);
  const problems = new Problems();
  const book = await bookOf(ctx);
  if (input.characteristic !== "" && !book.find(input.characteristic))
    problems.add("characteristic", "there is no such characteristic");
  if (input.condition.op !== "always" && input.why === "")
    problems.add("why", "say in one line why it is on a car's sheet; {key} is replaced by the car's value");
  const unfit = whyProblems(input.why, book);
  if (unfit.length > 0)
    problems.add(
      "why",
      `${unfit.join(", ")} cannot be filled in: write a characteristic's key, {front.camber}, or a figure, {work:front.tyre.rim/verdict}`,
    );
  const check = {
    id: input.code,
    station: input.station,
    assembly: input.assembly,
    text: input.text,
    ...given("short", input.short),
    ...given("method", input.method),
    criterion: criterionOf(input, problems),
    when: input.condition,
    ...given("why", input.why),
    ...given("caution", input.caution),
    source: {
      title: input.sourceTitle,
      ...given("edition", input.sourceEdition),
      ...given("clause", input.sourceClause),
    },
  };
  const stale = staleFigures(check);
  if (stale.length > 0)
    problems.add(
      "short",
      `the sheet would say ${stale.join(", ")}, which neither text, method nor criterion says: change it with them`,
    );
  problems.throwIfAny();
  const read = checkSchema.safeParse(check);
  if (!read.success)
    throw new Invalid(read.error.issues.map(({ path, message }) => ({ field: fieldOf(path[0]), message })));
  const rows = await ctx.db.ruleCheck.findMany({
    where: { ruleSetId: draft.id },
    select: { id: true, code: true, ordinal: true, text: true },
  });
  const before = rows.find(({ code }) => code === input.was);
  if (input.was !== "" && !before) throw refused("RULE_SET_ROW_NOT_FOUND", { what: "check" });
  if (rows.some(({ code, id }) => code === input.code && id !== before?.id))
    throw new Invalid([{ field: "code", message: "another check of this rule set has this code" }]);
  const ordinal = before?.ordinal ?? Math.max(0, ...rows.map((row) => row.ordinal)) + 1;
  const data = checkColumns(read.data, ordinal);
  if (before)
    await ctx.db.ruleCheck.update({ where: { clubId_id: { clubId: ctx.club.id, id: before.id } }, data });
  else await ctx.db.ruleCheck.create({ data: { ...data, ruleSetId: draft.id } });
  await noteChange(ctx, draft, {
    ...(before ? { before: { check: before.code, text: before.text } } : {}),
    after: { check: input.code, text: input.text },
  });
}

const fieldOf = (part: PropertyKey | undefined) => (part === "id" ? "code" : String(part ?? "text"));

export const putClassInput = draftRef.extend({
  /** Code of the class changed; empty for a new one. */
  was: lineInput(12).default(""),
  code: lineInput(12).min(1, "give it a code"),
  name: lineInput(80).min(1, "give it a name"),
  condition: conditionSchema,
});
export type PutClassInput = z.infer<typeof putClassInput>;

/** Adds a class to a draft or changes one. @throws as putCheck */
export async function putClass(ctx: Context, input: PutClassInput): Promise<void> {
  const draft = await openDraft(ctx, input);
  const rows = await ctx.db.eventClass.findMany({ where: { ruleSetId: draft.id } });
  const before = rows.find(({ code }) => code === input.was);
  if (input.was !== "" && !before) throw refused("RULE_SET_ROW_NOT_FOUND", { what: "class" });
  if (rows.some(({ code, id }) => code === input.code && id !== before?.id))
    throw new Invalid([{ field: "code", message: "another class of this rule set has this code" }]);
  const data = { code: input.code, name: input.name, eligibility: json(input.condition) };
  if (before)
    await ctx.db.eventClass.update({ where: { clubId_id: { clubId: ctx.club.id, id: before.id } }, data });
  else await ctx.db.eventClass.create({ data: { ...data, ruleSetId: draft.id } });
  await noteChange(ctx, draft, {
    ...(before ? { before: { class: `${before.code} ${before.name}` } } : {}),
    after: { class: `${input.code} ${input.name}` },
  });
}

export const putLimitInput = draftRef.extend({
  /** Id of the limit changed; empty for a new one. */
  id: z.union([z.literal(""), z.uuid()]).default(""),
  characteristic: lineInput(120).min(1, "choose a characteristic"),
  side: z.enum(sides).default("whole"),
  /** Code of the class it is for; empty for all. */
  classCode: lineInput(12).default(""),
  lower: short,
  upper: short,
  sourceTitle: lineInput(200).min(1, "say where it comes from; house rule will do"),
  sourceClause: lineInput(60).default(""),
});
export type PutLimitInput = z.infer<typeof putLimitInput>;

/** Sets a limit in a draft, in the trade's notation. @throws as putCheck */
export async function putLimit(ctx: Context, input: PutLimitInput): Promise<void> {
  const draft = await openDraft(ctx, input);
  const book = await bookOf(ctx);
  const problems = new Problems();
  const named =
    book.find(input.characteristic) ?? book.all.find(({ label }) => label === input.characteristic);
  if (named?.kind !== "quantity")
    throw new Invalid([
      {
        field: "characteristic",
        message: "name a characteristic that is a quantity, such as Front ride height",
      },
    ]);
  const read = (field: "lower" | "upper"): number | null => {
    if (input[field] === "") return null;
    const parsed = parseLimit(named, input[field]);
    if (parsed.ok) return parsed.si;
    problems.add(field, parsed.problem.message);
    return null;
  };
  const [lower, upper] = [read("lower"), read("upper")];
  if (input.lower === "" && input.upper === "") problems.add("lower", "give a lower or an upper limit");
  if (lower !== null && upper !== null && lower > upper)
    problems.add("upper", "the upper limit is below the lower");
  const classes = await ctx.db.eventClass.findMany({ where: { ruleSetId: draft.id } });
  const eventClass = classes.find(({ code }) => code === input.classCode);
  if (input.classCode !== "" && !eventClass) problems.add("classCode", "there is no such class");
  problems.throwIfAny();
  const data = {
    characteristic: named.key,
    side: named.sided ? input.side : ("whole" as const),
    eventClassId: eventClass?.id ?? null,
    lower,
    upper,
    sourceTitle: input.sourceTitle,
    sourceClause: input.sourceClause === "" ? null : input.sourceClause,
  };
  const before =
    input.id === ""
      ? null
      : await ctx.db.ruleLimit.findFirst({ where: { id: input.id, ruleSetId: draft.id } });
  if (input.id !== "" && !before) throw refused("RULE_SET_ROW_NOT_FOUND", { what: "limit" });
  if (before)
    await ctx.db.ruleLimit.update({ where: { clubId_id: { clubId: ctx.club.id, id: before.id } }, data });
  else await ctx.db.ruleLimit.create({ data: { ...data, ruleSetId: draft.id } });
  const said = (row: { lower: number | null; upper: number | null }) => ({
    lower: row.lower,
    upper: row.upper,
  });
  await noteChange(ctx, draft, {
    ...(before ? { before: { characteristic: before.characteristic, ...said(before) } } : {}),
    after: { characteristic: named.key, ...said(data), class: input.classCode },
  });
}

export const removeRowInput = draftRef.extend({
  kind: z.enum(["check", "class", "limit"]),
  /** Code of the check or class, id of the limit. */
  row: lineInput(80).min(1),
});
export type RemoveRowInput = z.infer<typeof removeRowInput>;

/** Takes a check, a class or a limit out of a draft. A class takes its own limits along. */
export async function removeRow(ctx: Context, input: RemoveRowInput): Promise<void> {
  const draft = await openDraft(ctx, input);
  const { kind, row } = input;
  const ruleSetId = draft.id;
  const deleted = async () => {
    if (kind === "check") return ctx.db.ruleCheck.deleteMany({ where: { ruleSetId, code: row } });
    if (kind === "limit") return ctx.db.ruleLimit.deleteMany({ where: { ruleSetId, id: row } });
    const where = { ruleSetId, code: row };
    await ctx.db.ruleLimit.deleteMany({ where: { ruleSetId, eventClass: { is: where } } });
    return ctx.db.eventClass.deleteMany({ where });
  };
  const { count } = await deleted();
  if (count === 0) throw refused("RULE_SET_ROW_NOT_FOUND", { what: kind });
  await noteChange(ctx, draft, { before: { [kind]: row }, after: { [kind]: "taken out" } });
}

/** Makes a draft the version in force for events planned from now on; the one before is superseded. */
export async function makeRuleSetCurrent(ctx: Context, ref: DraftRef): Promise<void> {
  const draft = await openDraft(ctx, ref);
  const { slug, version } = draft;
  await ctx.db.ruleSet.updateMany({ where: { slug, status: "current" }, data: { status: "superseded" } });
  await ctx.db.ruleSet.update({
    where: { clubId_id: { clubId: ctx.club.id, id: draft.id } },
    data: { status: "current" },
  });
  const after = { slug, version, edition: draft.edition };
  await writeJournal(ctx, [{ action: "ruleSet.makeCurrent", noun: "ruleSet", nounId: draft.id, after }]);
}

/** Throws a draft away. Nothing was checked by it, so nothing of an event goes. */
export async function discardRuleSet(ctx: Context, ref: DraftRef): Promise<void> {
  const draft = await openDraft(ctx, ref);
  const where = { ruleSetId: draft.id };
  await ctx.db.ruleLimit.deleteMany({ where });
  await ctx.db.eventClass.deleteMany({ where });
  await ctx.db.ruleCheck.deleteMany({ where });
  await ctx.db.ruleSet.delete({ where: { clubId_id: { clubId: ctx.club.id, id: draft.id } } });
  const before = { slug: draft.slug, version: draft.version };
  await writeJournal(ctx, [{ action: "ruleSet.discard", noun: "ruleSet", nounId: draft.id, before }]);
}
