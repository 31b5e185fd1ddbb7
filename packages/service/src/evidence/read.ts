import type { Prisma } from "@trunnion/db";
import {
  type EvidenceTarget,
  type EvidenceTargetKind,
  evidenceTargetReference,
  refused,
  sayDay,
} from "@trunnion/register";
import { findCar } from "../car";
import type { ClubFacts, Context } from "../context";
import { dayOf } from "../day";
import { carReference } from "../record";
import { type PieceLine, pieceFields, pieceKey, pieceLine } from "./piece";
import { mayChangeEvidence, mayOrderEvidence, mayWithdraw } from "./policy";
import { evidenceFor, evidenceOf, type SupportLine } from "./support";
import { findTarget, linkColumns, type TargetLine, targetLines, targetOf, targetsOfCar } from "./target";

/** What supports one thing. */
export interface SupportGroup {
  readonly target: TargetLine;
  readonly reference: string;
  readonly pieces: readonly SupportLine[];
}

/** A thing evidence may be linked to, as a form offers it. */
export interface TargetChoice {
  readonly reference: string;
  readonly kind: EvidenceTargetKind;
  readonly label: string;
}

const choiceOf = (target: TargetLine): TargetChoice => ({
  reference: evidenceTargetReference(target),
  kind: target.kind,
  label: target.label,
});

/** Everything a car's page of evidence says. */
export interface CarEvidence {
  readonly club: ClubFacts;
  readonly car: { readonly reference: string; readonly chassis: string };
  /** By what is supported, in the order of the kinds. */
  readonly groups: readonly SupportGroup[];
  /** Pieces in all. */
  readonly pieces: number;
  readonly choices: readonly TargetChoice[];
  readonly mayAdd: boolean;
}

/**
 * A car's photos and documents by what they support.
 *
 * @throws Refusal CAR_NOT_FOUND
 */
export async function carEvidence(ctx: Context, reference: string): Promise<CarEvidence> {
  const { id, chassis, ...car } = await findCar(ctx, reference);
  const support = await evidenceOf(ctx, [id]);
  const targets = await targetsOfCar(ctx, id);
  const groups = targets.flatMap((target) => {
    const pieces = support.get(target.id);
    return pieces ? [{ target, reference: evidenceTargetReference(target), pieces }] : [];
  });
  const ids = new Set([...support.values()].flat().map((piece) => piece.id));
  return {
    club: ctx.club,
    car: { reference: car.reference, chassis },
    groups,
    pieces: ids.size,
    choices: targets.filter(({ past }) => !past).map(choiceOf),
    mayAdd: await mayChangeEvidence(ctx, [id]),
  };
}

/** Everything a page says of what supports one thing. */
export interface TargetEvidence {
  readonly club: ClubFacts;
  readonly group: SupportGroup;
  /** The car it belongs to; none for an entry of a specification and a decision on a number. */
  readonly car?: { readonly reference: string; readonly chassis: string };
  readonly mayAdd: boolean;
}

async function carOf(ctx: Context, carId: string | null) {
  if (carId === null) return {};
  const where = { clubId_id: { clubId: ctx.club.id, id: carId } };
  const car = await ctx.db.car.findUniqueOrThrow({ where, select: { chassis: true, claim: true } });
  return { car: { reference: carReference(car), chassis: car.chassis } };
}

/**
 * What supports one thing of the record.
 *
 * @throws Refusal EVIDENCE_TARGET_NOT_FOUND
 */
export async function targetEvidence(ctx: Context, wanted: EvidenceTarget): Promise<TargetEvidence> {
  const target = await findTarget(ctx, wanted);
  const pieces = (await evidenceFor(ctx, target.kind, [target.id])).get(target.id) ?? [];
  return {
    club: ctx.club,
    group: { target, reference: evidenceTargetReference(target), pieces },
    ...(await carOf(ctx, target.carId)),
    mayAdd: !target.past && (await mayChangeEvidence(ctx, [target.carId])),
  };
}

const onePieceFields = {
  ...pieceFields,
  sha256: true,
  fileName: true,
  keepsLocation: true,
  version: true,
  addedById: true,
  recordedAt: true,
  withdrawnAt: true,
  withdrawnReason: true,
  links: { select: { id: true, locus: true, ...linkColumns }, orderBy: { id: "asc" } },
} satisfies Prisma.EvidenceSelect;

/** What one piece supports, with where that leads. */
export interface PieceLink {
  readonly id: string;
  readonly target: TargetLine;
  readonly locus: string;
  readonly car?: { readonly reference: string; readonly chassis: string };
  /** The actor may take the link away. */
  readonly mayUnlink: boolean;
}

