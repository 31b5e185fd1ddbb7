import {
  evidenceLimits,
  evidenceTargetReference,
  Invalid,
  Problems,
  parsePartialDate,
  refused,
  sayDay,
  submissionLimits,
} from "@trunnion/register";
import { v7 as uuid } from "uuid";
import { z } from "zod";
import { readDate } from "../car";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { dayOf } from "../day";
import { dateInput, lineInput } from "../entry-input";
import { mayInspect } from "../inspection/policy";
import { type JournalLine, writeJournal } from "../journal";
import type { PreparedFile } from "../media";
import { partialDateColumns } from "../partial-date-columns";
import { addLink, isLinked, lockPiece } from "./link";
import { requireMayChange } from "./policy";
import { findTarget, type TargetLine, targetInput } from "./target";

/** What is said of all files that are sent together. */
export const addEvidenceInput = z.object({
  /** Reference of what they support. */
  for: targetInput,
  caption: lineInput(evidenceLimits.caption),
  /** When they were taken; empty for what the cameras say. */
  taken: dateInput,
  locus: lineInput(evidenceLimits.locus),
  /** Key of the one characteristic that they show of what they support; empty for all of it. */
  about: lineInput(80).default(""),
  keepLocation: z.boolean(),
});
export type AddEvidenceInput = z.infer<typeof addEvidenceInput>;

/** A prepared file whose content the store has; the bytes are not needed any more. */
export type StoredFile = Omit<PreparedFile, "content" | "preview"> & { readonly bytes: number };

/** What came of one file. */
export interface AddedPiece {
  readonly evidence: string;
  /** False where the club had this very content already, and it is only linked now. */
  readonly isNew: boolean;
}

/**
 * Checks what can be checked before any file is read: that the target is there and may be added to, and that the date
 * can be read.
 *
 * @throws Refusal EVIDENCE_TARGET_NOT_FOUND, EVIDENCE_NOT_YOURS; Invalid for the date
 */
export async function requireMayAdd(ctx: Context, input: AddEvidenceInput): Promise<TargetLine> {
  const target = await findTarget(ctx, input.for);
  if (input.about !== "" && !(await bookOf(ctx)).find(input.about))
    throw new Invalid([{ field: "about", message: "Choose what it shows from the list." }]);
  if (target.past) {
    throw refused("EVIDENCE_TARGET_NOT_FOUND", { target: evidenceTargetReference(target) });
  }
  // A car that is not on the register has no keeper, and its finding a photo all the same.
  if (!(target.kind === "finding" && mayInspect(ctx.actor)))
    await requireMayChange(ctx, [target.carId], "add evidence here");
  const problems = new Problems();
  readDate(input.taken, { field: "taken", today: ctx.today, problems });
  problems.throwIfAny();
  return target;
}

/** What was written, before what the camera says, which may be no day that can be: its clock was never set. */
function takenOf(ctx: Context, entered: string, file: StoredFile) {
  const camera = file.taken === undefined ? "" : sayDay(file.taken);
  const parsed = parsePartialDate(entered === "" ? camera : entered, { today: ctx.today });
  return parsed.ok ? parsed.date : null;
}

/** @throws Refusal SUBMISSION_PHOTOS_FULL */
async function requireRoom(ctx: Context, { kind, id }: TargetLine): Promise<void> {
  if (kind !== "submission") return;
  const limit = submissionLimits.photos;
  const have = await ctx.db.evidenceLink.count({ where: { submissionId: id } });
  if (have >= limit) throw refused("SUBMISSION_PHOTOS_FULL", { limit });
}

/** Puts a file on record, or finds the piece that has the same content. */
async function pieceFor(ctx: Context, file: StoredFile, input: AddEvidenceInput): Promise<AddedPiece> {
  const { fileName, mediaType, sha256, bytes, keepsLocation, quarterTurns, width, height } = file;
  const id = uuid();
  const taken = takenOf(ctx, input.taken, file);
  // Somebody else may be adding the same content at this moment: then this waits, and takes theirs.
  const { count } = await ctx.db.evidence.createMany({
    data: {
      id,
      ...{ fileName, mediaType, sha256, bytes, keepsLocation, quarterTurns },
      width: width ?? null,
      height: height ?? null,
      caption: input.caption === "" ? null : input.caption,
      ...partialDateColumns("taken", taken),
      addedById: ctx.actor.personId,
    },
    skipDuplicates: true,
  });
  if (count === 1) return { evidence: id, isNew: true };
  const where = { clubId_sha256: { clubId: ctx.club.id, sha256 } };
  const found = await ctx.db.evidence.findUniqueOrThrow({
    where,
    select: {
      id: true,
      addedById: true,
      withdrawnAt: true,
      withdrawnReason: true,
      _count: { select: { links: true } },
    },
  });
  await lockPiece(ctx, found);
  if (found.withdrawnAt === null) return { evidence: found.id, isNew: false };
  // Taken out of a draft by whoever sends it again: then it supported nothing, and is no withdrawn evidence of anything.
  if (found._count.links === 0 && found.addedById === ctx.actor.personId) {
    await ctx.db.evidence.update({
      where: { clubId_id: { clubId: ctx.club.id, id: found.id } },
      data: { withdrawnAt: null, withdrawnReason: null, version: { increment: 1 } },
    });
    return { evidence: found.id, isNew: false };
  }
  const reason = found.withdrawnReason ?? "";
  throw refused("EVIDENCE_WITHDRAWN", { on: sayDay(dayOf(found.withdrawnAt)), reason });
}

/**
 * Puts files that the store has on record, linked to what they support. A content the club has already is linked only:
 * what is said of it stays. No file name goes into the journal: it may be somebody's.
 *
 * @throws Refusal those of `requireMayAdd`; SUBMISSION_PHOTOS_FULL; EVIDENCE_WITHDRAWN for a content that was withdrawn. Then none is on record.
 */
export async function addEvidence(
  ctx: Context,
  input: AddEvidenceInput,
  files: readonly StoredFile[],
): Promise<readonly AddedPiece[]> {
  const target = await requireMayAdd(ctx, input);
  const added: AddedPiece[] = [];
  const lines: JournalLine[] = [];
  const supports = evidenceTargetReference(target);
  for (const file of files) {
    const piece = await pieceFor(ctx, file, input);
    added.push(piece);
    if (!piece.isNew && (await isLinked(ctx, piece.evidence, target))) continue;
    await requireRoom(ctx, target);
    await addLink(ctx, {
      evidenceId: piece.evidence,
      target,
      locus: input.locus,
      characteristic: input.about,
    });
    const { mediaType, bytes, sha256, keepsLocation } = file;
    const facts = {
      ...{ mediaType, bytes, sha256, keepsLocation, caption: input.caption },
      taken: takenOf(ctx, input.taken, file)?.text ?? "",
    };
    lines.push({
      action: piece.isNew ? "evidence.add" : "evidence.link",
      noun: "evidence",
      nounId: piece.evidence,
      ...(target.carId === null ? {} : { carId: target.carId }),
      after: { ...(piece.isNew ? facts : {}), supports, locus: input.locus, about: input.about },
    });
  }
  await writeJournal(ctx, lines);
  return added;
}
