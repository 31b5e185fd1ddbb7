import type { Context } from "../context";
import { type PieceLine, pieceFields, pieceLine } from "../evidence";

/** A photo or document handed in with a submission. */
export interface SubmissionPhoto extends PieceLine {
  /** Key of the one characteristic that it shows; empty for all that was changed. */
  readonly characteristic: string;
  readonly fileName: string;
}

/**
 * What was handed in with a submission and stands: its own while it is not accepted, then what supports the rows it
 * became. In the order it was added; a piece that shows several things is told once for each.
 */
export async function photosOf(ctx: Context, submissionId: string): Promise<readonly SubmissionPhoto[]> {
  const rows = await ctx.db.evidenceLink.findMany({
    where: {
      OR: [{ submissionId }, { modification: { submissionId } }, { settingSheet: { submissionId } }],
      evidence: { withdrawnAt: null },
    },
    select: { characteristic: true, evidence: { select: { ...pieceFields, fileName: true } } },
    orderBy: { id: "asc" },
    take: 200,
  });
  const told = new Map(
    rows.map(({ characteristic, evidence }) => [
      `${evidence.id} ${characteristic ?? ""}`,
      { ...pieceLine(evidence), fileName: evidence.fileName, characteristic: characteristic ?? "" },
    ]),
  );
  return [...told.values()];
}
