import type { Metadata } from "next";
import { readOutcome } from "../../../../../features/evidence/outcome";
import { type SentQuery, sentOf } from "../../../../../features/evidence/sent";
import { beginCorrection, decideOne, keepDraft, stepAlone } from "../../../../../features/submission/action";
import { SubmissionPage } from "../../../../../features/submission/submission-page";
import { fromSegment, withoutControls } from "../../../../../lib/address";
import { leadersOf } from "../../../../../lib/assembly";
import { clubPage } from "../../../../../lib/club-page";
import { submissionPath } from "../../../../../lib/path";

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly submission: string }>;
  readonly searchParams: Promise<
    SentQuery & { readonly assembly?: string; readonly find?: string; readonly ticked?: string }
  >;
}

export const metadata: Metadata = { title: "A change" };

export default async function Page({ params, searchParams }: Segments) {
  const segments = await params;
  const { club } = segments;
  const id = fromSegment(segments.submission);
  const query = await searchParams;
  const { assembly = "", find = "", ticked = "" } = query;
  const sent = sentOf(query, await readOutcome(query.outcome));
  const shown = {
    assembly: withoutControls(String(assembly)).slice(0, 60),
    find: withoutControls(String(find)).slice(0, 80),
    ticked: withoutControls(String(ticked)).slice(0, 4_000),
  };
  // One key a page: pressed twice it is one step.
  const step = { club, id, key: crypto.randomUUID() };
  return clubPage({
    club,
    at: "garage",
    path: submissionPath(club, id),
    load: (api) => api.submission.page({ club, id }),
    draw: (page, face) => (
      <SubmissionPage
        club={face}
        page={page}
        leaders={leadersOf({})}
        shown={shown}
        sent={sent}
        actions={{
          keep: keepDraft.bind(null, step),
          withdraw: stepAlone.bind(null, step),
          correct: beginCorrection.bind(null, { club, id, clientKey: step.key }),
          decide: decideOne.bind(null, step),
        }}
      />
    ),
  });
}
