import type { Metadata } from "next";
import { EventsPage } from "../../../../features/event/events-page";
import { clubPage } from "../../../../lib/club-page";
import { sayLongDay } from "../../../../lib/day";
import { eventsPath } from "../../../../lib/path";

export const metadata: Metadata = { title: "Events" };

interface Segments {
  readonly params: Promise<{ readonly club: string }>;
}

export default async function Page({ params }: Segments) {
  const { club } = await params;
  return clubPage({
    club,
    at: "event",
    path: eventsPath(club),
    load: async (api) => ({
      events: await api.event.list({ club }),
      today: (await api.club.home({ club })).today,
      roles: (await api.club.mine()).clubs.find(({ slug }) => slug === club)?.roles ?? [],
    }),
    draw: ({ events, today, roles }, face) => {
      const written = (list: typeof events) => list.map((event) => ({ ...event, on: sayLongDay(event.on) }));
      const ahead = events.filter(({ on }) => on >= today).reverse();
      const past = events.filter(({ on }) => on < today);
      const mayPlan = roles.some((role) => role !== "owner");
      return <EventsPage club={face} ahead={written(ahead)} past={written(past)} mayPlan={mayPlan} />;
    },
  });
}
