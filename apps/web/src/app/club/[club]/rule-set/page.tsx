import type { Metadata } from "next";
import { RuleSetsPage } from "../../../../features/rule-set/rule-sets-page";
import { clubPage } from "../../../../lib/club-page";
import { ruleSetsPath } from "../../../../lib/path";

export const metadata: Metadata = { title: "Rule sets" };

export default async function Page({ params }: { readonly params: Promise<{ readonly club: string }> }) {
  const { club } = await params;
  return clubPage({
    club,
    at: "desk",
    path: ruleSetsPath(club),
    load: (api) => api.ruleSet.list({ club }),
    draw: (sets, face) => <RuleSetsPage club={face} sets={sets} />,
  });
}
