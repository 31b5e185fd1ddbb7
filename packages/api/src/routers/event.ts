import { eventPage, listEvents } from "@trunnion/service";
import { z } from "zod";
import { member, router } from "../trpc";

export const eventRouter = router({
  list: member.query(({ ctx }) => listEvents(ctx.scope)),
  page: member
    .input(z.object({ event: z.string().min(1).max(60) }))
    .query(({ ctx, input }) => eventPage(ctx.scope, input.event)),
});
