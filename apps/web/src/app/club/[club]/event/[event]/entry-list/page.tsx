import type { Metadata } from "next";
import { EntryListPage } from "../../../../../../features/event/entry-list-page";
import { clubPage } from "../../../../../../lib/club-page";
import { entryListPath } from "../../../../../../lib/path";

export const metadata: Metadata = { title: "Read in an entry list" };

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly event: string }>;
}

export default async function Page({ params }: Segments) {
  const { club, event } = await params;
  return clubPage({
    club,
    at: "event",
    path: entryListPath(club, event),
    load: (api) => api.event.form({ club, event }),
    draw: ({ event: facts }, face) => (
      <EntryListPage club={face.slug} event={{ slug: event, name: facts?.name ?? event }} />
    ),
  });
}
