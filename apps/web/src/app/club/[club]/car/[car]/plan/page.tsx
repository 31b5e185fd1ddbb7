import type { Metadata } from "next";
import { readerSideWords } from "../../../../../../features/setting-sheet/side-words";
import { PlanPage } from "../../../../../../features/setup-plan/plan-page";
import { fromSegment } from "../../../../../../lib/address";
import { clubPage } from "../../../../../../lib/club-page";
import { setupPlanPath } from "../../../../../../lib/path";
import { figuresTyped } from "../../../../../../lib/typed-before";

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly car: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | readonly string[] | undefined>>>;
}

export const metadata: Metadata = { title: "Plan the way to a setting" };

export default async function Page({ params, searchParams }: Segments) {
  const { club, ...segments } = await params;
  const car = fromSegment(segments.car);
  const { axle: of, side: asked, ...typed } = figuresTyped(await searchParams);
  const side = asked === "right" ? "right" : "left";
  const axle = of === "rear" ? "rear" : "front";
  return clubPage({
    club,
    at: "register",
    path: setupPlanPath(club, car, { ...typed, axle, side }),
    load: async (api) => {
      const page = await api.settingSheet.plan({ club, car, axle, side, typed });
      return { page, words: await readerSideWords(page.club.sideWords) };
    },
    draw: ({ page, words }, face) => <PlanPage club={face} page={page} words={words} typed={typed} />,
  });
}
