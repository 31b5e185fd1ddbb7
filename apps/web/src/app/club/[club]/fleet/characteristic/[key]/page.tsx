import type { Metadata } from "next";
import { fleetInput, fleetQuery } from "../../../../../../features/fleet/asked";
import { SpreadPage } from "../../../../../../features/fleet/spread-page";
import { UnreadableChoice } from "../../../../../../features/fleet/unreadable-choice";
import { fromSegment } from "../../../../../../lib/address";
import { clubPage } from "../../../../../../lib/club-page";
import { spreadPath } from "../../../../../../lib/path";
import { type AskedQuery, queryPart } from "../../../../../../lib/register-search";

export const metadata: Metadata = { title: "Characteristic across the fleet" };

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly key: string }>;
  readonly searchParams: Promise<AskedQuery>;
}

const sideOf = (side: string | undefined): { readonly side?: "left" | "right" } =>
  side === "left" || side === "right" ? { side } : {};

export default async function Page({ params, searchParams }: Segments) {
  const { club, ...segments } = await params;
  const key = fromSegment(segments.key);
  const asked = await searchParams;
  const value = queryPart(asked, "value", 120);
  const query = {
    ...fleetQuery(asked),
    ...sideOf(queryPart(asked, "side")),
    ...(value === undefined ? {} : { value }),
  };
  return clubPage({
    club,
    at: "fleet",
    path: spreadPath(club, key, query),
    load: async (api) => {
      const saved = await api.filter.list({ club });
      const { asked: condition, input } = fleetInput(query, saved);
      if (input === undefined) return { problem: condition.ok ? "" : condition.problem };
      const chosen = { club, key, ...input };
      const page = await api.fleet.spread({ ...chosen, ...sideOf(query.side) });
      const goes = await api.fleet.together({ ...chosen, ...(value === undefined ? {} : { value }) });
      return { saved, page, goes };
    },
    draw: (loaded, face) =>
      "problem" in loaded ? (
        <UnreadableChoice club={face} problem={loaded.problem ?? ""} />
      ) : (
        <SpreadPage query={query} {...loaded} />
      ),
  });
}
