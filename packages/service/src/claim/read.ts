import type { CarStatus, IdentityKind, IdentityStanding, Prisma, Trust } from "@trunnion/db";
import { chassisKey, refused } from "@trunnion/register";
import type { Context } from "../context";
import { dayOrNothing } from "../day";
import { maySeeKeepers } from "../keeper";
import {
  type Argument,
  argumentsFor,
  claimantIds,
  type DecisionLine,
  decisionsAbout,
  numberedCars,
} from "../number";
import { carReference } from "../record";
import { requireRole } from "../role";
import { listSeriesDetails } from "../series";

/** A statement with where it comes from, as the decision page lists it. */
export interface Statement {
  readonly label: string;
  readonly value: string;
  readonly source: string;
  readonly locus: string;
  readonly trust: Trust;
}

/** One of the cars that claim a number, with everything there is to weigh. */
export interface Claimant {
  readonly id: string;
  readonly reference: string;
  readonly chassis: string;
  readonly claim: number;
  readonly version: number;
  readonly series: string;
  readonly built: string;
  readonly firstRegistered: string;
  readonly status: CarStatus;
  readonly remarks: string;
  /** How the number stands on it. */
  readonly standing: IdentityStanding;
  readonly numbers: readonly Statement[];
  /** Spans of keeping; names only for those who may see them. */
  readonly keepers: readonly { readonly name?: string; readonly from: string; readonly to: string }[];
  readonly asBuilt: readonly Statement[];
  readonly notes: readonly Statement[];
  readonly evidence: readonly { readonly id: string; readonly caption: string; readonly locus: string }[];
  readonly arguments: readonly Argument[];
}

export interface ClaimPage {
  readonly kind: IdentityKind;
  readonly number: string;
  readonly numberKey: string;
  readonly claimants: readonly Claimant[];
  /** The latest first; the first one that is not superseded stands. */
  readonly decisions: readonly DecisionLine[];
}

const known = (row: { source: { title: string } | null; locus: string | null; trust: Trust }) => ({
  source: row.source?.title ?? "",
  locus: row.locus ?? "",
  trust: row.trust,
});
const withSource = { source: { select: { title: true } } } as const;

const claimantFields = {
  id: true,
  chassis: true,
  chassisKey: true,
  claim: true,
  version: true,
  builtText: true,
  firstRegisteredText: true,
  remarks: true,
  series: { select: { name: true } },
  statuses: { where: { to: null }, select: { status: true } },
  identities: { include: { ...withSource }, orderBy: [{ kind: "asc" }, { id: "asc" }] },
  keeperships: { include: { keeper: true }, orderBy: { id: "asc" } },
  asBuilt: {
    where: { supersededAt: null },
    include: withSource,
    orderBy: { characteristic: "asc" },
  },
  histories: { include: withSource, orderBy: { onEarliest: "asc" } },
  evidenceLinks: { where: { evidence: { withdrawnAt: null } }, include: { evidence: true } },
} satisfies Prisma.CarSelect;

async function claimantRows(ctx: Context, ids: readonly string[]) {
  const rows = await ctx.db.car.findMany({ where: { id: { in: [...ids] } }, select: claimantFields });
  return rows.sort((a, b) => ids.indexOf(a.id) - ids.indexOf(b.id));
}
type ClaimantRow = Awaited<ReturnType<typeof claimantRows>>[number];

function spanText({
  fromText,
  toText,
}: {
  readonly fromText: string | null;
  readonly toText: string | null;
}): string {
  if (fromText === null && toText === null) return "";
  return ` (${fromText ?? "?"} to ${toText ?? "now"})`;
}

function keepersOn(row: ClaimantRow, named: boolean): Claimant["keepers"] {
  return row.keeperships.map(({ fromText, to, keeper }) => ({
    from: fromText ?? "",
    to: dayOrNothing(to) ?? "",
    ...(named ? { name: keeper.erasedAt === null ? (keeper.name ?? "name not recorded") : "erased" } : {}),
  }));
}

function claimantOf(
  row: ClaimantRow,
  about: { readonly kind: IdentityKind; readonly numberKey: string; readonly named: boolean },
): Omit<Claimant, "arguments"> {
  const borne = row.identities.find(
    ({ kind, numberKey }) => kind === about.kind && numberKey === about.numberKey,
  );
  return {
    id: row.id,
    reference: carReference(row),
    chassis: row.chassis,
    claim: row.claim,
    version: row.version,
    series: row.series?.name ?? "not settled",
    built: row.builtText ?? "",
    firstRegistered: row.firstRegisteredText ?? "",
    status: row.statuses[0]?.status ?? "unknown",
    remarks: row.remarks ?? "",
    standing: borne?.standing ?? "accepted",
    numbers: row.identities.map((one) => ({
      label: one.kind,
      value: `${one.number}${spanText(one)}${one.standing === "accepted" ? "" : `, ${one.standing}`}`,
      ...known(one),
    })),
    keepers: keepersOn(row, about.named),
    asBuilt: row.asBuilt.map((one) => ({
      label: one.side === "whole" ? one.characteristic : `${one.characteristic} ${one.side}`,
      value: one.entered,
      ...known(one),
    })),
    notes: row.histories.map((one) => ({ label: one.onText ?? "", value: one.text, ...known(one) })),
    evidence: row.evidenceLinks.map(({ evidence, locus }) => ({
      id: evidence.id,
      caption: evidence.caption ?? evidence.fileName,
      locus: locus ?? "",
    })),
  };
}

/**
 * The cars that claim one number, side by side, with what speaks for each and what was decided.
 *
 * @throws Refusal ROLE_NEEDED; CLAIM_NOT_FOUND where fewer than two cars bear it and nothing was ever decided
 */
export async function claimPage(
  ctx: Context,
  { kind, number }: { readonly kind: IdentityKind; readonly number: string },
): Promise<ClaimPage> {
  requireRole(ctx.actor, "registrar", "fleetManager");
  const numberKey = chassisKey(number);
  const rows = await claimantRows(ctx, await claimantIds(ctx, kind, numberKey));
  const decisions = await decisionsAbout(ctx, [{ kind, numberKey }], { all: true });
  if (rows.length < 2 && decisions.length === 0) throw refused("CLAIM_NOT_FOUND", { number });
  const cars = await numberedCars(ctx);
  const series = await listSeriesDetails(ctx);
  const named = maySeeKeepers(ctx);
  const claimants = rows.map((row) => {
    const car = cars.find(({ id }) => id === row.id);
    const told = kind === "chassis" && car ? argumentsFor(car, series, cars) : [];
    return { ...claimantOf(row, { kind, numberKey, named }), arguments: told };
  });
  const asFiled = claimants.find(
    (one) => kind === "chassis" && chassisKey(one.chassis) === numberKey,
  )?.chassis;
  const asBorne = rows
    .flatMap(({ identities }) => identities)
    .find((one) => one.numberKey === numberKey)?.number;
  return { kind, number: asFiled ?? asBorne ?? number, numberKey, claimants, decisions };
}
