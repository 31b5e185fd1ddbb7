import { conditionSchema } from "@trunnion/register";
import {
  carPage,
  correctCar,
  correctCarInput,
  listOrders,
  listSeries,
  registerList,
} from "@trunnion/service";
import { z } from "zod";
import { line } from "../line";
import { member, router } from "../trpc";

const listInput = z.object({
  search: line(200).exactOptional(),
  series: line(60).exactOptional(),
  after: line(60).exactOptional(),
  condition: conditionSchema.exactOptional(),
  filter: line(60).exactOptional(),
  show: z.enum(["yes", "unknown"]).exactOptional(),
  order: z
    .union([z.enum(listOrders), z.object({ key: line(120).min(1), descending: z.boolean() })])
    .exactOptional(),
  columns: z.array(line(120)).max(8).exactOptional(),
  photos: z.boolean().exactOptional(),
});

export const carRouter = router({
  list: member.input(listInput).query(({ ctx, input }) => registerList(ctx.scope, input)),
  series: member.query(({ ctx }) => listSeries(ctx.scope)),
  page: member
    .input(z.object({ car: line(60).min(1) }))
    .query(({ ctx, input }) => carPage(ctx.scope, input.car)),
  correct: member.input(correctCarInput).mutation(({ ctx, input }) => correctCar(ctx.scope, input)),
});
