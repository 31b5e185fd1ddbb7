import type { Metadata } from "next";
import { InstrumentsPage } from "../../../../features/instrument/instruments-page";
import { clubPage } from "../../../../lib/club-page";
import { instrumentsPath } from "../../../../lib/path";

export const metadata: Metadata = { title: "Instruments" };

export default async function Page({ params }: { readonly params: Promise<{ readonly club: string }> }) {
  const { club } = await params;
  return clubPage({
    club,
    at: "desk",
    path: instrumentsPath(club),
    load: (api) => api.instrument.list({ club }),
    draw: (page) => <InstrumentsPage page={page} />,
  });
}
