import { acceptInput, acceptInvitation, invite, inviteInput, readInvitation } from "@trunnion/service";
import { z } from "zod";
import { line } from "../line";
import { anyone, member, router } from "../trpc";

export const invitationRouter = router({
  invite: member.input(inviteInput).mutation(({ ctx, input }) => invite(ctx.scope, input)),
  find: anyone
    .input(z.object({ token: line(100) }))
    .query(({ ctx, input }) => readInvitation(ctx.database, ctx.signIn, input.token, new Date())),
  accept: anyone
    .input(acceptInput)
    .mutation(({ ctx, input }) => acceptInvitation(ctx.database, ctx.signIn, input, new Date())),
});
