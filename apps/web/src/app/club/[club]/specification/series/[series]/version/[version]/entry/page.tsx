import type { Metadata } from "next";
import { EntryPage } from "../../../../../../../../../features/specification/entry-page";
import { fromSegment, withoutControls } from "../../../../../../../../../lib/address";
import { clubPage } from "../../../../../../../../../lib/club-page";
import { specificationEntryPath } from "../../../../../../../../../lib/path";
import { versionSegment } from "../../../../../../../../../lib/version-segment";

export const metadata: Metadata = { title: "Add an entry" };

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly series: string; readonly version: string }>;
  readonly searchParams: Promise<{ readonly characteristic?: string | readonly string[] }>;
}

export default async function Page({ params, searchParams }: Segments) {
  const { club, ...segments } = await params;
  const series = fromSegment(segments.series);
  const version = versionSegment(segments.version);
  const { characteristic: asked } = await searchParams;
  const characteristic = typeof asked === "string" ? withoutControls(asked).slice(0, 120) : "";
  const wanted = characteristic === "" ? {} : { characteristic };
  return clubPage({
    club,
    path: specificationEntryPath(club, { series, version }, wanted),
    load: (api) => api.specification.entry({ club, series, version, ...wanted }),
    draw: (page, face) => <EntryPage club={face} page={page} />,
  });
}
