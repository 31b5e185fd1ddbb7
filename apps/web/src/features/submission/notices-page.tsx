import type { NoticeLine } from "@trunnion/api";
import { sayDay } from "@trunnion/register";
import { PageHead } from "../../components/page-head";
import { deskPath, submissionPath } from "../../lib/path";

function sayStanding({ standing, problem }: NoticeLine): string {
  const because = problem === undefined ? "" : `: ${problem}`;
  if (standing.kind === "sent") return `Sent (${standing.by}), ${sayDay(standing.at.slice(0, 10))}`;
  if (standing.kind === "givenUp") return `Given up after ${standing.tries} tries${because}`;
  return standing.tries === 0
    ? "Waits to be sent"
    : `Waits for another try, after ${standing.tries}${because}`;
}

/** What members were told, and whether it went out. */
export function NoticesPage({
  club,
  notices,
}: {
  readonly club: string;
  readonly notices: readonly NoticeLine[];
}) {
  return (
    <>
      <PageHead
        title="Messages"
        back={{ href: deskPath(club), label: "Desk" }}
        lead={notices.length === 0 ? "No messages yet." : "What was told of submissions, the latest first."}
      />
      <ul className="grid max-w-3xl">
        {notices.map((notice) => (
          <li key={notice.id} className="grid gap-1 border-hair border-b py-3">
            <h2 className="text-lead">
              <a href={submissionPath(club, notice.submissionId)}>{notice.subject}</a>
            </h2>
            <p className="text-small text-soft">
              To {notice.to}, {sayDay(notice.at.slice(0, 10))}. {sayStanding(notice)}.
            </p>
            <p className="max-w-prose whitespace-pre-wrap">{notice.text}</p>
          </li>
        ))}
      </ul>
    </>
  );
}
