import type { Prisma } from "@trunnion/db";
import {
  type FieldProblem,
  isOpenSubmission,
  type ReadSubmission,
  readSubmission,
  refused,
  type SubmissionBasis,
  type SubmissionContent,
  type SubmissionStatus,
  type SubmissionStep,
  submissionContentSchema,
  submissionStepsFor,
} from "@trunnion/register";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { type CarRecord, carReference, recordsOf } from "../record";
import { currentSpecifications } from "../specification";
import { readStored } from "../stored-row";
import { basisOf, keepsRegister, partiesOf, requireParty } from "./policy";

const fields = {
  id: true,
  carId: true,
  status: true,
  madeById: true,
  clientKey: true,
  version: true,
  content: true,
  editorKey: true,
  editorCount: true,
  stepKey: true,
  savedAt: true,
  submittedAt: true,
  decidedAt: true,
  decidedById: true,
  decisionReason: true,
  supersedesId: true,
  recordedAt: true,
  car: { select: { chassis: true, claim: true, series: { select: { name: true } } } },
} satisfies Prisma.SubmissionSelect;

/** A submission as the database keeps it. */
export type SubmissionRow = Prisma.SubmissionGetPayload<{ select: typeof fields }>;

/** What a submission says, as typed; nothing for one that a file brought. */
export function contentOf(row: Pick<SubmissionRow, "id" | "content">): SubmissionContent {
  return readStored(submissionContentSchema, row.content, `submission "${row.id}"`);
}

const yesNo = (said: boolean | null) => (said === null ? "" : said ? "yes" : "no");
const metres = (si: number | null) => (si === null ? "" : `${si} m`);

/**
 * What an accepted submission says, for a draft that corrects it: as it was typed, or, where a file or another program
 * brought it, as its rows have it.
 */
export async function contentToCorrect(ctx: Context, row: SubmissionRow): Promise<SubmissionContent> {
  const typed = contentOf(row);
  if (typed.modifications.length + typed.sheets.length > 0) return typed;
  const rows = await ctx.db.modification.findMany({
    where: { submissionId: row.id },
    include: { changes: { orderBy: { id: "asc" } }, fasteners: { orderBy: { id: "asc" } } },
    orderBy: { sequence: "asc" },
  });
  const modifications = rows.map((one) => ({
    fitted: one.fittedText ?? "",
    odometer: metres(one.odometer),
    reason: one.reason ?? "",
    donor: one.donor ?? "",
    note: one.note ?? "",
    reversible: yesNo(one.reversible),
    oldPartKept: yesNo(one.oldPartKept),
    changes: one.changes.map(({ characteristic, side, beforeEntered, afterEntered }) => ({
      characteristic,
      side,
      before: beforeEntered ?? "",
      after: afterEntered,
    })),
    fasteners: one.fasteners.map((fastener) => ({
      place: fastener.place,
      thread: fastener.thread ?? "",
      grade: fastener.grade ?? "",
      length: metres(fastener.length),
      spacerStack: metres(fastener.spacerStack),
      count: String(fastener.count),
      note: fastener.note ?? "",
    })),
  }));
  return { ...typed, modifications } as SubmissionContent;
}

/**
 * A submission by its id, for whoever has to do with it.
 *
 * @throws Refusal SUBMISSION_NOT_FOUND, also for one that is somebody else's
 */
export async function findSubmission(ctx: Context, id: string): Promise<SubmissionRow> {
  const row = await ctx.db.submission.findFirst({ where: { id }, select: fields });
  if (!row) throw refused("SUBMISSION_NOT_FOUND", {});
  requireParty(ctx, row);
  return row;
}

/** The same, and nobody else changes it until this transaction ends. */
export async function lockSubmission(ctx: Context, id: string): Promise<SubmissionRow> {
  await ctx.db.$queryRaw`
    SELECT 1 FROM submission WHERE club_id = ${ctx.club.id}::uuid AND id = ${id}::uuid FOR UPDATE`;
  return findSubmission(ctx, id);
}

/** Whether somebody keeps a car now, by the register. */
export async function keepsCar(ctx: Context, carId: string, personId: string | null): Promise<boolean> {
  if (personId === null) return false;
  const count = await ctx.db.keepership.count({
    where: { carId, to: null, keeper: { membership: { personId, leftAt: null } } },
  });
  return count > 0;
}

/** @throws Refusal CAR_NOT_KEPT unless the actor keeps the car now, or the register */
export async function requireKeeper(
  ctx: Context,
  car: { readonly id: string; readonly reference: string },
): Promise<void> {
  if (keepsRegister(ctx) || (await keepsCar(ctx, car.id, ctx.actor.personId))) return;
  throw refused("CAR_NOT_KEPT", { car: car.reference });
}

/** What a submission is read against, and the car's record. */
export interface SubmissionGround {
  readonly record: CarRecord;
  readonly basis: SubmissionBasis;
}

/** The ground that a submission about a car stands on. */
export async function groundOf(
  ctx: Context,
  { carId, supersedesId }: { readonly carId: string; readonly supersedesId: string | null },
): Promise<SubmissionGround> {
  const [record] = await recordsOf(ctx, [carId]);
  if (!record) throw new Error(`a submission is about the car ${carId}, which is not there`);
  const book = await bookOf(ctx);
  const seriesId = record.series?.id;
  const specifications = await currentSpecifications(ctx, seriesId === undefined ? [] : [seriesId]);
  const superseded =
    supersedesId === null
      ? []
      : await ctx.db.modification.findMany({ where: { submissionId: supersedesId }, select: { id: true } });
  const basis = basisOf({
    record,
    specification: seriesId === undefined ? undefined : specifications.get(seriesId),
    book,
    today: ctx.today,
    except: new Set(superseded.map(({ id }) => id)),
  });
  return { record, basis };
}

