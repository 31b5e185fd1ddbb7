import type { Metadata } from "next";
import { WorkingPage } from "../../../../../../../features/consequence/working-page";
import { fromSegment } from "../../../../../../../lib/address";
import { clubPage } from "../../../../../../../lib/club-page";
import { consequencePath } from "../../../../../../../lib/path";

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly car: string; readonly id: string }>;
}

export const metadata: Metadata = { title: "Working" };

export default async function Page({ params }: Segments) {
  const { club, ...segments } = await params;
  const car = fromSegment(segments.car);
  const id = fromSegment(segments.id);
  return clubPage({
    club,
    at: "register",
    path: consequencePath(club, car, id),
    load: (api) => api.consequence.one({ club, car, id }),
    draw: (worked, face) => <WorkingPage club={face} {...worked} />,
  });
}
