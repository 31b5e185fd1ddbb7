import type { Condition } from "@trunnion/register";
import { carPage } from "./car-page";
import { comparisonPage } from "./comparison";
import type { Context } from "./context";
import { dueMonth, duePage } from "./due";
import { others, prevalence } from "./prevalence";
import { registerList } from "./register-list";
import { scarceParts } from "./scarce-part";
import { spread } from "./spread";
import { survival } from "./survival";
import { together } from "./together";

/** Something that is asked often, of clubs of any size. */
export interface HotQuery {
  readonly name: string;
  /** Whether an index can find what is asked for; else every matching row has to be read. */
  readonly byIndex: boolean;
  /** Asks for it as a page does. `car` is the reference of some car of the club. */
  readonly ask: (ctx: Context, car: string) => Promise<unknown>;
}

const thick: Condition = { op: "number", characteristic: "rear.antiRollBar.diameter", is: "gt", si: 0.0195 };
const drilled: Condition = { op: "code", characteristic: "front.disc.face", in: ["drilled"] };
const nested: Condition = {
  op: "all",
  of: [
    drilled,
    { op: "not", of: { op: "any", of: [thick, { op: "absent", characteristic: "oil.cooler" }] } },
    { op: "verdict", characteristic: "front.camber", in: ["outsideLimits"] },
  ],
};

/** The car asked about beside some other car of the club. */
async function compareTwo(ctx: Context, car: string): Promise<unknown> {
  const other = await ctx.db.car.findFirst({
    where: { chassis: { not: car }, claim: 1 },
    select: { chassis: true },
    orderBy: { id: "asc" },
  });
  return comparisonPage(ctx, { cars: other === null ? [car] : [car, other.chassis] });
}

const twice: Condition = {
  op: "all",
  of: [
    { op: "status", in: ["inUse"] },
    { op: "modified", in: ["brakes"] },
  ],
};

/**
 * What is measured on large clubs and whose plans a test reads: statements are recorded from these very calls, so nothing
 * of theirs is written down twice.
 */
export const hotList: readonly HotQuery[] = [
  { name: "one car's page", byIndex: true, ask: (ctx, car) => carPage(ctx, car) },
  { name: "search: one number", byIndex: true, ask: (ctx, car) => registerList(ctx, { search: car }) },
  { name: "search: nobody has it", byIndex: true, ask: (ctx) => registerList(ctx, { search: "zzyzx" }) },
  {
    name: "search: two words",
    byIndex: false,
    ask: (ctx) => registerList(ctx, { search: "sawmill cloudberry" }),
  },
  { name: "search: mistyped", byIndex: false, ask: (ctx) => registerList(ctx, { search: "clowdberry" }) },
  { name: "the whole list, counted", byIndex: false, ask: (ctx) => registerList(ctx, {}) },
  {
    name: "the whole list, most changed first",
    byIndex: false,
    ask: (ctx) => registerList(ctx, { order: "differing" }),
  },
  {
    name: "counts narrowed twice",
    byIndex: false,
    ask: (ctx) => registerList(ctx, { condition: twice }),
  },
  { name: "condition: a thick bar", byIndex: false, ask: (ctx) => registerList(ctx, { condition: thick }) },
  {
    name: "condition: five parts, nested",
    byIndex: false,
    ask: (ctx) => registerList(ctx, { condition: nested }),
  },
  {
    name: "the list by a characteristic",
    byIndex: false,
    ask: (ctx) => registerList(ctx, { order: { key: "rear.antiRollBar.diameter", descending: true } }),
  },
  {
    name: "a condition and a word",
    byIndex: false,
    ask: (ctx) => registerList(ctx, { condition: drilled, search: "sawmill" }),
  },
  {
    name: "spread where a condition holds",
    byIndex: false,
    ask: (ctx) => spread(ctx, { key: "front.camber", condition: drilled }),
  },
  {
    name: "prevalence where a condition holds",
    byIndex: false,
    ask: (ctx) => prevalence(ctx, { condition: drilled }),
  },
  { name: "spread of a characteristic", byIndex: false, ask: (ctx) => spread(ctx, { key: "front.camber" }) },
  {
    name: "spread of a part, one series",
    byIndex: false,
    ask: async (ctx) => {
      const series = await ctx.db.series.findFirstOrThrow({
        select: { slug: true },
        orderBy: { slug: "asc" },
      });
      return spread(ctx, { key: "front.disc.face", series: series.slug });
    },
  },
  { name: "what goes with a part", byIndex: false, ask: (ctx) => together(ctx, { key: "front.disc.face" }) },
  { name: "prevalence of modifications", byIndex: false, ask: (ctx) => prevalence(ctx, {}) },
  { name: "what other owners run", byIndex: false, ask: (ctx, car) => others(ctx, car) },
  { name: "survival", byIndex: false, ask: (ctx) => survival(ctx) },
  { name: "two cars compared", byIndex: true, ask: compareTwo },
  { name: "scarce parts", byIndex: false, ask: (ctx) => scarceParts(ctx) },
  { name: "what falls due", byIndex: false, ask: (ctx) => duePage(ctx, {}) },
  {
    name: "a month of what falls due",
    byIndex: true,
    ask: (ctx) => dueMonth(ctx, { month: ctx.today.slice(0, 7) }),
  },
];
