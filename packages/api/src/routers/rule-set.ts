import {
  carInRuleSet,
  copyRuleSet,
  copyRuleSetInput,
  discardRuleSet,
  draftRef,
  listRuleSets,
  makeRuleSetCurrent,
  putCheck,
  putCheckInput,
  putClass,
  putClassInput,
  putLimit,
  putLimitInput,
  removeRow,
  removeRowInput,
  ruleSetPage,
} from "@trunnion/service";
import { z } from "zod";
import { line } from "../line";
import { member, router } from "../trpc";

const ofRuleSet = z.object({
  ruleSet: line(60).min(1),
  version: z.coerce.number().int().min(1).exactOptional(),
});

export const ruleSetRouter = router({
  list: member.query(({ ctx }) => listRuleSets(ctx.scope)),
  page: member.input(ofRuleSet).query(({ ctx, input }) => ruleSetPage(ctx.scope, input)),
  car: member
    .input(ofRuleSet.extend({ car: line(60).min(1), classCode: line(12).exactOptional() }))
    .query(({ ctx, input }) => carInRuleSet(ctx.scope, input)),
  copy: member.input(copyRuleSetInput).mutation(({ ctx, input }) => copyRuleSet(ctx.scope, input)),
  putCheck: member.input(putCheckInput).mutation(({ ctx, input }) => putCheck(ctx.scope, input)),
  putClass: member.input(putClassInput).mutation(({ ctx, input }) => putClass(ctx.scope, input)),
  putLimit: member.input(putLimitInput).mutation(({ ctx, input }) => putLimit(ctx.scope, input)),
  removeRow: member.input(removeRowInput).mutation(({ ctx, input }) => removeRow(ctx.scope, input)),
  makeCurrent: member.input(draftRef).mutation(({ ctx, input }) => makeRuleSetCurrent(ctx.scope, input)),
  discard: member.input(draftRef).mutation(({ ctx, input }) => discardRuleSet(ctx.scope, input)),
});
