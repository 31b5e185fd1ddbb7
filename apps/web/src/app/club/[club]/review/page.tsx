import type { Metadata } from "next";
import { decideSeveral } from "../../../../features/submission/action";
import { ReviewPage } from "../../../../features/submission/review-page";
import { clubPage } from "../../../../lib/club-page";
import { reviewPath } from "../../../../lib/path";

interface Segments {
  readonly params: Promise<{ readonly club: string }>;
  readonly searchParams: Promise<{ readonly done?: string; readonly last?: string }>;
}

export const metadata: Metadata = { title: "Review" };

export default async function Page({ params, searchParams }: Segments) {
  const { club } = await params;
  const { done = "", last = "" } = await searchParams;
  return clubPage({
    club,
    at: "desk",
    path: reviewPath(club),
    load: (api) => api.submission.queue({ club }),
    draw: (queue) => (
      <ReviewPage
        club={club}
        queue={queue}
        done={String(done)}
        last={String(last)}
        action={decideSeveral.bind(null, { club, key: crypto.randomUUID() })}
      />
    ),
  });
}
