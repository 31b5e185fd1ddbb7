import type { Metadata } from "next";
import { SurvivalPage } from "../../../../../features/fleet/survival-page";
import { clubPage } from "../../../../../lib/club-page";
import { survivalPath } from "../../../../../lib/path";
import { type AskedQuery, queryPart } from "../../../../../lib/register-search";

export const metadata: Metadata = { title: "What is left of them" };

interface Segments {
  readonly params: Promise<{ readonly club: string }>;
  readonly searchParams: Promise<AskedQuery>;
}

export default async function Page({ params, searchParams }: Segments) {
  const { club } = await params;
  const series = queryPart(await searchParams, "series");
  const query = series === undefined ? {} : { series };
  return clubPage({
    club,
    at: "fleet",
    path: survivalPath(club, query),
    load: (api) => api.fleet.survival({ club, ...query }),
    draw: (page) => <SurvivalPage page={page} />,
  });
}
