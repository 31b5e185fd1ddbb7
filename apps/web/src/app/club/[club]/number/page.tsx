import type { Metadata } from "next";
import { NumbersPage } from "../../../../features/number/numbers-page";
import { clubPage } from "../../../../lib/club-page";
import { numbersPath } from "../../../../lib/path";

interface Segments {
  readonly params: Promise<{ readonly club: string }>;
  readonly searchParams: Promise<{ readonly aside?: string }>;
}

export const metadata: Metadata = { title: "Numbers" };

export default async function Page({ params, searchParams }: Segments) {
  const { club } = await params;
  const { aside } = await searchParams;
  return clubPage({
    club,
    at: "desk",
    path: numbersPath(club),
    load: (api) => api.number.page({ club }),
    draw: (page, face) => (
      <NumbersPage club={face} page={page} {...(typeof aside === "string" ? { asked: aside } : {})} />
    ),
  });
}
