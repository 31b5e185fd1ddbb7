import type { Metadata } from "next";
import { NewCharacteristicPage } from "../../../../../features/characteristic/characteristic-page";
import { clubPage } from "../../../../../lib/club-page";
import { newCharacteristicPath } from "../../../../../lib/path";

export const metadata: Metadata = { title: "Add a characteristic" };

interface Segments {
  readonly params: Promise<{ readonly club: string }>;
}

export default async function Page({ params }: Segments) {
  const { club } = await params;
  return clubPage({
    club,
    path: newCharacteristicPath(club),
    load: async () => ({}),
    draw: (_, face) => <NewCharacteristicPage club={face} />,
  });
}
