import { clubPage } from "../../lib/club-page";
import { ruleFormPath } from "../../lib/path";
import { RowForm, type RowFormProps } from "./row-form";

export interface RowSegments {
  readonly params: Promise<{ readonly club: string; readonly ruleSet: string; readonly version: string }>;
  readonly searchParams: Promise<{ readonly row?: string }>;
}

/** The page of one kind of row of a rule set's draft: a new one, or the one that `row` names. */
export async function rowPage(kind: RowFormProps["kind"], { params, searchParams }: RowSegments) {
  const { club, ruleSet, version } = await params;
  const { row } = await searchParams;
  return clubPage({
    club,
    at: "desk",
    path: ruleFormPath(club, { slug: ruleSet, version: Number(version) }, kind, row),
    load: async (api) => ({
      page: await api.ruleSet.page({ club, ruleSet, version }),
      form: await api.filter.form({ club }),
    }),
    draw: ({ page, form }, face) => (
      <RowForm club={face} page={page} form={form} kind={kind} {...(row === undefined ? {} : { row })} />
    ),
  });
}
