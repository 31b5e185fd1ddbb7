import { type CarComparison, compareCars, refused } from "@trunnion/register";
import { partsOf } from "../car/read";
import { bookOf } from "../characteristic";
import type { ClubFacts, Context } from "../context";
import { carReference } from "../record";
import { listSeries, type SeriesLine } from "../series";
import { standingRecord } from "../standing-record";
import { valueFrom } from "../value-columns";
import { COLUMNS, type ComparisonInput, FEWEST, MOST } from "./policy";

/** One of the cars compared. */
export interface ComparedCar {
  readonly reference: string;
  readonly chassis: string;
  readonly series: string;
}

/** Cars side by side, or the form that asks which. */
export interface ComparisonPage {
  readonly club: ClubFacts;
  readonly series: readonly SeriesLine[];
  /** As asked; those not found are named apart. */
  readonly cars: readonly ComparedCar[];
  readonly notFound: readonly string[];
  /** Cars of the series beyond those that can be compared at once. */
  readonly leftOut: number;
  /** Place of the reference among the cars. */
  readonly against?: number;
  /** Missing while fewer than two cars are named. */
  readonly comparison?: CarComparison;
  /** True where each car has a column; else each row names the cars that differ. */
  readonly inColumns: boolean;
}

interface Found extends ComparedCar {
  readonly id: string;
}

const carFields = {
  id: true,
  chassis: true,
  claim: true,
  series: { select: { name: true } },
} as const;

type Row = {
  readonly id: string;
  readonly chassis: string;
  readonly claim: number;
  readonly series: { readonly name: string } | null;
};

const foundOf = (row: Row): Found => ({
  id: row.id,
  reference: carReference(row),
  chassis: row.chassis,
  series: row.series?.name ?? "series not settled",
});

async function byReference(ctx: Context, references: readonly string[]) {
  const found: Found[] = [];
  const notFound: string[] = [];
  for (const reference of references) {
    const { chassisKey: key, claim } = partsOf(reference);
    const row = await ctx.db.car.findFirst({
      where: { ...standingRecord, chassisKey: key, claim },
      select: carFields,
    });
    if (!row) notFound.push(reference);
    else if (!found.some(({ id }) => id === row.id)) found.push(foundOf(row));
  }
  return { found, notFound };
}

async function ofSeries(ctx: Context, slug: string, known: readonly SeriesLine[]) {
  if (!known.some((one) => one.slug === slug))
    throw refused("SERIES_NOT_FOUND", { series: slug, known: known.map((one) => one.slug) });
  const where = { ...standingRecord, series: { slug } };
  const rows = await ctx.db.car.findMany({
    where,
    select: carFields,
    orderBy: [{ chassisKey: "asc" }, { claim: "asc" }],
    take: MOST,
  });
  const leftOut = Math.max(0, (await ctx.db.car.count({ where })) - rows.length);
  return { found: rows.map(foundOf), leftOut };
}

/** The cars meant: those named, the reference among them, and those of the series. */
async function carsOf(
  ctx: Context,
  { cars, series, against }: ComparisonInput,
  known: readonly SeriesLine[],
) {
  const named = await byReference(ctx, against === undefined ? cars : [...cars, against]);
  if (series === undefined || series === "") return { ...named, leftOut: 0 };
  const { found, leftOut } = await ofSeries(ctx, series, known);
  const further = named.found.filter(({ id }) => !found.some((one) => one.id === id));
  return { found: [...further, ...found], notFound: named.notFound, leftOut };
}

/**
 * Two to six cars side by side, or a series against one of its cars: only what differs, worst first.
 *
 * @throws Refusal SERIES_NOT_FOUND
 */
export async function comparisonPage(ctx: Context, input: ComparisonInput): Promise<ComparisonPage> {
  const series = await listSeries(ctx);
  const { found, notFound, leftOut } = await carsOf(ctx, input, series);
  const key = input.against === undefined ? undefined : partsOf(input.against);
  const place = found.findIndex(
    ({ reference }) =>
      key?.chassisKey === partsOf(reference).chassisKey && key.claim === partsOf(reference).claim,
  );
  const face = {
    club: ctx.club,
    series,
    cars: found.map(({ id: _id, ...car }) => car),
    notFound,
    leftOut,
    ...(place < 0 ? {} : { against: place }),
    inColumns: found.length <= COLUMNS,
  };
  if (found.length < FEWEST) return face;
  const places = new Map(found.map(({ id }, index) => [id, index]));
  const rows = await ctx.db.currentValue.findMany({ where: { carId: { in: [...places.keys()] } } });
  const values = rows.map((row) => ({
    car: places.get(row.carId) ?? 0,
    characteristic: row.characteristic,
    side: row.side,
    value: valueFrom(row),
    verdict: row.verdict,
  }));
  const comparison = compareCars({
    cars: found.length,
    values,
    book: await bookOf(ctx),
    system: ctx.club.unitSystem,
    ...(place < 0 ? {} : { reference: place }),
  });
  return { ...face, comparison };
}
