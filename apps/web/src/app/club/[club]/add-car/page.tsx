import type { Metadata } from "next";
import { AddPage } from "../../../../features/car/edit/add-page";
import { clubPage } from "../../../../lib/club-page";
import { addCarPath } from "../../../../lib/path";
import { typedBefore } from "../../../../lib/typed-before";

interface Segments {
  readonly params: Promise<{ readonly club: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | readonly string[] | undefined>>>;
}

export const metadata: Metadata = { title: "Add a car" };

export default async function Page({ params, searchParams }: Segments) {
  const { club } = await params;
  const typed = typedBefore(await searchParams);
  return clubPage({
    club,
    at: "register",
    path: addCarPath(club),
    load: (api) => api.record.choices({ club }),
    draw: (choices, face) => <AddPage club={face} {...choices} typed={typed} />,
  });
}
