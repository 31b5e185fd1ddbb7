import type { Metadata } from "next";
import { FleetPage } from "../../../../features/fleet/fleet-page";
import { clubPage } from "../../../../lib/club-page";
import { fleetPath } from "../../../../lib/path";

export const metadata: Metadata = { title: "Fleet" };

interface Segments {
  readonly params: Promise<{ readonly club: string }>;
}

export default async function Page({ params }: Segments) {
  const { club } = await params;
  return clubPage({
    club,
    at: "fleet",
    path: fleetPath(club),
    load: (api) => api.characteristic.own({ club }),
    draw: ({ own }, face) => <FleetPage club={face} own={own.map(({ characteristic }) => characteristic)} />,
  });
}
