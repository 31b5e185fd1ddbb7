import type { Metadata } from "next";
import { longestCars } from "../../../../../features/fleet/compare-limit";
import { CompareCarsPage } from "../../../../../features/fleet/compare-page";
import { clubPage } from "../../../../../lib/club-page";
import { compareCarsPath } from "../../../../../lib/path";
import { type AskedQuery, queryPart } from "../../../../../lib/register-search";

export const metadata: Metadata = { title: "Cars side by side" };

interface Segments {
  readonly params: Promise<{ readonly club: string }>;
  readonly searchParams: Promise<AskedQuery>;
}

/** Cars of an address: numbers with commas between, or one by one as a list's tick boxes send them. */
const carsIn = (given: AskedQuery[string]): AskedQuery =>
  given === undefined || typeof given === "string" ? { cars: given } : { cars: given.join(", ") };

/** Most that are asked for: more are told by the service's own limit. */
const references = (typed: string | undefined) =>
  (typed ?? "")
    .split(/[,;\n]+/)
    .map((one) => one.trim())
    .filter((one) => one !== "");

export default async function Page({ params, searchParams }: Segments) {
  const { club } = await params;
  const asked = await searchParams;
  const parts = {
    cars: queryPart(carsIn(asked.cars), "cars", longestCars),
    series: queryPart(asked, "series"),
    against: queryPart(asked, "against"),
  };
  const query = Object.fromEntries(Object.entries(parts).filter(([, value]) => value !== undefined));
  const { cars, ...rest } = query;
  return clubPage({
    club,
    at: "fleet",
    path: compareCarsPath(club, query),
    load: (api) => api.fleet.compare({ club, cars: references(cars), ...rest }),
    draw: (page) => <CompareCarsPage page={page} query={query} />,
  });
}
