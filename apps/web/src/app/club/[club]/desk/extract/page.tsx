import type { Metadata } from "next";
import { ExtractSettings } from "../../../../../features/extract/extract-settings";
import { clubPage } from "../../../../../lib/club-page";
import { extractSettingsPath } from "../../../../../lib/path";

export const metadata: Metadata = { title: "Public extract" };

interface Segments {
  readonly params: Promise<{ readonly club: string }>;
}

export default async function Page({ params }: Segments) {
  const { club } = await params;
  return clubPage({
    club,
    at: "desk",
    path: extractSettingsPath(club),
    load: (api) => api.publicExtract.settings({ club }),
    draw: (settings, face) => <ExtractSettings club={face} {...settings} />,
  });
}
