import type { Metadata } from "next";
import { ImportsPage } from "../../../../features/import/imports-page";
import { readOutcome } from "../../../../features/import/outcome";
import { clubPage } from "../../../../lib/club-page";
import { importsPath } from "../../../../lib/path";

export const metadata: Metadata = { title: "Read in a list of cars" };

interface Segments {
  readonly params: Promise<{ readonly club: string }>;
  readonly searchParams: Promise<{ readonly outcome?: string | readonly string[] }>;
}

export default async function Page({ params, searchParams }: Segments) {
  const { club } = await params;
  const { outcome } = await searchParams;
  const refusal = await readOutcome(typeof outcome === "string" ? outcome : undefined);
  return clubPage({
    club,
    at: "desk",
    path: importsPath(club),
    load: (api) => api.import.list({ club }),
    draw: (imports, face) => (
      <ImportsPage club={face} imports={imports} {...(refusal === undefined ? {} : { refusal })} />
    ),
  });
}
