import type { Metadata } from "next";
import { FeedsPage } from "../../../../../../features/fleet/feed-page";
import { clubPage } from "../../../../../../lib/club-page";
import { feedsPath } from "../../../../../../lib/path";

export const metadata: Metadata = { title: "In your own calendar" };

interface Segments {
  readonly params: Promise<{ readonly club: string }>;
  readonly searchParams: Promise<{ readonly takenBack?: string }>;
}

export default async function Page({ params, searchParams }: Segments) {
  const { club } = await params;
  const { takenBack } = await searchParams;
  return clubPage({
    club,
    at: "fleet",
    path: feedsPath(club),
    load: (api) => api.fleet.feeds({ club }),
    draw: (page) => <FeedsPage page={page} takenBack={takenBack === "yes"} />,
  });
}
