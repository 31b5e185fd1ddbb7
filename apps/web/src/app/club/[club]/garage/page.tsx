import type { Metadata } from "next";
import { GaragePage } from "../../../../features/garage/garage-page";
import { clubPage } from "../../../../lib/club-page";
import { garagePath } from "../../../../lib/path";

export const metadata: Metadata = { title: "My garage" };

export default async function Page({ params }: { readonly params: Promise<{ readonly club: string }> }) {
  const { club } = await params;
  return clubPage({
    club,
    at: "garage",
    path: garagePath(club),
    load: (api) => api.submission.garage({ club }),
    draw: (garage) => <GaragePage club={club} garage={garage} />,
  });
}
