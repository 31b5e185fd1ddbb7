import { carConsequence, carConsequences } from "@trunnion/service";
import { z } from "zod";
import { line } from "../line";
import { member, router } from "../trpc";

const car = line(60).min(1);

export const consequenceRouter = router({
  list: member.input(z.object({ car })).query(({ ctx, input }) => carConsequences(ctx.scope, input.car)),
  one: member
    .input(z.object({ car, id: line(60).min(1) }))
    .query(({ ctx, input }) => carConsequence(ctx.scope, input)),
});
