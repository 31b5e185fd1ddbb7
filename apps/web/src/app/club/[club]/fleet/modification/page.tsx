import type { Metadata } from "next";
import { fleetInput, fleetQuery } from "../../../../../features/fleet/asked";
import { PrevalencePage } from "../../../../../features/fleet/prevalence-page";
import { UnreadableChoice } from "../../../../../features/fleet/unreadable-choice";
import { clubPage } from "../../../../../lib/club-page";
import { prevalencePath } from "../../../../../lib/path";
import { type AskedQuery, queryPart } from "../../../../../lib/register-search";

export const metadata: Metadata = { title: "What has been changed" };

interface Segments {
  readonly params: Promise<{ readonly club: string }>;
  readonly searchParams: Promise<AskedQuery>;
}

export default async function Page({ params, searchParams }: Segments) {
  const { club } = await params;
  const asked = await searchParams;
  const of = queryPart(asked, "of");
  const query = { ...fleetQuery(asked), ...(of === "part" || of === "setting" ? { of } : {}) };
  return clubPage({
    club,
    at: "fleet",
    path: prevalencePath(club, query),
    load: async (api) => {
      const saved = await api.filter.list({ club });
      const { asked: condition, input } = fleetInput(query, saved);
      if (input === undefined) return { problem: condition.ok ? "" : condition.problem };
      return { saved, page: await api.fleet.prevalence({ club, ...input }) };
    },
    draw: (loaded, face) =>
      "problem" in loaded ? (
        <UnreadableChoice club={face} problem={loaded.problem ?? ""} />
      ) : (
        <PrevalencePage query={query} {...loaded} />
      ),
  });
}
