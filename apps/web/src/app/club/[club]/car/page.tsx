import type { RegisterList, RouterInputs } from "@trunnion/api";
import type { Metadata } from "next";
import { cookies, headers } from "next/headers";
import { partHeader } from "../../../../features/car/found-part";
import { RegisterPage } from "../../../../features/car/register-page";
import { type Asked, askedOf } from "../../../../features/filter/begin";
import { leadersOf } from "../../../../lib/assembly";
import { clubPage } from "../../../../lib/club-page";
import { viewCookie } from "../../../../lib/list-view";
import { type RegisterSearch, registerPath } from "../../../../lib/path";
import { columnsOf } from "../../../../lib/register-column";
import { oneOf, orderAsked } from "../../../../lib/register-order";
import {
  type AskedQuery,
  asOneCondition,
  type ListView,
  listViews,
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
  readonly view: ListView;
}

/** As asked for, else as the register was last looked at, else as a table. */
async function viewOf({ view }: RegisterSearch): Promise<ListView> {
  return oneOf(listViews, view ?? (await cookies()).get(viewCookie)?.value) ?? "table";
}

function inputOf(
  club: string,
  { search, after, view }: Page,
  asked: Extract<Asked, { readonly ok: true }>,
): ListInput {
  const { q, series, show } = search;
  const order = orderAsked(search);
  return {
    club,
    ...(q === undefined ? {} : { search: q }),
    ...(series === undefined ? {} : { series }),
    ...(asked.condition === undefined ? {} : { condition: asked.condition }),
    ...(show === "unknown" ? { show } : {}),
    ...(order === undefined ? {} : { order }),
    columns: [...columnsOf(search)],
    ...(view === "cards" ? { photos: true } : {}),
    ...(after === undefined ? {} : { after }),
  };
}

/** How the words were taken, and what comes nearest where nothing fits. */
const saidOf = ({ corrections, named, passedOver, nearest, stale }: RegisterList) => ({
  corrections,
  named,
  passedOver,
  nearest,
  stale,
});

export default async function Page({ params, searchParams }: Segments) {
  const { club } = await params;
  const query = await searchParams;
  const search = asOneCondition(registerSearch(query));
  const view = await viewOf(search);
  const after = queryPart(query, "after");
  // Whoever follows what is typed has the rest of the page already.
  const only = (await headers()).get(partHeader) !== null;
  return clubPage({
    club,
    at: "register",
    bare: only,
    path: registerPath(club, { ...search, ...(after === undefined ? {} : { after }) }),
    load: async (api) => {
      const saved = await api.filter.list({ club });
      const asked = askedOf(search, saved);
      // A condition that cannot be read shows no car: never the whole register in its place.
      const list = asked.ok ? await api.car.list(inputOf(club, { search, after, view }, asked)) : undefined;
      const { own } = await api.filter.form({ club });
      return { saved, asked, list, own };
    },
    draw: ({ saved, asked, list, own }, face) => (
      <RegisterPage
        club={face}
        search={search}
        view={view}
        only={only}
        saved={saved}
        own={own}
        {...(asked.ok ? {} : { problem: asked.problem })}
        list={{
          total: list?.total ?? 0,
          unknown: list?.unknown ?? 0,
          rows: (list?.cars ?? []).map((car) => ({ ...car, assemblies: leadersOf(car.assemblies) })),
          columns: list?.columns ?? [],
          ...(list === undefined ? {} : saidOf(list)),
          ...(list === undefined ? {} : { facets: list.facets }),
          ...(list?.condition === undefined ? {} : { condition: list.condition }),
          ...(asked.ok && asked.beside !== undefined ? { beside: asked.beside } : {}),
        }}
        pages={{
          ...(after === undefined ? {} : { first: registerPath(club, search) }),
          ...(list?.next === undefined ? {} : { next: registerPath(club, { ...search, after: list.next }) }),
        }}
      />
    ),
  });
}
