import type { Metadata } from "next";
import { EntryPage } from "../../../../../../../../../../features/specification/entry-page";
import { fromSegment } from "../../../../../../../../../../lib/address";
import { clubPage } from "../../../../../../../../../../lib/club-page";
import { specificationEntryPath } from "../../../../../../../../../../lib/path";
import { versionSegment } from "../../../../../../../../../../lib/version-segment";

export const metadata: Metadata = { title: "Change an entry" };

interface Segments {
  readonly params: Promise<{
    readonly club: string;
    readonly series: string;
    readonly version: string;
    readonly entry: string;
  }>;
}

export default async function Page({ params }: Segments) {
  const { club, ...segments } = await params;
  const series = fromSegment(segments.series);
  const version = versionSegment(segments.version);
  const entry = fromSegment(segments.entry);
  return clubPage({
    club,
    path: specificationEntryPath(club, { series, version }, { id: entry }),
    load: (api) => api.specification.entry({ club, series, version, entry }),
    draw: (page, face) => <EntryPage club={face} page={page} />,
  });
}
