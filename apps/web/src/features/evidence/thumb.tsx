import type { PieceLine } from "@trunnion/api";
import { evidenceMedia, isEvidenceMedia } from "@trunnion/register";
import { evidencePath, smallPicturePath } from "../../lib/path";
import { saySize } from "./size";

/** What a screen reader says of a piece, and what stands in for a picture that does not come. */
export function sayPiece({ caption, picture, mediaType }: PieceLine): string {
  if (caption !== "") return caption;
  return picture ? "Photo without a caption" : `${nameOfMedia(mediaType)} without a caption`;
}

export function nameOfMedia(mediaType: string): string {
  return isEvidenceMedia(mediaType) ? evidenceMedia[mediaType].name : mediaType;
}

/** Width and height of the small picture, so that the page does not jump when it comes. */
function smallSize({ width = 1, height = 1 }: PieceLine, edge: number) {
  const scale = Math.min(1, edge / Math.max(width, height));
  return { width: Math.max(1, Math.round(width * scale)), height: Math.max(1, Math.round(height * scale)) };
}

/** A sheet with a turned-down corner and what is on it. */
function DocumentSheet({ piece }: { readonly piece: PieceLine }) {
  return (
    <span className="evidence-sheet">
      <svg aria-hidden viewBox="0 0 60 80" className="w-16">
        <path d="M2 2h38l18 18v58H2z M40 2v18h18" fill="none" stroke="currentColor" strokeWidth="2" />
        <path d="M12 34h36 M12 44h36 M12 54h24" stroke="currentColor" strokeWidth="1" />
      </svg>
      <span className="text-fine">
        {nameOfMedia(piece.mediaType)}, {saySize(piece.bytes)}
      </span>
    </span>
  );
}

/** The small picture of a piece, or a sheet for a document. */
export function Thumb({ club, piece }: { readonly club: string; readonly piece: PieceLine }) {
  if (!piece.picture) return <DocumentSheet piece={piece} />;
  return (
    // biome-ignore lint/performance/noImgElement: the pictures are made small by the service, for its members alone
    <img
      src={smallPicturePath(club, piece, 320)}
      alt={sayPiece(piece)}
      loading="lazy"
      decoding="async"
      {...smallSize(piece, 320)}
    />
  );
}

export interface ThumbGridProps {
  readonly club: string;
  readonly pieces: readonly (PieceLine & { readonly linkId?: string; readonly locus?: string })[];
}

/** Small pictures in rows, each with what it shows, when it was taken and where to look. */
export function ThumbGrid({ club, pieces }: ThumbGridProps) {
  return (
    <ul className="evidence-grid">
      {pieces.map((piece) => {
        const told = [piece.taken, piece.locus ?? ""].filter((part) => part !== "");
        return (
          <li key={piece.linkId ?? piece.id}>
            <a href={evidencePath(club, piece.id)} className="evidence-card">
              <Thumb club={club} piece={piece} />
              <span className="text-small">
                {piece.caption === "" ? <span className="text-soft">no caption</span> : piece.caption}
              </span>
            </a>
            {told.length === 0 ? null : <p className="text-fine text-soft">{told.join(", ")}</p>}
          </li>
        );
      })}
    </ul>
  );
}
