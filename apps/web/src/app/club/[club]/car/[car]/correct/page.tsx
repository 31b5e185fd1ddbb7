import type { Metadata } from "next";
import { CorrectPage } from "../../../../../../features/car/correct-page";
import { fromSegment } from "../../../../../../lib/address";
import { clubPage } from "../../../../../../lib/club-page";
import { correctCarPath } from "../../../../../../lib/path";

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly car: string }>;
}

export const metadata: Metadata = { title: "Correct the record" };

export default async function Page({ params }: Segments) {
  const { club, ...segments } = await params;
  const car = fromSegment(segments.car);
  return clubPage({
    club,
    at: "register",
    path: correctCarPath(club, car),
    load: (api) => api.record.form({ club, car }),
    draw: (record, face) => <CorrectPage club={face} car={record} />,
  });
}
