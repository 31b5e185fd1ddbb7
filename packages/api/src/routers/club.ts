import { home, myClubs } from "@trunnion/service";
import { member, router, signedIn } from "../trpc";

export const clubRouter = router({
  mine: signedIn.query(async ({ ctx }) => ({
    person: ctx.signedIn,
    clubs: await myClubs(ctx.database, ctx.signedIn.personId),
  })),
  home: member.query(({ ctx }) => home(ctx.scope)),
});
