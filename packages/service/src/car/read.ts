import type { Verdict } from "@trunnion/db";
import { type Assembly, type CharacteristicBook, chassisKey, refused } from "@trunnion/register";
import type { Context } from "../context";
import { type CarRecord, recordByClaim } from "../record";
import { requireRole } from "../role";

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

export type AssemblyCounts = Readonly<Partial<Record<Assembly, number>>>;

/** Chassis key and claim of a reference such as `S2-0211~2`. */
export function partsOf(reference: string): { readonly chassisKey: string; readonly claim: number } {
  const [chassis = "", claim = "1"] = reference.split("~");
  return { chassisKey: chassisKey(chassis), claim: /^[1-9]$/.test(claim) ? Number(claim) : 0 };
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

export function sumOf(counts: AssemblyCounts): number {
  return Object.values(counts).reduce((sum, count) => sum + count, 0);
}

/**
 * The record of one car by its reference.
 *
 * @throws Refusal CAR_NOT_FOUND, also for a car of another club: this transaction cannot see it
 */
export async function findCar(ctx: Context, reference: string): Promise<CarRecord> {
  const record = await recordByClaim(ctx, partsOf(reference));
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
  const { mergedInto: into } = record;
  if (into !== undefined) throw refused("CAR_MERGED", { car: record.reference, into });
  return record;
}
