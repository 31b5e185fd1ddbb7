import { carJsonLd } from "@trunnion/register";
import type { Metadata } from "next";
import { ExtractCarPage } from "../../../../features/extract/extract-car";
import { fromSegment } from "../../../../lib/address";
import { sideWords } from "../../../../lib/assembly";
import { extractCarPath } from "../../../../lib/path";
import { ownOrigin, PublicPage, publicLoad } from "../../../../lib/public-page";

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly car: string }>;
}

export async function generateMetadata({ params }: Segments): Promise<Metadata> {
  return { title: fromSegment((await params).car), robots: { index: true, follow: true } };
}

export default async function Page({ params }: Segments) {
  const segments = await params;
  const club = fromSegment(segments.club);
  const asked = fromSegment(segments.car);
  const { car, ...shown } = await publicLoad(extractCarPath(club, asked), (api) =>
    api.publicExtract.car({ club, car: asked }),
  );
  const address = `${await ownOrigin()}${extractCarPath(shown.club.slug, car.reference)}`;
  return (
    <PublicPage data={carJsonLd(car, address)}>
      <ExtractCarPage club={shown.club} car={car} sideWords={sideWords[shown.sideWords]} />
    </PublicPage>
  );
}
