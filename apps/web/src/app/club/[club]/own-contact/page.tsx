import type { Metadata } from "next";
import { OwnContactPage } from "../../../../features/car/edit/own-contact";
import { clubPage } from "../../../../lib/club-page";
import { ownContactPath } from "../../../../lib/path";

interface Segments {
  readonly params: Promise<{ readonly club: string }>;
}

export const metadata: Metadata = { title: "Your contact data" };

export default async function Page({ params }: Segments) {
  const { club } = await params;
  return clubPage({
    club,
    at: "home",
    path: ownContactPath(club),
    load: (api) => api.keeper.own({ club }),
    draw: (contacts, face) => <OwnContactPage club={face} contacts={contacts} />,
  });
}
