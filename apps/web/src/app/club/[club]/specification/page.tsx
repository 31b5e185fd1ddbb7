import type { Metadata } from "next";
import { OverviewPage } from "../../../../features/specification/overview-page";
import { clubPage } from "../../../../lib/club-page";
import { specificationsPath } from "../../../../lib/path";

export const metadata: Metadata = { title: "Specifications" };

interface Segments {
  readonly params: Promise<{ readonly club: string }>;
}

export default async function Page({ params }: Segments) {
  const { club } = await params;
  return clubPage({
    club,
    path: specificationsPath(club),
    load: (api) => api.specification.overview({ club }),
    draw: (overview, face) => <OverviewPage club={face} overview={overview} />,
  });
}
