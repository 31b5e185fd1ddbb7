import type { Metadata } from "next";
import { RollPage } from "../../../../../../features/roll-study/roll-page";
import { fromSegment } from "../../../../../../lib/address";
import { clubPage } from "../../../../../../lib/club-page";
import { rollPath } from "../../../../../../lib/path";
import { figuresTyped } from "../../../../../../lib/typed-before";

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly car: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | readonly string[] | undefined>>>;
}

export const metadata: Metadata = { title: "Springs and bars in roll" };

export default async function Page({ params, searchParams }: Segments) {
  const { club, ...segments } = await params;
  const car = fromSegment(segments.car);
  const typed = figuresTyped(await searchParams);
  return clubPage({
    club,
    at: "register",
    path: rollPath(club, car, typed),
    load: (api) => api.settingSheet.rollStudy({ club, car, typed }),
    draw: (study, face) => <RollPage club={face} study={study} typed={typed} />,
  });
}
