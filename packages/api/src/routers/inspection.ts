import {
  eventPack,
  eventToInspect,
  findEvent,
  inspectionOf,
  takeInspection,
  takeInspectionInput,
} from "@trunnion/service";
import { z } from "zod";
import { line } from "../line";
import { member, router } from "../trpc";

const eventRef = z.object({ event: line(60).min(1) });

export const inspectionRouter = router({
  event: member.input(eventRef).query(({ ctx, input }) => eventToInspect(ctx.scope, input.event)),
  /** What is taken along into the paddock. */
  pack: member.input(eventRef).query(({ ctx, input }) => eventPack(ctx.scope, input.event)),
  /** What a device found goes in, and everything there is of the event by now comes back. */
  exchange: member.input(takeInspectionInput).mutation(async ({ ctx, input }) => {
    const told = await takeInspection(ctx.scope, input);
    const { id } = await findEvent(ctx.scope, input.event);
    return { told, now: ctx.scope.now.toISOString(), ...(await inspectionOf(ctx.scope, id)) };
  }),
});
