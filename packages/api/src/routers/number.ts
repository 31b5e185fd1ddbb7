import { numberKinds } from "@trunnion/register";
import {
  claimPage,
  decideNumber,
  decideNumberInput,
  numbersPage,
  setAside,
  setAsideInput,
  takeUp,
  takeUpInput,
} from "@trunnion/service";
import { z } from "zod";
import { line } from "../line";
import { member, router } from "../trpc";

/** What is odd about the club's numbers, and what the registrar decides about it. */
export const numberRouter = router({
  page: member.query(({ ctx }) => numbersPage(ctx.scope)),
  claim: member
    .input(z.object({ kind: z.enum(numberKinds), number: line(60).min(1) }))
    .query(({ ctx, input }) => claimPage(ctx.scope, input)),
  decide: member.input(decideNumberInput).mutation(({ ctx, input }) => decideNumber(ctx.scope, input)),
  setAside: member.input(setAsideInput).mutation(({ ctx, input }) => setAside(ctx.scope, input)),
  takeUp: member.input(takeUpInput).mutation(({ ctx, input }) => takeUp(ctx.scope, input)),
});
