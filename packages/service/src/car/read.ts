import type { CarStatus, Prisma, Verdict } from "@trunnion/db";
import { type Assembly, type CharacteristicBook, chassisKey, refused } from "@trunnion/register";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { type CarRecord, carReference, recordsOf } from "../record";
import { requireRole } from "../role";

/** Cars on one page of the list. */
const PAGE = 50;

/** Verdicts that make a car differ from factory. */
const telling: Verdict[] = [
  "outsideLimits",
  "cannotTell",
  "differentPart",
  "added",
  "missing",
  "acceptedSubstitute",
  "periodOption",
];

export interface CarListInput {
  /** Part of any number or mark, or of the colour; blanks and dashes do not matter. */
  readonly search?: string;
  /** A series' short name. */
  readonly series?: string;
  /** Reference of the last car of the page before. */
  readonly after?: string;
}

export interface CarListRow {
  readonly reference: string;
  readonly chassis: string;
  readonly claim: number;
  readonly series: string;
  readonly built: string;
  readonly status: CarStatus;
  readonly registration: string;
  readonly colour: string;
  /** Characteristics that differ from factory, and how many in each assembly. */
  readonly deviating: number;
  readonly assemblies: AssemblyCounts;
  /** Characteristics that could be compared at all: none that differ of none known is no praise. */
  readonly compared: number;
}

export type AssemblyCounts = Readonly<Partial<Record<Assembly, number>>>;

const listFields = {
  id: true,
  chassis: true,
  chassisKey: true,
  claim: true,
  builtText: true,
  series: { select: { name: true } },
  statuses: { where: { to: null }, select: { status: true } },
  identities: { where: { kind: "registration" }, select: { number: true }, orderBy: { id: "desc" }, take: 1 },
  currentValues: { where: { characteristic: "body.colour" }, select: { entered: true } },
} satisfies Prisma.CarSelect;

/** Chassis key and claim of a reference such as `S2-0211~2`. */
export function partsOf(reference: string): { readonly chassisKey: string; readonly claim: number } {
  const [chassis = "", claim = "1"] = reference.split("~");
  return { chassisKey: chassisKey(chassis), claim: /^[1-9]$/.test(claim) ? Number(claim) : 0 };
}

function matching(search: string): Prisma.CarWhereInput {
  const key = chassisKey(search);
  const colour = { characteristic: "body.colour", text: { contains: search, mode: "insensitive" as const } };
  return {
    OR: [
      ...(key === ""
        ? []
        : [{ chassisKey: { contains: key } }, { identities: { some: { numberKey: { contains: key } } } }]),
      { currentValues: { some: colour } },
    ],
  };
}

function following(reference: string): Prisma.CarWhereInput {
  const last = partsOf(reference);
  return {
    OR: [{ chassisKey: { gt: last.chassisKey } }, { chassisKey: last.chassisKey, claim: { gt: last.claim } }],
  };
}

/** How many characteristics differ from factory on each car, by assembly. */
export async function deviatingCounts(
  ctx: Context,
  carIds: readonly string[],
  book: CharacteristicBook,
): Promise<ReadonlyMap<string, AssemblyCounts>> {
  const groups = await ctx.db.currentValue.groupBy({
    by: ["carId", "characteristic"],
    where: { carId: { in: [...carIds] }, verdict: { in: telling } },
    _count: { _all: true },
  });
  const counts = new Map<string, Partial<Record<Assembly, number>>>();
  for (const { carId, characteristic, _count } of groups) {
    const assembly = book.find(characteristic)?.assembly;
    if (!assembly) continue;
    const car = counts.get(carId) ?? {};
    car[assembly] = (car[assembly] ?? 0) + _count._all;
    counts.set(carId, car);
  }
  return counts;
}

/** How many characteristics of each car are recorded, so that they could be compared with factory. */
export async function comparedCounts(
  ctx: Context,
  carIds: readonly string[],
): Promise<ReadonlyMap<string, number>> {
  const groups = await ctx.db.currentValue.groupBy({
    by: ["carId"],
    where: { carId: { in: [...carIds] }, verdict: { not: "notRecorded" } },
    _count: { _all: true },
  });
  return new Map(groups.map(({ carId, _count }) => [carId, _count._all]));
}

export function sumOf(counts: AssemblyCounts): number {
  return Object.values(counts).reduce((sum, count) => sum + count, 0);
}

/** One page of the register by chassis number, with how many cars there are in all. */
export async function listCars(ctx: Context, input: CarListInput) {
  const search = input.search?.trim() ?? "";
  const filter: Prisma.CarWhereInput = {
    ...(input.series === undefined ? {} : { series: { slug: input.series } }),
    ...(search === "" ? {} : matching(search)),
  };
  const where = input.after === undefined ? filter : { AND: [filter, following(input.after)] };
  const total = await ctx.db.car.count({ where: filter });
  const rows = await ctx.db.car.findMany({
    where,
    select: listFields,
    orderBy: [{ chassisKey: "asc" }, { claim: "asc" }],
    take: PAGE + 1,
  });
  const page = rows.slice(0, PAGE);
  const ids = page.map(({ id }) => id);
  const counts = await deviatingCounts(ctx, ids, await bookOf(ctx));
  const compared = await comparedCounts(ctx, ids);
  const cars = page.map(
    (row): CarListRow => ({
      reference: carReference(row),
      chassis: row.chassis,
      claim: row.claim,
      series: row.series?.name ?? "not settled",
      built: row.builtText ?? "not known",
      status: row.statuses[0]?.status ?? "unknown",
      registration: row.identities[0]?.number ?? "",
      colour: row.currentValues[0]?.entered ?? "",
      deviating: sumOf(counts.get(row.id) ?? {}),
      assemblies: counts.get(row.id) ?? {},
      compared: compared.get(row.id) ?? 0,
    }),
  );
  const last = cars.at(-1);
  return { total, cars, ...(rows.length > PAGE && last ? { next: last.reference } : {}) };
}

/**
 * The record of one car by its reference.
 *
 * @throws Refusal CAR_NOT_FOUND, also for a car of another club: this transaction cannot see it
 */
export async function findCar(ctx: Context, reference: string): Promise<CarRecord> {
  const { chassisKey: key, claim } = partsOf(reference);
  const found = await ctx.db.car.findUnique({
    where: { clubId_chassisKey_claim: { clubId: ctx.club.id, chassisKey: key, claim } },
    select: { id: true },
  });
  const [record] = found ? await recordsOf(ctx, [found.id]) : [];
  if (!record) throw refused("CAR_NOT_FOUND", { car: reference });
  return record;
}

/**
 * Opens a car's record for changing: who may, and nobody else until this transaction ends. Two who save at once come one
 * after the other, and the second sees what the first wrote.
 *
 * @throws Refusal ROLE_NEEDED, CAR_NOT_FOUND; CAR_MERGED for a record that only points to another
 */
export async function openCar(ctx: Context, reference: string): Promise<CarRecord> {
  requireRole(ctx.actor, "registrar", "fleetManager");
  const { chassisKey: key, claim } = partsOf(reference);
  await ctx.db.$queryRaw`
    SELECT 1 FROM car WHERE club_id = ${ctx.club.id}::uuid AND chassis_key = ${key} AND claim = ${claim} FOR UPDATE`;
  const record = await findCar(ctx, reference);
  const pointer = await ctx.db.car.findFirst({
    where: { id: record.id },
    select: { mergedInto: { select: { chassis: true, claim: true } } },
  });
  if (pointer?.mergedInto) {
    throw refused("CAR_MERGED", { car: record.reference, into: carReference(pointer.mergedInto) });
  }
  return record;
}
