import type { SubmissionPage as Page, SubmissionView } from "@trunnion/api";
import { evidenceTargetReference, sayDay, submissionStatusWords } from "@trunnion/register";
import { EditForm } from "../../components/form/edit-form";
import { TextArea } from "../../components/form/form-field";
import { Notice } from "../../components/notice";
import { PageHead, SectionHead } from "../../components/page-head";
import type { Leader } from "../../components/plan";
import { Plate } from "../../components/plate";
import type { ClubFace } from "../../components/shell/shell";
import { sideWords as words } from "../../lib/assembly";
import type { FormAction } from "../../lib/form-state";
import {
  carPath,
  evidencePath,
  garagePath,
  reviewPath,
  smallPicturePath,
  submissionConsequencePath,
  submissionPath,
  supportPath,
} from "../../lib/path";
import { ConsequencePanel } from "./consequence-panel";
import { DecisionForm } from "./decision-form";
import { DifferenceTable } from "./difference-table";
import { DraftForm } from "./draft-form";

export interface SubmissionPageProps {
  readonly club: ClubFace;
  readonly page: Page;
  readonly leaders: readonly Leader[];
  readonly shown: { readonly assembly: string; readonly find: string };
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
  const { club, page, leaders, shown, actions } = props;
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
          <Said {...props} />
        )}
        <Evidence club={club.slug} page={page} />
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

const yesNo = { yes: "yes", no: "no", "": "not said" } as const;

function Said({ club, page }: SubmissionPageProps) {
  const { submission, lines, proposed, club: facts } = page;
  const { content, problems, id } = submission;
  return (
    <>
      {problems.length === 0 ? null : (
        <Notice
          tone="note"
          text={{
            what: "As the record is now, this cannot be accepted:",
            remedy: "Ask the owner, or decline it with the reason.",
          }}
          details={problems.map(({ message }) => message)}
        />
      )}
      <div className="grid gap-x-12 gap-y-8 wide:grid-cols-[1fr_minmax(0,26rem)]">
        <section aria-labelledby="said" className="grid min-w-0 content-start gap-5">
          <SectionHead id="said" title="What was changed" />
          <DifferenceTable lines={lines} sideWords={words[facts.sideWords]} labelledBy="said" />
          {content.modifications.map((one, place) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a modification has no name of its own and the list never moves
            <dl key={place} className="grid grid-cols-[auto_1fr] gap-x-6 gap-y-1">
              {(
                [
                  ["Fitted", one.fitted],
                  [
                    "Odometer",
                    one.odometer === ""
                      ? ""
                      : `${one.odometer}${/[a-z]/i.test(one.odometer) ? "" : content.units === "metric" ? " km" : " mi"}`,
                  ],
                  ["Donor or supplier", one.donor],
                  ["Why", one.reason],
                  ["Can be put back", yesNo[one.reversible]],
                  ["Old part kept", yesNo[one.oldPartKept]],
                  ["Note", one.note],
                ] as const
              ).map(([name, said]) =>
                said === "" ? null : (
                  <div key={name} className="contents">
                    <dt className="text-soft">{name}</dt>
                    <dd className="whitespace-pre-wrap">{said}</dd>
                  </div>
                ),
              )}
              {one.fasteners.map((fastener, index) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: as above
                <div key={index} className="contents">
                  <dt className="text-soft">Fastener</dt>
                  <dd>
                    {[
                      fastener.place,
                      fastener.count === "" ? "" : `${fastener.count} off`,
                      fastener.thread,
                      fastener.grade,
                      fastener.length === "" ? "" : `${fastener.length} long`,
                      fastener.spacerStack === "" ? "" : `on spacers of ${fastener.spacerStack}`,
                      fastener.note,
                    ]
                      .filter((part) => part !== "")
                      .join(", ")}
                  </dd>
                </div>
              ))}
            </dl>
          ))}
        </section>
        <section aria-labelledby="does" className="grid min-w-0 content-start gap-3">
          <SectionHead id="does" title="What it does" />
          <ConsequencePanel
            proposed={proposed}
            idle={lines.length === 0}
            workingOf={(one) => submissionConsequencePath(club.slug, id, one)}
          />
        </section>
      </div>
    </>
  );
}

function Evidence({ club, page }: { readonly club: string; readonly page: Page }) {
  const { evidence, submission } = page;
  const target = evidenceTargetReference({ kind: "submission", id: submission.id });
  const adds = submission.own && submission.open;
  if (evidence.length === 0 && !adds) return null;
  return (
    <section aria-labelledby="photos">
      <SectionHead id="photos" title="Photos and documents" />
      <ul className="flex flex-wrap gap-4 empty:hidden">
        {evidence.map(({ id, caption, picture, quarterTurns }) => (
          <li key={id}>
            <a href={evidencePath(club, id)} className="grid max-w-40 gap-1 text-small">
              {picture ? (
                // biome-ignore lint/performance/noImgElement: made small by the service already
                <img
                  src={smallPicturePath(club, { id, quarterTurns }, 320)}
                  alt=""
                  className="h-28 w-40 border border-line object-cover"
                />
              ) : null}
              {caption}
            </a>
          </li>
        ))}
      </ul>
      {adds ? (
        <p className="py-2">
          <a href={supportPath(club, target)} className="inline-flex min-h-11 items-center">
            {evidence.length === 0 ? "Add photos" : "Add or order photos"}
          </a>
          <span className="text-small text-soft"> What you typed is saved first.</span>
        </p>
      ) : null}
    </section>
  );
}
