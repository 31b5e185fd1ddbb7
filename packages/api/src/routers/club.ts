import { myClubs } from "@trunnion/service";
import { member, router, signedIn } from "../trpc";

export const clubRouter = router({
  mine: signedIn.query(({ ctx }) => myClubs(ctx.database, ctx.signedIn.personId)),
  home: member.query(({ ctx }) => ({ club: ctx.scope.club, actor: ctx.scope.actor, today: ctx.scope.today })),
});
