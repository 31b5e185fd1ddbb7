import { Prisma } from "@trunnion/db";
import {
  type Assembly,
  byScarcity,
  type CharacteristicBook,
  type PartFeature,
  type PartFit,
  type PartNote,
  refused,
  type Scarcity,
  scarcityOf,
  type Trust,
} from "@trunnion/register";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { dayOf } from "../day";
import { carReference } from "../record";
import { valueFrom } from "../value-columns";
import { countedCarSql, fittingCarSql, judgedSql, type StoredPart } from "./policy";

/** Parts a club may have on its list: more is no list that people keep by hand. */
export const partLimit = 2_000;
/** Cars told by name at once. */
const CARS = 200;

const partFields = {
  id: true,
  slug: true,
  assembly: true,
  place: true,
  name: true,
  kind: true,
  origin: true,
  partNumber: true,
  note: true,
  version: true,
  sourceId: true,
  source: { select: { title: true } },
  locus: true,
  trust: true,
  fits: {
    select: {
      standing: true,
      serialFrom: true,
      serialTo: true,
      note: true,
      series: { select: { slug: true, name: true, ordinal: true } },
    },
  },
  features: { orderBy: { ordinal: "asc" } },
} satisfies Prisma.PartSelect;
type PartRow = Prisma.PartGetPayload<{ select: typeof partFields }>;

/** A part as the list keeps it. */
export interface ListedPart extends StoredPart {
  /** Donor car or maker; empty when not known. */
  readonly origin: string;
  readonly partNumber: string;
  readonly note: string;
  /** Title of the source; empty for none. */
  readonly source: string;
  readonly sourceId: string;
  readonly locus: string;
  readonly trust: Trust;
  /** Counts up with every change; guards against two editors. */
  readonly version: number;
  readonly fits: readonly (PartFit & { readonly seriesName: string })[];
}

function fitOf({ standing, serialFrom, serialTo, note, series }: PartRow["fits"][number]) {
  return {
    series: series.slug,
    seriesName: series.name,
    standing,
    ...(serialFrom === null ? {} : { serialFrom }),
    ...(serialTo === null ? {} : { serialTo }),
    ...(note === null ? {} : { note }),
  };
}

function featureOf(row: PartRow["features"][number], book: CharacteristicBook): PartFeature {
  const { kind, characteristic, spot, tells } = row;
  const label = characteristic === null ? (spot ?? "") : (book.find(characteristic)?.label ?? characteristic);
  return {
    kind,
    label,
    tells,
    value: valueFrom(row),
    ...(characteristic === null ? {} : { characteristic }),
  };
}

function partOf(row: PartRow, book: CharacteristicBook): ListedPart {
  const { id, slug, place, name, kind, origin, partNumber } = row;
  const fits = [...row.fits].sort((a, b) => a.series.ordinal - b.series.ordinal);
  return {
    id,
    slug,
    // A column of text that only the service writes, from the dictionary's closed list.
    assembly: row.assembly as Assembly,
    place,
    name,
    kind,
    origin: origin ?? "",
    partNumber: partNumber ?? "",
    note: row.note ?? "",
    source: row.source?.title ?? "",
    sourceId: row.sourceId ?? "",
    locus: row.locus ?? "",
    trust: row.trust,
    version: row.version,
    fits: fits.map(fitOf),
    features: row.features.map((feature) => featureOf(feature, book)),
  };
}

/** The parts on the club's list, by assembly, place and name. */
export async function listedParts(
  ctx: Context,
  where: Prisma.PartWhereInput = {},
): Promise<readonly ListedPart[]> {
  const rows = await ctx.db.part.findMany({
    where: { ...where, withdrawnAt: null },
    select: partFields,
    orderBy: [{ placeKey: "asc" }, { kind: "asc" }, { name: "asc" }, { id: "asc" }],
    take: partLimit,
  });
  const book = await bookOf(ctx);
  return rows.map((row) => partOf(row, book));
}

/** @throws Refusal PART_NOT_FOUND */
export async function findPart(ctx: Context, slug: string): Promise<ListedPart> {
  const [part] = await listedParts(ctx, { slug });
  if (part) return part;
  throw refused("PART_NOT_FOUND", { part: slug });
}

/** How many cars a part is for. */
export interface PartUse {
  /** The record shows that they have it. */
  readonly recorded: number;
  /** Had it from the works, and the record says nothing else. */
  readonly presumed: number;
  /** It would fit, and the record does not say whether they have it. */
  readonly open: number;
}

const noUse: PartUse = { recorded: 0, presumed: 0, open: 0 };

interface UseRow {
  readonly part: string;
  readonly recorded: number;
  readonly original: number;
  readonly original_decided: number;
  readonly fitting: number;
  readonly fitting_decided: number;
}

