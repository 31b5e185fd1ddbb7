import type { Trust } from "@trunnion/db";
import { noSourceTitle, type Source } from "@trunnion/register";

interface SourceColumns {
  readonly source: { readonly title: string } | null;
  readonly locus: string | null;
  readonly trust: Trust;
}

/** What a select needs so that `sourceOf` can read the row. */
export const sourceFields = { source: { select: { title: true } }, locus: true, trust: true } as const;

/** Where a row's statement comes from; a row without a source says so rather than nothing. */
export function sourceOf(row: SourceColumns): Source {
  return {
    title: row.source?.title ?? noSourceTitle,
    trust: row.trust,
    ...(row.locus === null ? {} : { locus: row.locus }),
  };
}
