import {
  addMarque,
  addMarqueInput,
  addSeriesForm,
  changeSeries,
  changeSeriesInput,
  foundSeries,
  listMarques,
  seriesPage,
  seriesTexts,
} from "@trunnion/service";
import { z } from "zod";
import { line } from "../line";
import { member, memberForEveryCar, router } from "../trpc";

export const seriesRouter = router({
  page: member.input(z.object({ series: line(60).min(1) })).query(async ({ ctx, input }) => {
    const page = await seriesPage(ctx.scope, input.series);
    const mayEdit = ctx.scope.actor.roles.some((role) => role === "registrar" || role === "fleetManager");
    return { ...page, mayEdit, texts: seriesTexts(page) };
  }),
  marques: member.query(({ ctx }) => listMarques(ctx.scope)),
  addMarque: member.input(addMarqueInput).mutation(({ ctx, input }) => addMarque(ctx.scope, input)),
  add: member.input(addSeriesForm).mutation(({ ctx, input }) => foundSeries(ctx.scope, input)),
  change: memberForEveryCar
    .input(changeSeriesInput)
    .mutation(({ ctx, input }) => changeSeries(ctx.scope, input)),
});
