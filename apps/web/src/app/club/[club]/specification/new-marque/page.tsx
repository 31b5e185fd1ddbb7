import type { Metadata } from "next";
import { NewMarquePage } from "../../../../../features/series/new-page";
import { clubPage } from "../../../../../lib/club-page";
import { newMarquePath } from "../../../../../lib/path";

export const metadata: Metadata = { title: "Add a marque" };

interface Segments {
  readonly params: Promise<{ readonly club: string }>;
}

export default async function Page({ params }: Segments) {
  const { club } = await params;
  return clubPage({
    club,
    path: newMarquePath(club),
    load: async () => ({}),
    draw: (_, face) => <NewMarquePage club={face} />,
  });
}
