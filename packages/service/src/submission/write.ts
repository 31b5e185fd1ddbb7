import type { Prisma } from "@trunnion/db";
import {
  emptySubmission,
  Invalid,
  isOpenSubmission,
  moveSubmission,
  readSubmission,
  refused,
  type SubmissionContent,
  type SubmissionStatus,
  type SubmissionStep,
  submissionContentSchema,
  submissionDifferences,
  submissionLimits,
} from "@trunnion/register";
import { v7 as uuid } from "uuid";
import { z } from "zod";
import { findCar } from "../car";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { lineInput, proseInput } from "../entry-input";
import { writeJournal } from "../journal";
import { tellOfStep } from "../notice";
import { DRAFT_LIMIT, partiesOf, stepsOfKeeper } from "./policy";
import {
  contentOf,
  contentToCorrect,
  groundOf,
  lockSubmission,
  requireKeeper,
  type SubmissionRow,
} from "./read";

/** Where a submission stands after a step. */
export interface SubmissionMark {
  readonly id: string;
  readonly version: number;
  readonly status: SubmissionStatus;
}

const markOf = ({ id, version, status }: SubmissionMark): SubmissionMark => ({ id, version, status });
const json = (content: SubmissionContent) => content as unknown as Prisma.InputJsonObject;

/** A draft to begin: `clientKey` is made by the client, once per draft. */
export const createDraftInput = z.object({
  clientKey: z.uuid(),
  car: lineInput(60).min(1),
  content: submissionContentSchema.optional(),
});
export type CreateDraftInput = z.infer<typeof createDraftInput>;

/**
 * Begins a draft about a car. Sent again under the same key it is the same draft, as it stands.
 *
 * @throws Refusal CAR_NOT_FOUND, CAR_NOT_KEPT, TOO_MANY_DRAFTS; SUBMISSION_KEY_TAKEN where the key is somebody else's or
 *   another car's
 */
export async function createDraft(ctx: Context, input: CreateDraftInput): Promise<SubmissionMark> {
  const record = await findCar(ctx, input.car);
  await waitForKey(ctx, input.clientKey);
  const known = await ctx.db.submission.findFirst({ where: { clientKey: input.clientKey } });
  if (known) {
    if (known.madeById !== ctx.actor.personId || known.carId !== record.id)
      throw refused("SUBMISSION_KEY_TAKEN", {});
    return markOf(known);
  }
  await requireKeeper(ctx, record);
  const drafts = await ctx.db.submission.count({ where: { madeById: ctx.actor.personId, status: "draft" } });
  if (drafts >= DRAFT_LIMIT) throw refused("TOO_MANY_DRAFTS", { limit: DRAFT_LIMIT });
  const row = await ctx.db.submission.create({
    data: {
      id: uuid(),
      carId: record.id,
      clientKey: input.clientKey,
      madeById: ctx.actor.personId,
      content: json(input.content ?? emptySubmission(ctx.club.unitSystem)),
      savedAt: ctx.now,
    },
  });
  return markOf(row);
}

/** Two tries that arrive at once come one after the other, so that the second finds what the first made. */
async function waitForKey({ db, club }: Context, key: string): Promise<void> {
  await db.$executeRaw`SELECT pg_advisory_xact_lock(hashtextextended(${`${club.id} ${key}`}, 7))`;
}

/** What was typed so far. */
export const saveDraftInput = z.object({
  id: z.uuid(),
  /** Version the form was opened with, or its last save told. */
  version: z.coerce.number().int().min(1),
  content: submissionContentSchema,
  /** Key of the open form, and which of its saves this is; without script every save is a form of its own. */
  editor: z.uuid().optional(),
  count: z.coerce.number().int().min(1).max(1_000_000).default(1),
});
export type SaveDraftInput = z.infer<typeof saveDraftInput>;

