import { readEvidenceTarget, refused } from "@trunnion/register";
import {
  carEvidence,
  correctEvidence,
  correctEvidenceInput,
  evidencePiece,
  linkEvidence,
  linkEvidenceInput,
  restoreEvidence,
  restoreEvidenceInput,
  targetEvidence,
  turnEvidence,
  turnEvidenceInput,
  unlinkEvidence,
  unlinkEvidenceInput,
  withdrawEvidence,
  withdrawEvidenceInput,
} from "@trunnion/service";
import { z } from "zod";
import { line } from "../line";
import { member, router } from "../trpc";

const targetRef = z.object({ for: line(80).min(1) });

export const evidenceRouter = router({
  car: member
    .input(z.object({ car: line(60).min(1) }))
    .query(({ ctx, input }) => carEvidence(ctx.scope, input.car)),
  target: member.input(targetRef).query(({ ctx, input }) => {
    const target = readEvidenceTarget(input.for);
    if (!target) throw refused("EVIDENCE_TARGET_NOT_FOUND", { target: input.for });
    return targetEvidence(ctx.scope, target);
  }),
  piece: member
    .input(z.object({ evidence: line(60).min(1) }))
    .query(({ ctx, input }) => evidencePiece(ctx.scope, input.evidence)),
  correct: member.input(correctEvidenceInput).mutation(({ ctx, input }) => correctEvidence(ctx.scope, input)),
  turn: member.input(turnEvidenceInput).mutation(({ ctx, input }) => turnEvidence(ctx.scope, input)),
  withdraw: member
    .input(withdrawEvidenceInput)
    .mutation(({ ctx, input }) => withdrawEvidence(ctx.scope, input)),
  restore: member.input(restoreEvidenceInput).mutation(({ ctx, input }) => restoreEvidence(ctx.scope, input)),
  link: member.input(linkEvidenceInput).mutation(({ ctx, input }) => linkEvidence(ctx.scope, input)),
  unlink: member.input(unlinkEvidenceInput).mutation(({ ctx, input }) => unlinkEvidence(ctx.scope, input)),
});
