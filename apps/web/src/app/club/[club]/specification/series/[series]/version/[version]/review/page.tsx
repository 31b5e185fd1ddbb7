import type { Metadata } from "next";
import { ReviewPage } from "../../../../../../../../../features/specification/review-page";
import { fromSegment } from "../../../../../../../../../lib/address";
import { clubPage } from "../../../../../../../../../lib/club-page";
import { specificationReviewPath } from "../../../../../../../../../lib/path";
import { versionSegment } from "../../../../../../../../../lib/version-segment";

export const metadata: Metadata = { title: "Review of a draft" };

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly series: string; readonly version: string }>;
}

export default async function Page({ params }: Segments) {
  const { club, ...segments } = await params;
  const series = fromSegment(segments.series);
  const version = versionSegment(segments.version);
  return clubPage({
    club,
    path: specificationReviewPath(club, series, version),
    load: (api) => api.specification.review({ club, series, version }),
    draw: (review, face) => <ReviewPage club={face} review={review} />,
  });
}
