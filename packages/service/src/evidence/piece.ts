import type { Prisma } from "@trunnion/db";
import { isPicture, refused } from "@trunnion/register";
import type { Context } from "../context";
import { type QuarterTurns, quarterTurnsOf } from "../media";

/** What a page needs to show a piece of evidence. */
export const pieceFields = {
  id: true,
  mediaType: true,
  bytes: true,
  width: true,
  height: true,
  quarterTurns: true,
  caption: true,
  takenText: true,
} satisfies Prisma.EvidenceSelect;

type PieceRow = Prisma.EvidenceGetPayload<{ select: typeof pieceFields }>;

/** A photograph or document as lists show it. */
export interface PieceLine {
  readonly id: string;
  readonly mediaType: string;
  /** Thumbnails can be made of it. */
  readonly picture: boolean;
  readonly bytes: number;
  /** Pixels as seen, after its turns; missing for a document. */
  readonly width?: number;
  readonly height?: number;
  readonly quarterTurns: QuarterTurns;
  /** Empty where nobody said what it shows. */
  readonly caption: string;
  /** As written; empty where not known. */
  readonly taken: string;
}

export function pieceLine(row: PieceRow): PieceLine {
  const { id, mediaType, bytes, width, height } = row;
  const quarterTurns = quarterTurnsOf(row.quarterTurns);
  const seen = quarterTurns % 2 === 0 ? { width, height } : { width: height, height: width };
  return {
    id,
    mediaType,
    picture: isPicture(mediaType),
    bytes,
    quarterTurns,
    ...(seen.width === null || seen.height === null ? {} : { width: seen.width, height: seen.height }),
    caption: row.caption ?? "",
    taken: row.takenText ?? "",
  };
}

const uuid = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/;

/** A piece by its id as the key of the table; an id that is none names nothing. */
export function pieceKey({ club }: Context, id: string) {
  if (!uuid.test(id)) throw refused("EVIDENCE_NOT_FOUND", { evidence: id });
  return { clubId_id: { clubId: club.id, id } };
}
