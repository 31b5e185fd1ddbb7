import type { Prisma } from "@trunnion/db";
import {
  type FieldDifference,
  type PartialDate,
  Problems,
  refused,
  sayBeforeBuilt,
} from "@trunnion/register";
import { v7 as uuid } from "uuid";
import { z } from "zod";
import { editCar, openCar, readDate, type WantedField } from "../car";
import type { Context } from "../context";
import { dayColumn, dayOf } from "../day";
import { carEditFields, dateInput, lineInput, proseInput, provenanceFields } from "../entry-input";
import { writeJournal } from "../journal";
import { partialDateColumns } from "../partial-date-columns";
import { builtOf, type CarRecord } from "../record";
import { requireRole } from "../role";
import { provenanceOf } from "../source";
import { personalParts, withoutPerson } from "./policy";

const contactFields = {
  address: proseInput(400).default(""),
  email: z.union([z.literal(""), z.email().max(254)]).default(""),
  phone: lineInput(60).default(""),
} as const;

const personFields = {
  name: lineInput(120),
  ...contactFields,
  /** Membership of the keeper, so that he has his car; empty for somebody who does not sign in. */
  membership: z.union([z.literal(""), z.uuid()]).default(""),
} as const;

const spanFields = { from: dateInput, to: dateInput, ...provenanceFields } as const;

/** Somebody who keeps or kept a car: one the register knows, by id, or somebody new. Personal data. */
export const addKeepershipInput = z.object({
  ...carEditFields,
  keeper: z.union([z.literal(""), z.uuid()]).default(""),
  ...personFields,
  ...spanFields,
  /** Keeps it together with who keeps it now, who stays. */
  together: z.enum(["yes", "no"]).default("no"),
});
export type AddKeepershipInput = z.infer<typeof addKeepershipInput>;
export const correctKeepershipInput = z.object({ ...carEditFields, id: z.uuid(), ...spanFields });
export type CorrectKeepershipInput = z.infer<typeof correctKeepershipInput>;
export const removeKeepershipInput = z.object({ ...carEditFields, id: z.uuid() });
export type RemoveKeepershipInput = z.infer<typeof removeKeepershipInput>;
/** A keeper's particulars as they should be; reached from a car he keeps. Personal data. */
export const correctKeeperInput = z.object({ ...carEditFields, keeper: z.uuid(), ...personFields });
export type CorrectKeeperInput = z.infer<typeof correctKeeperInput>;
/** One's own contact data. Personal data. */
export const correctOwnContactInput = z.object({
  keeper: z.uuid(),
  ...contactFields,
  /** What the form was opened with; `version` comes with a form that was shown what somebody else saved. */
  opened: z.record(z.string().max(40), z.string().max(4_000)).default({}),
  version: z.coerce.number().int().exactOptional(),
});
export type CorrectOwnContactInput = z.infer<typeof correctOwnContactInput>;
export const eraseKeeperInput = z.object({ keeper: z.uuid(), reason: lineInput(500).default("") });
export type EraseKeeperInput = z.infer<typeof eraseKeeperInput>;

const orNull = (text: string) => (text === "" ? null : text);

/** A keeper's columns, empty ones as nothing. */
const personColumns = ({
  name,
  address,
  email,
  phone,
  membership,
}: z.infer<z.ZodObject<typeof personFields>>) => ({
  name: orNull(name),
  address: orNull(address),
  email: orNull(email),
  phone: orNull(phone),
  membershipId: orNull(membership),
});

async function checkMembership(ctx: Context, id: string, problems: Problems): Promise<void> {
  if (id === "") return;
  const found = await ctx.db.membership.findFirst({ where: { id, leftAt: null }, select: { id: true } });
  if (!found) problems.add("membership", "There is no such member: choose one of the list.");
}

interface Span {
  readonly from: PartialDate | null;
  readonly to: string | undefined;
}

function readSpan(
  ctx: Context,
  input: { readonly from: string; readonly to: string },
  problems: Problems,
): Span {
  const date = (field: "from" | "to") => readDate(input[field], { field, today: ctx.today, problems });
  const [from, end] = [date("from"), date("to")];
  if (from && end && from.earliest > end.latest) {
    problems.add(
      "to",
      `"${end.text}" lies before "${from.text}": the end must not come before the beginning.`,
    );
  }
  return { from, to: end?.latest };
}

