import type { ComparePage as Page } from "@trunnion/api";
import { Button } from "../../components/button";
import { Choice } from "../../components/field";
import { PageHead, SectionHead } from "../../components/page-head";
import type { ClubFace } from "../../components/shell/shell";
import { TitleBlock } from "../../components/shell/title-block";
import { sideWords } from "../../lib/assembly";
import { specificationComparePath, specificationsPath } from "../../lib/path";
import { ChangeList, sayChanges } from "./change-list";

export interface ComparePageProps {
  readonly club: ClubFace;
  readonly page: Page;
}

const keyOf = ({ series, version }: Page["before"]) => `${series.slug}@${version}`;
const nameOf = ({ series, version, status }: Page["before"]) =>
  `${series.name}, version ${version} (${status})`;

/** What differs between any two specifications: versions of one series, or two series. */
export function ComparePage({ club, page }: ComparePageProps) {
  const { before, after, changes, alike, choices } = page;
  const options = choices.map((choice) => ({ value: keyOf(choice), label: nameOf(choice) }));
  const title = "Differences between specifications";
  return (
    <>
      <PageHead
        title={title}
        back={{ href: specificationsPath(club.slug), label: "Specifications" }}
        lead={`${nameOf(before)} → ${nameOf(after)}: ${sayChanges(changes)}`}
      />
      <form
        action={specificationComparePath(club.slug)}
        method="get"
        className="print:hidden flex flex-wrap items-end gap-x-4 gap-y-3 pb-8"
      >
        <Choice name="before" label="From" value={keyOf(before)} options={options} />
        <Choice name="after" label="To" value={keyOf(after)} options={options} />
        <Button>Compare</Button>
      </form>
      <section aria-labelledby="changes">
        <SectionHead id="changes" title="What differs" />
        <p className="pb-2">
          {alike === 1 ? "1 entry says" : `${alike} entries say`} the same in both; {sayChanges(changes)}.
        </p>
        {changes.length === 0 ? null : (
          <ChangeList changes={changes} sideWords={sideWords[page.club.sideWords]} />
        )}
      </section>
      <TitleBlock club={club.name} kind="Comparison" title={`${nameOf(before)} → ${nameOf(after)}`} />
    </>
  );
}
