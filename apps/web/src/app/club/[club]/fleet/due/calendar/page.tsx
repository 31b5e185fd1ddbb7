import type { Metadata } from "next";
import { DueMonthPage } from "../../../../../../features/fleet/due-month-page";
import { dueQuery, monthOf } from "../../../../../../features/fleet/due-query";
import { clubPage } from "../../../../../../lib/club-page";
import { dueMonthPath } from "../../../../../../lib/path";
import type { AskedQuery } from "../../../../../../lib/register-search";

export const metadata: Metadata = { title: "What falls due, by month" };

interface Segments {
  readonly params: Promise<{ readonly club: string }>;
  readonly searchParams: Promise<AskedQuery>;
}

export default async function Page({ params, searchParams }: Segments) {
  const { club } = await params;
  const asked = await searchParams;
  const { series, kind } = dueQuery(asked);
  const query = { ...(series === undefined ? {} : { series }), ...(kind === undefined ? {} : { kind }) };
  const month = monthOf(asked, new Date().toISOString());
  return clubPage({
    club,
    at: "fleet",
    path: dueMonthPath(club, { ...query, month }),
    load: (api) => api.fleet.dueMonth({ club, month, ...query }),
    draw: (page) => <DueMonthPage page={page} query={query} />,
  });
}
