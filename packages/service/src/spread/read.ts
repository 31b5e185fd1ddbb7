import { bins, outlierThreshold, robustScale } from "@trunnion/calc";
import {
  type Characteristic,
  type CharacteristicBook,
  printBeside,
  refused,
  type Side,
  type SpreadRow,
  type Standing,
  sayKept,
  type ValueAxis,
  valueAxis,
  type YearRow,
  type YearTable,
  yearTable,
} from "@trunnion/register";
import { bookOf } from "../characteristic";
import type { ClubFacts, Context } from "../context";
import { type ChosenFleet, chosenFleet, countedBy, type FleetChoice } from "../fleet-choice";
import { carReference } from "../record";
import { carsSql } from "../tally";
import { type ValueColumns, valueFrom } from "../value-columns";
import { isQuantity, type SpreadLimits, spreadLimits } from "./limits";
import {
  apartCountSql,
  apartSql,
  binnedSql,
  builtSql,
  countedOnceSql,
  EACH,
  eachSql,
  knownSql,
  NAMED,
  recordedSql,
  type SpreadScope,
  summarySql,
} from "./policy";

/** Which characteristic, over which cars. */
export interface SpreadInput extends FleetChoice {
  readonly key: string;
  /** One side of a sided one; both when left out. */
  readonly side?: "left" | "right";
}

/** A car whose value stands apart from the rest: one to look at, not one to delete. */
export interface ApartCar {
  readonly reference: string;
  readonly chassis: string;
  readonly side: Side;
  /** As entered. */
  readonly value: string;
  /** How many robust standard deviations from the median. */
  readonly score: number;
}

/** Where the quantities lie, in words of the club's units. */
export interface SpreadFigures {
  readonly count: number;
  readonly median: string;
  readonly lower: string;
  readonly upper: string;
  readonly least: string;
  readonly most: string;
  /** Robust standard deviation; missing where all values are equal. */
  readonly scale?: string;
}

/** What is known of one characteristic across the cars meant. */
export interface Spread {
  readonly club: ClubFacts;
  readonly characteristic: Characteristic;
  readonly side?: "left" | "right";
  readonly choice: Omit<ChosenFleet, "where">;
  /** Cars meant, those of which it is known, and how many values that is: a sided one has two. */
  readonly cars: number;
  readonly known: number;
  readonly values: number;
  /** Of a quantity in more than a few values: classes along an axis; else each value by itself, the commonest first. */
  readonly as: "classes" | "each";
  readonly rows: readonly SpreadRow[];
  /** Values beyond the kinds named. */
  readonly further: boolean;
  /** Values that say "not fitted", where those are not among the rows. */
  readonly absent: number;
  /** Unit of the axis; empty where there is none. */
  readonly unit: string;
  readonly figures?: SpreadFigures;
  readonly limits: readonly SpreadLimits[];
  readonly built: YearTable;
  readonly recorded: YearTable;
  /** Furthest first; `apartCount` counts those that are not named too. */
  readonly apart: readonly ApartCar[];
  readonly apartCount: number;
}

interface Summary {
  readonly values: number;
  readonly absent: number;
  readonly count: number;
  readonly different: number;
  readonly finest: number;
  readonly least: number | null;
  readonly most: number | null;
  readonly lower: number | null;
  readonly median: number | null;
  readonly upper: number | null;
  readonly mad: number | null;
  readonly deviation: number | null;
}

/** A summary of which it is known that there is at least one number. */
type Lying = { readonly [K in keyof Summary]: number };
const lies = (summary: Summary): summary is Lying => summary.count > 0 && summary.median !== null;

type Counted = Standing & { readonly count: number };
interface EachRow extends Counted {
  readonly kind: string;
  readonly number: number | null;
  readonly text: string | null;
  readonly entered: string;
}
interface BinRow extends Counted {
  readonly place: number;
}

const nothing: Counted = { count: 0, asSpecified: 0, differs: 0, accepted: 0, notCompared: 0 };
const counted = ({ count, asSpecified, differs, accepted, notCompared }: Counted): Counted => ({
  count,
  asSpecified,
  differs,
  accepted,
  notCompared,
});

/** Everything the parts of the page are worked out from. */
interface Asked {
  readonly ctx: Context;
  readonly scope: SpreadScope;
  readonly characteristic: Characteristic;
  readonly summary: Summary;
  readonly axis: ValueAxis | undefined;
}

