import type { DraftReview } from "@trunnion/api";
import { EditForm } from "../../components/form/edit-form";
import { TextArea } from "../../components/form/form-field";
import { Notice } from "../../components/notice";
import { PageHead, SectionHead } from "../../components/page-head";
import type { ClubFace } from "../../components/shell/shell";
import { TitleBlock } from "../../components/shell/title-block";
import { sideWords } from "../../lib/assembly";
import { specificationPath } from "../../lib/path";
import { makeCurrent } from "./action";
import { ChangeList, sayChanges } from "./change-list";
import { MoveSection } from "./move-section";

export interface ReviewPageProps {
  readonly club: ClubFace;
  readonly review: DraftReview;
}

/** What making a draft current would change, on paper and on cars; then the step itself, with its reason. */
export function ReviewPage({ club, review }: ReviewPageProps) {
  const { series, version, revision, current, changes, problems, moves } = review;
  const words = sideWords[review.club.sideWords];
  const back = { href: specificationPath(club.slug, series.slug, version), label: `Version ${version}` };
  const against =
    current === 0 ? "There is no current version yet" : `Compared with version ${current}, which is current`;
  return (
    <>
      <PageHead
        title={`Make version ${version} current`}
        back={back}
        lead={`Specification of ${series.name}: ${sayChanges(changes)}`}
      />
      <div className="grid gap-10">
        {problems.length > 0 ? (
          <Notice
            tone="note"
            text={{
              what:
                problems.length === 1
                  ? "It cannot be made current yet."
                  : `It cannot be made current yet: ${problems.length} contradictions.`,
              remedy: "Mend each of these in the draft first.",
            }}
            details={[...new Set(problems.slice(0, 50).map(({ message }) => message))]}
          />
        ) : null}
        <section aria-labelledby="changes">
          <SectionHead id="changes" title="What changes" />
          <p className="pb-2">
            {against}: {sayChanges(changes)}.
          </p>
          {changes.length === 0 ? null : <ChangeList changes={changes} sideWords={words} />}
        </section>
        {/* Where two entries say different things of one car, no verdict follows from them. */}
        {problems.length > 0 ? null : <MoveSection club={club.slug} moves={moves} sideWords={words} />}
        {review.mayEdit && problems.length === 0 ? (
          <section aria-labelledby="decide" className="print:hidden">
            <SectionHead id="decide" title="Decide" />
            <EditForm
              action={makeCurrent.bind(null, club.slug, { series: series.slug, version })}
              submit="Make it current"
              cancel={{ ...back, label: "Back to the draft" }}
              labels={{ reason: "Why" }}
            >
              <input type="hidden" name="revision" value={revision} />
              <input type="hidden" name="current" value={current} />
              <TextArea
                name="reason"
                label="Why"
                hint="It stands in the list of versions and in the journal. From then on this version never changes any more."
                maxLength={2_000}
                required
                rows={3}
              />
            </EditForm>
          </section>
        ) : null}
      </div>
      <TitleBlock
        club={club.name}
        kind="Specification"
        title={`${series.name}, version ${version}: review`}
      />
    </>
  );
}
