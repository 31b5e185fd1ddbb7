import { IdentityKind, NumberOutcome } from "@trunnion/db";
import { chassisKey, Problems, refused } from "@trunnion/register";
import { v7 as uuid } from "uuid";
import { z } from "zod";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { rebuildCurrentValues } from "../current-value";
import { lineInput, proseInput } from "../entry-input";
import { writeJournal } from "../journal";
import { carReference } from "../record";
import { requireRole } from "../role";
import { standingAfter } from "./policy";
import { claimantIds, findingsOf, numberedCars } from "./read";

/** Something found that is to be left as it is, with the reason. */
export const setAsideInput = z.object({
  finding: lineInput(200).min(1),
  reason: proseInput(2_000),
});
export type SetAsideInput = z.infer<typeof setAsideInput>;
export const takeUpInput = z.object({ id: z.uuid() });
export type TakeUpInput = z.infer<typeof takeUpInput>;

/** What a registrar decides about a number that several cars claim. */
export const decideNumberInput = z.object({
  kind: z.enum(IdentityKind),
  number: lineInput(60).min(1),
  outcome: z.enum(NumberOutcome),
  /** Reference of the car that holds it, where one does. */
  holder: lineInput(60).default(""),
  reason: proseInput(4_000),
  /** The decision that stood when the page was opened; empty where none did. */
  standing: z.union([z.literal(""), z.uuid()]).default(""),
});
export type DecideNumberInput = z.infer<typeof decideNumberInput>;

/**
 * Leaves a finding as it is. When what it rests on changes, it is shown again.
 *
 * @throws Refusal ROLE_NEEDED; FINDING_NOT_FOUND where the register does not show it any more; Invalid without a reason
 */
export async function setAside(ctx: Context, input: SetAsideInput): Promise<void> {
  requireRole(ctx.actor, "registrar", "fleetManager");
  const problems = new Problems();
  if (input.reason === "") problems.add("reason", "Say why it is left as it is.");
  problems.throwIfAny();
  const found = (await findingsOf(ctx, await numberedCars(ctx))).find(
    ({ finding }) => finding.key === input.finding,
  );
  if (!found) throw refused("FINDING_NOT_FOUND", { finding: input.finding });
  const { key, basis } = found.finding;
  await ctx.db.numberSetAside.updateMany({
    where: { finding: key, takenUpAt: null },
    data: { takenUpAt: ctx.now },
  });
  const id = uuid();
  const setAsideById = ctx.actor.personId;
  await ctx.db.numberSetAside.create({
    data: { id, finding: key, basis, reason: input.reason, setAsideById },
  });
  const line = { action: "number.setAside", noun: "numberSetAside", nounId: id, reason: input.reason };
  await writeJournal(ctx, [{ ...line, after: { finding: found.what } }]);
}

/**
 * Takes up again what was set aside.
 *
 * @throws Refusal ROLE_NEEDED, FINDING_NOT_FOUND
 */
export async function takeUp(ctx: Context, { id }: TakeUpInput): Promise<void> {
  requireRole(ctx.actor, "registrar", "fleetManager");
  const row = await ctx.db.numberSetAside.findFirst({ where: { id, takenUpAt: null } });
  if (!row) throw refused("FINDING_NOT_FOUND", { finding: id });
  await ctx.db.numberSetAside.updateMany({ where: { id }, data: { takenUpAt: ctx.now } });
  const before = { finding: row.finding };
  await writeJournal(ctx, [{ action: "number.takeUp", noun: "numberSetAside", nounId: id, before }]);
}

interface ClaimingCar {
  readonly id: string;
  readonly chassis: string;
  readonly claim: number;
}

/** How the number then stands on one car; a number a car is only filed under gets its line on the record by that. */
async function setStanding(
  ctx: Context,
  car: ClaimingCar,
  {
    kind,
    key,
    outcome,
    isHolder,
  }: { kind: IdentityKind; key: string; outcome: NumberOutcome; isHolder: boolean },
) {
  const row = await ctx.db.carIdentity.findFirst({ where: { carId: car.id, kind, numberKey: key } });
  const now = row?.standing ?? "accepted";
  const standing = standingAfter(outcome, { isHolder, now });
  if (row) await ctx.db.carIdentity.updateMany({ where: { id: row.id }, data: { standing } });
  else {
    const number = { kind, number: car.chassis, numberKey: key, standing };
    await ctx.db.carIdentity.create({ data: { carId: car.id, ...number } });
  }
  return { now, standing };
}

/**
 * Decides about a number that several cars claim. The decision before it is superseded, never lost; how the number
 * stands on each of the cars follows, and each car's journal says so. Tells the decision's id.
 *
 * @throws Refusal ROLE_NEEDED, CLAIM_NOT_FOUND, DECIDED_MEANWHILE; Invalid without a reason or a holder that claims it
 */
export async function decideNumber(ctx: Context, input: DecideNumberInput): Promise<string> {
  requireRole(ctx.actor, "registrar", "fleetManager");
  const { kind, outcome, reason } = input;
  const key = chassisKey(input.number);
  await ctx.db.$executeRaw`SELECT pg_advisory_xact_lock(hashtextextended(${`${ctx.club.id} ${key}`}, 3))`;
  const ids = await claimantIds(ctx, kind, key);
  if (ids.length < 2) throw refused("CLAIM_NOT_FOUND", { number: input.number });
  const cars = await ctx.db.car.findMany({
    where: { id: { in: [...ids] } },
    select: { id: true, chassis: true, claim: true },
  });
  const problems = new Problems();
  const holder = cars.find((car) => carReference(car) === input.holder);
  if (outcome === "oneHolds" && !holder) problems.add("holder", "Say which of the cars holds the number.");
  if (reason === "")
    problems.add("reason", "Write down the reasons: who comes after you must be able to weigh them.");
  problems.throwIfAny();
  const before = await ctx.db.numberDecision.findFirst({
    where: { kind, numberKey: key, supersededAt: null },
  });
  if ((before?.id ?? "") !== input.standing) throw refused("DECIDED_MEANWHILE", { number: input.number });
  await ctx.db.numberDecision.updateMany({
    where: { kind, numberKey: key, supersededAt: null },
    data: { supersededAt: ctx.now },
  });
  const id = uuid();
  const holderId = outcome === "oneHolds" ? (holder?.id ?? null) : null;
  const decidedById = ctx.actor.personId;
  await ctx.db.numberDecision.create({
    data: { id, kind, numberKey: key, outcome, holderId, reason, decidedById },
  });
  const lines = [];
  for (const car of cars) {
    const { now, standing } = await setStanding(ctx, car, {
      kind,
      key,
      outcome,
      isHolder: car.id === holderId,
    });
    lines.push({
      action: "number.decide",
      noun: "numberDecision",
      nounId: id,
      carId: car.id,
      reason,
      before: { outcome: before?.outcome ?? "", standing: now },
      after: {
        number: input.number,
        kind,
        outcome,
        holder: holder && holderId ? input.holder : "",
        standing,
      },
    });
  }
  await ctx.db.car.updateMany({ where: { id: { in: [...ids] } }, data: { version: { increment: 1 } } });
  await rebuildCurrentValues(ctx, ids, await bookOf(ctx));
  await writeJournal(ctx, lines);
  return id;
}
