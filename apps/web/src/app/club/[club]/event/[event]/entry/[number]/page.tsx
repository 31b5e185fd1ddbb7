import { randomUUID } from "node:crypto";
import type { Metadata } from "next";
import { InspectPage } from "../../../../../../../features/event/inspect-page";
import { cautions } from "../../../../../../../lib/caution";
import { clubPage } from "../../../../../../../lib/club-page";
import { entryPath } from "../../../../../../../lib/path";

export const metadata: Metadata = { title: "Scrutineering" };

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly event: string; readonly number: string }>;
  readonly searchParams: Promise<{ readonly all?: string }>;
}

export default async function Page({ params, searchParams }: Segments) {
  const { club, event, number: raw } = await params;
  const number = decodeURIComponent(raw);
  const all = (await searchParams).all === "yes";
  return clubPage({
    club,
    at: "event",
    path: entryPath(club, event, number, all ? { all: "yes" } : {}),
    load: (api) => api.event.entry({ club, event, number, all }),
    draw: (page, face) => {
      const checks = page.stations.reduce((sum, station) => sum + station.checks.length, 0);
      const keys = Array.from({ length: checks + 1 }, () => randomUUID());
      return <InspectPage club={face} page={page} keys={keys} cautions={cautions.event} />;
    },
  });
}
