import type { Metadata } from "next";
import { EventFormPage } from "../../../../features/event/event-form";
import { clubPage } from "../../../../lib/club-page";
import { newEventPath } from "../../../../lib/path";

export const metadata: Metadata = { title: "Plan an event" };

export default async function Page({ params }: { readonly params: Promise<{ readonly club: string }> }) {
  const { club } = await params;
  return clubPage({
    club,
    at: "event",
    path: newEventPath(club),
    load: (api) => api.event.form({ club }),
    draw: (form, face) => <EventFormPage club={face} form={form} />,
  });
}
