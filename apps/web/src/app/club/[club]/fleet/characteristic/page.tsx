import { redirect } from "next/navigation";
import { fleetPath, spreadPath } from "../../../../../lib/path";
import { type AskedQuery, queryPart } from "../../../../../lib/register-search";

interface Segments {
  readonly params: Promise<{ readonly club: string }>;
  readonly searchParams: Promise<AskedQuery>;
}

/** Where the choice of a characteristic is sent: its own page, or back to where one chooses. */
export default async function Page({ params, searchParams }: Segments) {
  const { club } = await params;
  const key = queryPart(await searchParams, "key", 120);
  redirect(key === undefined ? fleetPath(club) : spreadPath(club, key));
}
