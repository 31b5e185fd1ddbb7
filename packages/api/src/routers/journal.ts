import { carJournal, checkJournal, journalEntry, journalPage } from "@trunnion/service";
import { z } from "zod";
import { line } from "../line";
import { member, router } from "../trpc";

const place = z.number().int().min(1).max(Number.MAX_SAFE_INTEGER);

const pageInput = z.object({
  car: line(60).exactOptional(),
  person: z.union([z.uuid(), z.literal("none")]).exactOptional(),
  action: line(60).exactOptional(),
  from: z.iso.date().exactOptional(),
  to: z.iso.date().exactOptional(),
  before: place.exactOptional(),
});

export const journalRouter = router({
  page: member.input(pageInput).query(({ ctx, input }) => journalPage(ctx.scope, input)),
  ofCar: member
    .input(pageInput.extend({ car: line(60).min(1) }))
    .query(({ ctx, input }) => carJournal(ctx.scope, input)),
  entry: member
    .input(z.object({ sequence: place }))
    .query(({ ctx, input }) => journalEntry(ctx.scope, input.sequence)),
  check: member.query(({ ctx }) => checkJournal(ctx.scope)),
});
