import {
  builtInBook,
  type Characteristic,
  type Condition,
  conditionSchema,
  foldText,
  refused,
  togetherCondition,
} from "@trunnion/register";
import { bookOf } from "../characteristic";
import type { ClubFacts, Context } from "../context";
import { listSeries, type SeriesLine } from "../series";
import { readStored } from "../stored-row";
import { mayTidyShared } from "./policy";

/** A condition kept under a name, by a person for themselves or for the club. */
export interface SavedFilter {
  readonly id: string;
  readonly name: string;
  readonly condition: Condition;
  readonly shared: boolean;
  /** Of the one who asks. */
  readonly own: boolean;
  /** Whether the one who asks may rename it, share it or not, and take it away. */
  readonly mayChange: boolean;
}

const fields = { id: true, name: true, condition: true, shared: true, personId: true } as const;

/** The filters of the one who asks and those shared with the club, own ones first, by name. */
export async function listFilters(ctx: Context): Promise<readonly SavedFilter[]> {
  const { personId } = ctx.actor;
  const rows = await ctx.db.savedFilter.findMany({
    where: { OR: [{ shared: true }, ...(personId === null ? [] : [{ personId }])] },
    select: fields,
    orderBy: [{ name: "asc" }, { id: "asc" }],
  });
  const filters = rows.map(({ id, name, condition, shared, personId: owner }) => ({
    id,
    name,
    condition: readStored(conditionSchema, condition, `filter "${name}"`),
    shared,
    own: owner === personId,
    mayChange: owner === personId || (shared && mayTidyShared(ctx)),
  }));
  return [...filters.filter(({ own }) => own), ...filters.filter(({ own }) => !own)];
}

/**
 * The filter of that name, capitals and accents aside: the own one before a shared one.
 *
 * @throws Refusal FILTER_NOT_FOUND, also for one that another keeps for themselves
 */
export async function filterNamed(ctx: Context, name: string): Promise<SavedFilter> {
  const filters = await listFilters(ctx);
  const found = filters.find((one) => foldText(one.name) === foldText(name));
  if (found) return found;
  throw refused("FILTER_NOT_FOUND", { filter: name, known: filters.map((one) => one.name) });
}

/**
 * The one condition asked for: a saved filter's, one given beside it, or both together.
 *
 * @throws Refusal FILTER_NOT_FOUND
 */
export async function conditionAsked(
  ctx: Context,
  { filter, condition }: { readonly filter?: string; readonly condition?: Condition },
): Promise<Condition | undefined> {
  const saved = filter === undefined ? undefined : (await filterNamed(ctx, filter)).condition;
  return togetherCondition(saved, condition);
}

/** What the form that builds a condition needs to know of the club. */
export interface FilterForm {
  /** Characteristics of the club's own, beside the built-in ones. */
  readonly own: readonly Characteristic[];
  readonly series: readonly SeriesLine[];
  readonly system: ClubFacts["unitSystem"];
  /** ISO day. */
  readonly today: string;
}

/** What the form that builds a condition needs to know of the club. */
export async function filterForm(ctx: Context): Promise<FilterForm> {
  const book = await bookOf(ctx);
  const own = book.all.filter(({ key }) => builtInBook.find(key) === undefined);
  return { own, series: await listSeries(ctx), system: ctx.club.unitSystem, today: ctx.today };
}
