import type { Context } from "../context";
import { carReference } from "../record";

/** A message as a page shows it. */
export interface NoticeLine {
  readonly id: string;
  readonly submissionId: string;
  readonly car: string;
  readonly to: string;
  readonly subject: string;
  readonly text: string;
  /** ISO instant it was written. */
  readonly at: string;
  readonly standing:
    | { readonly kind: "waiting"; readonly tries: number }
    | { readonly kind: "sent"; readonly by: string; readonly at: string }
    | { readonly kind: "givenUp"; readonly tries: number };
  /** Why the last try failed; told to whoever keeps the register. */
  readonly problem?: string;
}

/** Most that one page shows, latest first. */
const SHOWN = 100;

/** The messages of the club to whoever keeps the register, to others their own; latest first, at most 100. */
export async function listNotices(ctx: Context): Promise<readonly NoticeLine[]> {
  const { personId, roles } = ctx.actor;
  const all = roles.includes("registrar") || roles.includes("fleetManager");
  if (!all && personId === null) return [];
  const rows = await ctx.db.notice.findMany({
    where: all || personId === null ? {} : { personId },
    include: { submission: { select: { car: { select: { chassis: true, claim: true } } } } },
    orderBy: { id: "desc" },
    take: SHOWN,
  });
  const members = await ctx.db.membership.findMany({
    where: { personId: { in: rows.map((row) => row.personId) } },
    select: { personId: true, person: { select: { name: true } } },
  });
  const names = new Map(members.map((one) => [one.personId, one.person.name]));
  return rows.map((row) => ({
    id: row.id,
    submissionId: row.submissionId,
    car: carReference(row.submission.car),
    to: names.get(row.personId) ?? "somebody who left",
    subject: row.subject,
    text: row.text,
    at: row.recordedAt.toISOString(),
    standing:
      row.sentAt !== null
        ? { kind: "sent", by: row.sentBy ?? "", at: row.sentAt.toISOString() }
        : row.givenUpAt !== null
          ? { kind: "givenUp", tries: row.tries }
          : { kind: "waiting", tries: row.tries },
    ...(all && row.problem !== null ? { problem: row.problem } : {}),
  }));
}
