import { conditionSchema } from "@trunnion/register";
import {
  addFeed,
  addFeedInput,
  comparisonInput,
  comparisonPage,
  dueInput,
  dueMonth,
  dueMonthInput,
  duePage,
  feedPage,
  others,
  prevalence,
  removeFeed,
  removeFeedInput,
  scarceParts,
  spread,
  survival,
  together,
} from "@trunnion/service";
import { z } from "zod";
import { line } from "../line";
import { member, memberForEveryCar, router } from "../trpc";

const choiceInput = z.object({
  series: line(60).exactOptional(),
  condition: conditionSchema.exactOptional(),
  filter: line(60).exactOptional(),
});
const keyInput = choiceInput.extend({ key: line(120).min(1) });

export const fleetRouter = router({
  due: member.input(dueInput).query(({ ctx, input }) => duePage(ctx.scope, input)),
  dueMonth: member.input(dueMonthInput).query(({ ctx, input }) => dueMonth(ctx.scope, input)),
  feeds: member.query(({ ctx }) => feedPage(ctx.scope)),
  addFeed: member.input(addFeedInput).mutation(({ ctx, input }) => addFeed(ctx.scope, input)),
  removeFeed: member.input(removeFeedInput).mutation(({ ctx, input }) => removeFeed(ctx.scope, input)),
  compare: member.input(comparisonInput).query(({ ctx, input }) => comparisonPage(ctx.scope, input)),
  prevalence: memberForEveryCar.input(choiceInput).query(({ ctx, input }) => prevalence(ctx.scope, input)),
  others: memberForEveryCar
    .input(z.object({ car: line(60).min(1) }))
    .query(({ ctx, input }) => others(ctx.scope, input.car)),
  scarceParts: member
    .input(z.object({ part: line(60).exactOptional() }))
    .query(({ ctx, input }) => scarceParts(ctx.scope, input.part)),
  survival: memberForEveryCar
    .input(z.object({ series: line(60).exactOptional() }))
    .query(({ ctx, input }) => survival(ctx.scope, input.series)),
  spread: memberForEveryCar
    .input(keyInput.extend({ side: z.enum(["left", "right"]).exactOptional() }))
    .query(({ ctx, input }) => spread(ctx.scope, input)),
  together: memberForEveryCar
    .input(keyInput.extend({ value: line(120).exactOptional() }))
    .query(({ ctx, input }) => together(ctx.scope, input)),
});
