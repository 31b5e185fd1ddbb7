import type { Metadata } from "next";
import { RowForm } from "../../../../../../../../features/rule-set/row-form";
import { clubPage } from "../../../../../../../../lib/club-page";
import { ruleFormPath } from "../../../../../../../../lib/path";

export const metadata: Metadata = { title: "Rule set: check" };

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly ruleSet: string; readonly version: string }>;
  readonly searchParams: Promise<{ readonly row?: string }>;
}

export default async function Page({ params, searchParams }: Segments) {
  const { club, ruleSet, version } = await params;
  const { row } = await searchParams;
  return clubPage({
    club,
    at: "desk",
    path: ruleFormPath(club, { slug: ruleSet, version: Number(version) }, "check", row),
    load: async (api) => ({
      page: await api.ruleSet.page({ club, ruleSet, version }),
      form: await api.filter.form({ club }),
    }),
    draw: ({ page, form }, face) => (
      <RowForm club={face} page={page} form={form} kind="check" {...(row === undefined ? {} : { row })} />
    ),
  });
}
