import { carPage, listCars, listSeries } from "@trunnion/service";
import { z } from "zod";
import { member, router } from "../trpc";

const listInput = z.object({
  search: z.string().max(80).exactOptional(),
  series: z.string().max(60).exactOptional(),
  after: z.string().max(60).exactOptional(),
});

export const carRouter = router({
  list: member.input(listInput).query(({ ctx, input }) => listCars(ctx.scope, input)),
  series: member.query(({ ctx }) => listSeries(ctx.scope)),
  page: member
    .input(z.object({ car: z.string().min(1).max(60) }))
    .query(({ ctx, input }) => carPage(ctx.scope, input.car)),
});
