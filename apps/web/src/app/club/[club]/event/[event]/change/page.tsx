import type { Metadata } from "next";
import { EventFormPage } from "../../../../../../features/event/event-form";
import { clubPage } from "../../../../../../lib/club-page";
import { changeEventPath } from "../../../../../../lib/path";

export const metadata: Metadata = { title: "Change the event" };

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly event: string }>;
}

export default async function Page({ params }: Segments) {
  const { club, event } = await params;
  return clubPage({
    club,
    at: "event",
    path: changeEventPath(club, event),
    load: (api) => api.event.form({ club, event }),
    draw: (form, face) => <EventFormPage club={face} form={form} />,
  });
}
