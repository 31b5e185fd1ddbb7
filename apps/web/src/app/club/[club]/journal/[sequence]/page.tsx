import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { EntryPage } from "../../../../../features/journal/entry-page";
import { clubPage } from "../../../../../lib/club-page";
import { journalEntryPath } from "../../../../../lib/path";

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly sequence: string }>;
}

export async function generateMetadata({ params }: Segments): Promise<Metadata> {
  return { title: `Journal, entry ${(await params).sequence}` };
}

export default async function Page({ params }: Segments) {
  const { club, sequence: written } = await params;
  if (!/^[1-9]\d{0,14}$/.test(written)) notFound();
  const sequence = Number(written);
  return clubPage({
    club,
    path: journalEntryPath(club, sequence),
    load: (api) => api.journal.entry({ club, sequence }),
    draw: (entry, face) => <EntryPage club={face} entry={entry} />,
  });
}
