import { conditionSchema } from "@trunnion/register";
import { spread, together } from "@trunnion/service";
import { z } from "zod";
import { line } from "../line";
import { member, router } from "../trpc";

const choiceInput = z.object({
  series: line(60).exactOptional(),
  condition: conditionSchema.exactOptional(),
  filter: line(60).exactOptional(),
});
const keyInput = choiceInput.extend({ key: line(120).min(1) });

export const fleetRouter = router({
  spread: member
    .input(keyInput.extend({ side: z.enum(["left", "right"]).exactOptional() }))
    .query(({ ctx, input }) => spread(ctx.scope, input)),
  together: member
    .input(keyInput.extend({ value: line(120).exactOptional() }))
    .query(({ ctx, input }) => together(ctx.scope, input)),
});
