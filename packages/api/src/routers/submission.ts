import {
  createDraft,
  createDraftInput,
  decideInput,
  decideSubmission,
  listNotices,
  makerStepInput,
  saveDraft,
  saveDraftInput,
  stepSubmission,
  submissionView,
  supersedeInput,
  supersedeSubmission,
} from "@trunnion/service";
import { z } from "zod";
import { member, router } from "../trpc";

/** What members hand in about cars, until it is decided. */
export const submissionRouter = router({
  create: member.input(createDraftInput).mutation(({ ctx, input }) => createDraft(ctx.scope, input)),
  save: member.input(saveDraftInput).mutation(({ ctx, input }) => saveDraft(ctx.scope, input)),
  step: member.input(makerStepInput).mutation(({ ctx, input }) => stepSubmission(ctx.scope, input)),
  correct: member.input(supersedeInput).mutation(({ ctx, input }) => supersedeSubmission(ctx.scope, input)),
  decide: member.input(decideInput).mutation(({ ctx, input }) => decideSubmission(ctx.scope, input)),
  view: member
    .input(z.object({ id: z.uuid() }))
    .query(({ ctx, input }) => submissionView(ctx.scope, input.id)),
  notices: member.query(({ ctx }) => listNotices(ctx.scope)),
});
