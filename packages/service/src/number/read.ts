import { type IdentityKind, type NumberOutcome, Prisma } from "@trunnion/db";
import {
  coverageOf,
  findNumberTrouble,
  type NumberClaimed,
  type NumberedCar,
  type NumberFinding,
  parsePartialDate,
  type SeriesCoverage,
  sayFinding,
} from "@trunnion/register";
import type { Context } from "../context";
import { dayOf } from "../day";
import { memberNames } from "../member-name";
import { carReference } from "../record";
import { requireRole } from "../role";
import { listSeriesDetails } from "../series";
import { standingRecord, standingRecordSql } from "../standing-record";

const carFields = {
  id: true,
  chassis: true,
  claim: true,
  builtText: true,
  builtEarliest: true,
  builtLatest: true,
  series: { select: { slug: true } },
  identities: {
    select: {
      kind: true,
      number: true,
      fromEarliest: true,
      fromLatest: true,
      toEarliest: true,
      toLatest: true,
    },
  },
} as const;

/** A car with its numbers, and its id. */
export interface StoredNumberedCar extends NumberedCar {
  readonly id: string;
}

function days(columns: Readonly<Record<string, Date | null>>): Readonly<Record<string, string>> {
  const known = Object.entries(columns).flatMap(([name, column]) =>
    column === null ? [] : [[name, dayOf(column)]],
  );
  return Object.fromEntries(known);
}

/** Every car of the club as far as its numbers and dates say who it is; records that only point to another left out. */
export async function numberedCars(ctx: Context): Promise<readonly StoredNumberedCar[]> {
  const rows = await ctx.db.car.findMany({
    where: standingRecord,
    select: carFields,
    orderBy: [{ chassisKey: "asc" }, { claim: "asc" }],
  });
  return rows.map((row) => {
    const { builtText, builtEarliest, builtLatest } = row;
    const parsed = builtText === null ? undefined : parsePartialDate(builtText, { today: ctx.today });
    return {
      id: row.id,
      reference: carReference(row),
      chassis: row.chassis,
      ...(row.series ? { series: row.series.slug } : {}),
      numbers: row.identities.map(({ kind, number, ...span }) => ({ kind, number, span: days(span) })),
      ...(builtText === null || builtEarliest === null || builtLatest === null
        ? {}
        : {
            built: {
              text: builtText,
              earliest: dayOf(builtEarliest),
              latest: dayOf(builtLatest),
              precision: parsed?.ok ? parsed.date.precision : ("circa" as const),
            },
          }),
    };
  });
}

/** A decision about a number, as pages show it. */
export interface DecisionLine {
  readonly id: string;
  readonly kind: IdentityKind;
  readonly numberKey: string;
  readonly outcome: NumberOutcome;
  /** Reference of the car that holds it, where one does. */
  readonly holder?: string;
  readonly reason: string;
  /** Who decided; "command line" for whoever holds the machine. */
  readonly by: string;
  /** ISO day. */
  readonly on: string;
  /** ISO day a later decision took its place; left out while it stands. */
  readonly supersededOn?: string;
}

/** Decisions about numbers, the latest first; those that were superseded among them where asked for. */
export async function decisionsAbout(
  ctx: Context,
  numbers: readonly { readonly kind: IdentityKind; readonly numberKey: string }[],
  { all }: { readonly all: boolean },
): Promise<readonly DecisionLine[]> {
  if (numbers.length === 0) return [];
  const rows = await ctx.db.numberDecision.findMany({
    where: {
      OR: numbers.map(({ kind, numberKey }) => ({ kind, numberKey })),
      ...(all ? {} : { supersededAt: null }),
    },
    include: { holder: { select: { chassis: true, claim: true } } },
    orderBy: { id: "desc" },
  });
  const names = await memberNames(
    ctx,
    rows.map(({ decidedById }) => decidedById),
  );
  return rows.map((row) => ({
    id: row.id,
    kind: row.kind,
    numberKey: row.numberKey,
    outcome: row.outcome,
    ...(row.holder ? { holder: carReference(row.holder) } : {}),
    reason: row.reason,
    by: row.decidedById === null ? "command line" : (names.get(row.decidedById) ?? "a former member"),
    on: dayOf(row.recordedAt),
    ...(row.supersededAt ? { supersededOn: dayOf(row.supersededAt) } : {}),
  }));
}

/** Decisions about a number any car bears are few: whether there is one of this car's is asked along with how many claim its number. */
const claimedSql = (carId: string, chassisKey: string) => Prisma.sql`SELECT
  (SELECT count(*)::int FROM car c WHERE c.chassis_key = ${chassisKey} AND ${standingRecordSql}) AS claims,
  EXISTS (SELECT FROM number_decision d WHERE d.superseded_at IS NULL AND (d.number_key = ${chassisKey}
    OR d.number_key IN (SELECT i.number_key FROM car_identity i WHERE i.car_id = ${carId}::uuid))) AS decided`;

/** How many cars claim a car's chassis number, and the standing decisions about the numbers that it bears. */
export async function claimsOn(
  ctx: Context,
  { id, chassisKey }: { readonly id: string; readonly chassisKey: string },
): Promise<{ readonly claims: number; readonly decisions: readonly DecisionLine[] }> {
  const [{ claims, decided } = { claims: 0, decided: false }] = await ctx.db.$queryRaw<
    { claims: number; decided: boolean }[]
  >(claimedSql(id, chassisKey));
  if (!decided) return { claims, decisions: [] };
  const numbers = await ctx.db.carIdentity.findMany({
    where: { carId: id },
    select: { kind: true, numberKey: true },
  });
  const filed = { kind: "chassis" as const, numberKey: chassisKey };
  return { claims, decisions: await decisionsAbout(ctx, [filed, ...numbers], { all: false }) };
}

