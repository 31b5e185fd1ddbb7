import type { Metadata } from "next";
import { InstrumentPage } from "../../../../../features/instrument/instrument-page";
import { fromSegment } from "../../../../../lib/address";
import { clubPage } from "../../../../../lib/club-page";
import { instrumentPath } from "../../../../../lib/path";

export const metadata: Metadata = { title: "Instrument" };

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly instrument: string }>;
  readonly searchParams: Promise<{ readonly saved?: string }>;
}

export default async function Page({ params, searchParams }: Segments) {
  const segments = await params;
  const { club } = segments;
  const instrument = fromSegment(segments.instrument);
  const { saved } = await searchParams;
  return clubPage({
    club,
    at: "desk",
    path: instrumentPath(club, instrument),
    load: (api) => api.instrument.page({ club, instrument }),
    draw: (page) => <InstrumentPage page={page} saved={saved === "yes"} />,
  });
}
