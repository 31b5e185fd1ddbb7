import type { Metadata } from "next";
import { RuledCarPage } from "../../../../../../../../features/rule-set/ruled-car-page";
import { clubPage } from "../../../../../../../../lib/club-page";
import { ruledCarPath } from "../../../../../../../../lib/path";

export const metadata: Metadata = { title: "A rule set on a car" };

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly ruleSet: string; readonly version: string }>;
  readonly searchParams: Promise<{ readonly car?: string; readonly class?: string }>;
}

export default async function Page({ params, searchParams }: Segments) {
  const { club, ruleSet, version } = await params;
  const { car, class: classCode } = await searchParams;
  const of = { slug: ruleSet, version: Number(version) };
  const asked = classCode === undefined ? {} : { classCode };
  return clubPage({
    club,
    at: "desk",
    path: ruledCarPath(club, of, car === undefined ? {} : { car }),
    load: async (api) =>
      car === undefined || car === ""
        ? undefined
        : api.ruleSet.car({ club, ruleSet, version, car, ...asked }),
    draw: (met, face) => <RuledCarPage club={face} ruleSet={of} {...(met ? { met } : {})} />,
  });
}
