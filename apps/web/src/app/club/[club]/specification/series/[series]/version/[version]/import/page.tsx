import { SPECIFICATION_FILE_LIMIT } from "@trunnion/api";
import type { Metadata } from "next";
import { ImportPage } from "../../../../../../../../../features/specification/import-page";
import { fromSegment } from "../../../../../../../../../lib/address";
import { clubPage } from "../../../../../../../../../lib/club-page";
import { specificationImportPath } from "../../../../../../../../../lib/path";
import { versionSegment } from "../../../../../../../../../lib/version-segment";

export const metadata: Metadata = { title: "Read in a table" };

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly series: string; readonly version: string }>;
}

export default async function Page({ params }: Segments) {
  const { club, ...segments } = await params;
  const series = fromSegment(segments.series);
  const version = versionSegment(segments.version);
  return clubPage({
    club,
    path: specificationImportPath(club, series, version),
    load: (api) => api.specification.page({ club, series, version }),
    draw: (page, face) => <ImportPage club={face} page={page} limit={SPECIFICATION_FILE_LIMIT} />,
  });
}
