import type { Metadata } from "next";
import { RuleSetPage } from "../../../../../../../features/rule-set/rule-set-page";
import { clubPage } from "../../../../../../../lib/club-page";
import { ruleSetPath } from "../../../../../../../lib/path";

export const metadata: Metadata = { title: "Rule set" };

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly ruleSet: string; readonly version: string }>;
}

export default async function Page({ params }: Segments) {
  const { club, ruleSet, version } = await params;
  return clubPage({
    club,
    at: "desk",
    path: ruleSetPath(club, ruleSet, Number(version)),
    load: (api) => api.ruleSet.page({ club, ruleSet, version }),
    draw: (page, face) => <RuleSetPage club={face} page={page} />,
  });
}
