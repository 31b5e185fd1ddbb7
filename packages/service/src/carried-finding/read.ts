import { type CarriedFinding, checkStanding, type Finding, type Station } from "@trunnion/register";
import type { Context } from "../context";
import { dayColumn, dayOf } from "../day";

/** Looking further back than this many findings of one car is of no use to anybody. */
const LOOKED_BACK = 5_000;

const findingSelect = {
  clientKey: true,
  replaces: true,
  checkCode: true,
  result: true,
  note: true,
  foundAt: true,
  entry: {
    select: { id: true, carId: true, event: { select: { name: true, on: true, ruleSetId: true } } },
  },
} as const;

/** `carried-x` is about `x`: putting right what was carried settles what it was carried for. */
const codeOf = (code: string) => code.replace(/^(carried-)+/, "");

/**
 * What was advised or refused on some cars at earlier events and has not been passed since: by car. Of two scrutineers
 * who differ the worse stands.
 *
 * @param before ISO day; findings of events on or after it are not looked at
 */
export async function carriedFindings(
  ctx: Context,
  carIds: readonly string[],
  before: string,
): Promise<ReadonlyMap<string, readonly CarriedFinding[]>> {
  if (carIds.length === 0) return new Map();
  const rows = await ctx.db.finding.findMany({
    where: { entry: { carId: { in: [...carIds] }, event: { on: { lt: dayColumn(before) } } } },
    select: findingSelect,
    orderBy: [{ entry: { event: { on: "desc" } } }, { recordedAt: "desc" }],
    take: LOOKED_BACK,
  });
  // The latest event that looked at a check of a car says how it stands.
  const latest = new Map<string, typeof rows>();
  for (const row of rows) {
    const key = `${row.entry.carId} ${codeOf(row.checkCode)}`;
    const here = latest.get(key);
    if (!here) latest.set(key, [row]);
    else if (here[0]?.entry.id === row.entry.id) here.push(row);
  }
  const open = [...latest.values()].flatMap((found) => {
    const findings = found.map(
      ({ clientKey, replaces, checkCode, result, note, foundAt }): Finding => ({
        key: clientKey,
        replaces,
        check: checkCode,
        result,
        note: note ?? "",
        readings: [],
        by: "",
        at: foundAt.toISOString(),
      }),
    );
    const standing = checkStanding(findings);
    if (standing.state === "open" || !found[0]) return [];
    const worst =
      standing.findings.find(({ result }) => result === "refuse") ??
      standing.findings.find(({ result }) => result === "advise");
    return worst ? [{ entry: found[0].entry, worst }] : [];
  });
  return placed(ctx, open);
}

interface OpenFinding {
  readonly entry: {
    readonly carId: string | null;
    readonly event: { readonly name: string; readonly on: Date; readonly ruleSetId: string };
  };
  readonly worst: Finding;
}

async function placed(
  ctx: Context,
  open: readonly OpenFinding[],
): Promise<ReadonlyMap<string, readonly CarriedFinding[]>> {
  const checks = await ctx.db.ruleCheck.findMany({
    where: {
      ruleSetId: { in: [...new Set(open.map(({ entry }) => entry.event.ruleSetId))] },
      code: { in: [...new Set(open.map(({ worst }) => codeOf(worst.check)))] },
    },
    select: { ruleSetId: true, code: true, text: true, station: true, assembly: true },
  });
  const known = new Map(checks.map((check) => [`${check.ruleSetId} ${check.code}`, check]));
  const byCar = new Map<string, CarriedFinding[]>();
  for (const { entry, worst } of open) {
    const code = codeOf(worst.check);
    const check = known.get(`${entry.event.ruleSetId} ${code}`);
    const here = byCar.get(entry.carId ?? "") ?? [];
    here.push({
      checkCode: code,
      result: worst.result === "refuse" ? "refuse" : "advise",
      note: worst.note,
      text: check?.text ?? "",
      station: (check?.station ?? "documents") as Station,
      assembly: (check?.assembly ?? "safety") as CarriedFinding["assembly"],
      event: entry.event.name,
      on: dayOf(entry.event.on),
    });
    byCar.set(entry.carId ?? "", here);
  }
  return byCar;
}