const stepOf = (axis: ValueAxis, finest: number) => Math.abs(axis.toAxis(finest) - axis.toAxis(0));

async function classRows(
  { ctx, scope }: Asked,
  lying: Lying,
  axis: ValueAxis,
): Promise<readonly SpreadRow[]> {
  const places = bins({
    count: lying.count,
    least: axis.toAxis(lying.least),
    most: axis.toAxis(lying.most),
    interquartileRange: Math.abs(axis.toAxis(lying.upper) - axis.toAxis(lying.lower)),
    finest: stepOf(axis, lying.finest),
    widths: axis.widths,
  });
  const from = axis.fromAxis(places.from);
  const width = axis.fromAxis(places.from + places.width) - from;
  const found = await ctx.db.$queryRaw<BinRow[]>(binnedSql(scope, { from, width }));
  const byPlace = new Map(found.map((row) => [row.place, row]));
  return Array.from({ length: places.count }, (_, place) => {
    const [begin, end] = [place, place + 1].map((edge) => places.from + edge * places.width) as [
      number,
      number,
    ];
    const label = `${axis.say(begin, places.width)} up to ${axis.say(end, places.width)}`;
    return { label, from: begin, to: end, ...counted(byPlace.get(place) ?? nothing) };
  });
}

const withoutNoughts = (said: string) => said.replace(/(\.\d*?)0+(?!\d)/, "$1").replace(/\.(?!\d)/, "");

function eachLabel(row: EachRow, { characteristic, axis, summary }: Asked): string {
  if (row.kind === "absent") return "not fitted";
  // Half a step, so that 9/16 in is 14.3 mm and not 14; what comes out even has no noughts behind.
  if (row.number !== null && axis !== undefined)
    return withoutNoughts(axis.say(axis.toAxis(row.number), stepOf(axis, summary.finest) / 2 || 1));
  return row.text === null ? row.entered : sayKept(characteristic, row.text);
}

async function eachRows(asked: Asked): Promise<readonly SpreadRow[]> {
  const { ctx, scope, axis } = asked;
  const found = await ctx.db.$queryRaw<EachRow[]>(eachSql(scope));
  const rows = found.map((row) => {
    const place = row.number === null || axis === undefined ? undefined : axis.toAxis(row.number);
    const along = place === undefined ? {} : { from: place, to: place };
    return { label: eachLabel(row, asked), ...along, ...counted(row) };
  });
  // Quantities by size; what is named as the query has it, the commonest first.
  return axis === undefined ? rows : rows.sort((a, b) => (a.from ?? -Infinity) - (b.from ?? -Infinity));
}

function figuresOf(lying: Lying, axis: ValueAxis): SpreadFigures {
  const step = stepOf(axis, lying.finest) / 2 || stepOf(axis, (lying.most - lying.least) / 100) || 1;
  const say = (si: number) => axis.say(axis.toAxis(si), step);
  const { scale } = robustScale(lying.mad, lying.deviation);
  return {
    count: lying.count,
    median: say(lying.median),
    lower: say(lying.lower),
    upper: say(lying.upper),
    least: say(lying.least),
    most: say(lying.most),
    ...(scale === 0 ? {} : { scale: axis.say(stepOf(axis, scale), step) }),
  };
}

interface ApartRow extends ValueColumns {
  readonly chassis: string;
  readonly claim: number;
  readonly side: Side;
}

/** Fewer values than this are too few to say which stands apart (as in calc's computation of outliers). */
const FEW = 5;

async function apartOf({
  ctx,
  scope,
  characteristic,
  summary,
}: Asked): Promise<readonly [readonly ApartCar[], number]> {
  if (!lies(summary) || summary.count < FEW) return [[], 0];
  const { scale } = robustScale(summary.mad, summary.deviation);
  if (scale === 0) return [[], 0];
  const { median } = summary;
  const far = { median, beyond: outlierThreshold * scale };
  const [{ count } = { count: 0 }] = await ctx.db.$queryRaw<{ count: number }[]>(apartCountSql(scope, far));
  if (count === 0) return [[], 0];
  const rows = await ctx.db.$queryRaw<ApartRow[]>(apartSql(scope, far));
  const cars = rows.map((row) => ({
    reference: carReference(row),
    chassis: row.chassis,
    side: row.side,
    value: printBeside(characteristic, valueFrom(row), ctx.club.unitSystem),
    score: Math.abs((row.number ?? median) - median) / scale,
  }));
  return [cars, count];
}

