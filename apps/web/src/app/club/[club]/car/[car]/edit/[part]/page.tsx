import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { isPart, loadPart, PartPage } from "../../../../../../../features/car/edit/part-page";
import { fromSegment } from "../../../../../../../lib/address";
import { clubPage } from "../../../../../../../lib/club-page";
import { editPartPath } from "../../../../../../../lib/path";
import { typedBefore } from "../../../../../../../lib/typed-before";

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly car: string; readonly part: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | readonly string[] | undefined>>>;
}

export async function generateMetadata({ params }: Segments): Promise<Metadata> {
  return { title: `Edit ${fromSegment((await params).car)}` };
}

export default async function Page({ params, searchParams }: Segments) {
  const { club, part, ...segments } = await params;
  const car = fromSegment(segments.car);
  if (!isPart(part)) notFound();
  const query = typedBefore(await searchParams);
  return clubPage({
    club,
    at: "register",
    path: editPartPath(club, car, part, query),
    load: (api) => loadPart(api, { club, car, part, query }),
    draw: (loaded, face) => <PartPage club={face} loaded={loaded} query={query} />,
  });
}
