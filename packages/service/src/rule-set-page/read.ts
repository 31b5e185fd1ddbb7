import {
  type Characteristic,
  type CharacteristicBook,
  type Check,
  type CheckOnSheet,
  canonicalJson,
  checksForCar,
  limitChecks,
  refused,
  type SayOptions,
  sayCondition,
  sayLimits,
} from "@trunnion/register";
import { assessAll } from "../assessment";
import { findCar } from "../car";
import { bookOf } from "../characteristic";
import type { ClubFacts, Context } from "../context";
import {
  type ClassStanding,
  carViewOf,
  classesOf,
  classStandings,
  type RuledClass,
  sayOptions,
} from "../event-class";
import { checksOf, limitsFor, limitsOf, type StoredLimit } from "../rule-set/read";
import { mayEditRules } from "../rule-set-draft/policy";

/** One version of a rule set. */
export interface RuleSetFacts {
  readonly id: string;
  readonly slug: string;
  readonly version: number;
  readonly name: string;
  readonly edition: string;
  readonly status: "draft" | "current" | "superseded";
  readonly revision: number;
  /** Version it was copied from; missing for none. */
  readonly from?: number;
}

/** A version with everything in it, in words, and what differs from the one it was copied from. */
export interface RuleSetPage {
  readonly club: ClubFacts;
  readonly facts: RuleSetFacts;
  readonly versions: readonly RuleSetFacts[];
  readonly checks: readonly (Check & { readonly said: string })[];
  readonly classes: readonly RuledClass[];
  readonly limits: readonly (StoredLimit & {
    readonly label: string;
    readonly said: string;
    readonly className: string;
  })[];
  /** What was added, taken out or changed since, each a line. */
  readonly differences: readonly {
    readonly kind: "added" | "taken out" | "changed";
    readonly what: string;
  }[];
  /** The club's own characteristics and series, for the form of a condition. */
  readonly own: readonly Characteristic[];
  readonly series: readonly { readonly slug: string; readonly name: string }[];
  readonly mayEdit: boolean;
}

const factFields = {
  id: true,
  slug: true,
  version: true,
  name: true,
  edition: true,
  status: true,
  revision: true,
  copiedFrom: { select: { version: true } },
} as const;

type FactRow = Omit<RuleSetFacts, "from"> & { readonly copiedFrom: { readonly version: number } | null };
const factsOf = ({ copiedFrom, ...facts }: FactRow): RuleSetFacts => ({
  ...facts,
  ...(copiedFrom ? { from: copiedFrom.version } : {}),
});

/** Every version of every rule set, the latest first. */
export async function listRuleSets(ctx: Context): Promise<readonly RuleSetFacts[]> {
  const rows = await ctx.db.ruleSet.findMany({
    select: factFields,
    orderBy: [{ name: "asc" }, { version: "desc" }],
    take: 500,
  });
  return rows.map(factsOf);
}

async function versionOf(
  ctx: Context,
  slug: string,
  version: number | undefined,
): Promise<readonly RuleSetFacts[]> {
  const rows = await ctx.db.ruleSet.findMany({
    where: { slug },
    select: factFields,
    orderBy: { version: "desc" },
  });
  const known = rows.map(factsOf);
  const wanted =
    known.find((one) => one.version === version) ??
    (version === undefined ? (known.find(({ status }) => status === "current") ?? known[0]) : undefined);
  if (!wanted) {
    const all = await ctx.db.ruleSet.findMany({ select: { slug: true }, distinct: ["slug"], take: 20 });
    throw refused("RULE_SET_NOT_FOUND", { ruleSet: slug, known: all.map((one) => one.slug) });
  }
  return [wanted, ...known];
}

/** What differs between two lists of rows by their codes. */
function differencesOf<T>(
  before: ReadonlyMap<string, T>,
  after: ReadonlyMap<string, T>,
  name: (row: T) => string,
): RuleSetPage["differences"] {
  const added = [...after].filter(([code]) => !before.has(code));
  const gone = [...before].filter(([code]) => !after.has(code));
  const changed = [...after].filter(([code, row]) => {
    const was = before.get(code);
    return was !== undefined && canonicalJson(was) !== canonicalJson(row);
  });
  return [
    ...added.map(([, row]) => ({ kind: "added" as const, what: name(row) })),
    ...gone.map(([, row]) => ({ kind: "taken out" as const, what: name(row) })),
    ...changed.map(([code, row]) => {
      const was = before.get(code);
      const [from, to] = [was === undefined ? "" : name(was), name(row)];
      return { kind: "changed" as const, what: from === to ? to : `${from} → ${to}` };
    }),
  ];
}

