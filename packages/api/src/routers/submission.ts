import {
  aboutPhoto,
  aboutPhotoInput,
  createDraft,
  createDraftInput,
  decideInput,
  decideSubmission,
  garage,
  listNotices,
  makerStepInput,
  removePhoto,
  removePhotoInput,
  reviewQueue,
  saveDraft,
  saveDraftInput,
  stepSubmission,
  submissionConsequence,
  submissionPage,
  submissionView,
  supersedeInput,
  supersedeSubmission,
} from "@trunnion/service";
import { z } from "zod";
import { line } from "../line";
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
  page: member
    .input(z.object({ id: z.uuid() }))
    .query(({ ctx, input }) => submissionPage(ctx.scope, input.id)),
  consequence: member
    .input(z.object({ id: z.uuid(), consequence: line(60).min(1) }))
    .query(({ ctx, input }) => submissionConsequence(ctx.scope, input)),
  aboutPhoto: member.input(aboutPhotoInput).mutation(({ ctx, input }) => aboutPhoto(ctx.scope, input)),
  removePhoto: member.input(removePhotoInput).mutation(({ ctx, input }) => removePhoto(ctx.scope, input)),
  queue: member.query(({ ctx }) => reviewQueue(ctx.scope)),
  garage: member.query(({ ctx }) => garage(ctx.scope)),
  notices: member.query(({ ctx }) => listNotices(ctx.scope)),
});
