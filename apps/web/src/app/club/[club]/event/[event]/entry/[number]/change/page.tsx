import type { Metadata } from "next";
import { EntryFormPage } from "../../../../../../../../features/event/event-form";
import { clubPage } from "../../../../../../../../lib/club-page";
import { changeEntryPath } from "../../../../../../../../lib/path";

export const metadata: Metadata = { title: "Change the entry" };

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly event: string; readonly number: string }>;
}

export default async function Page({ params }: Segments) {
  const { club, event, number: raw } = await params;
  const number = decodeURIComponent(raw);
  return clubPage({
    club,
    at: "event",
    path: changeEntryPath(club, event, number),
    load: (api) => api.event.entryForm({ club, event, number }),
    draw: (form, face) => (
      <EntryFormPage club={face} event={form.event} classes={form.classes} entry={form.entry} />
    ),
  });
}
