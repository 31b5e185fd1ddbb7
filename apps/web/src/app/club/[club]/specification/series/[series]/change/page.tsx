import type { Metadata } from "next";
import { SeriesPage } from "../../../../../../../features/series/series-page";
import { fromSegment } from "../../../../../../../lib/address";
import { clubPage } from "../../../../../../../lib/club-page";
import { seriesFormPath } from "../../../../../../../lib/path";

export const metadata: Metadata = { title: "Series" };

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly series: string }>;
}

export default async function Page({ params }: Segments) {
  const { club, ...segments } = await params;
  const series = fromSegment(segments.series);
  return clubPage({
    club,
    path: seriesFormPath(club, series),
    load: (api) => api.series.page({ club, series }),
    draw: (page, face) => <SeriesPage club={face} series={page} mayEdit={page.mayEdit} />,
  });
}
