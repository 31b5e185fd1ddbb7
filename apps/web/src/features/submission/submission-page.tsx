import type { SubmissionPage as Page, SubmissionView } from "@trunnion/api";
import { sayDay, submissionStatusWords } from "@trunnion/register";
import { EditForm } from "../../components/form/edit-form";
import { TextArea } from "../../components/form/form-field";
import { Notice } from "../../components/notice";
import { PageHead, SectionHead } from "../../components/page-head";
import type { Leader } from "../../components/plan";
import { Plate } from "../../components/plate";
import type { ClubFace } from "../../components/shell/shell";
import { sideWords as words } from "../../lib/assembly";
import type { FormAction } from "../../lib/form-state";
import { carPath, garagePath, reviewPath, submissionPath } from "../../lib/path";
import type { Sent } from "../evidence/evidence-page";
import { DecisionForm } from "./decision-form";
import { DraftForm } from "./draft-form";
import { Evidence, Said } from "./said";
import { WaitingPhotos } from "./waiting-photos";

export interface SubmissionPageProps {
  readonly club: ClubFace;
  readonly page: Page;
  readonly leaders: readonly Leader[];
  readonly shown: { readonly assembly: string; readonly find: string; readonly ticked: string };
  /** What came of photos sent without a script. */
  readonly sent: Sent;
  readonly actions: {
    readonly keep: FormAction;
    readonly withdraw: FormAction;
    readonly correct: FormAction;
    readonly decide: FormAction;
  };
}

const dayOf = (instant: string) => sayDay(instant.slice(0, 10));

/** Where it stands and what comes next, in a sentence for whoever looks. */
export function standing({ status, own, submittedAt, savedAt, begunAt, decision }: SubmissionView): string {
  switch (status) {
    case "draft":
      return `Last saved ${dayOf(savedAt ?? begunAt)}. Nobody else sees it before it is handed in.`;
    case "submitted":
      return `On ${dayOf(submittedAt ?? begunAt)}; it waits for the registrar.`;
    case "queried":
      return own ? "The registrar asked something: answer below." : "It waits for the owner's answer.";
    case "answered":
      return "It waits for the registrar.";
    case "accepted":
      return `On the record since ${dayOf(decision?.at ?? begunAt)}.`;
    case "declined":
      return `On ${dayOf(decision?.at ?? begunAt)}.`;
    case "withdrawn":
      return "Nobody decides about it any more.";
  }
}

/** A submission: its form while one may change it; else what it says, what it does, and what was said of it. */
export function SubmissionPage(props: SubmissionPageProps) {
  const { club, page, leaders, shown, actions, sent } = props;
  const { submission, reviewer, club: facts } = page;
  const { car, own, steps } = submission;
  const mayEdit = steps.includes("save");
  const decides = steps.includes("accept");
  const back =
    reviewer && !own
      ? { href: reviewPath(club.slug), label: "Review" }
      : { href: garagePath(club.slug), label: "My garage" };
  return (
    <>
      <PageHead
        title={mayEdit ? "Record a change" : `A change to ${car.chassis}`}
        back={back}
        plate={<Plate chassis={car.chassis} />}
        lead={
          <>
            <strong>{submissionStatusWords[submission.status]}</strong>
            {own ? "" : `, by ${submission.madeBy}`}. {standing(submission)}
          </>
        }
      />
      <div className="grid grid-cols-1 gap-10">
        <Decided submission={submission} club={club.slug} />
        <Thread submission={submission} />
        <PhotosSent sent={sent} />
        {mayEdit ? (
          <DraftForm
            club={club.slug}
            page={page}
            leaders={leaders}
            sideWords={words[facts.sideWords]}
            shown={shown}
            action={actions.keep}
          />
        ) : (
          <Said club={club.slug} page={page} />
        )}
        {mayEdit ? null : <Evidence club={club.slug} page={page} />}
        {own && !mayEdit ? <WaitingPhotos club={club.slug} /> : null}
        {decides ? <DecisionForm submission={submission} action={actions.decide} /> : null}
        {steps.includes("withdraw") && !mayEdit ? (
          <section aria-labelledby="withdraw">
            <SectionHead id="withdraw" title="Take it back" />
            <EditForm action={actions.withdraw} submit="Withdraw" weight="plain" version={submission.version}>
              <TextArea name="text" label="Why, if you like" rows={2} />
            </EditForm>
          </section>
        ) : null}
        {submission.status === "accepted" && submission.supersededBy === undefined && (own || reviewer) ? (
          <section aria-labelledby="correct">
            <SectionHead id="correct" title="Something in it is wrong" />
            <p className="max-w-prose pb-3">
              What is accepted is never changed: a correction takes its place, and both stay readable.
            </p>
            <EditForm action={actions.correct} submit="Correct it" weight="plain">
              {null}
            </EditForm>
          </section>
        ) : null}
        <p>
          <a href={carPath(club.slug, car.reference)}>The record of {car.chassis}</a>
        </p>
      </div>
    </>
  );
}

function Decided({ submission, club }: { readonly submission: SubmissionView; readonly club: string }) {
  const { decision, status, supersededBy, supersedes } = submission;
  return (
    <div className="grid gap-3 empty:hidden">
      {decision === undefined ? null : (
        <Notice
          tone="note"
          text={{
            what: `${submissionStatusWords[status]} by ${decision.by}, ${dayOf(decision.at)}.`,
            remedy: decision.reason,
          }}
        />
      )}
      {supersededBy === undefined ? null : (
        <p>
          <a href={submissionPath(club, supersededBy)}>A correction</a> has taken the place of this one.
        </p>
      )}
      {supersedes === undefined ? null : (
        <p>
          This corrects <a href={submissionPath(club, supersedes)}>an accepted change</a>, and takes its place
          once it is accepted itself.
        </p>
      )}
    </div>
  );
}

function Thread({ submission: { thread } }: { readonly submission: SubmissionView }) {
  if (thread.length === 0) return null;
  return (
    <section aria-labelledby="thread">
      <SectionHead id="thread" title="Question and answer" />
      <ol className="grid max-w-prose gap-3">
        {thread.map(({ id, name, own, text, at }) => (
          <li key={id} className={`border-l-4 pl-4 ${own ? "border-ink" : "border-line"}`}>
            <p className="text-small text-soft">
              {own ? "You" : name}, {dayOf(at)}
            </p>
            <p className="whitespace-pre-wrap">{text}</p>
          </li>
        ))}
      </ol>
    </section>
  );
}

/** What came of photos that were sent without a script. */
function PhotosSent({ sent: { added = 0, outcome } }: { readonly sent: Sent }) {
  if (outcome) return <Notice text={outcome.text} />;
  if (added === 0) return null;
  return (
    <p role="status" className="max-w-prose border-ink border-l-4 py-1 pl-4 font-semibold">
      {added === 1 ? "One photo or document was added." : `${added} photos and documents were added.`}
    </p>
  );
}