/**
 * Keeps what was typed, right or wrong. The same open form may save again without having heard of its last save; one of
 * its earlier saves that comes late is passed over. What equals what is kept changes nothing.
 *
 * @throws Refusal SUBMISSION_NOT_FOUND, SUBMISSION_NOT_YOURS, SUBMISSION_STEP; CHANGED_MEANWHILE with both sides where
 *   another form saved since. Then nothing is written.
 */
export async function saveDraft(ctx: Context, input: SaveDraftInput): Promise<SubmissionMark> {
  const row = await lockSubmission(ctx, input.id);
  const status = requireMove(ctx, row, "save");
  const same = input.editor !== undefined && row.editorKey === input.editor;
  if (same && input.count <= row.editorCount) return markOf(row);
  const content = contentOf(row);
  if (JSON.stringify(content) === JSON.stringify(input.content)) return markOf(row);
  if (!same && row.version !== input.version) {
    throw refused("CHANGED_MEANWHILE", {
      what: "this draft",
      version: row.version,
      differences: submissionDifferences(content, input.content, await bookOf(ctx)),
    });
  }
  return markOf(
    await ctx.db.submission.update({
      where: { clubId_id: { clubId: ctx.club.id, id: row.id } },
      data: {
        content: json(input.content),
        status,
        savedAt: ctx.now,
        version: { increment: 1 },
        editorKey: input.editor ?? null,
        editorCount: input.editor === undefined ? 0 : input.count,
      },
    }),
  );
}

/** @throws Refusal SUBMISSION_NOT_YOURS, SUBMISSION_STEP */
export function requireMove(ctx: Context, row: SubmissionRow, step: SubmissionStep): SubmissionStatus {
  const move = moveSubmission(row.status, step, partiesOf(ctx, row));
  if (move.ok) return move.status;
  if (move.because === "party") throw refused("SUBMISSION_NOT_YOURS", { step });
  throw refused("SUBMISSION_STEP", { step, status: row.status });
}

/** What every step besides saving carries. */
export const stepFields = {
  id: z.uuid(),
  version: z.coerce.number().int().min(1),
  /** Made by the client, once per press of the button: sent again it is the same step. */
  key: z.uuid(),
} as const;

/** A step of the maker's. */
export const makerStepInput = z.object({
  ...stepFields,
  step: z.enum(["submit", "answer", "withdraw"]),
  /** The answer; a word with what is handed in, or why it is withdrawn. */
  text: proseInput(submissionLimits.message).default(""),
});
export type MakerStepInput = z.infer<typeof makerStepInput>;

/**
 * Whether a step was taken already, by its key; asked before whether it can be taken, since it cannot be taken again.
 *
 * @throws Refusal SUBMISSION_NOT_YOURS, SUBMISSION_STEP; CHANGED_MEANWHILE where something else was done since it was seen
 */
export function alreadyTaken(
  ctx: Context,
  row: SubmissionRow,
  { key, version, step }: { readonly key: string; readonly version: number; readonly step: SubmissionStep },
): boolean {
  if (row.stepKey === key) return true;
  requireMove(ctx, row, step);
  if (row.version === version) return false;
  throw refused("CHANGED_MEANWHILE", { what: "this submission", version: row.version, differences: [] });
}

async function addMessage(ctx: Context, submissionId: string, text: string): Promise<void> {
  const { personId } = ctx.actor;
  if (text === "" || personId === null) return;
  await ctx.db.submissionMessage.create({ data: { id: uuid(), submissionId, personId, text } });
}

/** Moves a submission on, in the journal and to whoever waits for it. */
export async function moveOn(
  ctx: Context,
  row: SubmissionRow,
  step: {
    readonly name: Exclude<SubmissionStep, "save">;
    readonly status: SubmissionStatus;
    readonly key: string;
    readonly text: string;
    readonly data?: Prisma.SubmissionUncheckedUpdateInput;
    /** The journal is written by whoever calls. */
    readonly silent?: boolean;
  },
): Promise<SubmissionMark> {
  const moved = await ctx.db.submission.update({
    where: { clubId_id: { clubId: ctx.club.id, id: row.id } },
    data: { ...step.data, status: step.status, stepKey: step.key, version: { increment: 1 } },
  });
  await addMessage(ctx, row.id, step.text);
  if (step.silent !== true) {
    const place = { noun: "submission", nounId: row.id, carId: row.carId };
    const [before, after] = [{ status: row.status }, { status: step.status }];
    await writeJournal(ctx, [{ action: `submission.${step.name}`, ...place, before, after }]);
  }
  await tellOfStep(ctx, row, { step: step.name, text: step.text });
  return markOf(moved);
}

