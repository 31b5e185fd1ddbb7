import { Prisma } from "@trunnion/db";
import {
  type Assembly,
  carHasPart,
  evidenceTargetReference,
  type Fitting,
  type MixWarning,
  mixWarnings,
  type PartNoteKind,
} from "@trunnion/register";
import { findCar } from "../car";
import { bookOf } from "../characteristic";
import type { ClubFacts, Context } from "../context";
import { dayOf } from "../day";
import { evidenceFor, type SupportLine } from "../evidence";
import { memberNames } from "../member-name";
import {
  type DependentCar,
  dependentCars,
  findPart,
  judgedSql,
  type ListedPart,
  listedParts,
  type PartNeed,
  type PartTexts,
  partNeeds,
  partTexts,
} from "../part";
import { carReference } from "../record";
import { listSeries, type SeriesLine } from "../series";
import { listSources, type SourceLine } from "../source";
import { valueFrom } from "../value-columns";
import { fittingsOf, type Mismatch, mismatchesOf, type StandIn, standInsFor } from "./policy";

const mayEdit = (ctx: Context) =>
  ctx.actor.roles.some((role) => role === "registrar" || role === "fleetManager");

/** What a list of parts is narrowed to. */
export interface PartsInput {
  readonly assembly?: Assembly | undefined;
  /** Short name of a series: parts that fit it, or look as if they did. */
  readonly series?: string | undefined;
}

export interface PartsPage {
  readonly club: ClubFacts;
  readonly mayEdit: boolean;
  readonly series: readonly SeriesLine[];
  readonly needs: readonly PartNeed[];
}

/** The club's parts with what they fit, who uses them and how scarce they are. */
export async function partsPage(ctx: Context, { assembly, series }: PartsInput): Promise<PartsPage> {
  const needs = (await partNeeds(ctx)).filter(
    ({ part }) =>
      (assembly === undefined || part.assembly === assembly) &&
      (series === undefined || part.fits.some((fit) => fit.series === series)),
  );
  return { club: ctx.club, mayEdit: mayEdit(ctx), series: await listSeries(ctx), needs };
}

/** A dated note as its page shows it. */
export interface PartNoteLine {
  readonly id: string;
  /** ISO day. */
  readonly on: string;
  readonly kind: PartNoteKind;
  readonly count?: number;
  readonly text: string;
  /** Who noted it; empty for an import. */
  readonly by: string;
  readonly car?: { readonly reference: string; readonly chassis: string };
  readonly mayWithdraw: boolean;
}

async function noteLines(ctx: Context, partId: string): Promise<readonly PartNoteLine[]> {
  const rows = await ctx.db.partNote.findMany({
    where: { partId, withdrawnAt: null },
    include: { car: { select: { chassis: true, claim: true } } },
    orderBy: [{ on: "desc" }, { id: "desc" }],
    take: 500,
  });
  const names = await memberNames(
    ctx,
    rows.map(({ madeById }) => madeById),
  );
  return rows.map(({ id, on, kind, count, text, madeById, car }) => ({
    id,
    on: dayOf(on),
    kind,
    ...(count === null ? {} : { count }),
    text: text ?? "",
    by: madeById === null ? "" : (names.get(madeById) ?? ""),
    ...(car === null ? {} : { car: { reference: carReference(car), chassis: car.chassis } }),
    mayWithdraw: mayEdit(ctx) || (madeById !== null && madeById === ctx.actor.personId),
  }));
}

interface MixedCar {
  readonly reference: string;
  readonly chassis: string;
}

/** Cars recorded with both a part and one of its mismatches, by the other part's id; at most 100 in all. */
async function carsWithBoth(
  ctx: Context,
  part: ListedPart,
  others: readonly ListedPart[],
): Promise<ReadonlyMap<string, readonly MixedCar[]>> {
  const found = new Map<string, MixedCar[]>();
  if (others.length === 0) return found;
  const rows = await ctx.db.$queryRaw<{ other: string; chassis: string; claim: number }[]>(Prisma.sql`
    WITH ${judgedSql(ctx, [part, ...others])}
    SELECT o.part::text AS other, c.chassis, c.claim FROM judged m
    JOIN judged o ON o.car_id = m.car_id AND o.part <> m.part AND o.use = 'yes'
    JOIN car c ON c.club_id = ${ctx.club.id}::uuid AND c.id = m.car_id
    WHERE m.part = ${part.id}::uuid AND m.use = 'yes' ORDER BY c.chassis_key, c.claim LIMIT 100`);
  for (const { other, ...car } of rows) {
    const list = found.get(other) ?? [];
    list.push({ reference: carReference(car), chassis: car.chassis });
    found.set(other, list);
  }
  return found;
}

