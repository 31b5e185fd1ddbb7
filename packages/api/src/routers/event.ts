import { eventPage, listEvents } from "@trunnion/service";
import { z } from "zod";
import { line } from "../line";
import { member, router } from "../trpc";

export const eventRouter = router({
  list: member.query(({ ctx }) => listEvents(ctx.scope)),
  page: member
    .input(z.object({ event: line(60).min(1) }))
    .query(({ ctx, input }) => eventPage(ctx.scope, input.event)),
});
