import type { Metadata } from "next";
import { RecordPage } from "../../../../../../features/car/edit/record-page";
import { fromSegment } from "../../../../../../lib/address";
import { clubPage } from "../../../../../../lib/club-page";
import { editCarPath } from "../../../../../../lib/path";

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly car: string }>;
}

export async function generateMetadata({ params }: Segments): Promise<Metadata> {
  return { title: `Record of ${fromSegment((await params).car)}` };
}

export default async function Page({ params }: Segments) {
  const { club, ...segments } = await params;
  const car = fromSegment(segments.car);
  return clubPage({
    club,
    at: "register",
    path: editCarPath(club, car),
    load: (api) => api.record.form({ club, car }),
    draw: (record, face) => <RecordPage club={face} car={record} />,
  });
}
