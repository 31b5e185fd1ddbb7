import type { Metadata } from "next";
import { CharacteristicListPage } from "../../../../../features/characteristic/characteristic-page";
import { clubPage } from "../../../../../lib/club-page";
import { characteristicsPath } from "../../../../../lib/path";

export const metadata: Metadata = { title: "Own characteristics" };

interface Segments {
  readonly params: Promise<{ readonly club: string }>;
}

export default async function Page({ params }: Segments) {
  const { club } = await params;
  return clubPage({
    club,
    path: characteristicsPath(club),
    load: (api) => api.characteristic.own({ club }),
    draw: ({ own, mayEdit }, face) => <CharacteristicListPage club={face} own={own} mayEdit={mayEdit} />,
  });
}
