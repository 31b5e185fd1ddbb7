import type { SourceKind } from "@trunnion/db";
import type { Context } from "../context";

/** A source of the club, for choosing. */
export interface SourceLine {
  readonly id: string;
  readonly title: string;
  readonly kind: SourceKind;
}

/** Where the club's statements come from, by title. */
export async function listSources(ctx: Context): Promise<readonly SourceLine[]> {
  return ctx.db.source.findMany({
    select: { id: true, title: true, kind: true },
    orderBy: { title: "asc" },
    take: 2_000,
  });
}