const spanColumns = ({ from, to }: Span) => ({
  ...partialDateColumns("from", from),
  to: to === undefined ? null : dayColumn(to),
});

async function keepershipOf(ctx: Context, record: CarRecord, id: string) {
  const row = await ctx.db.keepership.findFirst({
    where: { id, carId: record.id },
    include: { source: { select: { title: true } } },
  });
  if (!row) throw refused("ROW_NOT_FOUND", { what: "keeper", car: record.reference });
  return row;
}
type KeepershipRow = Awaited<ReturnType<typeof keepershipOf>>;

function spanFieldsOf(
  row: KeepershipRow | undefined,
  { from, to }: Span,
  known: { readonly source: string; readonly locus: string; readonly trust: string },
) {
  return [
    { field: "from", label: "From", now: row?.fromText ?? "", wanted: from?.text ?? "" },
    { field: "to", label: "Until", now: row?.to ? dayOf(row.to) : "", wanted: to ?? "" },
    { field: "source", label: "Source", now: row?.source?.title ?? "", wanted: known.source },
    { field: "locus", label: "Page or place", now: row?.locus ?? "", wanted: known.locus },
    { field: "trust", label: "Trust", now: row?.trust ?? "", wanted: known.trust },
  ] satisfies readonly WantedField[];
}

/** Whether the keeper chosen is on the register; a new one needs a name. */
async function checkKeeper(ctx: Context, input: AddKeepershipInput, problems: Problems): Promise<void> {
  if (input.keeper === "") {
    if (input.name === "") problems.add("name", "Write the keeper's name, or choose one the register knows.");
    return;
  }
  const known = await ctx.db.keeper.findFirst({ where: { id: input.keeper, erasedAt: null } });
  if (!known) problems.add("keeper", "There is no such keeper: choose one of the list.");
}

/**
 * Adds somebody who keeps or kept a car. A present keeper ends the keeping of the one before, unless they keep it
 * together. The journal says that there is one, not who. Tells the record's version.
 *
 * @throws Refusal ROLE_NEEDED, CAR_NOT_FOUND, CAR_MERGED, CHANGED_MEANWHILE; Invalid for somebody without a name, a
 *   member there is not, dates that cannot be read or end before they begin
 */
export async function addKeepership(ctx: Context, input: AddKeepershipInput): Promise<number> {
  const record = await openCar(ctx, input.car);
  const problems = new Problems();
  const span = readSpan(ctx, input, problems);
  await checkKeeper(ctx, input, problems);
  await checkMembership(ctx, input.membership, problems);
  const provenance = await provenanceOf(ctx, input, problems);
  problems.throwIfAny();
  const id = uuid();
  const known = { source: provenance.title, locus: input.locus, trust: input.trust };
  return editCar(ctx, {
    record,
    form: input,
    line: { action: "keeper.add", noun: "keepership", nounId: id },
    fields: [
      { field: "keeper", label: "Keeper", now: "", wanted: input.name || "known", personal: true },
      ...spanFieldsOf(undefined, span, known),
    ],
    doubts: [sayBeforeBuilt("kept since", span.from, builtOf(record))],
    write: async () => {
      if (span.to === undefined && input.together === "no") {
        const to = dayColumn(span.from?.latest ?? ctx.today);
        await ctx.db.keepership.updateMany({ where: { carId: record.id, to: null }, data: { to } });
      }
      const keeperId = input.keeper === "" ? uuid() : input.keeper;
      if (input.keeper === "")
        await ctx.db.keeper.create({ data: { id: keeperId, ...personColumns(input) } });
      else if (input.membership !== "") {
        await ctx.db.keeper.updateMany({ where: { id: keeperId }, data: { membershipId: input.membership } });
      }
      const columns = await provenance.columns();
      await ctx.db.keepership.create({
        data: { id, carId: record.id, keeperId, ...spanColumns(span), ...columns },
      });
    },
  });
}

/**
 * Corrects when somebody kept a car, and where that is known from. Tells the record's version.
 *
 * @throws as `addKeepership`; Refusal ROW_NOT_FOUND
 */
