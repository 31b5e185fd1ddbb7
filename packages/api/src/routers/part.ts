import { partNeeds } from "@trunnion/service";
import { member, router } from "../trpc";

export const partRouter = router({
  /** Every part with how scarce it is, the scarcest and most needed first. */
  needs: member.query(({ ctx }) => partNeeds(ctx.scope)),
});