/** How many cars use each part, by its id; dismantled and destroyed cars left out. One query, however many cars. */
export async function partUses(
  ctx: Context,
  parts: readonly StoredPart[],
): Promise<ReadonlyMap<string, PartUse>> {
  const ids = parts.map(({ id }) => id);
  const rows = await ctx.db.$queryRaw<UseRow[]>(Prisma.sql`
    WITH ${judgedSql(ctx, parts)},
    decided AS (SELECT j.part, j.car_id, j.use FROM judged j
      JOIN car c ON c.club_id = ${ctx.club.id}::uuid AND c.id = j.car_id AND ${countedCarSql} WHERE j.use <> 'unknown'),
    fit AS (SELECT f.part_id AS part, c.id AS car_id, bool_or(f.standing = 'original') AS original
      FROM part_fit f JOIN car c ON ${fittingCarSql}
      WHERE f.club_id = ${ctx.club.id}::uuid AND f.part_id = ANY(${ids}::uuid[]) AND f.standing <> 'doesNotFit'
      GROUP BY 1, 2),
    fits AS (SELECT f.part, count(*) FILTER (WHERE f.original)::int AS original,
      count(*) FILTER (WHERE f.original AND d.use IS NOT NULL)::int AS original_decided,
      count(*)::int AS fitting, count(d.use)::int AS fitting_decided
      FROM fit f LEFT JOIN decided d ON d.part = f.part AND d.car_id = f.car_id GROUP BY 1),
    uses AS (SELECT part, count(*)::int AS recorded FROM decided WHERE use = 'yes' GROUP BY 1)
    SELECT coalesce(f.part, u.part)::text AS part, coalesce(recorded, 0) AS recorded,
      coalesce(original, 0) AS original, coalesce(original_decided, 0) AS original_decided,
      coalesce(fitting, 0) AS fitting, coalesce(fitting_decided, 0) AS fitting_decided
    FROM fits f FULL JOIN uses u ON u.part = f.part`);
  return new Map(
    rows.map(({ part, recorded, original, original_decided, fitting, fitting_decided }) => {
      const presumed = original - original_decided;
      return [part, { recorded, presumed, open: fitting - fitting_decided - presumed }];
    }),
  );
}

/** Notes that stand, by part. */
async function notesOf(ctx: Context, ids: readonly string[]): Promise<ReadonlyMap<string, PartNote[]>> {
  const rows = await ctx.db.partNote.findMany({
    where: { partId: { in: [...ids] }, withdrawnAt: null },
    select: { partId: true, on: true, kind: true, count: true },
  });
  const notes = new Map<string, PartNote[]>();
  for (const { partId, on, kind, count } of rows) {
    const list = notes.get(partId) ?? [];
    list.push({ on: dayOf(on), kind, ...(count === null ? {} : { count }) });
    notes.set(partId, list);
  }
  return notes;
}

/** A part with how many cars need it and how hard it is to find. */
export interface PartNeed {
  readonly part: ListedPart;
  readonly use: PartUse;
  readonly scarcity: Scarcity;
  /** Other parts of the place that fit a series of this one and can be had: what stands in for it. */
  readonly standIns: readonly {
    readonly slug: string;
    readonly name: string;
    /** Names of the series on which both go. */
    readonly on: readonly string[];
  }[];
}

const fitting = ({ fits }: ListedPart) => fits.filter(({ standing }) => standing !== "doesNotFit");

function standInsOf(need: Omit<PartNeed, "standIns">, all: readonly Omit<PartNeed, "standIns">[]) {
  const series = new Set(fitting(need.part).map((fit) => fit.series));
  return all.flatMap(({ part, scarcity }) => {
    const same = part.place === need.part.place && part.assembly === need.part.assembly;
    const hadEasily = scarcity.rung === "obtainable" || scarcity.rung === "thinning";
    if (part.id === need.part.id || !same || !hadEasily) return [];
    const on = fitting(part).filter((fit) => series.has(fit.series));
    if (on.length === 0) return [];
    return [{ slug: part.slug, name: part.name, on: [...new Set(on.map(({ seriesName }) => seriesName))] }];
  });
}

/** Every part of the list with how scarce it is, the scarcest and most needed first. */
export async function partNeeds(ctx: Context): Promise<readonly PartNeed[]> {
  const parts = await listedParts(ctx);
  const uses = await partUses(ctx, parts);
  const notes = await notesOf(
    ctx,
    parts.map(({ id }) => id),
  );
  const needs = parts.map((part) => {
    const use = uses.get(part.id) ?? noUse;
    const dependentCars = use.recorded + use.presumed;
    const scarcity = scarcityOf({ notes: notes.get(part.id) ?? [], dependentCars, today: ctx.today });
    return { part, use, scarcity };
  });
  return needs
    .map((need) => ({ ...need, standIns: standInsOf(need, needs) }))
    .sort((a, b) => byScarcity(a.scarcity, b.scarcity));
}

/** A car that depends on a part, and how that is known. */
export interface DependentCar {
  readonly reference: string;
  readonly chassis: string;
  readonly series: string;
  /** `presumed`: the works fitted it, and the record says nothing else. */
  readonly how: "recorded" | "presumed";
}

/** The cars that depend on a part, those recorded with it first, by number; at most 200 of them. */
export async function dependentCars(ctx: Context, part: StoredPart): Promise<readonly DependentCar[]> {
  const rows = await ctx.db.$queryRaw<
    { chassis: string; claim: number; series: string | null; how: "recorded" | "presumed" }[]
  >(Prisma.sql`
    WITH ${judgedSql(ctx, [part])},
    original AS (SELECT DISTINCT c.id FROM part_fit f JOIN car c ON ${fittingCarSql}
      WHERE f.club_id = ${ctx.club.id}::uuid AND f.part_id = ${part.id}::uuid AND f.standing = 'original')
    SELECT c.chassis, c.claim, (SELECT s.name FROM series s WHERE s.club_id = c.club_id AND s.id = c.series_id) AS series,
      CASE WHEN j.use = 'yes' THEN 'recorded' ELSE 'presumed' END AS how
    FROM car c LEFT JOIN judged j ON j.car_id = c.id LEFT JOIN original o ON o.id = c.id
    WHERE c.club_id = ${ctx.club.id}::uuid AND ${countedCarSql}
      AND (j.use = 'yes' OR (o.id IS NOT NULL AND coalesce(j.use, 'unknown') = 'unknown'))
    ORDER BY 4 DESC, c.chassis_key, c.claim LIMIT ${CARS}`);
  return rows.map(({ chassis, claim, series, how }) => ({
    reference: carReference({ chassis, claim }),
    chassis,
    series: series ?? "series not settled",
    how,
  }));
}