export async function correctKeepership(ctx: Context, input: CorrectKeepershipInput): Promise<number> {
  const record = await openCar(ctx, input.car);
  const row = await keepershipOf(ctx, record, input.id);
  const problems = new Problems();
  const span = readSpan(ctx, input, problems);
  const provenance = await provenanceOf(ctx, input, problems);
  problems.throwIfAny();
  const known = { source: provenance.title, locus: input.locus, trust: input.trust };
  return editCar(ctx, {
    record,
    form: input,
    line: { action: "keeper.correct", noun: "keepership", nounId: row.id },
    fields: spanFieldsOf(row, span, known),
    doubts: [sayBeforeBuilt("kept since", span.from, builtOf(record))],
    write: async () => {
      const data = { ...spanColumns(span), ...(await provenance.columns()) };
      await ctx.db.keepership.updateMany({ where: { id: row.id }, data });
    },
  });
}

/**
 * Takes away a keeping that never was. A keeper who then keeps nothing is taken away with it: the register has no
 * reason left to know the person. Tells the record's version.
 *
 * @throws Refusal ROLE_NEEDED, CAR_NOT_FOUND, CAR_MERGED, ROW_NOT_FOUND, CHANGED_MEANWHILE
 */
export async function removeKeepership(ctx: Context, input: RemoveKeepershipInput): Promise<number> {
  const record = await openCar(ctx, input.car);
  const row = await keepershipOf(ctx, record, input.id);
  return editCar(ctx, {
    record,
    form: input,
    line: { action: "keeper.remove", noun: "keepership", nounId: row.id },
    fields: [],
    always: true,
    also: { before: { from: row.fromText ?? "", to: row.to ? dayOf(row.to) : "", trust: row.trust } },
    write: async () => {
      await ctx.db.keepership.deleteMany({ where: { id: row.id } });
      await ctx.db.keeper.deleteMany({ where: { id: row.keeperId, keeperships: { none: {} } } });
    },
  });
}

type KeeperRow = Prisma.KeeperGetPayload<{ include: { keeperships: { select: { carId: true } } } }>;

async function openKeeper(ctx: Context, id: string): Promise<KeeperRow> {
  await ctx.db
    .$queryRaw`SELECT 1 FROM keeper WHERE club_id = ${ctx.club.id}::uuid AND id = ${id}::uuid FOR UPDATE`;
  const keeper = await ctx.db.keeper.findFirst({
    where: { id },
    include: { keeperships: { select: { carId: true } } },
  });
  if (!keeper) throw refused("KEEPER_NOT_FOUND", {});
  if (keeper.erasedAt !== null) throw refused("KEEPER_ERASED", {});
  return keeper;
}

/** Counts up the version of the cars somebody keeps, so that a form opened on any of them notices. */
async function countUp(ctx: Context, carIds: readonly string[]): Promise<void> {
  await ctx.db.car.updateMany({ where: { id: { in: [...carIds] } }, data: { version: { increment: 1 } } });
}

const contactOf = (keeper: KeeperRow, part: (typeof personalParts)[number]) => keeper[part] ?? "";

/**
 * Corrects a keeper's particulars, and which member the keeper is: a member has in his own list the cars he keeps.
 * The journal says which particulars changed, not what they say. Tells the record's version.
 *
 * @throws Refusal ROLE_NEEDED, CAR_NOT_FOUND, CAR_MERGED, KEEPER_NOT_FOUND, KEEPER_ERASED, CHANGED_MEANWHILE; Invalid
 *   for somebody without a name, a member there is not
 */