/** One message of the thread of question and answer. */
export interface ThreadMessage {
  readonly id: string;
  readonly name: string;
  /** Said by whoever looks at it. */
  readonly own: boolean;
  readonly text: string;
  /** ISO instant. */
  readonly at: string;
}

async function namesOf(ctx: Context, ids: readonly string[]): Promise<ReadonlyMap<string, string>> {
  const rows = await ctx.db.membership.findMany({
    where: { personId: { in: [...ids] } },
    select: { personId: true, person: { select: { name: true } } },
  });
  return new Map(rows.map(({ personId, person }) => [personId, person.name]));
}

/** The thread of a submission, oldest first. */
export async function threadOf(ctx: Context, submissionId: string): Promise<readonly ThreadMessage[]> {
  const rows = await ctx.db.submissionMessage.findMany({
    where: { submissionId },
    orderBy: [{ recordedAt: "asc" }, { id: "asc" }],
  });
  const names = await namesOf(
    ctx,
    rows.map(({ personId }) => personId),
  );
  return rows.map(({ id, personId, text, recordedAt }) => ({
    id,
    name: names.get(personId) ?? "somebody who left",
    own: personId === ctx.actor.personId,
    text,
    at: recordedAt.toISOString(),
  }));
}

/** A submission as a page shows it. */
export interface SubmissionView {
  readonly id: string;
  readonly version: number;
  readonly status: SubmissionStatus;
  readonly open: boolean;
  readonly car: { readonly reference: string; readonly chassis: string; readonly series: string };
  /** Who made it; "read in from a file" where nobody did. */
  readonly madeBy: string;
  readonly own: boolean;
  readonly content: SubmissionContent;
  /** What stands in the way of handing it in, at the fields. */
  readonly problems: readonly FieldProblem[];
  /** What the reader may do now. */
  readonly steps: readonly SubmissionStep[];
  readonly thread: readonly ThreadMessage[];
  /** ISO instants. */
  readonly begunAt: string;
  readonly savedAt?: string;
  readonly submittedAt?: string;
  readonly decision?: { readonly at: string; readonly by: string; readonly reason: string };
  /** Ids of the accepted submission it takes the place of, and of the one that took its place. */
  readonly supersedes?: string;
  readonly supersededBy?: string;
  /** Whoever made it keeps the car no longer, by the register. */
  readonly keeperChanged: boolean;
}

/** A submission with what it is read against and read as: for pages that show more than the view. */
export interface LoadedSubmission {
  readonly view: SubmissionView;
  readonly ground: SubmissionGround;
  readonly read: ReadSubmission;
}

/**
 * A submission with everything a page shows of it.
 *
 * @throws Refusal SUBMISSION_NOT_FOUND
 */
export async function loadSubmission(ctx: Context, id: string): Promise<LoadedSubmission> {
  const row = await findSubmission(ctx, id);
  const ground = await groundOf(ctx, row);
  const content = contentOf(row);
  const read = readSubmission(content, ground.basis);
  const names = await namesOf(
    ctx,
    [row.madeById, row.decidedById].flatMap((one) => one ?? []),
  );
  const nameOf = (person: string | null, nobody: string) =>
    person === null ? nobody : (names.get(person) ?? "somebody who left");
  const next = await ctx.db.submission.findFirst({
    where: { supersedesId: row.id, status: "accepted" },
    select: { id: true },
  });
  const open = isOpenSubmission(row.status);
  const view: SubmissionView = {
    id: row.id,
    version: row.version,
    status: row.status,
    open,
    car: {
      reference: carReference(row.car),
      chassis: row.car.chassis,
      series: row.car.series?.name ?? "series not settled",
    },
    madeBy: nameOf(row.madeById, "read in from a file"),
    own: row.madeById !== null && row.madeById === ctx.actor.personId,
    content,
    problems: open ? read.problems : [],
    steps: submissionStepsFor(row.status, partiesOf(ctx, row)),
    thread: await threadOf(ctx, row.id),
    begunAt: row.recordedAt.toISOString(),
    ...(row.savedAt === null ? {} : { savedAt: row.savedAt.toISOString() }),
    ...(row.submittedAt === null ? {} : { submittedAt: row.submittedAt.toISOString() }),
    ...(row.decidedAt === null
      ? {}
      : {
          decision: {
            at: row.decidedAt.toISOString(),
            by: nameOf(row.decidedById, "read in from a file"),
            reason: row.decisionReason ?? "",
          },
        }),
    ...(row.supersedesId === null ? {} : { supersedes: row.supersedesId }),
    ...(next === null ? {} : { supersededBy: next.id }),
    keeperChanged: row.madeById !== null && open && !(await madeByKeeperOrDesk(ctx, row)),
  };
  return { view, ground, read };
}

/** Whether whoever made a submission keeps the car now, or the register. */
export async function madeByKeeperOrDesk(
  ctx: Context,
  { carId, madeById }: Pick<SubmissionRow, "carId" | "madeById">,
): Promise<boolean> {
  if (madeById === null || (await keepsCar(ctx, carId, madeById))) return true;
  const desk = await ctx.db.membership.count({
    where: { personId: madeById, leftAt: null, roles: { hasSome: ["registrar", "fleetManager"] } },
  });
  return desk > 0;
}

/**
 * A submission with everything a page shows of it.
 *
 * @throws Refusal SUBMISSION_NOT_FOUND
 */
export async function submissionView(ctx: Context, id: string): Promise<SubmissionView> {
  return (await loadSubmission(ctx, id)).view;
}
