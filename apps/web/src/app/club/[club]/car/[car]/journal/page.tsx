import type { Metadata } from "next";
import { askedOf } from "../../../../../../features/journal/asked";
import { JournalPage } from "../../../../../../features/journal/journal-page";
import { loadCarJournal } from "../../../../../../features/journal/load";
import { fromSegment } from "../../../../../../lib/address";
import { clubPage } from "../../../../../../lib/club-page";
import { carJournalPath } from "../../../../../../lib/path";

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly car: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | readonly string[] | undefined>>>;
}

export async function generateMetadata({ params }: Segments): Promise<Metadata> {
  return { title: `Journal of ${fromSegment((await params).car)}` };
}

export default async function Page({ params, searchParams }: Segments) {
  const { club, ...segments } = await params;
  const car = fromSegment(segments.car);
  const { car: _other, ...rest } = await searchParams;
  const asked = askedOf(rest);
  return clubPage({
    club,
    at: "register",
    path: carJournalPath(club, car, asked.query),
    load: (api) => loadCarJournal(api, club, car, asked),
    draw: (page, face) => <JournalPage club={face} car={page.reference} page={page} {...asked} />,
  });
}
