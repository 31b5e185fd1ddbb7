import { Prisma } from "@trunnion/db";
import { type CarComparison, type ComparedValue, compareCars, refused } from "@trunnion/register";
import { partsOf } from "../car/read";
import { bookOf } from "../characteristic";
import type { ClubFacts, Context } from "../context";
import { carReference } from "../record";
import { listSeries, type SeriesLine } from "../series";
import { standingRecordSql } from "../standing-record";
import { type ValueColumns, valueFrom, valueSql } from "../value-columns";
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

interface Row {
  readonly id: string;
  readonly chassis: string;
  readonly claim: number;
  readonly series: string | null;
}

const foundOf = (row: Row): Found => ({
  id: row.id,
  reference: carReference(row),
  chassis: row.chassis,
  series: row.series ?? "series not settled",
});

const rowSql = Prisma.sql`c.id::text AS id, c.chassis, c.claim, s.name AS series`;
const withSeries = Prisma.sql`LEFT JOIN series s ON s.club_id = c.club_id AND s.id = c.series_id`;

async function byReference(ctx: Context, references: readonly string[]) {
  const keys = references.map(partsOf);
  const rows = await ctx.db.$queryRaw<(Row & { place: number })[]>`
    SELECT k.place::int AS place, ${rowSql}
    FROM unnest(${keys.map((key) => key.chassisKey)}::text[], ${keys.map(({ claim }) => claim)}::int[])
      WITH ORDINALITY AS k(chassis_key, claim, place)
    JOIN car c ON c.club_id = ${ctx.club.id}::uuid AND c.chassis_key = k.chassis_key AND c.claim = k.claim AND ${standingRecordSql}
    ${withSeries} ORDER BY k.place`;
  const places = new Set(rows.map(({ place }) => place));
  return {
    found: [...new Map(rows.map((row) => [row.id, foundOf(row)])).values()],
    notFound: references.filter((_, at) => !places.has(at + 1)),
  };
}

async function ofSeries(ctx: Context, slug: string, known: readonly SeriesLine[]) {
  if (!known.some((one) => one.slug === slug))
    throw refused("SERIES_NOT_FOUND", { series: slug, known: known.map((one) => one.slug) });
  const rows = await ctx.db.$queryRaw<(Row & { all: number })[]>`
    SELECT ${rowSql}, count(*) OVER ()::int AS all FROM car c ${withSeries}
    WHERE s.slug = ${slug} AND ${standingRecordSql} ORDER BY c.chassis_key, c.claim LIMIT ${MOST}::int`;
  const leftOut = (rows[0]?.all ?? 0) - rows.length;
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
  const rows = await ctx.db.$queryRaw<
    (ValueColumns & Omit<ComparedValue, "car" | "value"> & { id: string })[]
  >`
    SELECT v.car_id::text AS id, v.characteristic, v.side::text AS side, v.verdict::text AS verdict, ${valueSql}
    FROM current_value v WHERE v.car_id = ANY(${[...places.keys()]}::uuid[])`;
  const values = rows.map(({ id, characteristic, side, verdict, ...value }) => ({
    car: places.get(id) ?? 0,
    characteristic,
    side,
    value: valueFrom(value),
    verdict,
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
