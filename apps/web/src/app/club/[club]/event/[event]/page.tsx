import type { Metadata } from "next";
import { EventPage } from "../../../../../features/event/event-page";
import { leadersOf } from "../../../../../lib/assembly";
import { cautions } from "../../../../../lib/caution";
import { clubPage } from "../../../../../lib/club-page";
import { sayLongDay } from "../../../../../lib/day";
import { eventPath } from "../../../../../lib/path";

export const metadata: Metadata = { title: "Event" };

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly event: string }>;
}

export default async function Page({ params }: Segments) {
  const { club, event: slug } = await params;
  return clubPage({
    club,
    at: "event",
    path: eventPath(club, slug),
    load: (api) => api.event.page({ club, event: slug }),
    draw: ({ event, entries, mayPrint, devices, withdrawn }, face) => (
      <EventPage
        club={face}
        event={{ ...event, on: sayLongDay(event.on), entryCount: entries.length }}
        entries={entries.map(({ car, deviating, assemblies, ...entry }) => ({
          ...entry,
          ...(car === undefined
            ? {}
            : { car: { ...car, deviating: deviating ?? 0, assemblies: leadersOf(assemblies ?? {}) } }),
        }))}
        mayPrint={mayPrint}
        devices={devices}
        withdrawn={withdrawn}
        cautions={cautions.event}
      />
    ),
  });
}
