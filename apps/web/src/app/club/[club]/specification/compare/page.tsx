import type { Metadata } from "next";
import { ComparePage } from "../../../../../features/specification/compare-page";
import { withoutControls } from "../../../../../lib/address";
import { clubPage } from "../../../../../lib/club-page";
import { specificationComparePath } from "../../../../../lib/path";

export const metadata: Metadata = { title: "Differences between specifications" };

interface Segments {
  readonly params: Promise<{ readonly club: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | readonly string[] | undefined>>>;
}

/** A specification as the address names it: `series-2@3`, or `series-2` for the current one. */
function asked(text: string) {
  const [series = "", version = ""] = text.split("@");
  return {
    series: series.slice(0, 60),
    ...(/^[1-9]\d{0,5}$/.test(version) ? { version: Number(version) } : {}),
  };
}

export default async function Page({ params, searchParams }: Segments) {
  const { club } = await params;
  const query = await searchParams;
  const text = (name: string) => withoutControls(typeof query[name] === "string" ? query[name] : "");
  const [before, after] = [text("before"), text("after")];
  return clubPage({
    club,
    path: specificationComparePath(club, { before, after }),
    load: (api) => api.specification.compare({ club, before: asked(before), after: asked(after) }),
    draw: (page, face) => <ComparePage club={face} page={page} />,
  });
}