export async function correctKeeper(ctx: Context, input: CorrectKeeperInput): Promise<number> {
  const record = await openCar(ctx, input.car);
  const keeper = await openKeeper(ctx, input.keeper);
  const kept = keeper.keeperships.map(({ carId }) => carId);
  if (!kept.includes(record.id)) throw refused("KEEPER_NOT_FOUND", {});
  const problems = new Problems();
  if (input.name === "") problems.add("name", "Write the keeper's name.");
  await checkMembership(ctx, input.membership, problems);
  problems.throwIfAny();
  const labels = { name: "Name", address: "Address", email: "E-mail", phone: "Telephone" } as const;
  const parts = personalParts.map(
    (part): WantedField => ({
      field: part,
      label: labels[part],
      now: contactOf(keeper, part),
      wanted: input[part],
      personal: true,
    }),
  );
  const linked = (id: string | null) => (id === null || id === "" ? "no" : "yes");
  return editCar(ctx, {
    record,
    form: input,
    line: { action: "keeper.particulars", noun: "keeper", nounId: keeper.id },
    fields: [
      ...parts,
      {
        field: "member",
        label: "Is a member",
        now: linked(keeper.membershipId),
        wanted: linked(input.membership),
      },
    ],
    always: (keeper.membershipId ?? "") !== input.membership,
    write: async () => {
      await ctx.db.keeper.updateMany({ where: { id: keeper.id }, data: personColumns(input) });
      await countUp(
        ctx,
        kept.filter((carId) => carId !== record.id),
      );
    },
  });
}

function ownDifferences(keeper: KeeperRow, input: CorrectOwnContactInput): readonly FieldDifference[] {
  const labels = { address: "Address", email: "E-mail", phone: "Telephone" } as const;
  return (["address", "email", "phone"] as const).flatMap((field) => {
    const [was, theirs] = [input.opened[field], contactOf(keeper, field)];
    return was === undefined || was === theirs
      ? []
      : [{ field, label: labels[field], was, theirs, yours: input[field] }];
  });
}

/**
 * Corrects one's own contact data: all that a keeper may change here directly. The name stays the registrar's.
 *
 * @throws Refusal KEEPER_NOT_FOUND for anybody but oneself, KEEPER_ERASED, CHANGED_MEANWHILE
 */
export async function correctOwnContact(ctx: Context, input: CorrectOwnContactInput): Promise<void> {
  const keeper = await openKeeper(ctx, input.keeper);
  const { membershipId } = ctx.actor;
  if (membershipId === null || keeper.membershipId !== membershipId) throw refused("KEEPER_NOT_FOUND", {});
  const differences = ownDifferences(keeper, input);
  if (differences.length > 0 && input.version === undefined) {
    throw refused("CHANGED_MEANWHILE", { what: "your contact data", version: 1, differences });
  }
  const changed = (["address", "email", "phone"] as const).filter(
    (part) => contactOf(keeper, part) !== input[part],
  );
  if (changed.length === 0) return;
  const { address, email, phone } = input;
  const data = { address: orNull(address), email: orNull(email), phone: orNull(phone) };
  await ctx.db.keeper.updateMany({ where: { id: keeper.id }, data });
  await countUp(
    ctx,
    keeper.keeperships.map(({ carId }) => carId),
  );
  const after = { changed };
  await writeJournal(ctx, [{ action: "keeper.ownContact", noun: "keeper", nounId: keeper.id, after }]);
}

/**
 * Erases a keeper's personal data on request: the rows stay, so that the car's history does, without the person. What
 * earlier readings-in kept for undoing is erased with it, and the link to a membership; the account to sign in with is
 * another matter. The journal never had any of it.
 *
 * @throws Refusal ROLE_NEEDED, KEEPER_NOT_FOUND, KEEPER_ERASED
 */
export async function eraseKeeper(ctx: Context, input: EraseKeeperInput): Promise<void> {
  requireRole(ctx.actor, "registrar", "fleetManager");
  const keeper = await openKeeper(ctx, input.keeper);
  await ctx.db.keeper.updateMany({
    where: { id: keeper.id },
    data: { name: null, address: null, email: null, phone: null, membershipId: null, erasedAt: ctx.now },
  });
  const steps = await ctx.db.importStep.findMany({ where: { table: "keeper", rowId: keeper.id } });
  for (const { runId, ordinal, before } of steps) {
    if (before === null) continue;
    await ctx.db.importStep.updateMany({
      where: { runId, ordinal },
      data: { before: withoutPerson(before, ctx.now) as Prisma.InputJsonObject },
    });
  }
  const carIds = keeper.keeperships.map(({ carId }) => carId);
  await countUp(ctx, carIds);
  const line = {
    action: "keeper.erase",
    noun: "keeper",
    nounId: keeper.id,
    after: { erased: true },
    ...(input.reason === "" ? {} : { reason: input.reason }),
  };
  await writeJournal(ctx, carIds.length === 0 ? [line] : carIds.map((carId) => ({ ...line, carId })));
}
