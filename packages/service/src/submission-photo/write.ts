import { evidenceTargetReference, Invalid, refused } from "@trunnion/register";
import { z } from "zod";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { lineInput } from "../entry-input";
import { lockPiece, pieceKey } from "../evidence";
import { writeJournal } from "../journal";
import { lockSubmission, requireMove } from "../submission";

const photoFields = { id: z.uuid(), evidence: z.uuid() };

/** A photo of a draft that is still its maker's to change, with its links. */
async function openPhoto(ctx: Context, { id, evidence }: { readonly id: string; readonly evidence: string }) {
  const row = await lockSubmission(ctx, id);
  requireMove(ctx, row, "save");
  await lockPiece(ctx, { id: evidence });
  const piece = await ctx.db.evidence.findUnique({
    where: pieceKey(ctx, evidence),
    select: { addedById: true, links: { select: { id: true, submissionId: true } } },
  });
  if (!piece) throw refused("EVIDENCE_NOT_FOUND", { evidence });
  return { row, piece, links: piece.links.filter(({ submissionId }) => submissionId === id) };
}

/** Which part of the change a photo shows: `about` is a key of the dictionary, empty for all of the change. */
export const aboutPhotoInput = z.object({ ...photoFields, about: lineInput(80).default("") });

/**
 * Says what a photo of a draft shows. Said twice it is said once.
 *
 * @throws Refusal SUBMISSION_NOT_FOUND, SUBMISSION_NOT_YOURS, SUBMISSION_STEP once it is handed in; EVIDENCE_NOT_FOUND;
 *   Invalid for what is no characteristic
 */
export async function aboutPhoto(ctx: Context, input: z.infer<typeof aboutPhotoInput>): Promise<void> {
  const { links } = await openPhoto(ctx, input);
  if (input.about !== "" && !(await bookOf(ctx)).find(input.about))
    throw new Invalid([{ field: "about", message: "Choose what it shows from the list." }]);
  if (links.length === 0) throw refused("EVIDENCE_NOT_FOUND", { evidence: input.evidence });
  await ctx.db.evidenceLink.updateMany({
    where: { id: { in: links.map((link) => link.id) } },
    data: { characteristic: input.about === "" ? null : input.about },
  });
}

export const removePhotoInput = z.object(photoFields);

/**
 * Takes a photo out of a draft. One that supports something else of the record stays there; one that was only here is
 * withdrawn, and comes back when the same person sends it again. Taken out twice it is taken out once.
 *
 * @throws Refusal SUBMISSION_NOT_FOUND, SUBMISSION_NOT_YOURS, SUBMISSION_STEP once it is handed in; EVIDENCE_NOT_FOUND
 */
export async function removePhoto(ctx: Context, input: z.infer<typeof removePhotoInput>): Promise<void> {
  const { row, piece, links } = await openPhoto(ctx, input);
  if (links.length === 0) return;
  await ctx.db.evidenceLink.deleteMany({ where: { id: { in: links.map((link) => link.id) } } });
  const reason = "Taken out of a draft by its maker.";
  const alone = piece.links.length === links.length && piece.addedById === ctx.actor.personId;
  if (alone)
    await ctx.db.evidence.update({
      where: pieceKey(ctx, input.evidence),
      data: { withdrawnAt: ctx.now, withdrawnReason: reason, version: { increment: 1 } },
    });
  await writeJournal(ctx, [
    {
      action: alone ? "evidence.withdraw" : "evidence.unlink",
      noun: "evidence",
      nounId: input.evidence,
      carId: row.carId,
      reason,
      before: { supports: evidenceTargetReference({ kind: "submission", id: row.id }) },
    },
  ]);
}
