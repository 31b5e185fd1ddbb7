import { Prisma } from "@trunnion/db";
import { refused } from "@trunnion/register";
import type { Context } from "../context";
import { dayOf } from "../day";
import { carReference } from "../record";
import { requireRole } from "../role";
import { maySeeKeepers } from "./policy";

/** A keeper of a car. Personal data. */
export interface KeeperLine {
  readonly keeperId: string;
  readonly name: string;
  readonly address: string;
  readonly email: string;
  readonly phone: string;
  readonly from: string;
  /** ISO day; missing for the present keeper. */
  readonly to?: string;
  /** The reader himself. */
  readonly own: boolean;
}

interface KeeperRow {
  readonly keeperId: string;
  readonly name: string | null;
  readonly address: string | null;
  readonly email: string | null;
  readonly phone: string | null;
  readonly membershipId: string | null;
  readonly erased: boolean;
  readonly fromText: string | null;
  readonly to: string | null;
}

/**
 * Keepers of a car, the present one first. Who may not see them sees himself where he is one; `null` when there is
 * nothing that he may see.
 */
export async function keepersOf(ctx: Context, carId: string): Promise<readonly KeeperLine[] | null> {
  const { membershipId } = ctx.actor;
  const all = maySeeKeepers(ctx);
  if (!all && membershipId === null) return null;
  const own = all ? Prisma.empty : Prisma.sql`AND k.membership_id = ${membershipId}::uuid`;
  const rows = await ctx.db.$queryRaw<KeeperRow[]>`
    SELECT k.id::text AS "keeperId", k.name, k.address, k.email, k.phone, k.membership_id::text AS "membershipId",
      k.erased_at IS NOT NULL AS erased, p.from_text AS "fromText", p."to"::text AS "to"
    FROM keepership p JOIN keeper k ON k.club_id = p.club_id AND k.id = p.keeper_id
    WHERE p.car_id = ${carId}::uuid ${own} ORDER BY p."to" DESC NULLS FIRST, p.id DESC`;
  if (!all && rows.length === 0) return null;
  return rows.map(({ keeperId, name, address, email, phone, fromText, to, erased, ...keeper }) => ({
    keeperId,
    name: erased ? "erased" : (name ?? "name not recorded"),
    address: address ?? "",
    email: email ?? "",
    phone: phone ?? "",
    from: fromText ?? "",
    own: membershipId !== null && keeper.membershipId === membershipId,
    ...(to === null ? {} : { to }),
  }));
}

/** What the register holds of the reader himself, as a keeper. Personal data. */
export interface OwnContact {
  readonly id: string;
  readonly name: string;
  readonly address: string;
  readonly email: string;
  readonly phone: string;
  readonly cars: readonly {
    readonly reference: string;
    readonly chassis: string;
    readonly present: boolean;
  }[];
}

/** The keepers that the reader himself is; empty where the register knows him as none. */
export async function ownContacts(ctx: Context): Promise<readonly OwnContact[]> {
  const { membershipId } = ctx.actor;
  if (membershipId === null) return [];
  const rows = await ctx.db.keeper.findMany({
    where: { membershipId, erasedAt: null },
    include: { keeperships: { select: { to: true, car: { select: { chassis: true, claim: true } } } } },
    orderBy: { id: "asc" },
  });
  return rows.map(({ id, name, address, email, phone, keeperships }) => ({
    id,
    name: name ?? "",
    address: address ?? "",
    email: email ?? "",
    phone: phone ?? "",
    cars: keeperships.map(({ to, car }) => ({
      reference: carReference(car),
      chassis: car.chassis,
      present: to === null,
    })),
  }));
}

/** Somebody to choose as a keeper, or a member to link one to. Personal data. */
export interface PersonChoice {
  readonly id: string;
  readonly name: string;
}

/**
 * Keepers the register knows, by name, for choosing one who keeps another car already; at most 5,000.
 *
 * @throws Refusal ROLE_NEEDED
 */
export async function listKeepers(ctx: Context): Promise<readonly PersonChoice[]> {
  requireRole(ctx.actor, "registrar", "fleetManager");
  const rows = await ctx.db.keeper.findMany({
    where: { erasedAt: null, name: { not: null } },
    select: { id: true, name: true },
    orderBy: [{ name: "asc" }, { id: "asc" }],
    take: 5_000,
  });
  return rows.map(({ id, name }) => ({ id, name: name ?? "" }));
}

/**
 * Members of the club by name, for linking a keeper to one.
 *
 * @throws Refusal ROLE_NEEDED
 */
