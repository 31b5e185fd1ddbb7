import type { Metadata } from "next";
import { OthersPage } from "../../../../../../features/fleet/others-page";
import { fromSegment } from "../../../../../../lib/address";
import { clubPage } from "../../../../../../lib/club-page";
import { othersPath } from "../../../../../../lib/path";

export const metadata: Metadata = { title: "What others run" };

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly car: string }>;
}

export default async function Page({ params }: Segments) {
  const { club, ...segments } = await params;
  const car = fromSegment(segments.car);
  return clubPage({
    club,
    at: "register",
    path: othersPath(club, car),
    load: (api) => api.fleet.others({ club, car }),
    draw: (page) => <OthersPage page={page} />,
  });
}
