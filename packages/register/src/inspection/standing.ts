import type { Added, DecisionOutcome, EntryDecision, Finding, FindingResult } from "./inspection";

/**
 * The records whose place no other takes, in the order given. Records that take each other's place (a device gone wrong)
 * all stand: nothing that was found is dropped.
 *
 * @example standing([{ key: "a", replaces: [] }, { key: "b", replaces: ["a"] }]) // => [{ key: "b", replaces: ["a"] }]
 */
export function standing<T extends Added>(records: readonly T[]): readonly T[] {
  const replaced = new Set(records.flatMap(({ replaces }) => replaces));
  const left = records.filter(({ key }) => !replaced.has(key));
  const reached = new Set<string>();
  const byKey = new Map(records.map((record) => [record.key, record]));
  const open = left.map(({ key }) => key);
  for (let key = open.pop(); key !== undefined; key = open.pop()) {
    if (reached.has(key)) continue;
    reached.add(key);
    open.push(...(byKey.get(key)?.replaces ?? []));
  }
  // What leads to nothing that stands is a ring of its own.
  return records.filter(({ key }) => !replaced.has(key) || !reached.has(key));
}

/** How one check of an entry stands. */
export type CheckStanding =
  | { readonly state: "open" }
  | { readonly state: "found"; readonly result: FindingResult; readonly findings: readonly Finding[] }
  /** Scrutineers who had not seen each other's finding differ: shown side by side until one of them settles it. */
  | { readonly state: "conflict"; readonly findings: readonly Finding[] };

const isNew = (earlier: readonly Finding[], { key }: Finding) => earlier.every((one) => one.key !== key);

/** How a check stands by all the findings there are of it, in any order and sent twice or not. */
export function checkStanding(findings: readonly Finding[]): CheckStanding {
  const once = findings.filter((finding, index) => isNew(findings.slice(0, index), finding));
  const left = standing(once);
  const [first] = left;
  if (!first) return { state: "open" };
  const agreed = left.every(({ result }) => result === first.result);
  return agreed
    ? { state: "found", result: first.result, findings: left }
    : { state: "conflict", findings: left };
}

/** How every check of an entry stands, by its code. */
export function checkStandings(
  checks: readonly string[],
  findings: readonly Finding[],
): ReadonlyMap<string, CheckStanding> {
  const byCheck = new Map<string, Finding[]>(checks.map((code) => [code, []]));
  for (const finding of findings) {
    const here = byCheck.get(finding.check);
    if (here) here.push(finding);
    else byCheck.set(finding.check, [finding]);
  }
  return new Map([...byCheck].map(([code, here]) => [code, checkStanding(here)]));
}

/** What the findings of an entry come to, before anybody has decided. */
export interface Tally {
  readonly open: number;
  readonly conflicts: number;
  readonly passed: number;
  readonly advised: number;
  readonly refused: number;
  readonly notApplicable: number;
}

const counters: Readonly<Record<FindingResult, keyof Tally>> = {
  pass: "passed",
  advise: "advised",
  refuse: "refused",
  notApplicable: "notApplicable",
};

/** Counts how the checks stand. */
export function tallyOf(standings: Iterable<CheckStanding>): Tally {
  const tally = { open: 0, conflicts: 0, passed: 0, advised: 0, refused: 0, notApplicable: 0 };
  for (const one of standings) {
    if (one.state === "open") tally.open += 1;
    else if (one.state === "conflict") tally.conflicts += 1;
    else tally[counters[one.result]] += 1;
  }
  return tally;
}

/**
 * The outcome that the findings allow at best; nothing while a check is open or in conflict: unknown is never a pass.
 * A refused check refuses the car whatever is still open.
 */
export function bestOutcome({ open, conflicts, advised, refused }: Tally): DecisionOutcome | undefined {
  if (refused > 0) return "refused";
  if (open > 0 || conflicts > 0) return undefined;
  return advised > 0 ? "passWithAdvice" : "pass";
}

/** How an entry's decision stands: none, one, or several that differ. */
export type DecisionStanding =
  | { readonly state: "none" }
  | {
      readonly state: "decided";
      readonly outcome: DecisionOutcome;
      readonly decisions: readonly EntryDecision[];
    }
  | { readonly state: "conflict"; readonly decisions: readonly EntryDecision[] };

/** How the decisions on an entry stand. */
export function decisionStanding(decisions: readonly EntryDecision[]): DecisionStanding {
  const once = decisions.filter(
    ({ key }, index) => decisions.findIndex((decision) => decision.key === key) === index,
  );
  const left = standing(once);
  const [first] = left;
  if (!first) return { state: "none" };
  return left.every(({ outcome }) => outcome === first.outcome)
    ? { state: "decided", outcome: first.outcome, decisions: left }
    : { state: "conflict", decisions: left };
}
