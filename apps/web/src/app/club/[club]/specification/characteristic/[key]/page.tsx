import type { Metadata } from "next";
import { CharacteristicPage } from "../../../../../../features/characteristic/characteristic-page";
import { fromSegment } from "../../../../../../lib/address";
import { clubPage } from "../../../../../../lib/club-page";
import { characteristicPath } from "../../../../../../lib/path";

export const metadata: Metadata = { title: "Characteristic" };

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly key: string }>;
}

export default async function Page({ params }: Segments) {
  const { club, ...segments } = await params;
  const key = fromSegment(segments.key);
  return clubPage({
    club,
    path: characteristicPath(club, key),
    load: (api) => api.characteristic.page({ club, key }),
    draw: (page, face) => <CharacteristicPage club={face} page={page} />,
  });
}