async function yearsOf({ ctx, scope, characteristic, summary, axis }: Asked) {
  const along = axis === undefined ? undefined : { along: axis, step: stepOf(axis, summary.finest) || 1 };
  const built = await ctx.db.$queryRaw<YearRow[]>(builtSql(scope));
  const recorded = await ctx.db.$queryRaw<YearRow[]>(recordedSql(scope));
  return {
    built: yearTable(built, characteristic, along),
    recorded: yearTable(recorded, characteristic, along),
  };
}

/** A car has one value a side, so that on one side cars and values are one number. */
async function knownOf(ctx: Context, scope: SpreadScope, { values }: Summary): Promise<number> {
  if (scope.side !== undefined) return values;
  const [known] = await ctx.db.$queryRaw<{ cars: number }[]>(knownSql(scope));
  return known?.cars ?? 0;
}

/** Under a condition the values are counted once for all that is asked of them. */
async function countedOnce(ctx: Context, scope: SpreadScope): Promise<SpreadScope> {
  if (scope.counted.bits === undefined) return scope;
  const [row] = await ctx.db.$queryRaw<{ once: string }[]>(countedOnceSql(scope));
  return row === undefined ? scope : { ...scope, once: row.once };
}

/**
 * A characteristic of the club's dictionary by its key.
 *
 * @throws Refusal CHARACTERISTIC_NOT_FOUND
 */
export function characteristicOf(book: CharacteristicBook, key: string): Characteristic {
  const found = book.find(key);
  if (!found) throw refused("CHARACTERISTIC_NOT_FOUND", { characteristic: key });
  return found;
}

/**
 * The spread of a characteristic over the cars meant: how often which value, what the specifications want, how it changed
 * over the years, and which cars stand apart by median and median absolute deviation. Counted and ordered by the database;
 * no car is loaded. What only the specification says of a car is not known of it and is not counted.
 *
 * @throws Refusal CHARACTERISTIC_NOT_FOUND, SERIES_NOT_FOUND, FILTER_NOT_FOUND
 */
export async function spread(ctx: Context, input: SpreadInput): Promise<Spread> {
  const book = await bookOf(ctx);
  const characteristic = characteristicOf(book, input.key);
  const { key, sided } = characteristic;
  const fleet = await chosenFleet(ctx, input, book);
  const { where: _, ...choice } = fleet;
  const counted = await countedBy(ctx, fleet, book);
  const side = sided ? input.side : undefined;
  const scope = await countedOnce(ctx, { key, counted, ...(side === undefined ? {} : { side }) });
  const [{ cars } = { cars: 0 }] = await ctx.db.$queryRaw<{ cars: number }[]>(carsSql(counted));
  const [summary] = await ctx.db.$queryRaw<Summary[]>(summarySql(scope));
  if (summary === undefined) throw new Error("a summary without GROUP BY is always one row");
  const known = await knownOf(ctx, scope, summary);
  const axis = isQuantity(characteristic) ? valueAxis(characteristic, ctx.club.unitSystem) : undefined;
  const asked: Asked = { ctx, scope, characteristic, summary, axis };
  const drawn = axis !== undefined && lies(summary) && summary.different > EACH;
  const rows = drawn ? await classRows(asked, summary, axis) : await eachRows(asked);
  const [apart, apartCount] = await apartOf(asked);
  return {
    club: ctx.club,
    characteristic,
    ...(side === undefined ? {} : { side }),
    choice,
    cars,
    known,
    values: summary.values,
    as: drawn ? "classes" : "each",
    rows: rows.slice(0, drawn ? undefined : NAMED),
    further: !drawn && rows.length > NAMED,
    absent: drawn ? summary.absent : 0,
    unit: axis?.unit ?? "",
    ...(axis !== undefined && lies(summary) ? { figures: figuresOf(summary, axis) } : {}),
    limits: await spreadLimits(ctx, {
      key,
      book,
      ...(choice.chosenSeries === undefined ? {} : { series: choice.chosenSeries }),
      ...(side === undefined ? {} : { side }),
      ...(axis === undefined ? {} : { axis }),
    }),
    ...(await yearsOf(asked)),
    apart,
    apartCount,
  };
}
