import { exportPage } from "@trunnion/service";
import { member, router } from "../trpc";

export const exportRouter = router({
  page: member.query(({ ctx }) => exportPage(ctx.scope)),
});
