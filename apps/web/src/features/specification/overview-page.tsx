import type { SpecificationOverview } from "@trunnion/api";
import { LinkButton } from "../../components/button";
import { PageHead, SectionHead } from "../../components/page-head";
import type { ClubFace } from "../../components/shell/shell";
import { TitleBlock } from "../../components/shell/title-block";
import { sayLongDay } from "../../lib/day";
import { characteristicsPath, newMarquePath, newSeriesPath, specificationPath } from "../../lib/path";

export interface OverviewPageProps {
  readonly club: ClubFace;
  readonly overview: SpecificationOverview;
}

/** The club's series, and where the specification of each stands. */
export function OverviewPage({ club, overview }: OverviewPageProps) {
  const { series, mayEdit, ownCharacteristics } = overview;
  return (
    <>
      <PageHead title="Specifications" lead={series.length === 1 ? "1 series" : `${series.length} series`}>
        {mayEdit ? (
          <div className="print:hidden flex flex-wrap items-center gap-x-6 gap-y-3">
            <a href={newMarquePath(club.slug)}>Add a marque</a>
            <LinkButton href={newSeriesPath(club.slug)}>Add a series</LinkButton>
          </div>
        ) : null}
      </PageHead>
      {series.length === 0 ? (
        <p className="max-w-prose">
          The club has no series yet. A series says how its cars are numbered and when they were built; its
          specification says what the works fitted.
        </p>
      ) : (
        <SeriesTable club={club.slug} series={series} />
      )}
      <section aria-labelledby="own" className="pt-10">
        <SectionHead id="own" title="Characteristics" />
        <p className="max-w-prose">
          Beside the built-in dictionary a club may have characteristics of its own, which behave like the
          built-in ones. This one has {ownCharacteristics === 0 ? "none yet" : ownCharacteristics}.{" "}
          <a href={characteristicsPath(club.slug)}>The club's own characteristics</a>
        </p>
      </section>
      <TitleBlock club={club.name} kind="List" title="Specifications" />
    </>
  );
}

function SeriesTable({ club, series }: { readonly club: string } & Pick<SpecificationOverview, "series">) {
  return (
    <table className="list-table">
      <caption className="sr-only">Series and their specifications</caption>
      <thead>
        <tr>
          <th scope="col">Series</th>
          <th scope="col">Marque</th>
          <th scope="col">Cars</th>
          <th scope="col">Current specification</th>
          <th scope="col">Draft</th>
        </tr>
      </thead>
      <tbody>
        {series.map(({ slug, name, marque, cars, current, draft }) => (
          <tr key={slug}>
            <th scope="row" className="list-lead font-normal">
              <a href={specificationPath(club, slug)} className="inline-flex min-h-11 items-center">
                {name}
              </a>
            </th>
            <td>{marque}</td>
            <td>
              {cars}
              <span className="wide:sr-only"> cars</span>
            </td>
            <td>
              {current === undefined ? (
                <span className="text-soft">none</span>
              ) : (
                `version ${current.version}, ${current.entries} entries, since ${sayLongDay(current.since)}`
              )}
            </td>
            <td>
              {draft === undefined ? null : (
                <a
                  href={specificationPath(club, slug, draft.version)}
                  className="inline-flex min-h-11 items-center"
                >
                  version {draft.version}, {draft.entries} entries
                </a>
              )}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
