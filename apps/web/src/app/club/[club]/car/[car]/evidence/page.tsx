import { evidenceTargetKinds } from "@trunnion/register";
import type { Metadata } from "next";
import { EvidencePage } from "../../../../../../features/evidence/evidence-page";
import { readOutcome } from "../../../../../../features/evidence/outcome";
import { type SentQuery, sentOf } from "../../../../../../features/evidence/sent";
import { fromSegment } from "../../../../../../lib/address";
import { clubPage } from "../../../../../../lib/club-page";
import { carEvidencePath } from "../../../../../../lib/path";

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly car: string }>;
  readonly searchParams: Promise<SentQuery & { readonly of?: string; readonly for?: string }>;
}

export async function generateMetadata({ params }: Segments): Promise<Metadata> {
  return { title: `Photos and documents of ${fromSegment((await params).car)}` };
}

export default async function Page({ params, searchParams }: Segments) {
  const segments = await params;
  const { club } = segments;
  const car = fromSegment(segments.car);
  const query = await searchParams;
  const of = evidenceTargetKinds.find((kind) => kind === query.of);
  const sent = sentOf(query, await readOutcome(query.outcome));
  return clubPage({
    club,
    at: "register",
    path: carEvidencePath(club, car),
    load: (api) => api.evidence.car({ club, car }),
    draw: (evidence, face) => (
      <EvidencePage
        club={face}
        evidence={evidence}
        {...sent}
        {...(of === undefined ? {} : { of })}
        {...(query.for === undefined ? {} : { chosen: String(query.for) })}
      />
    ),
  });
}
