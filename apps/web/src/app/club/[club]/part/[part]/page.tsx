import type { Metadata } from "next";
import { PartPage } from "../../../../../features/part/part-page";
import { fromSegment } from "../../../../../lib/address";
import { clubPage } from "../../../../../lib/club-page";
import { partPath } from "../../../../../lib/path";

export const metadata: Metadata = { title: "Part" };

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly part: string }>;
}

export default async function Page({ params }: Segments) {
  const { club, part: segment } = await params;
  const part = fromSegment(segment);
  return clubPage({
    club,
    at: "desk",
    path: partPath(club, part),
    load: (api) => api.part.page({ club, part }),
    draw: (page, face) => <PartPage club={face} page={page} noteKey={crypto.randomUUID()} />,
  });
}