/** Everything a page says of one piece. */
export interface EvidencePiece extends PieceLine {
  readonly club: ClubFacts;
  readonly fileName: string;
  readonly sha256: string;
  readonly keepsLocation: boolean;
  readonly version: number;
  /** ISO day. */
  readonly addedOn: string;
  readonly links: readonly PieceLink[];
  /** What else of its cars it may be linked to. */
  readonly choices: readonly TargetChoice[];
  readonly mayChange: boolean;
  readonly mayWithdraw: boolean;
  readonly mayRestore: boolean;
  readonly withdrawn?: { readonly on: string; readonly reason: string };
}

async function pieceLinks(
  ctx: Context,
  rows: Prisma.EvidenceGetPayload<{ select: typeof onePieceFields }>["links"],
): Promise<readonly PieceLink[]> {
  const targets = await targetLines(ctx, rows.map(targetOf));
  const links: PieceLink[] = [];
  for (const row of rows) {
    const target = targets.get(evidenceTargetReference(targetOf(row)));
    // A modification that is not accepted yet is on no page.
    if (!target) continue;
    const mayUnlink = rows.length > 1 && (await mayChangeEvidence(ctx, [target.carId]));
    links.push({
      id: row.id,
      target,
      locus: row.locus ?? "",
      mayUnlink,
      ...(await carOf(ctx, target.carId)),
    });
  }
  return links;
}

async function choicesFor(ctx: Context, links: readonly PieceLink[]): Promise<readonly TargetChoice[]> {
  const linked = new Set(links.map(({ target }) => target.id));
  const carIds = new Set(links.flatMap(({ target }) => target.carId ?? []));
  const found: TargetChoice[] = [];
  for (const carId of carIds) {
    const targets = await targetsOfCar(ctx, carId);
    found.push(...targets.filter(({ id, past }) => !past && !linked.has(id)).map(choiceOf));
  }
  return found;
}

/**
 * One photo or document with what it supports. A withdrawn one says when and why.
 *
 * @throws Refusal EVIDENCE_NOT_FOUND, also for one of another club
 */
export async function evidencePiece(ctx: Context, id: string): Promise<EvidencePiece> {
  const row = await ctx.db.evidence.findUnique({ where: pieceKey(ctx, id), select: onePieceFields });
  if (!row) throw refused("EVIDENCE_NOT_FOUND", { evidence: id });
  const links = await pieceLinks(ctx, row.links);
  const mayChange = await mayChangeEvidence(
    ctx,
    links.map(({ target }) => target.carId),
  );
  const { withdrawnAt, withdrawnReason, fileName, sha256, keepsLocation, version } = row;
  const stands = withdrawnAt === null;
  return {
    ...pieceLine(row),
    club: ctx.club,
    fileName,
    sha256,
    keepsLocation,
    version,
    addedOn: dayOf(row.recordedAt),
    links,
    choices: mayChange && stands ? await choicesFor(ctx, links) : [],
    mayChange: mayChange && stands,
    mayWithdraw: stands && mayWithdraw(ctx, row),
    mayRestore: !stands && mayOrderEvidence(ctx),
    ...(withdrawnAt === null
      ? {}
      : { withdrawn: { on: sayDay(dayOf(withdrawnAt)), reason: withdrawnReason ?? "" } }),
  };
}

/** What is needed to hand a file out. */
export interface EvidenceFile {
  readonly sha256: string;
  readonly mediaType: string;
  readonly bytes: number;
  readonly fileName: string;
  readonly picture: boolean;
}

/**
 * The file behind a piece, for whoever may see it: every member of its club, as long as it stands.
 *
 * @throws Refusal EVIDENCE_NOT_FOUND, EVIDENCE_WITHDRAWN
 */
export async function evidenceFile(ctx: Context, id: string): Promise<EvidenceFile> {
  const row = await ctx.db.evidence.findUnique({ where: pieceKey(ctx, id), select: onePieceFields });
  if (!row) throw refused("EVIDENCE_NOT_FOUND", { evidence: id });
  if (row.withdrawnAt !== null) {
    const reason = row.withdrawnReason ?? "";
    throw refused("EVIDENCE_WITHDRAWN", { on: sayDay(dayOf(row.withdrawnAt)), reason });
  }
  const { sha256, mediaType, bytes, fileName } = row;
  return { sha256, mediaType, bytes, fileName, picture: pieceLine(row).picture };
}
