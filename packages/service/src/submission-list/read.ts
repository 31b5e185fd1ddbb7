import {
  builtInBook,
  mixesOfSubmission,
  readSubmission,
  type SubmissionStatus,
  sayDay,
} from "@trunnion/register";
import type { ClubFacts, Context } from "../context";
import { carReference } from "../record";
import { requireRole } from "../role";
import {
  contentOf,
  groundOf,
  madeByKeeperOrDesk,
  type SubmissionGround,
  type SubmissionRow,
} from "../submission";
import { linesOf, type SubmissionLine } from "../submission-page";
import { photosOf, type SubmissionPhoto } from "../submission-photo";

/** A submission as a list shows it. */
export interface SubmissionBrief {
  readonly id: string;
  readonly version: number;
  readonly status: SubmissionStatus;
  readonly car: { readonly reference: string; readonly chassis: string };
  readonly madeBy: string;
  /** Written: "14 Nov 2026". */
  readonly on: string;
  /** "Front anti-roll bar diameter, 2 more", or what kind of thing it is. */
  readonly what: string;
  /** The last thing said about it, where it was asked or answered. */
  readonly lastSaid: string;
}

const briefFields = {
  id: true,
  carId: true,
  status: true,
  version: true,
  content: true,
  madeById: true,
  supersedesId: true,
  recordedAt: true,
  submittedAt: true,
  decidedAt: true,
  car: { select: { chassis: true, claim: true } },
  messages: { select: { text: true }, orderBy: { id: "desc" }, take: 1 },
} as const;

type BriefRow = Pick<
  SubmissionRow,
  "id" | "carId" | "status" | "version" | "content" | "madeById" | "recordedAt" | "submittedAt" | "decidedAt"
> & {
  readonly supersedesId: string | null;
  readonly car: { readonly chassis: string; readonly claim: number };
  readonly messages: readonly { readonly text: string }[];
};

function whatOf(row: BriefRow, labelOf: (key: string) => string): string {
  const { modifications, sheets } = contentOf(row);
  const labels = [
    ...new Set(
      modifications.flatMap(({ changes }) => changes.map(({ characteristic }) => labelOf(characteristic))),
    ),
  ];
  const [first, ...more] = labels;
  const parts = [
    first === undefined ? [] : more.length === 0 ? [first] : [`${first} and ${more.length} more`],
    sheets.length === 0 ? [] : [sheets.length === 1 ? "a setting sheet" : `${sheets.length} setting sheets`],
  ].flat();
  return parts.length === 0 ? "nothing chosen yet" : parts.join("; ");
}

async function briefs(
  ctx: Context,
  rows: readonly BriefRow[],
  labelOf: (key: string) => string,
): Promise<readonly SubmissionBrief[]> {
  const members = await ctx.db.membership.findMany({
    where: { personId: { in: rows.flatMap(({ madeById }) => madeById ?? []) } },
    select: { personId: true, person: { select: { name: true } } },
  });
  const names = new Map(members.map(({ personId, person }) => [personId, person.name]));
  return rows.map((row) => ({
    id: row.id,
    version: row.version,
    status: row.status,
    car: { reference: carReference(row.car), chassis: row.car.chassis },
    madeBy: row.madeById === null ? "read in from a file" : (names.get(row.madeById) ?? "somebody who left"),
    on: sayDay((row.decidedAt ?? row.submittedAt ?? row.recordedAt).toISOString().slice(0, 10)),
    what: whatOf(row, labelOf),
    lastSaid: row.messages[0]?.text ?? "",
  }));
}

/** Most that a page lists. */
const LISTED = 100;

/** The actor's own submissions: open ones first, then those decided, latest first; at most 100. */
export async function ownSubmissions(
  ctx: Context,
  labelOf: (key: string) => string,
): Promise<{ readonly open: readonly SubmissionBrief[]; readonly done: readonly SubmissionBrief[] }> {
  const { personId } = ctx.actor;
  if (personId === null) return { open: [], done: [] };
  const of = (status: readonly SubmissionStatus[]) =>
    ctx.db.submission.findMany({
      where: { madeById: personId, status: { in: [...status] } },
      select: briefFields,
      orderBy: { id: "desc" },
      take: LISTED,
    });
  const open = await of(["draft", "submitted", "queried", "answered"]);
  const done = await of(["accepted", "declined", "withdrawn"]);
  return { open: await briefs(ctx, open, labelOf), done: await briefs(ctx, done, labelOf) };
}

/** A submission in the queue, with the difference it makes. */
export interface QueuedSubmission extends SubmissionBrief {
  readonly lines: readonly SubmissionLine[];
  /** Why it cannot be accepted as it is, in words. */
  readonly problems: readonly string[];
  /** Threads and lengths it brings that are taken for others, in words. */
  readonly mixes: readonly string[];
  readonly evidence: readonly SubmissionPhoto[];
}

/** What waits for a decision, longest waiting first, and what waits for an owner's answer. */
export interface ReviewQueue {
  readonly club: ClubFacts;
  readonly waiting: readonly QueuedSubmission[];
  readonly asked: readonly SubmissionBrief[];
  /** How many wait in all; a page lists the first 40. */
  readonly total: number;
}

const QUEUE = 40;

interface Loaded extends Pick<QueuedSubmission, "lines" | "problems" | "mixes" | "evidence"> {
  readonly ground: SubmissionGround;
}

/**
 * What the registrar has to decide about.
 *
 * @throws Refusal ROLE_NEEDED
 */
export async function reviewQueue(ctx: Context): Promise<ReviewQueue> {
  requireRole(ctx.actor, "registrar", "fleetManager");
  const where = { status: { in: ["submitted", "answered"] } } as { status: { in: SubmissionStatus[] } };
  const rows = await ctx.db.submission.findMany({
    where,
    select: briefFields,
    orderBy: [{ submittedAt: "asc" }, { id: "asc" }],
    take: QUEUE,
  });
  const asked = await ctx.db.submission.findMany({
    where: { status: "queried" },
    select: briefFields,
    orderBy: { id: "asc" },
    take: LISTED,
  });
  const loaded: Loaded[] = [];
  for (const row of rows) {
    const { read, ground } = await readRow(ctx, row);
    const changed = !(await madeByKeeperOrDesk(ctx, row));
    const problems = [
      ...read.problems.map(({ message }) => message),
      ...(changed ? ["Whoever handed it in does not keep the car any more."] : []),
    ];
    const mixes = mixesOfSubmission(read, ground.basis).map(({ text }) => text);
    const lines = linesOf(ctx, read, ground);
    loaded.push({ lines, problems, mixes, evidence: await photosOf(ctx, row.id), ground });
  }
  const labelOf = (key: string) =>
    loaded[0]?.ground.basis.book.find(key)?.label ?? builtInBook.find(key)?.label ?? key;
  const told = await briefs(ctx, rows, labelOf);
  return {
    club: ctx.club,
    waiting: told.map((one, index) => ({
      ...one,
      lines: loaded[index]?.lines ?? [],
      problems: loaded[index]?.problems ?? [],
      mixes: loaded[index]?.mixes ?? [],
      evidence: loaded[index]?.evidence ?? [],
    })),
    asked: await briefs(ctx, asked, labelOf),
    total: await ctx.db.submission.count({ where }),
  };
}

async function readRow(ctx: Context, row: BriefRow) {
  const ground = await groundOf(ctx, row);
  return { ground, read: readSubmission(contentOf(row), ground.basis) };
}
