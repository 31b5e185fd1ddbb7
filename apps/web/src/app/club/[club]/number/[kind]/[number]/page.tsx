import { numberKinds } from "@trunnion/register";
import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { ClaimPage } from "../../../../../../features/number/claim-page";
import { fromSegment } from "../../../../../../lib/address";
import { clubPage } from "../../../../../../lib/club-page";
import { claimPath } from "../../../../../../lib/path";

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly kind: string; readonly number: string }>;
}

export async function generateMetadata({ params }: Segments): Promise<Metadata> {
  return { title: `Who holds ${fromSegment((await params).number)}?` };
}

export default async function Page({ params }: Segments) {
  const { club, ...segments } = await params;
  const kind = numberKinds.find((one) => one === segments.kind);
  if (kind === undefined) notFound();
  const number = fromSegment(segments.number);
  return clubPage({
    club,
    at: "desk",
    path: claimPath(club, kind, number),
    load: (api) => api.number.claim({ club, kind, number }),
    draw: (claim, face) => <ClaimPage club={face} claim={claim} />,
  });
}
