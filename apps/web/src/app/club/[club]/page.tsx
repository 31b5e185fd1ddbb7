import type { Metadata } from "next";
import { HomePage } from "../../../features/home/home-page";
import { leadersOf } from "../../../lib/assembly";
import { clubPage } from "../../../lib/club-page";
import { sayLongDay } from "../../../lib/day";
import { clubPath } from "../../../lib/path";

export const metadata: Metadata = { title: "Today" };

interface Segments {
  readonly params: Promise<{ readonly club: string }>;
}

export default async function Page({ params }: Segments) {
  const { club } = await params;
  return clubPage({
    club,
    at: "home",
    path: clubPath(club),
    load: (api) => api.club.home({ club }),
    draw: ({ roles, today, cars, disputed, nextEvent, ownCars, toReview, toAnswer, due }, face) => (
      <HomePage
        club={face}
        roles={roles}
        today={sayLongDay(today)}
        facts={{
          cars,
          disputed,
          toReview,
          toAnswer,
          ...(due === undefined ? {} : { due }),
          ...(nextEvent === undefined ? {} : { nextEvent: { ...nextEvent, on: sayLongDay(nextEvent.on) } }),
        }}
        ownCars={ownCars.map((car) => ({ ...car, assemblies: leadersOf(car.assemblies) }))}
      />
    ),
  });
}