/** What was found, in words. */
export interface FindingLine {
  readonly finding: NumberFinding;
  readonly what: string;
  readonly sure: string;
  /** The decision that stands about it but does not settle it: undecided, or of before a further car claimed it. */
  readonly decision?: DecisionLine;
}

export interface SetAsideLine extends FindingLine {
  readonly id: string;
  readonly reason: string;
  readonly by: string;
  readonly on: string;
}

/** What is open about the club's numbers, what is settled, and how much of each series is known. */
export interface NumbersPage {
  readonly cars: number;
  readonly open: readonly FindingLine[];
  readonly settled: readonly (FindingLine & { readonly decision: DecisionLine })[];
  readonly setAside: readonly SetAsideLine[];
  readonly coverage: readonly SeriesCoverage[];
}

/** Ids of the cars that a decision weighed, from the journal. */
async function weighedBy(
  ctx: Context,
  decisionIds: readonly string[],
): Promise<ReadonlyMap<string, ReadonlySet<string>>> {
  const lines = await ctx.db.journalEntry.findMany({
    where: { noun: "numberDecision", nounId: { in: [...decisionIds] } },
    select: { nounId: true, carId: true },
  });
  const cars = new Map<string, Set<string>>();
  for (const { nounId, carId } of lines) {
    const set = cars.get(nounId) ?? new Set<string>();
    if (carId !== null) set.add(carId);
    cars.set(nounId, set);
  }
  return cars;
}

/** What was found, every part of it with its words. */
export async function findingsOf(
  ctx: Context,
  cars: readonly StoredNumberedCar[],
): Promise<readonly FindingLine[]> {
  const series = await listSeriesDetails(ctx);
  return findNumberTrouble(cars, series).map((finding) => ({ finding, ...sayFinding(finding) }));
}

/**
 * What is odd about the club's numbers.
 *
 * @throws Refusal ROLE_NEEDED
 */
export async function numbersPage(ctx: Context): Promise<NumbersPage> {
  requireRole(ctx.actor, "registrar", "fleetManager");
  const cars = await numberedCars(ctx);
  const found = await findingsOf(ctx, cars);
  const claims = found.flatMap(({ finding }) => (finding.kind === "claimed" ? [finding] : []));
  const asked = claims.map(({ numberKind, numberKey }) => ({ kind: numberKind, numberKey }));
  const decisions = await decisionsAbout(ctx, asked, { all: false });
  const weighed = await weighedBy(
    ctx,
    decisions.map(({ id }) => id),
  );
  const ids = new Map(cars.map(({ reference, id }) => [reference, id]));
  const decisionOn = (finding: NumberFinding) =>
    finding.kind !== "claimed"
      ? undefined
      : decisions.find((one) => one.kind === finding.numberKind && one.numberKey === finding.numberKey);
  const settles = (finding: NumberFinding, decision: DecisionLine) =>
    decision.outcome !== "undecided" &&
    (finding as NumberClaimed).cars.every(({ reference }) =>
      weighed.get(decision.id)?.has(ids.get(reference) ?? ""),
    );
  const lines = found.map((line) => ({ line, decision: decisionOn(line.finding) }));
  const settled = lines.flatMap(({ line, decision }) =>
    decision && settles(line.finding, decision) ? [{ ...line, decision }] : [],
  );
  const rest = lines.filter(({ line, decision }) => !decision || !settles(line.finding, decision));
  const aside = await standingAside(ctx);
  const isAside = ({ finding }: FindingLine) => aside.get(finding.key)?.basis === finding.basis;
  return {
    cars: cars.length,
    open: rest
      .filter(({ line }) => !isAside(line))
      .map(({ line, decision }) => ({ ...line, ...(decision ? { decision } : {}) })),
    settled,
    setAside: rest.flatMap(({ line }) => {
      const known = aside.get(line.finding.key);
      return known && isAside(line) ? [{ ...line, ...known }] : [];
    }),
    coverage: (await listSeriesDetails(ctx)).map((one) => coverageOf(one, cars)),
  };
}

async function standingAside(ctx: Context) {
  const rows = await ctx.db.numberSetAside.findMany({ where: { takenUpAt: null } });
  const names = await memberNames(
    ctx,
    rows.map(({ setAsideById }) => setAsideById),
  );
  return new Map(
    rows.map(({ id, finding, basis, reason, setAsideById, recordedAt }) => {
      const by = setAsideById === null ? "command line" : (names.get(setAsideById) ?? "a former member");
      return [finding, { id, basis, reason, by, on: dayOf(recordedAt) }];
    }),
  );
}

/** Ids of the cars that bear a number, filed under it or stamped with it; pointers left out. */
export async function claimantIds(
  ctx: Context,
  kind: IdentityKind,
  numberKey: string,
): Promise<readonly string[]> {
  const borne = { identities: { some: { kind, numberKey } } };
  const rows = await ctx.db.car.findMany({
    where: { ...standingRecord, OR: kind === "chassis" ? [{ chassisKey: numberKey }, borne] : [borne] },
    select: { id: true },
    orderBy: [{ chassisKey: "asc" }, { claim: "asc" }],
    take: 20,
  });
  return rows.map(({ id }) => id);
}
