import type { Metadata } from "next";
import { ScarcePage } from "../../../../../features/fleet/scarce-page";
import { clubPage } from "../../../../../lib/club-page";
import { scarcePartsPath } from "../../../../../lib/path";
import { type AskedQuery, queryPart } from "../../../../../lib/register-search";

export const metadata: Metadata = { title: "Parts that are hard to find" };

interface Segments {
  readonly params: Promise<{ readonly club: string }>;
  readonly searchParams: Promise<AskedQuery>;
}

export default async function Page({ params, searchParams }: Segments) {
  const { club } = await params;
  const part = queryPart(await searchParams, "part");
  const query = part === undefined ? {} : { part };
  return clubPage({
    club,
    at: "fleet",
    path: scarcePartsPath(club, query),
    load: (api) => api.fleet.scarceParts({ club, ...query }),
    draw: (page) => <ScarcePage page={page} />,
  });
}
