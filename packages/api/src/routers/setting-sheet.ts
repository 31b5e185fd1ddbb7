import {
  handInSheet,
  handInSheetInput,
  readPastedSheet,
  readSheetTableInput,
  rollStudy,
  settingSheetForm,
  settingSheetPage,
  setupPlanPage,
} from "@trunnion/service";
import { z } from "zod";
import { line } from "../line";
import { member, router } from "../trpc";

const car = line(60).min(1);

/** What a car is set to: its sheets, and the form of a new one. */
export const settingSheetRouter = router({
  page: member
    .input(z.object({ car, sheet: line(60).min(1).exactOptional() }))
    .query(({ ctx, input }) => settingSheetPage(ctx.scope, input)),
  form: member.input(z.object({ car })).query(({ ctx, input }) => settingSheetForm(ctx.scope, input.car)),
  plan: member
    .input(
      z.object({
        car,
        axle: z.enum(["front", "rear"]),
        side: z.enum(["left", "right"]),
        typed: z.record(line(40), line(80)),
      }),
    )
    .query(({ ctx, input }) => setupPlanPage(ctx.scope, input)),
  rollStudy: member
    .input(z.object({ car, typed: z.record(line(40), line(80)) }))
    .query(({ ctx, input }) => rollStudy(ctx.scope, input)),
  readTable: member.input(readSheetTableInput).query(({ ctx, input }) => readPastedSheet(ctx.scope, input)),
  handIn: member.input(handInSheetInput).mutation(({ ctx, input }) => handInSheet(ctx.scope, input)),
});
