import { refused } from "@trunnion/register";
import type { Context } from "../context";

const UUID = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/;

/**
 * One import of the club by its id, without its rows of problems.
 *
 * @throws Refusal IMPORT_NOT_FOUND, also for one of another club
 */
export async function requireRun(ctx: Context, id: string) {
  const run = UUID.test(id)
    ? await ctx.db.importRun.findUnique({
        where: { clubId_id: { clubId: ctx.club.id, id } },
        omit: { problems: true, doubts: true },
      })
    : null;
  if (!run) throw refused("IMPORT_NOT_FOUND", { run: id.slice(0, 80) });
  return run;
}
export type ImportRunRow = Awaited<ReturnType<typeof requireRun>>;