async function contentOf(ctx: Context, id: string, book: CharacteristicBook, say: SayOptions) {
  const classes = await classesOf(ctx, id, { book, say });
  const limits = (await limitsOf(ctx, id)).map((limit) => {
    const characteristic = book.find(limit.characteristic);
    const where = limit.side === "whole" ? "" : `, ${limit.side}`;
    return {
      ...limit,
      label: `${characteristic?.label ?? limit.characteristic}${where}`,
      said: characteristic ? sayLimits(characteristic, limit.limits, ctx.club.unitSystem) : "",
      className: classes.find((one) => one.id === limit.classId)?.code ?? "",
    };
  });
  return { checks: await checksOf(ctx, id), classes, limits };
}

type Content = Awaited<ReturnType<typeof contentOf>>;

function contentDifferences(before: Content, after: Content): RuleSetPage["differences"] {
  const checks = ({ checks: list }: Content) => new Map(list.map((check) => [check.id, check]));
  const classes = ({ classes: list }: Content) =>
    new Map(list.map(({ code, name, said }) => [code, { code, name, said }]));
  const limits = ({ limits: list }: Content) =>
    new Map(
      list.map(({ characteristic, side, className, label, said, source }) => [
        `${characteristic} ${side} ${className}`,
        { label, said, className, source },
      ]),
    );
  return [
    ...differencesOf(
      limits(before),
      limits(after),
      ({ label, said, className }) =>
        `Limit: ${label}${className === "" ? "" : `, class ${className}`}: ${said}`,
    ),
    ...differencesOf(classes(before), classes(after), ({ code, name }) => `Class ${code} ${name}`),
    ...differencesOf(checks(before), checks(after), ({ text }) => `Check: ${text}`),
  ];
}

/**
 * A version of a rule set; the current one where no version is said.
 *
 * @throws Refusal RULE_SET_NOT_FOUND
 */
export async function ruleSetPage(
  ctx: Context,
  input: { readonly ruleSet: string; readonly version?: number },
): Promise<RuleSetPage> {
  const [facts, ...versions] = await versionOf(ctx, input.ruleSet, input.version);
  if (!facts) throw new Error("a version was neither found nor refused");
  const book = await bookOf(ctx);
  const { series, say } = await sayOptions(ctx);
  const content = await contentOf(ctx, facts.id, book, say);
  const from = versions.find(({ version }) => version === facts.from);
  const differences = from ? contentDifferences(await contentOf(ctx, from.id, book, say), content) : [];
  const own = await ctx.db.characteristic.findMany({ select: { key: true } });
  const ownKeys = new Set(own.map(({ key }) => key));
  return {
    club: ctx.club,
    facts,
    versions,
    ...content,
    checks: content.checks.map((check) => ({ ...check, said: sayCondition(check.when, book, say) })),
    differences,
    own: book.all.filter(({ key }) => ownKeys.has(key)),
    series,
    mayEdit: mayEditRules(ctx.actor),
  };
}

/** What one car meets under a rule set: its classes with the reasons, and the checks that follow. */
export interface CarInRuleSet {
  readonly facts: RuleSetFacts;
  readonly car: { readonly reference: string; readonly chassis: string };
  readonly classes: readonly ClassStanding[];
  /** Checks that not every car gets, each with why. */
  readonly checks: readonly CheckOnSheet[];
  /** How many every car gets. */
  readonly always: number;
}

/**
 * One car under a version of a rule set today: which classes it may enter and what would have to be put back, and the
 * checks that follow from it. `classCode` chooses the limits of a class.
 *
 * @throws Refusal RULE_SET_NOT_FOUND, CAR_NOT_FOUND
 */
export async function carInRuleSet(
  ctx: Context,
  input: {
    readonly ruleSet: string;
    readonly version?: number;
    readonly car: string;
    readonly classCode?: string;
  },
): Promise<CarInRuleSet> {
  const [facts] = await versionOf(ctx, input.ruleSet, input.version);
  if (!facts) throw new Error("a version was neither found nor refused");
  const record = await findCar(ctx, input.car);
  const book = await bookOf(ctx);
  const { say } = await sayOptions(ctx);
  const [assessment] = await assessAll(ctx, [record], book, ctx.today);
  if (!assessment) throw new Error("a record was not assessed");
  const { state } = assessment;
  const view = carViewOf(assessment, { eventDay: ctx.today, book });
  const { checks, classes, limits } = await contentOf(ctx, facts.id, book, say);
  const classId = classes.find(({ code }) => code === input.classCode)?.id ?? "";
  const system = ctx.club.unitSystem;
  const asked = limitChecks(limitsFor(limits, classId), { state, book, system });
  const all = checksForCar([...checks, ...asked], view, book);
  const special = all.filter(({ reason }) => reason !== "always");
  return {
    facts,
    car: { reference: record.reference, chassis: record.chassis },
    classes: classStandings(classes, view, { book, say }),
    checks: special,
    always: all.length - special.length,
  };
}
