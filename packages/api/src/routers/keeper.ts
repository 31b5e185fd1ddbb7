import {
  addKeepership,
  addKeepershipInput,
  correctKeeper,
  correctKeeperInput,
  correctKeepership,
  correctKeepershipInput,
  correctOwnContact,
  correctOwnContactInput,
  eraseKeeper,
  eraseKeeperInput,
  exportKeeper,
  keeperDetail,
  listKeepers,
  listMembers,
  ownContacts,
  removeKeepership,
  removeKeepershipInput,
} from "@trunnion/service";
import { z } from "zod";
import { member, router } from "../trpc";

const keeperRef = z.object({ keeper: z.uuid() });

/** Who keeps a car: personal data, for those who may, and for oneself. */
export const keeperRouter = router({
  own: member.query(({ ctx }) => ownContacts(ctx.scope)),
  correctOwn: member
    .input(correctOwnContactInput)
    .mutation(({ ctx, input }) => correctOwnContact(ctx.scope, input)),
  choices: member.query(async ({ ctx }) => ({
    keepers: await listKeepers(ctx.scope),
    members: await listMembers(ctx.scope),
  })),
  detail: member.input(keeperRef).query(async ({ ctx, input }) => ({
    keeper: await keeperDetail(ctx.scope, input.keeper),
    members: await listMembers(ctx.scope),
  })),
  export: member.input(keeperRef).query(({ ctx, input }) => exportKeeper(ctx.scope, input.keeper)),
  add: member.input(addKeepershipInput).mutation(({ ctx, input }) => addKeepership(ctx.scope, input)),
  correct: member
    .input(correctKeepershipInput)
    .mutation(({ ctx, input }) => correctKeepership(ctx.scope, input)),
  remove: member
    .input(removeKeepershipInput)
    .mutation(({ ctx, input }) => removeKeepership(ctx.scope, input)),
  correctPerson: member
    .input(correctKeeperInput)
    .mutation(({ ctx, input }) => correctKeeper(ctx.scope, input)),
  erase: member.input(eraseKeeperInput).mutation(({ ctx, input }) => eraseKeeper(ctx.scope, input)),
});
