import type { Metadata } from "next";
import { EntryFormPage } from "../../../../../../features/event/event-form";
import { clubPage } from "../../../../../../lib/club-page";
import { newEntryPath } from "../../../../../../lib/path";

export const metadata: Metadata = { title: "Enter a car" };

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly event: string }>;
}

export default async function Page({ params }: Segments) {
  const { club, event } = await params;
  return clubPage({
    club,
    at: "event",
    path: newEntryPath(club, event),
    load: (api) => api.event.form({ club, event }),
    draw: ({ event: facts, classes }, face) => (
      <EntryFormPage club={face} event={{ slug: event, name: facts?.name ?? event }} classes={classes} />
    ),
  });
}
