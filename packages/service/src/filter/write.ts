import { Prisma } from "@trunnion/db";
import { type Condition, conditionSchema, foldText, refused } from "@trunnion/register";
import { v7 as uuid } from "uuid";
import { z } from "zod";
import type { Context } from "../context";
import { writeJournal } from "../journal";
import { filterLimit, requirePerson } from "./policy";
import { listFilters, type SavedFilter } from "./read";

const name = z
  .string()
  .trim()
  .min(1, "Give it a name.")
  .max(60, "At most 60 characters.")
  .regex(/^[^\p{Cc}\p{Cs}]*$/u, "No control characters.");
const yesOrNo = z.enum(["yes", "no"]);

/** What a filter is saved with. */
export const saveFilterInput = z.object({
  name,
  condition: conditionSchema,
  /** Shown to the whole club. */
  shared: yesOrNo.default("no"),
  /** Put it in the place of one's own filter of that name, if there is one. */
  replace: yesOrNo.default("no"),
});
export type SaveFilterInput = z.infer<typeof saveFilterInput>;

/** What of a saved filter may change; its condition by saving over it. */
export const changeFilterInput = z.object({ id: z.uuid(), name, shared: yesOrNo.default("no") });
export type ChangeFilterInput = z.infer<typeof changeFilterInput>;

export const removeFilterInput = z.object({ id: z.uuid() });

/** What the club sees, the journal keeps; what somebody keeps for themselves is nobody's business. */
async function tell(
  ctx: Context,
  action: string,
  filter: Pick<SavedFilter, "id" | "name" | "condition">,
): Promise<void> {
  const after = { name: filter.name, condition: filter.condition as unknown as Prisma.InputJsonObject };
  await writeJournal(ctx, [{ action, noun: "savedFilter", nounId: filter.id, after }]);
}

/** A name may be had once among one's own, and once among those shared. */
function requireFreeName(
  filters: readonly SavedFilter[],
  wanted: { readonly id: string; readonly name: string; readonly shared: boolean; readonly own: boolean },
): void {
  const same = (one: SavedFilter) => one.id !== wanted.id && foldText(one.name) === foldText(wanted.name);
  const taken = filters.some(
    (one) => same(one) && ((one.own && wanted.own) || (one.shared && wanted.shared)),
  );
  if (taken) throw refused("FILTER_NAME_TAKEN", { name: wanted.name });
}

/** Two who share one name at the same moment: the later one is told, as if it had looked a moment later. */
async function unlessTaken<T>(taken: string, write: () => Promise<T>): Promise<T> {
  try {
    return await write();
  } catch (error) {
    const isTaken = error instanceof Prisma.PrismaClientKnownRequestError && error.code === "P2002";
    throw isTaken ? refused("FILTER_NAME_TAKEN", { name: taken }) : error;
  }
}

async function replace(ctx: Context, before: SavedFilter, input: SaveFilterInput): Promise<SavedFilter> {
  const shared = input.shared === "yes";
  const data = { name: input.name, condition: input.condition as unknown as Prisma.InputJsonObject, shared };
  await unlessTaken(input.name, () => ctx.db.savedFilter.updateMany({ where: { id: before.id }, data }));
  const after = { ...before, name: input.name, condition: input.condition, shared };
  if (shared || before.shared) await tell(ctx, shared ? "filter.share" : "filter.withdraw", after);
  return after;
}

/**
 * Keeps a condition under a name, for oneself or for the club.
 *
 * @throws Refusal NOT_SIGNED_IN for a command, FILTER_NAME_TAKEN, TOO_MANY_FILTERS
 */
export async function saveFilter(ctx: Context, input: SaveFilterInput): Promise<SavedFilter> {
  const personId = requirePerson(ctx);
  const filters = await listFilters(ctx);
  const mine = filters.filter(({ own }) => own);
  const before = mine.find((one) => foldText(one.name) === foldText(input.name));
  const shared = input.shared === "yes";
  const id = before?.id ?? uuid();
  if (before && input.replace === "no") throw refused("FILTER_NAME_TAKEN", { name: input.name });
  requireFreeName(filters, { id, name: input.name, shared, own: true });
  if (before) return replace(ctx, before, input);
  if (mine.length >= filterLimit) throw refused("TOO_MANY_FILTERS", { limit: filterLimit });
  const condition: Condition = input.condition;
  const data = {
    id,
    name: input.name,
    condition: condition as unknown as Prisma.InputJsonObject,
    shared,
    personId,
  };
  await unlessTaken(input.name, () => ctx.db.savedFilter.create({ data }));
  if (shared) await tell(ctx, "filter.share", { id, name: input.name, condition });
  return { id, name: input.name, condition, shared, own: true, mayChange: true };
}

async function changeable(ctx: Context, id: string) {
  requirePerson(ctx);
  const filters = await listFilters(ctx);
  const found = filters.find((one) => one.id === id);
  if (!found) throw refused("FILTER_NOT_FOUND", { filter: id, known: filters.map((one) => one.name) });
  if (!found.mayChange) throw refused("FILTER_OF_ANOTHER", { name: found.name });
  return { found, filters };
}

/**
 * Renames a filter, shares it with the club or takes it back. One shared by another may be tidied by a registrar; taken
 * back, it is that person's own again.
 *
 * @throws Refusal FILTER_NOT_FOUND, FILTER_OF_ANOTHER, FILTER_NAME_TAKEN
 */
export async function changeFilter(ctx: Context, input: ChangeFilterInput): Promise<SavedFilter> {
  const { found, filters } = await changeable(ctx, input.id);
  const shared = input.shared === "yes";
  requireFreeName(filters, { id: found.id, name: input.name, shared, own: found.own });
  const data = { name: input.name, shared };
  await unlessTaken(input.name, () => ctx.db.savedFilter.updateMany({ where: { id: found.id }, data }));
  const after = { ...found, ...data };
  if (shared || found.shared) await tell(ctx, shared ? "filter.share" : "filter.withdraw", after);
  return after;
}

/**
 * Takes a filter away.
 *
 * @throws Refusal FILTER_NOT_FOUND, FILTER_OF_ANOTHER
 */
export async function removeFilter(ctx: Context, id: string): Promise<void> {
  const { found } = await changeable(ctx, id);
  await ctx.db.savedFilter.deleteMany({ where: { id: found.id } });
  if (found.shared) await tell(ctx, "filter.remove", found);
}
