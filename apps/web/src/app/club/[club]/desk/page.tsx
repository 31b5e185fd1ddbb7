import type { Metadata } from "next";
import { DeskPage } from "../../../../features/desk/desk-page";
import { clubPage } from "../../../../lib/club-page";
import { deskPath } from "../../../../lib/path";

export const metadata: Metadata = { title: "Desk" };

interface Segments {
  readonly params: Promise<{ readonly club: string }>;
}

export default async function Page({ params }: Segments) {
  const { club } = await params;
  return clubPage({
    club,
    at: "desk",
    path: deskPath(club),
    load: (api) => api.club.mine(),
    draw: ({ clubs }, face) => (
      <DeskPage club={face} roles={clubs.find(({ slug }) => slug === club)?.roles ?? []} />
    ),
  });
}
