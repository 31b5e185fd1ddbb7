import type { Metadata } from "next";
import { SupportPage } from "../../../../features/evidence/evidence-page";
import { NothingAskedPage } from "../../../../features/evidence/nothing-asked-page";
import { readOutcome } from "../../../../features/evidence/outcome";
import { type SentQuery, sentOf } from "../../../../features/evidence/sent";
import { withoutControls } from "../../../../lib/address";
import { clubPage } from "../../../../lib/club-page";
import { supportPath } from "../../../../lib/path";

export const metadata: Metadata = { title: "What supports it" };

interface Segments {
  readonly params: Promise<{ readonly club: string }>;
  readonly searchParams: Promise<SentQuery & { readonly for?: string }>;
}

export default async function Page({ params, searchParams }: Segments) {
  const { club } = await params;
  const query = await searchParams;
  const target = withoutControls(String(query.for ?? ""));
  const sent = sentOf(query, await readOutcome(query.outcome));
  return clubPage({
    club,
    at: "register",
    path: supportPath(club, target),
    load: async (api) => (target === "" ? undefined : api.evidence.target({ club, for: target })),
    draw: (evidence, face) =>
      evidence === undefined ? (
        <NothingAskedPage club={face} />
      ) : (
        <SupportPage club={face} evidence={evidence} {...sent} />
      ),
  });
}
