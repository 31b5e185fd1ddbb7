import { importView, listImports } from "@trunnion/service";
import { z } from "zod";
import { line } from "../line";
import { member, router } from "../trpc";

/** What is seen of imports; what is done with them goes on after the answer, and so is no procedure. */
export const importRouter = router({
  list: member.query(({ ctx }) => listImports(ctx.scope)),
  view: member
    .input(z.object({ run: line(60).min(1) }))
    .query(({ ctx, input }) => importView(ctx.scope, input.run)),
});
