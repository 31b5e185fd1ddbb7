import { listJsonLd } from "@trunnion/register";
import type { Metadata } from "next";
import { ExtractList } from "../../../features/extract/extract-list";
import { fromSegment, withoutControls } from "../../../lib/address";
import { extractCarPath, extractPath } from "../../../lib/path";
import { ownOrigin, PublicPage, publicLoad } from "../../../lib/public-page";

interface Segments {
  readonly params: Promise<{ readonly club: string }>;
  readonly searchParams: Promise<{ readonly after?: string | readonly string[] }>;
}

export const metadata: Metadata = { title: "Cars", robots: { index: true, follow: true } };

export default async function Page({ params, searchParams }: Segments) {
  const club = fromSegment((await params).club);
  const { after: asked } = await searchParams;
  const after = typeof asked === "string" ? withoutControls(asked).slice(0, 60) : undefined;
  const list = await publicLoad(extractPath(club), (api) =>
    api.publicExtract.list({ club, ...(after === undefined ? {} : { after }) }),
  );
  const origin = await ownOrigin();
  const { slug, name } = list.club;
  const data = listJsonLd({
    name: `${name}: cars`,
    address: `${origin}${extractPath(slug, after === undefined ? {} : { after })}`,
    total: list.total,
    cars: list.cars.map((car) => ({
      name: `${car.series} ${car.chassis}`,
      address: `${origin}${extractCarPath(slug, car.reference)}`,
    })),
  });
  return (
    <PublicPage data={data}>
      <ExtractList {...list} past={after !== undefined} />
    </PublicPage>
  );
}
