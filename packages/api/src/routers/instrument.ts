import {
  addInstrument,
  addInstrumentInput,
  changeInstrument,
  changeInstrumentInput,
  instrumentPage,
  instrumentsPage,
  restoreInstrument,
  retireInstrument,
  retireInstrumentInput,
} from "@trunnion/service";
import { z } from "zod";
import { line } from "../line";
import { member, router } from "../trpc";

/** What the club measures with. */
export const instrumentRouter = router({
  list: member.query(({ ctx }) => instrumentsPage(ctx.scope)),
  page: member
    .input(z.object({ instrument: line(36).min(1) }))
    .query(({ ctx, input }) => instrumentPage(ctx.scope, input.instrument)),
  add: member.input(addInstrumentInput).mutation(({ ctx, input }) => addInstrument(ctx.scope, input)),
  change: member
    .input(changeInstrumentInput)
    .mutation(({ ctx, input }) => changeInstrument(ctx.scope, input)),
  retire: member
    .input(retireInstrumentInput)
    .mutation(({ ctx, input }) => retireInstrument(ctx.scope, input)),
  restore: member
    .input(retireInstrumentInput)
    .mutation(({ ctx, input }) => restoreInstrument(ctx.scope, input)),
});
