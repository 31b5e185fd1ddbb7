import {
  changeFilter,
  changeFilterInput,
  filterForm,
  listFilters,
  removeFilter,
  removeFilterInput,
  saveFilter,
  saveFilterInput,
} from "@trunnion/service";
import { member, router } from "../trpc";

export const filterRouter = router({
  list: member.query(({ ctx }) => listFilters(ctx.scope)),
  form: member.query(({ ctx }) => filterForm(ctx.scope)),
  save: member.input(saveFilterInput).mutation(({ ctx, input }) => saveFilter(ctx.scope, input)),
  change: member.input(changeFilterInput).mutation(({ ctx, input }) => changeFilter(ctx.scope, input)),
  remove: member.input(removeFilterInput).mutation(({ ctx, input }) => removeFilter(ctx.scope, input.id)),
});
