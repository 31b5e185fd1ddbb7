import type { Metadata } from "next";
import { RegisterPage } from "../../../../features/car/register-page";
import { withoutControls } from "../../../../lib/address";
import { leadersOf } from "../../../../lib/assembly";
import { clubPage } from "../../../../lib/club-page";
import { registerPath } from "../../../../lib/path";

export const metadata: Metadata = { title: "Register" };

type Asked = Readonly<Record<string, string | readonly string[] | undefined>>;

interface Segments {
  readonly params: Promise<{ readonly club: string }>;
  readonly searchParams: Promise<Asked>;
}

/** Longest text that is looked for; what is longer cannot be a number. */
const LONGEST = 60;

function asked<K extends string>(query: Asked, name: K): Partial<Record<K, string>> {
  const given = query[name];
  const value = typeof given === "string" ? withoutControls(given).slice(0, LONGEST) : "";
  return value === "" ? {} : ({ [name]: value } as Record<K, string>);
}

export default async function Page({ params, searchParams }: Segments) {
  const { club } = await params;
  const query = await searchParams;
  const search = { ...asked(query, "q"), ...asked(query, "series") };
  const { after } = asked(query, "after");
  const { q, series } = search;
  return clubPage({
    club,
    at: "register",
    path: registerPath(club, { ...search, ...asked(query, "after") }),
    load: async (api) => ({
      series: await api.car.series({ club }),
      list: await api.car.list({
        club,
        ...(q === undefined ? {} : { search: q }),
        ...(series === undefined ? {} : { series }),
        ...(after === undefined ? {} : { after }),
      }),
    }),
    draw: (loaded, face) => (
      <RegisterPage
        club={face}
        found={loaded.list.total}
        search={search}
        series={loaded.series}
        rows={loaded.list.cars.map((car) => ({ ...car, assemblies: leadersOf(car.assemblies) }))}
        pages={{
          ...(after === undefined ? {} : { first: registerPath(club, search) }),
          ...(loaded.list.next === undefined
            ? {}
            : { next: registerPath(club, { ...search, after: loaded.list.next }) }),
        }}
      />
    ),
  });
}
