import type { ChainReport } from "@trunnion/api";
import type { ReactNode } from "react";
import { Button } from "../../components/button";
import { journalEntryPath, journalPath } from "../../lib/path";
import { LocalTime } from "./local-time";

export interface ChainProps {
  readonly club: string;
  /** What was found, where it was just worked out. */
  readonly report?: ChainReport;
}

const problems = {
  hash: "its content is not what was hashed when it was written",
  link: "it does not follow the entry before it",
  gap: "an entry before it is missing",
} as const;

/** Whether nobody changed the journal behind its back; worked out when asked for. */
export function Chain({ club, report }: ChainProps): ReactNode {
  return (
    <section aria-label="Chain of the journal" className="grid max-w-prose gap-3">
      {report === undefined ? null : <Found club={club} report={report} />}
      <form action={journalPath(club)} className="print:hidden">
        <Button name="check" value="chain">
          Check the chain
        </Button>
      </form>
      <p className="text-fine text-soft">
        Every entry carries a hash of itself and of the one before: what is changed or taken out later breaks
        the chain. Checking works them out again.
      </p>
    </section>
  );
}

const count = new Intl.NumberFormat("en-GB");

function Found({
  club,
  report: { breaks, from, last },
}: {
  readonly club: string;
  readonly report: ChainReport;
}): ReactNode {
  if (last === undefined) return <p role="status">The journal is empty: there is nothing to check.</p>;
  if (breaks.length > 0) {
    return (
      <div role="status" className="border-red border-l-4 pl-3">
        <p className="font-semibold">
          The chain does not hold. Somebody changed the journal in the database itself.
        </p>
        <ul>
          {breaks.map(({ sequence, problem }) => (
            <li key={sequence}>
              <a href={journalEntryPath(club, sequence)}>Entry {sequence}</a>: {problems[problem]}
            </li>
          ))}
        </ul>
        <p>Keep a copy of the database as it is, and compare with a backup from before.</p>
      </div>
    );
  }
  const entries = last.sequence - from + 1;
  return (
    <div role="status">
      <p className="font-semibold">
        The chain holds: {count.format(entries)} {entries === 1 ? "entry" : "entries"}, from{" "}
        {from === 1 ? "the first" : `no. ${from}`} to no. {last.sequence}.
      </p>
      {from === 1 ? null : (
        <p>
          Those before are too many to wait for here: <code>trunnion check</code> works all of them out.
        </p>
      )}
      <p>
        The last was written on <LocalTime at={last.at} />. Its hash, kept somewhere else, proves later that
        nothing before it was changed: <code className="break-all text-small">{last.hash}</code>
      </p>
    </div>
  );
}
