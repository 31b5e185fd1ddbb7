import type { Metadata } from "next";
import { PaddockApp } from "../../../../../../features/paddock/paddock-app";
import { clubPage } from "../../../../../../lib/club-page";
import { eventPath, paddockPath } from "../../../../../../lib/path";

export const metadata: Metadata = { title: "In the paddock" };

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly event: string }>;
}

export default async function Page({ params }: Segments) {
  const { club, event } = await params;
  return clubPage({
    club,
    at: "event",
    path: paddockPath(club, event),
    load: (api) => api.inspection.event({ club, event }),
    draw: ({ name }) => <PaddockApp club={club} event={event} name={name} back={eventPath(club, event)} />,
  });
}
