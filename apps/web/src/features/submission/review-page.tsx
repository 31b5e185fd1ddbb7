import type { ReviewQueue, SubmissionBrief } from "@trunnion/api";
import { PageHead, SectionHead } from "../../components/page-head";
import { SmallPlate } from "../../components/plate";
import { sideWords } from "../../lib/assembly";
import type { FormAction } from "../../lib/form-state";
import { deskPath, noticesPath, submissionPath } from "../../lib/path";
import { QueueForm } from "./queue-form";

export interface ReviewPageProps {
  readonly club: string;
  readonly queue: ReviewQueue;
  /** What was just decided, and of how many or which. */
  readonly done: string;
  readonly last: string;
  readonly action: FormAction;
}

const doneWords: Readonly<Record<string, string>> = {
  accept: "Accepted",
  decline: "Declined",
  query: "Asked",
};

function outcome(done: string, last: string): string {
  const what = doneWords[done];
  if (what === undefined) return "";
  return /^\d+$/.test(last) && last !== "1" ? `${what}: ${last} submissions.` : `${what}.`;
}

/** What waits for a decision, longest waiting first, with the difference each makes; several can be decided at once. */
export function ReviewPage({ club, queue, done, last, action }: ReviewPageProps) {
  const { waiting, asked, total } = queue;
  const told = outcome(done, last);
  const lead =
    total === 0
      ? "Nothing waits for you."
      : total === 1
        ? "1 change waits."
        : `${total} changes wait, the longest first.`;
  return (
    <>
      <PageHead title="Review" back={{ href: deskPath(club), label: "Desk" }} lead={lead}>
        <a href={noticesPath(club)} className="inline-flex min-h-11 items-center">
          Messages sent
        </a>
      </PageHead>
      <p role="status" className="border-ink border-l-4 py-1 pl-4 font-semibold empty:hidden">
        {told}
      </p>
      <div className="grid gap-10 pt-4">
        {waiting.length === 0 ? null : (
          <QueueForm
            club={club}
            waiting={waiting}
            sideWords={sideWords[queue.club.sideWords]}
            action={action}
          />
        )}
        {asked.length === 0 ? null : (
          <section aria-labelledby="asked">
            <SectionHead id="asked" title="Waiting for the owner" />
            <SubmissionList club={club} submissions={asked} />
          </section>
        )}
      </div>
    </>
  );
}

/** Submissions, a line each. */
export function SubmissionList({
  club,
  submissions,
}: {
  readonly club: string;
  readonly submissions: readonly SubmissionBrief[];
}) {
  return (
    <ul>
      {submissions.map(({ id, car, what, on, lastSaid, madeBy }) => (
        <li key={id} className="flex flex-wrap items-center gap-x-6 gap-y-1 border-hair border-b py-2">
          <SmallPlate chassis={car.chassis} href={submissionPath(club, id)} />
          <span className="grow">
            <a href={submissionPath(club, id)}>{what}</a>
            <span className="block text-small text-soft">
              {madeBy}, {on}
              {lastSaid === "" ? "" : `: ${lastSaid}`}
            </span>
          </span>
        </li>
      ))}
    </ul>
  );
}
