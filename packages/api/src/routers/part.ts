import { assemblies } from "@trunnion/register";
import {
  addPart,
  addPartInput,
  addPartNote,
  addPartNoteInput,
  carMixes,
  changePart,
  changePartInput,
  partForm,
  partNeeds,
  partPage,
  partsPage,
  withdrawPart,
  withdrawPartInput,
  withdrawPartNote,
  withdrawPartNoteInput,
} from "@trunnion/service";
import { z } from "zod";
import { line } from "../line";
import { member, router } from "../trpc";

const ofPart = z.object({ part: line(60).min(1) });

export const partRouter = router({
  list: member
    .input(z.object({ assembly: z.enum(assemblies).optional(), series: line(60).min(1).optional() }))
    .query(({ ctx, input }) => partsPage(ctx.scope, input)),
  page: member.input(ofPart).query(({ ctx, input }) => partPage(ctx.scope, input.part)),
  /** What the form of a part offers. */
  form: member.input(ofPart.partial()).query(({ ctx, input }) => partForm(ctx.scope, input.part)),
  add: member.input(addPartInput).mutation(({ ctx, input }) => addPart(ctx.scope, input)),
  change: member.input(changePartInput).mutation(({ ctx, input }) => changePart(ctx.scope, input)),
  withdraw: member.input(withdrawPartInput).mutation(({ ctx, input }) => withdrawPart(ctx.scope, input)),
  note: member.input(addPartNoteInput).mutation(({ ctx, input }) => addPartNote(ctx.scope, input)),
  withdrawNote: member
    .input(withdrawPartNoteInput)
    .mutation(({ ctx, input }) => withdrawPartNote(ctx.scope, input)),
  /** What a car's record mixes: threads that meet and differ, threads and lengths that look alike. */
  mixes: member
    .input(z.object({ car: line(60).min(1) }))
    .query(({ ctx, input }) => carMixes(ctx.scope, input.car)),
  /** Every part with how scarce it is, the scarcest and most needed first. */
  needs: member.query(({ ctx }) => partNeeds(ctx.scope)),
});
