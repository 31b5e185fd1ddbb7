import type { Metadata } from "next";
import { askedOf } from "../../../../features/journal/asked";
import { JournalPage } from "../../../../features/journal/journal-page";
import { loadJournal } from "../../../../features/journal/load";
import { clubPage } from "../../../../lib/club-page";
import { journalPath } from "../../../../lib/path";

export const metadata: Metadata = { title: "Journal" };

interface Segments {
  readonly params: Promise<{ readonly club: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | readonly string[] | undefined>>>;
}

/** Who may have the chain worked out; the service asks again. */
const checkers: readonly string[] = ["registrar", "fleetManager"];

export default async function Page({ params, searchParams }: Segments) {
  const { club } = await params;
  const asked = askedOf(await searchParams);
  return clubPage({
    club,
    path: journalPath(club, asked.query),
    load: async (api) => {
      const { clubs } = await api.club.mine();
      const mayCheck = clubs.some(
        ({ slug, roles }) => slug === club && roles.some((role) => checkers.includes(role)),
      );
      const page = await loadJournal(api, club, asked);
      if (!mayCheck) return { page };
      return {
        page,
        chain: asked.query.check === "chain" ? { report: await api.journal.check({ club }) } : {},
      };
    },
    draw: ({ page, chain }, face) => (
      <JournalPage club={face} page={page} {...asked} {...(chain === undefined ? {} : { chain })} />
    ),
  });
}
