import { v7 as uuid } from "uuid";
import type { Context } from "../context";
import { nextTry, openings, subjects, type ToldStep, toldTo } from "./policy";

interface About {
  readonly id: string;
  readonly madeById: string | null;
  readonly car: { readonly chassis: string };
}

async function peopleToTell(ctx: Context, { madeById }: About, step: ToldStep): Promise<readonly string[]> {
  const to = toldTo[step];
  if (to === "nobody") return [];
  if (to === "maker") return madeById === null ? [] : [madeById];
  const rows = await ctx.db.membership.findMany({
    where: { leftAt: null, roles: { hasSome: ["registrar", "fleetManager"] } },
    select: { personId: true },
  });
  return rows.map(({ personId }) => personId);
}

/**
 * Notes down, in the transaction of the step itself, whom to tell of it: so that nobody is told of what was not done, and
 * a crash between the two loses nothing. Nobody is told of what he did himself. Sent by `sendNotices`.
 */
export async function tellOfStep(
  ctx: Context,
  about: About,
  { step, text }: { readonly step: ToldStep; readonly text: string },
): Promise<void> {
  const people = (await peopleToTell(ctx, about, step)).filter((id) => id !== ctx.actor.personId);
  const subject = subjects[step](about.car.chassis);
  const body = [openings[step], ...(text === "" ? [] : [`${ctx.actor.name} wrote:`, text])].join("\n\n");
  await ctx.db.notice.createMany({
    data: people.map((personId) => ({ id: uuid(), personId, submissionId: about.id, subject, text: body })),
  });
}

/** A message ready to go out. */
export interface OutgoingNotice {
  readonly id: string;
  readonly to: { readonly name: string; readonly address: string };
  readonly subject: string;
  readonly text: string;
  /** The submission it is about, for a link. */
  readonly submissionId: string;
}

/** Sends one message, and tells how; throws where it could not. */
export type SendNotice = (notice: OutgoingNotice) => Promise<"e-mail" | "outbox folder">;

/** Most that one round of one club sends. */
const ROUND = 20;

/**
 * Takes what waits to be sent, and holds it until this transaction ends, so that two servers never send the same twice at
 * once. Called by the worker only.
 */
export async function takeNotices(
  ctx: Context,
): Promise<readonly (OutgoingNotice & { readonly tries: number })[]> {
  const rows = await ctx.db.$queryRaw<{ id: string }[]>`
    SELECT id::text AS id FROM notice
    WHERE club_id = ${ctx.club.id}::uuid AND sent_at IS NULL AND given_up_at IS NULL AND not_before <= ${ctx.now}
    ORDER BY not_before, id LIMIT ${ROUND} FOR UPDATE SKIP LOCKED`;
  const found = await ctx.db.notice.findMany({
    where: { id: { in: rows.map(({ id }) => id) } },
    orderBy: { id: "asc" },
  });
  const members = await ctx.db.membership.findMany({
    where: { personId: { in: found.map(({ personId }) => personId) } },
    select: { personId: true, person: { select: { name: true, email: true } } },
  });
  const people = new Map(members.map(({ personId, person }) => [personId, person]));
  return found.map(({ id, personId, subject, text, submissionId, tries }) => {
    const person = people.get(personId);
    const to = { name: person?.name ?? "", address: person?.email ?? "" };
    return { id, to, subject, text, submissionId, tries };
  });
}

const LONGEST_PROBLEM = 500;

/**
 * Sends what waits, one message after another; a failure is noted and tried again later, six times in all. Where the
 * process dies between sending and noting, that one message is sent again: told twice rather than never.
 * Called by the worker only.
 */
export async function sendNotices(ctx: Context, send: SendNotice): Promise<{ sent: number; failed: number }> {
  const round = { sent: 0, failed: 0 };
  for (const { tries, ...notice } of await takeNotices(ctx)) {
    const where = { clubId_id: { clubId: ctx.club.id, id: notice.id } };
    try {
      if (notice.to.address === "") throw new Error("whom to tell is no member any more");
      const sentBy = await send(notice);
      await ctx.db.notice.update({
        where,
        data: { sentAt: new Date(), sentBy, tries: tries + 1, problem: null },
      });
      round.sent += 1;
    } catch (error) {
      const problem = (error instanceof Error ? error.message : String(error)).slice(0, LONGEST_PROBLEM);
      const again = nextTry(tries + 1, ctx.now);
      const then = again === undefined ? { givenUpAt: ctx.now } : { notBefore: again };
      await ctx.db.notice.update({ where, data: { tries: tries + 1, problem, ...then } });
      round.failed += 1;
    }
  }
  return round;
}
