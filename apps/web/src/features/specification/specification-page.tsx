import type { SpecificationPage as Page } from "@trunnion/api";
import { assemblies, assemblyLabels } from "@trunnion/register";
import { LinkButton } from "../../components/button";
import { Notice } from "../../components/notice";
import { PageHead } from "../../components/page-head";
import { LeaderNumber } from "../../components/plan";
import type { ClubFace } from "../../components/shell/shell";
import { TitleBlock } from "../../components/shell/title-block";
import { sideWords } from "../../lib/assembly";
import { sayLongDay } from "../../lib/day";
import {
  assemblyAnchor,
  seriesFormPath,
  specificationComparePath,
  specificationCsvPath,
  specificationEntryPath,
  specificationImportPath,
  specificationReviewPath,
  specificationsPath,
} from "../../lib/path";
import { DiscardSection } from "./discard-section";
import { EntryTable } from "./entry-table";
import { StartDraft } from "./start-draft";
import { VersionSection } from "./version-section";

export interface SpecificationPageProps {
  readonly club: ClubFace;
  readonly page: Page;
}

function sayStatus({ shown }: Page): string {
  if (shown === undefined) return "nothing specified yet";
  if (shown.status === "draft") return `version ${shown.version}, a draft`;
  const since = sayLongDay(shown.madeCurrent ?? shown.begun);
  return shown.status === "current"
    ? `version ${shown.version}, current since ${since}`
    : `version ${shown.version}, superseded; current from ${since}`;
}

/** What the works specified for a series, assembly by assembly, as it prints; with its versions and what may be done. */
export function SpecificationPage({ club, page }: SpecificationPageProps) {
  const { series, shown, lines, versions } = page;
  return (
    <>
      <PageHead
        title={`Specification of ${series.name}`}
        back={{ href: specificationsPath(club.slug), label: "Specifications" }}
        lead={`${sayStatus(page)}; ${lines.length === 1 ? "1 entry" : `${lines.length} entries`}`}
      >
        <Steps club={club} page={page} />
      </PageHead>
      {shown?.status === "draft" ? <Contradictions page={page} /> : null}
      <div className="grid gap-10">
        {lines.length === 0 ? <Nothing page={page} /> : <Assemblies club={club} page={page} />}
        {versions.length === 0 ? null : (
          <VersionSection club={club.slug} series={series.slug} versions={versions} shown={shown?.version} />
        )}
        {page.mayEdit && versions.every(({ status }) => status !== "draft") ? (
          <StartDraft club={club.slug} page={page} />
        ) : null}
        {page.mayEdit && shown?.status === "draft" ? (
          <DiscardSection
            club={club.slug}
            series={series.slug}
            version={shown.version}
            revision={shown.revision}
          />
        ) : null}
      </div>
      <TitleBlock
        club={club.name}
        kind="Specification"
        title={series.name}
        facts={[
          { label: "Version", value: shown === undefined ? "none" : `${shown.version}, ${shown.status}` },
          { label: "Entries", value: String(lines.length) },
        ]}
        notes={["Limits are rounded for reading; a car is judged by the figures as they were entered."]}
      />
    </>
  );
}

/** What may be done with the version shown: for a draft on to review, else to take it along. */
function Steps({ club, page }: SpecificationPageProps) {
  const { shown, series, mayEdit, versions } = page;
  const { slug } = series;
  const draft = versions.find(({ status }) => status === "draft");
  const current = versions.find(({ status }) => status === "current");
  const isDraft = shown?.status === "draft";
  const reference = { series: slug, version: shown?.version ?? 0 };
  return (
    <div className="print:hidden flex flex-wrap items-center gap-x-6 gap-y-3">
      {shown === undefined ? null : (
        <a href={specificationCsvPath(club.slug, slug, shown.version)}>Save as CSV</a>
      )}
      {mayEdit ? <a href={seriesFormPath(club.slug, slug)}>Numbers, dates, options</a> : null}
      {current === undefined ? null : (
        <a
          href={specificationComparePath(club.slug, {
            before: slug,
            after: `${slug}@${shown?.version ?? current.version}`,
          })}
        >
          Compare
        </a>
      )}
      {mayEdit && isDraft ? (
        <>
          <a href={specificationImportPath(club.slug, slug, reference.version)}>Read in a table</a>
          <LinkButton href={specificationEntryPath(club.slug, reference)}>Add an entry</LinkButton>
          <LinkButton href={specificationReviewPath(club.slug, slug, reference.version)} weight="mark">
            Review and make current
          </LinkButton>
        </>
      ) : null}
      {mayEdit && draft !== undefined && !isDraft ? (
        <LinkButton href={`${specificationsPath(club.slug)}/series/${slug}/version/${draft.version}`}>
          Go on with the draft
        </LinkButton>
      ) : null}
    </div>
  );
}

function Contradictions({ page: { problems } }: { readonly page: Page }) {
  if (problems.length === 0) return null;
  const what =
    problems.length === 1
      ? "This draft contradicts itself."
      : `This draft contradicts itself ${problems.length} times.`;
  const told = problems.slice(0, 50).map(({ message }) => message);
  return (
    <div className="pb-8">
      <Notice
        tone="note"
        text={{ what, remedy: "It can be edited on, and cannot be made current before this is mended." }}
        details={[...new Set(told)]}
      />
    </div>
  );
}

function Nothing({ page: { mayEdit, shown } }: { readonly page: Page }) {
  if (shown?.status === "draft") return <p>This draft is empty. Add an entry, or read in a table.</p>;
  return (
    <p>
      Nothing is specified for this series, so its cars have nothing to be compared with.
      {mayEdit ? "" : " A registrar or fleet manager can begin its specification."}
    </p>
  );
}

function Assemblies({ club, page }: SpecificationPageProps) {
  const { lines, shown, series, mayEdit } = page;
  const words = sideWords[page.club.sideWords];
  const version = shown?.version ?? 0;
  const change = (id: string) => specificationEntryPath(club.slug, { series: series.slug, version }, { id });
  return assemblies.map((assembly, index) => {
    const own = lines.filter((line) => line.assembly === assembly);
    if (own.length === 0) return null;
    const anchor = assemblyAnchor(assembly);
    return (
      <section key={assembly} id={anchor} aria-labelledby={`${anchor}-title`}>
        <h2 id={`${anchor}-title`} className="flex items-center gap-3 border-line border-b pb-1 text-lead">
          <LeaderNumber leader={index + 1} differs={false} />
          {assemblyLabels[assembly]}
        </h2>
        <EntryTable
          caption={assemblyLabels[assembly]}
          lines={own}
          sideWords={words}
          {...(mayEdit && shown?.status === "draft" ? { change } : {})}
        />
      </section>
    );
  });
}