export async function listMembers(ctx: Context): Promise<readonly PersonChoice[]> {
  requireRole(ctx.actor, "registrar", "fleetManager");
  const rows = await ctx.db.membership.findMany({
    where: { leftAt: null },
    select: { id: true, person: { select: { name: true, email: true } } },
    orderBy: { person: { name: "asc" } },
    take: 5_000,
  });
  return rows.map(({ id, person }) => ({ id, name: `${person.name} (${person.email})` }));
}

async function keeperFor(ctx: Context, id: string) {
  const keeper = await ctx.db.keeper.findFirst({
    where: { id },
    include: {
      membership: { select: { id: true, personId: true, roles: true, joinedAt: true } },
      keeperships: {
        include: { car: { select: { chassis: true, claim: true } }, source: { select: { title: true } } },
        orderBy: { id: "asc" },
      },
    },
  });
  const own = keeper?.membershipId !== null && keeper?.membershipId === ctx.actor.membershipId;
  if (!own) requireRole(ctx.actor, "registrar", "fleetManager");
  if (!keeper) throw refused("KEEPER_NOT_FOUND", {});
  return keeper;
}

/**
 * Everything the register holds of a person as a keeper, for that person: particulars, cars kept, membership, and what
 * the journal says was done by that member. The keeper himself may ask, and who may see all keepers.
 *
 * @throws Refusal ROLE_NEEDED, KEEPER_NOT_FOUND
 */
export async function exportKeeper(ctx: Context, id: string) {
  const keeper = await keeperFor(ctx, id);
  const personId = keeper.membership?.personId;
  const done =
    personId === undefined
      ? []
      : await ctx.db.journalEntry.findMany({
          where: { personId },
          select: { at: true, action: true, noun: true },
          orderBy: { sequence: "asc" },
          take: 20_000,
        });
  return {
    club: ctx.club.name,
    on: ctx.today,
    keeper: {
      name: keeper.name,
      address: keeper.address,
      email: keeper.email,
      phone: keeper.phone,
      recordedAt: keeper.recordedAt.toISOString(),
      erasedAt: keeper.erasedAt?.toISOString() ?? null,
    },
    keeperships: keeper.keeperships.map((row) => ({
      car: carReference(row.car),
      from: row.fromText,
      to: row.to ? dayOf(row.to) : null,
      source: row.source?.title ?? null,
      locus: row.locus,
      trust: row.trust,
      recordedAt: row.recordedAt.toISOString(),
    })),
    membership: keeper.membership && {
      roles: keeper.membership.roles,
      joinedAt: keeper.membership.joinedAt.toISOString(),
    },
    done: done.map(({ at, action, noun }) => ({ at: at.toISOString(), action, noun })),
  };
}

/** What the register holds of one keeper, before it is changed or erased. Personal data. */
export interface KeeperDetail extends OwnContact {
  readonly membershipId: string;
  readonly erased: boolean;
  /** Free text that has the name in it, and which erasing does not reach: to be looked at by hand. */
  readonly mentions: readonly { readonly reference: string; readonly where: string }[];
}

/**
 * One keeper in full, with the places where free text names the person.
 *
 * @throws Refusal ROLE_NEEDED, KEEPER_NOT_FOUND
 */
export async function keeperDetail(ctx: Context, id: string): Promise<KeeperDetail> {
  requireRole(ctx.actor, "registrar", "fleetManager");
  const { name, address, email, phone, membershipId, erasedAt, keeperships } = await keeperFor(ctx, id);
  return {
    id,
    name: name ?? "",
    address: address ?? "",
    email: email ?? "",
    phone: phone ?? "",
    membershipId: membershipId ?? "",
    erased: erasedAt !== null,
    cars: keeperships.map(({ to, car }) => ({
      reference: carReference(car),
      chassis: car.chassis,
      present: to === null,
    })),
    mentions: name === null || name.trim().length < 3 ? [] : await mentionsOf(ctx, name.trim()),
  };
}

async function mentionsOf({ db }: Context, name: string): Promise<KeeperDetail["mentions"]> {
  const named = { contains: name, mode: "insensitive" as const };
  const car = { select: { chassis: true, claim: true } };
  const cars = await db.car.findMany({ where: { remarks: named }, ...car, take: 100 });
  const notes = await db.historyNote.findMany({ where: { text: named }, select: { car }, take: 100 });
  return [
    ...cars.map((one) => ({ reference: carReference(one), where: "remarks" })),
    ...notes.map((one) => ({ reference: carReference(one.car), where: "a note of its history" })),
  ];
}
