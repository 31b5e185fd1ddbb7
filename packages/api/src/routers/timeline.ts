import { carTimeline } from "@trunnion/service";
import { z } from "zod";
import { line } from "../line";
import { member, router } from "../trpc";

const ofInput = z.object({ car: line(60).min(1), believed: z.iso.date().exactOptional() });

export const timelineRouter = router({
  of: member.input(ofInput).query(({ ctx, input }) => carTimeline(ctx.scope, input)),
});
