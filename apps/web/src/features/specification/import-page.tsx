import type { SpecificationPage } from "@trunnion/api";
import { specificationHeadings } from "@trunnion/register";
import { PageHead } from "../../components/page-head";
import type { ClubFace } from "../../components/shell/shell";
import { sideWords } from "../../lib/assembly";
import { specificationPath } from "../../lib/path";
import { importSpecification } from "./import-action";
import { ImportForm } from "./import-form";

export interface ImportPageProps {
  readonly club: ClubFace;
  readonly page: SpecificationPage;
  /** Largest file, in bytes. */
  readonly limit: number;
}

/** Reads a table into a draft, after showing what it would change. */
export function ImportPage({ club, page, limit }: ImportPageProps) {
  const { series, shown } = page;
  const version = shown?.version ?? 0;
  const back = {
    href: specificationPath(club.slug, series.slug, version),
    label: `Draft, version ${version}`,
  };
  return (
    <>
      <PageHead
        title="Read in a table"
        back={back}
        lead={`Into the specification of ${series.name}, version ${version}`}
      />
      {shown?.status !== "draft" || !page.mayEdit ? (
        <p className="max-w-prose">
          Only a draft takes entries in, and only from a registrar or fleet manager. This version never
          changes any more.
        </p>
      ) : (
        <>
          <ImportForm
            action={importSpecification.bind(null, club.slug, { series: series.slug, version })}
            revision={shown.revision}
            limit={limit}
            sideWords={sideWords[page.club.sideWords]}
          />
          <details className="max-w-prose pt-8 text-small">
            <summary>Headings</summary>
            <p className="pt-2">
              {specificationHeadings.join(", ")}. Only “Characteristic” must be there: its key or its label.
              Several alternatives stand in one cell, parted by strokes: 5/8 in | 18 mm.
            </p>
          </details>
        </>
      )}
    </>
  );
}
