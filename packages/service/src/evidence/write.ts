import { evidenceLimits, evidenceTargetReference, Problems, refused, sayDay } from "@trunnion/register";
import { z } from "zod";
import { readDate } from "../car";
import { changedFields, differencesOf, type WantedField } from "../car/policy";
import type { Context } from "../context";
import { dayOf } from "../day";
import { dateInput, lineInput } from "../entry-input";
import { type JournalLine, writeJournal } from "../journal";
import { partialDateColumns } from "../partial-date-columns";
import { addLink, isLinked, lockPiece } from "./link";
import { pieceKey } from "./piece";
import { mayOrderEvidence, mayWithdraw, requireMayChange } from "./policy";
import { findTarget, linkColumns, targetInput, targetLines, targetOf } from "./target";

const ofCar = ({ carId }: { readonly carId: string | null }) => (carId === null ? {} : { carId });
const said = (text: string | null | undefined) => text ?? "";

const pieceColumns = {
  id: true,
  caption: true,
  takenText: true,
  quarterTurns: true,
  version: true,
  addedById: true,
  withdrawnAt: true,
  withdrawnReason: true,
  links: { select: { id: true, ...linkColumns } },
} as const;

/** A piece held for a change, with what it supports and the cars that belongs to. */
async function openPiece(ctx: Context, id: string) {
  const key = pieceKey(ctx, id);
  await lockPiece(ctx, { id });
  const piece = await ctx.db.evidence.findUnique({ where: key, select: pieceColumns });
  if (!piece) throw refused("EVIDENCE_NOT_FOUND", { evidence: id });
  const targets = await targetLines(ctx, piece.links.map(targetOf));
  const carIds = [...new Set([...targets.values()].map(({ carId }) => carId))];
  return { key, piece, targets, carIds };
}

type OpenPiece = Awaited<ReturnType<typeof openPiece>>;

function requireStanding({ piece }: OpenPiece): void {
  const { withdrawnAt, withdrawnReason } = piece;
  if (withdrawnAt === null) return;
  throw refused("EVIDENCE_WITHDRAWN", { on: sayDay(dayOf(withdrawnAt)), reason: said(withdrawnReason) });
}

/** In the journal of every car that it supports something of. */
async function journalPiece(
  ctx: Context,
  { piece, carIds }: OpenPiece,
  line: Omit<JournalLine, "noun" | "nounId" | "carId">,
): Promise<void> {
  const cars = carIds.length === 0 ? [null] : carIds;
  await writeJournal(
    ctx,
    cars.map((carId) => ({ ...line, noun: "evidence", nounId: piece.id, ...ofCar({ carId }) })),
  );
}

const pieceId = { evidence: lineInput(36).min(1) };

export const correctEvidenceInput = z.object({
  ...pieceId,
  version: z.coerce.number().int().min(1),
  /** What the fields said when the form was opened. */
  opened: z.record(z.string().max(40), z.string().max(1_000)).default({}),
  caption: lineInput(evidenceLimits.caption),
  taken: dateInput,
});
export type CorrectEvidenceInput = z.infer<typeof correctEvidenceInput>;

/**
 * Says what a piece shows and when it was taken.
 *
 * @throws Refusal EVIDENCE_NOT_FOUND, EVIDENCE_NOT_YOURS, EVIDENCE_WITHDRAWN, CHANGED_MEANWHILE; Invalid for a date that
 *   cannot be read. Then nothing is written.
 */
export async function correctEvidence(ctx: Context, input: CorrectEvidenceInput): Promise<void> {
  const open = await openPiece(ctx, input.evidence);
  requireStanding(open);
  await requireMayChange(ctx, open.carIds, "change this piece of evidence");
  const { piece } = open;
  const problems = new Problems();
  const taken = readDate(input.taken, { field: "taken", today: ctx.today, problems });
  problems.throwIfAny();
  const fields: readonly WantedField[] = [
    { field: "caption", label: "What it shows", now: said(piece.caption), wanted: input.caption },
    { field: "taken", label: "Taken", now: said(piece.takenText), wanted: said(taken?.text) },
  ];
  if (piece.version !== input.version) {
    const differences = differencesOf(fields, input.opened);
    throw refused("CHANGED_MEANWHILE", {
      what: "this piece of evidence",
      version: piece.version,
      differences,
    });
  }
  const changed = changedFields(fields);
  if (!changed) return;
  const caption = input.caption === "" ? null : input.caption;
  await ctx.db.evidence.update({
    where: open.key,
    data: { caption, ...partialDateColumns("taken", taken), version: { increment: 1 } },
  });
  await journalPiece(ctx, open, { action: "evidence.correct", ...changed });
}

export const turnEvidenceInput = z.object({ ...pieceId, quarterTurns: z.number().int().min(0).max(3) });

/**
 * Turns a picture so that it stands upright; the file stays as it is. The turn is told as a whole, not as one more: sent
 * twice it is done once. It is no reason to tell who has the caption open that something changed.
 *
 * @throws Refusal EVIDENCE_NOT_FOUND, EVIDENCE_NOT_YOURS, EVIDENCE_WITHDRAWN
 */
