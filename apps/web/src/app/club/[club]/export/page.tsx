import type { Metadata } from "next";
import { ExportPage } from "../../../../features/export/export-page";
import { clubPage } from "../../../../lib/club-page";
import { exportPath } from "../../../../lib/path";

export const metadata: Metadata = { title: "Archive and lists" };

interface Segments {
  readonly params: Promise<{ readonly club: string }>;
}

export default async function Page({ params }: Segments) {
  const { club } = await params;
  return clubPage({
    club,
    at: "desk",
    path: exportPath(club),
    load: (api) => api.export.page({ club }),
    draw: (page, face) => <ExportPage club={face} page={page} />,
  });
}
