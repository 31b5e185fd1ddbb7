import type { Metadata } from "next";
import { DueListPage } from "../../../../../features/fleet/due-page";
import { dueCursor, dueQuery } from "../../../../../features/fleet/due-query";
import { clubPage } from "../../../../../lib/club-page";
import { duePath } from "../../../../../lib/path";
import type { AskedQuery } from "../../../../../lib/register-search";

export const metadata: Metadata = { title: "What falls due" };

interface Segments {
  readonly params: Promise<{ readonly club: string }>;
  readonly searchParams: Promise<AskedQuery>;
}

export default async function Page({ params, searchParams }: Segments) {
  const { club } = await params;
  const asked = await searchParams;
  const query = dueQuery(asked);
  const cursor = dueCursor(asked);
  return clubPage({
    club,
    at: "fleet",
    path: duePath(club, query),
    load: (api) => api.fleet.due({ club, ...query, ...cursor }),
    draw: (page) => <DueListPage page={page} query={query} past={cursor.after !== undefined} />,
  });
}