export async function turnEvidence(ctx: Context, input: z.infer<typeof turnEvidenceInput>): Promise<void> {
  const open = await openPiece(ctx, input.evidence);
  requireStanding(open);
  await requireMayChange(ctx, open.carIds, "turn this picture");
  const { quarterTurns } = input;
  if (open.piece.quarterTurns === quarterTurns) return;
  await ctx.db.evidence.update({ where: open.key, data: { quarterTurns } });
  const before = { quarterTurns: open.piece.quarterTurns };
  await journalPiece(ctx, open, { action: "evidence.turn", before, after: { quarterTurns } });
}

export const withdrawEvidenceInput = z.object({
  ...pieceId,
  reason: lineInput(evidenceLimits.reason).min(1, "Say why, for those who look for it later."),
});

/**
 * Withdraws a piece: its file is kept, and shown to nobody any more.
 *
 * @throws Refusal EVIDENCE_NOT_FOUND, EVIDENCE_WITHDRAWN, EVIDENCE_NOT_YOURS (for whoever neither added it nor keeps order)
 */
export async function withdrawEvidence(
  ctx: Context,
  input: z.infer<typeof withdrawEvidenceInput>,
): Promise<void> {
  const open = await openPiece(ctx, input.evidence);
  requireStanding(open);
  if (!mayWithdraw(ctx, open.piece))
    throw refused("EVIDENCE_NOT_YOURS", { what: "withdraw what others added" });
  const { reason } = input;
  const data = { withdrawnAt: ctx.now, withdrawnReason: reason, version: { increment: 1 } };
  await ctx.db.evidence.update({ where: open.key, data });
  await journalPiece(ctx, open, { action: "evidence.withdraw", reason, after: { withdrawn: true } });
}

export const restoreEvidenceInput = z.object(pieceId);

/**
 * Brings a withdrawn piece back.
 *
 * @throws Refusal EVIDENCE_NOT_FOUND, EVIDENCE_NOT_WITHDRAWN, EVIDENCE_NOT_YOURS
 */
export async function restoreEvidence(
  ctx: Context,
  input: z.infer<typeof restoreEvidenceInput>,
): Promise<void> {
  const open = await openPiece(ctx, input.evidence);
  if (!mayOrderEvidence(ctx)) throw refused("EVIDENCE_NOT_YOURS", { what: "bring evidence back" });
  if (open.piece.withdrawnAt === null) throw refused("EVIDENCE_NOT_WITHDRAWN", {});
  const data = { withdrawnAt: null, withdrawnReason: null, version: { increment: 1 } };
  await ctx.db.evidence.update({ where: open.key, data });
  await journalPiece(ctx, open, { action: "evidence.restore", after: { withdrawn: false } });
}

export const linkEvidenceInput = z.object({
  ...pieceId,
  for: targetInput,
  locus: lineInput(evidenceLimits.locus),
});

/**
 * Links a piece to one more thing that it supports.
 *
 * @throws Refusal EVIDENCE_NOT_FOUND, EVIDENCE_WITHDRAWN, EVIDENCE_TARGET_NOT_FOUND, EVIDENCE_NOT_YOURS,
 *   EVIDENCE_LINKED_ALREADY
 */
export async function linkEvidence(ctx: Context, input: z.infer<typeof linkEvidenceInput>): Promise<void> {
  const open = await openPiece(ctx, input.evidence);
  requireStanding(open);
  const target = await findTarget(ctx, input.for);
  const reference = evidenceTargetReference(target);
  if (target.past) throw refused("EVIDENCE_TARGET_NOT_FOUND", { target: reference });
  await requireMayChange(ctx, open.carIds, "link this piece of evidence");
  await requireMayChange(ctx, [target.carId], "link evidence to that");
  if (await isLinked(ctx, open.piece.id, target)) {
    throw refused("EVIDENCE_LINKED_ALREADY", { target: target.label });
  }
  await addLink(ctx, { evidenceId: open.piece.id, target, locus: input.locus });
  const after = { supports: reference, locus: input.locus };
  await writeJournal(ctx, [
    { action: "evidence.link", noun: "evidence", nounId: open.piece.id, ...ofCar(target), after },
  ]);
}

export const unlinkEvidenceInput = z.object({ ...pieceId, link: lineInput(36).min(1) });

/**
 * Takes one link away: the piece does not support that after all. A link that is not there any more is no fault.
 *
 * @throws Refusal EVIDENCE_NOT_FOUND, EVIDENCE_WITHDRAWN, EVIDENCE_NOT_YOURS, EVIDENCE_LAST_LINK
 */
export async function unlinkEvidence(
  ctx: Context,
  input: z.infer<typeof unlinkEvidenceInput>,
): Promise<void> {
  const open = await openPiece(ctx, input.evidence);
  requireStanding(open);
  const { piece, targets } = open;
  const link = piece.links.find(({ id }) => id === input.link);
  if (!link) return;
  const before = { supports: evidenceTargetReference(targetOf(link)) };
  const carId = targets.get(before.supports)?.carId ?? null;
  await requireMayChange(ctx, [carId], "take this link away");
  if (piece.links.length === 1) throw refused("EVIDENCE_LAST_LINK", {});
  await ctx.db.evidenceLink.delete({ where: { clubId_id: { clubId: ctx.club.id, id: link.id } } });
  await writeJournal(ctx, [
    { action: "evidence.unlink", noun: "evidence", nounId: piece.id, ...ofCar({ carId }), before },
  ]);
}
