import type { Metadata } from "next";
import { ImportPage } from "../../../../../features/import/import-page";
import { fromSegment } from "../../../../../lib/address";
import { clubPage } from "../../../../../lib/club-page";
import { importPath } from "../../../../../lib/path";

export const metadata: Metadata = { title: "Import" };

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly run: string }>;
}

export default async function Page({ params }: Segments) {
  const { club, ...segments } = await params;
  const run = fromSegment(segments.run);
  return clubPage({
    club,
    at: "desk",
    path: importPath(club, run),
    load: (api) => api.import.view({ club, run }),
    draw: (view, face) => <ImportPage club={face} view={view} />,
  });
}
