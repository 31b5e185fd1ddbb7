import type { Metadata } from "next";
import { WorkingPage } from "../../../../../../../features/consequence/working-page";
import { fromSegment } from "../../../../../../../lib/address";
import { clubPage } from "../../../../../../../lib/club-page";
import { submissionConsequencePath, submissionPath } from "../../../../../../../lib/path";

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly submission: string; readonly id: string }>;
}

export const metadata: Metadata = { title: "Working" };

export default async function Page({ params }: Segments) {
  const { club, ...segments } = await params;
  const submission = fromSegment(segments.submission);
  const consequence = fromSegment(segments.id);
  return clubPage({
    club,
    at: "garage",
    path: submissionConsequencePath(club, submission, consequence),
    load: (api) => api.submission.consequence({ club, id: submission, consequence }),
    draw: (worked, face) => (
      <WorkingPage
        club={face}
        {...worked}
        of={{
          before: "Before the change",
          after: "With it",
          back: { href: submissionPath(club, submission), label: "The change" },
        }}
      />
    ),
  });
}
