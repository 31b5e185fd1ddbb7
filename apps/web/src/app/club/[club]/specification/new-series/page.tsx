import type { Metadata } from "next";
import { NewSeriesPage } from "../../../../../features/series/new-page";
import { clubPage } from "../../../../../lib/club-page";
import { newSeriesPath } from "../../../../../lib/path";

export const metadata: Metadata = { title: "Add a series" };

interface Segments {
  readonly params: Promise<{ readonly club: string }>;
}

export default async function Page({ params }: Segments) {
  const { club } = await params;
  return clubPage({
    club,
    path: newSeriesPath(club),
    load: (api) => api.series.marques({ club }),
    draw: (marques, face) => <NewSeriesPage club={face} marques={marques} />,
  });
}
