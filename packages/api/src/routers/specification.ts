import {
  comparePage,
  discardDraft,
  discardDraftInput,
  draftEntry,
  draftReview,
  importSpecification,
  importSpecificationInput,
  makeCurrent,
  makeCurrentInput,
  putEntry,
  putEntryInput,
  removeEntry,
  removeEntryInput,
  specificationCsv,
  specificationOverview,
  specificationPage,
  startDraft,
  startDraftInput,
} from "@trunnion/service";
import { z } from "zod";
import { line } from "../line";
import { member, memberForEveryCar, router } from "../trpc";

const series = line(60).min(1);
const version = z.int().min(1).max(1_000_000);
const compared = z.object({ series, version: version.exactOptional() });
const entryInput = z.object({
  series,
  version,
  entry: z.uuid().exactOptional(),
  characteristic: line(120).exactOptional(),
});

export const specificationRouter = router({
  overview: member.query(({ ctx }) => specificationOverview(ctx.scope)),
  page: member
    .input(z.object({ series, version: version.exactOptional() }))
    .query(({ ctx, input }) => specificationPage(ctx.scope, input)),
  compare: memberForEveryCar
    .input(z.object({ before: compared, after: compared }))
    .query(({ ctx, input }) => comparePage(ctx.scope, input)),
  review: memberForEveryCar
    .input(z.object({ series, version }))
    .query(({ ctx, input }) => draftReview(ctx.scope, input)),
  csv: member
    .input(z.object({ series, version }))
    .query(({ ctx, input }) => specificationCsv(ctx.scope, input)),
  entry: member.input(entryInput).query(({ ctx, input }) => draftEntry(ctx.scope, input)),
  startDraft: member.input(startDraftInput).mutation(({ ctx, input }) => startDraft(ctx.scope, input)),
  putEntry: member.input(putEntryInput).mutation(({ ctx, input }) => putEntry(ctx.scope, input)),
  removeEntry: member.input(removeEntryInput).mutation(({ ctx, input }) => removeEntry(ctx.scope, input)),
  discardDraft: member.input(discardDraftInput).mutation(({ ctx, input }) => discardDraft(ctx.scope, input)),
  makeCurrent: memberForEveryCar
    .input(makeCurrentInput)
    .mutation(({ ctx, input }) => makeCurrent(ctx.scope, input)),
  import: member
    .input(
      importSpecificationInput.extend({
        file: line(200).min(1),
        bytes: z.instanceof(Uint8Array),
      }),
    )
    .mutation(({ ctx, input }) => importSpecification(ctx.scope, input)),
});