export interface PartPage {
  readonly club: ClubFacts;
  readonly mayEdit: boolean;
  readonly today: string;
  readonly need: PartNeed;
  readonly standIns: readonly StandIn[];
  readonly mismatches: readonly (Mismatch & { readonly cars: readonly MixedCar[] })[];
  readonly cars: readonly DependentCar[];
  readonly notes: readonly PartNoteLine[];
  /** Photos and documents that show it. */
  readonly evidence: readonly SupportLine[];
  /** Reference of the part as a thing that evidence supports. */
  readonly target: string;
}

/** One part: what it fits, what stands in for it and what differs, who has it, what was noted. @throws Refusal PART_NOT_FOUND */
export async function partPage(ctx: Context, slug: string): Promise<PartPage> {
  const part = await findPart(ctx, slug);
  const needs = await partNeeds(ctx);
  const need = needs.find((one) => one.part.id === part.id);
  if (!need) throw new Error(`part ${slug} is on the list and has no need`);
  const all = needs.map((one) => one.part);
  const mismatches = mismatchesOf(part, all);
  const mixed = await carsWithBoth(
    ctx,
    part,
    mismatches.map((one) => one.part),
  );
  return {
    club: ctx.club,
    mayEdit: mayEdit(ctx),
    evidence: (await evidenceFor(ctx, "part", [part.id])).get(part.id) ?? [],
    target: evidenceTargetReference({ kind: "part", id: part.id }),
    today: ctx.today,
    need,
    standIns: standInsFor(part, all),
    mismatches: mismatches.map((one) => ({ ...one, cars: mixed.get(one.part.id) ?? [] })),
    cars: await dependentCars(ctx, part),
    notes: await noteLines(ctx, part.id),
  };
}

/** What the form of a part offers and shows. */
export interface PartForm {
  readonly series: readonly SeriesLine[];
  readonly sources: readonly SourceLine[];
  /** Places there are already, to write a new part's alike. */
  readonly places: readonly string[];
  /** Names of the dictionary. */
  readonly characteristics: readonly string[];
  readonly part?: ListedPart;
  /** What its fields said as the form was opened. */
  readonly opened?: PartTexts;
}

/** @param slug the part the form is of; left out for a new one @throws Refusal PART_NOT_FOUND */
export async function partForm(ctx: Context, slug?: string): Promise<PartForm> {
  const part = slug === undefined ? undefined : await findPart(ctx, slug);
  const parts = await listedParts(ctx);
  return {
    series: await listSeries(ctx),
    sources: await listSources(ctx),
    places: [...new Set(parts.map(({ place }) => place))].sort(),
    characteristics: (await bookOf(ctx)).all.map(({ label }) => label),
    ...(part ? { part, opened: partTexts(part) } : {}),
  };
}

/**
 * What a car's record mixes: threads that meet and differ, threads of like size within an assembly, lengths that look
 * alike; from its values, the fasteners of its modifications, and the parts its record shows it has.
 *
 * @throws Refusal CAR_NOT_FOUND
 */
export async function carMixes(ctx: Context, reference: string): Promise<readonly MixWarning[]> {
  const { id: carId } = await findCar(ctx, reference);
  const book = await bookOf(ctx);
  const rows = await ctx.db.currentValue.findMany({ where: { carId } });
  const own = rows.flatMap((row): Fitting[] => {
    const characteristic = book.find(row.characteristic);
    if (characteristic?.kind !== "designation" || characteristic.designation !== "thread") return [];
    const { label: what, assembly, key: spot } = characteristic;
    return [{ what, assembly, spot, value: valueFrom(row) }];
  });
  const valuesOf = (key: string) => rows.filter((row) => row.characteristic === key).map(valueFrom);
  const has = (await listedParts(ctx)).filter(({ features }) => carHasPart(features, valuesOf) === "yes");
  return mixWarnings([...own, ...has.flatMap(fittingsOf), ...(await fastenersOf(ctx, carId))]);
}

async function fastenersOf(ctx: Context, carId: string): Promise<readonly Fitting[]> {
  const book = await bookOf(ctx);
  const rows = await ctx.db.modificationFastener.findMany({
    where: { modification: { carId, supersededAt: null, submission: { status: "accepted" } } },
    select: {
      place: true,
      thread: true,
      modification: { select: { changes: { select: { characteristic: true }, take: 1 } } },
    },
    take: 200,
  });
  return rows.flatMap(({ place, thread, modification }): Fitting[] => {
    const assembly = book.find(modification.changes[0]?.characteristic ?? "")?.assembly;
    if (thread === null || assembly === undefined) return [];
    const value = { kind: "designation", canonical: thread, entered: thread } as const;
    return [{ what: `Fastener: ${place}`, assembly, value }];
  });
}
