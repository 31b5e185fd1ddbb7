import type { RouterInputs } from "@trunnion/api";
import type { Metadata } from "next";
import { RegisterPage } from "../../../../features/car/register-page";
import { type Asked, askedOf } from "../../../../features/filter/begin";
import { leadersOf } from "../../../../lib/assembly";
import { clubPage } from "../../../../lib/club-page";
import { type RegisterSearch, registerPath } from "../../../../lib/path";
import { columnsOf } from "../../../../lib/register-column";
import {
  type AskedQuery,
  listOrders,
  picksOf,
  queryPart,
  registerSearch,
} from "../../../../lib/register-search";

export const metadata: Metadata = { title: "Register" };

interface Segments {
  readonly params: Promise<{ readonly club: string }>;
  readonly searchParams: Promise<AskedQuery>;
}

type ListInput = RouterInputs["car"]["list"];

interface Page {
  readonly search: RegisterSearch;
  readonly after: string | undefined;
}

function inputOf(
  club: string,
  { search, after }: Page,
  asked: Extract<Asked, { readonly ok: true }>,
): ListInput {
  const { q, series, show } = search;
  const order = listOrders.find((one) => one === search.order);
  return {
    club,
    ...(q === undefined ? {} : { search: q }),
    ...(series === undefined ? {} : { series }),
    ...(asked.condition === undefined ? {} : { condition: asked.condition }),
    ...(show === "unknown" ? { show } : {}),
    ...picksOf(search),
    ...(order === undefined ? {} : { order }),
    columns: [...columnsOf(search)],
    ...(after === undefined ? {} : { after }),
  };
}

export default async function Page({ params, searchParams }: Segments) {
  const { club } = await params;
  const query = await searchParams;
  const search = registerSearch(query);
  const after = queryPart(query, "after");
  return clubPage({
    club,
    at: "register",
    path: registerPath(club, { ...search, ...(after === undefined ? {} : { after }) }),
    load: async (api) => {
      const saved = await api.filter.list({ club });
      const asked = askedOf(search, saved);
      // A condition that cannot be read shows no car: never the whole register in its place.
      const list = asked.ok ? await api.car.list(inputOf(club, { search, after }, asked)) : undefined;
      const { own } = await api.filter.form({ club });
      return { series: await api.car.series({ club }), saved, asked, list, own };
    },
    draw: ({ series, saved, asked, list, own }, face) => (
      <RegisterPage
        club={face}
        search={search}
        series={series}
        saved={saved}
        own={own}
        {...(asked.ok ? {} : { problem: asked.problem })}
        list={{
          total: list?.total ?? 0,
          unknown: list?.unknown ?? 0,
          rows: (list?.cars ?? []).map((car) => ({ ...car, assemblies: leadersOf(car.assemblies) })),
          columns: list?.columns ?? [],
          corrections: list?.corrections ?? [],
          stale: list?.stale ?? 0,
          ...(list === undefined ? {} : { facets: list.facets }),
          ...(list?.condition === undefined ? {} : { condition: list.condition }),
        }}
        pages={{
          ...(after === undefined ? {} : { first: registerPath(club, search) }),
          ...(list?.next === undefined ? {} : { next: registerPath(club, { ...search, after: list.next }) }),
        }}
      />
    ),
  });
}
