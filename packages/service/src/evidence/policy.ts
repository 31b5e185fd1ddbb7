import { refused } from "@trunnion/register";
import type { Context } from "../context";

const has = ({ actor }: Context, ...roles: readonly string[]) =>
  actor.roles.some((role) => roles.includes(role));

/** Who keeps order over all evidence of the club. */
export function mayOrderEvidence(ctx: Context): boolean {
  return has(ctx, "registrar", "fleetManager");
}

/** Which of some cars the actor keeps now. */
async function ownOf(ctx: Context, carIds: readonly string[]): Promise<ReadonlySet<string>> {
  const { membershipId } = ctx.actor;
  if (membershipId === null || carIds.length === 0) return new Set();
  const rows = await ctx.db.keepership.findMany({
    where: { carId: { in: [...carIds] }, to: null, keeper: { membershipId } },
    select: { carId: true },
  });
  return new Set(rows.map(({ carId }) => carId));
}

/**
 * Whether the actor may add to, and change, evidence of these cars: registrar and fleet manager of anything, a scrutineer
 * of any car, whoever keeps one of the cars now. No car: an entry of a specification, a decision on a number.
 */
export async function mayChangeEvidence(ctx: Context, carIds: readonly (string | null)[]): Promise<boolean> {
  if (mayOrderEvidence(ctx)) return true;
  const cars = carIds.filter((id) => id !== null);
  if (has(ctx, "scrutineer") && cars.length > 0) return true;
  return (await ownOf(ctx, cars)).size > 0;
}

/** @throws Refusal EVIDENCE_NOT_YOURS */
export async function requireMayChange(
  ctx: Context,
  carIds: readonly (string | null)[],
  what: string,
): Promise<void> {
  if (!(await mayChangeEvidence(ctx, carIds))) throw refused("EVIDENCE_NOT_YOURS", { what });
}

/** Whether the actor may withdraw a piece: whoever keeps order, and whoever added it. */
export function mayWithdraw(ctx: Context, piece: { readonly addedById: string | null }): boolean {
  return mayOrderEvidence(ctx) || (piece.addedById !== null && piece.addedById === ctx.actor.personId);
}
