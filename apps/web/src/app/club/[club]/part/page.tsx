import { type Assembly, assemblies } from "@trunnion/register";
import type { Metadata } from "next";
import { PartsPage } from "../../../../features/part/parts-page";
import { clubPage } from "../../../../lib/club-page";
import { partsPath } from "../../../../lib/path";

export const metadata: Metadata = { title: "Parts" };

interface Segments {
  readonly params: Promise<{ readonly club: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | readonly string[] | undefined>>>;
}

const isAssembly = (text: unknown): text is Assembly => assemblies.some((one) => one === text);

export default async function Page({ params, searchParams }: Segments) {
  const { club } = await params;
  const { assembly, series } = await searchParams;
  const chosen = {
    ...(isAssembly(assembly) ? { assembly } : {}),
    ...(typeof series === "string" && series !== "" ? { series } : {}),
  };
  return clubPage({
    club,
    at: "desk",
    path: partsPath(club, chosen),
    load: (api) => api.part.list({ club, ...chosen }),
    draw: (page, face) => <PartsPage club={face} page={page} chosen={chosen} />,
  });
}
