import type { Metadata } from "next";
import { SpecificationPage } from "../../../../../../features/specification/specification-page";
import { fromSegment } from "../../../../../../lib/address";
import { clubPage } from "../../../../../../lib/club-page";
import { specificationPath } from "../../../../../../lib/path";

export const metadata: Metadata = { title: "Specification" };

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly series: string }>;
}

export default async function Page({ params }: Segments) {
  const { club, ...segments } = await params;
  const series = fromSegment(segments.series);
  return clubPage({
    club,
    path: specificationPath(club, series),
    load: (api) => api.specification.page({ club, series }),
    draw: (page, face) => <SpecificationPage club={face} page={page} />,
  });
}
