import { acceptInput, acceptInvitation, findInvitation, invite, inviteInput } from "@trunnion/service";
import { z } from "zod";
import { anyone, member, router } from "../trpc";

export const invitationRouter = router({
  invite: member.input(inviteInput).mutation(({ ctx, input }) => invite(ctx.scope, input)),
  find: anyone.input(z.object({ token: z.string().max(100) })).query(async ({ ctx, input }) => {
    const { email, club, roles } = await findInvitation(ctx.database, input.token, new Date());
    return { email, club: club.name, roles };
  }),
  accept: anyone
    .input(acceptInput)
    .mutation(({ ctx, input }) => acceptInvitation(ctx.database, ctx.signIn, input, new Date())),
});
