import type { Metadata } from "next";
import { askedOf, beginningOf } from "../../../../features/filter/begin";
import { FilterPage } from "../../../../features/filter/filter-page";
import { clubPage } from "../../../../lib/club-page";
import { filterPath } from "../../../../lib/path";
import { type AskedQuery, asOneCondition, registerSearch } from "../../../../lib/register-search";

export const metadata: Metadata = { title: "Filter" };

interface Segments {
  readonly params: Promise<{ readonly club: string }>;
  readonly searchParams: Promise<AskedQuery>;
}

export default async function Page({ params, searchParams }: Segments) {
  const { club } = await params;
  const { show: _show, ...search } = asOneCondition(registerSearch(await searchParams));
  const { where: _where, filter: _filter, series: _series, ...kept } = search;
  return clubPage({
    club,
    at: "register",
    path: filterPath(club, search),
    load: async (api) => ({ form: await api.filter.form({ club }), saved: await api.filter.list({ club }) }),
    draw: ({ form, saved }, face) => (
      <FilterPage club={face} form={form} begin={beginningOf(askedOf(search, saved), form)} kept={kept} />
    ),
  });
}
