import type { Metadata } from "next";
import { PiecePage } from "../../../../../features/evidence/piece-page";
import { fromSegment } from "../../../../../lib/address";
import { clubPage } from "../../../../../lib/club-page";
import { evidencePath } from "../../../../../lib/path";

export const metadata: Metadata = { title: "Photo or document" };

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly evidence: string }>;
}

export default async function Page({ params }: Segments) {
  const segments = await params;
  const { club } = segments;
  const evidence = fromSegment(segments.evidence);
  return clubPage({
    club,
    at: "register",
    path: evidencePath(club, evidence),
    load: (api) => api.evidence.piece({ club, evidence }),
    draw: (piece, face) => <PiecePage club={face} piece={piece} />,
  });
}
