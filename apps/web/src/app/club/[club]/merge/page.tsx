import type { Metadata } from "next";
import { MergePage } from "../../../../features/number/merge-page";
import { clubPage } from "../../../../lib/club-page";
import { mergePath } from "../../../../lib/path";
import { typedBefore } from "../../../../lib/typed-before";

interface Segments {
  readonly params: Promise<{ readonly club: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | readonly string[] | undefined>>>;
}

export const metadata: Metadata = { title: "Two records, one car" };

export default async function Page({ params, searchParams }: Segments) {
  const { club } = await params;
  const { into = "", from = "" } = typedBefore(await searchParams);
  return clubPage({
    club,
    at: "desk",
    path: mergePath(club, into, from),
    load: (api) => api.record.previewMerge({ club, into, from }),
    draw: (preview, face) => <MergePage club={face} preview={preview} />,
  });
}
