import {
  choosePublicExtract,
  extractCar,
  extractList,
  extractSettings,
  publicExtractInput,
} from "@trunnion/service";
import { z } from "zod";
import { line } from "../line";
import { anyone, member, router } from "../trpc";

const clubName = line(60).min(1);

export const publicExtractRouter = router({
  settings: member.query(({ ctx }) => extractSettings(ctx.scope)),
  choose: member
    .input(publicExtractInput)
    .mutation(({ ctx, input }) => choosePublicExtract(ctx.scope, input)),
  list: anyone
    .input(z.object({ club: clubName, after: line(60).exactOptional() }))
    .query(({ ctx, input }) => extractList(ctx.database, input)),
  car: anyone
    .input(z.object({ club: clubName, car: line(60).min(1) }))
    .query(({ ctx, input }) => extractCar(ctx.database, input)),
});