/** What was said with a step is a message from then on, and no unsent word any more. */
function withoutWord({ content }: SubmissionRow): { readonly content?: Prisma.InputJsonObject } {
  const { word, ...rest } = content as Prisma.JsonObject;
  return word === undefined ? {} : { content: rest as Prisma.InputJsonObject };
}

/**
 * Hands a submission in, answers a question about it, or withdraws it. Sent again under the same key it is the same step.
 *
 * @throws Refusal SUBMISSION_NOT_FOUND, SUBMISSION_NOT_YOURS, SUBMISSION_STEP, CHANGED_MEANWHILE; CAR_NOT_KEPT where the
 *   car has changed hands; Invalid with everything that is wrong with what is handed in. Then nothing is written.
 */
export async function stepSubmission(ctx: Context, input: MakerStepInput): Promise<SubmissionMark> {
  const row = await lockSubmission(ctx, input.id);
  const { step: name, text, key } = input;
  if (alreadyTaken(ctx, row, input)) return markOf(row);
  const status = requireMove(ctx, row, name);
  if (stepsOfKeeper.has(name)) await requireSound(ctx, row);
  if (name === "answer" && text === "") throw new Invalid([{ field: "text", message: "Write your answer." }]);
  return moveOn(ctx, row, {
    name,
    status,
    key,
    text,
    data: { ...withoutWord(row), ...(name === "submit" ? { submittedAt: ctx.now } : {}) },
  });
}

async function requireSound(ctx: Context, row: SubmissionRow): Promise<void> {
  const { record, basis } = await groundOf(ctx, row);
  await requireKeeper(ctx, record);
  const { problems } = readSubmission(contentOf(row), basis);
  if (problems.length > 0) throw new Invalid(problems);
}

/** An accepted submission to correct. */
export const supersedeInput = z.object({ id: z.uuid(), clientKey: z.uuid() });
export type SupersedeInput = z.infer<typeof supersedeInput>;

/**
 * Begins a draft that takes the place of an accepted submission once it is accepted itself, with what that one said.
 *
 * @throws Refusal SUBMISSION_NOT_FOUND, SUBMISSION_SUPERSEDED, CAR_NOT_KEPT; SUBMISSION_STEP for one that is not accepted
 */
export async function supersedeSubmission(ctx: Context, input: SupersedeInput): Promise<SubmissionMark> {
  const row = await lockSubmission(ctx, input.id);
  await waitForKey(ctx, input.clientKey);
  const known = await ctx.db.submission.findFirst({ where: { clientKey: input.clientKey } });
  if (known) {
    if (known.supersedesId !== row.id) throw refused("SUBMISSION_KEY_TAKEN", {});
    return markOf(known);
  }
  if (isOpenSubmission(row.status) || row.status !== "accepted")
    throw refused("SUBMISSION_STEP", { step: "save", status: row.status });
  const { record } = await groundOf(ctx, row);
  await requireKeeper(ctx, record);
  const next = await ctx.db.submission.count({ where: { supersedesId: row.id, status: "accepted" } });
  if (next > 0) throw refused("SUBMISSION_SUPERSEDED", {});
  return markOf(
    await ctx.db.submission.create({
      data: {
        id: uuid(),
        carId: row.carId,
        clientKey: input.clientKey,
        madeById: ctx.actor.personId,
        content: json(await contentToCorrect(ctx, row)),
        supersedesId: row.id,
        savedAt: ctx.now,
      },
    }),
  );
}
