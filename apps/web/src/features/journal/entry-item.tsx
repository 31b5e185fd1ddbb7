import type { JournalItem } from "@trunnion/api";
import type { ReactNode } from "react";
import { carPath, journalEntryPath } from "../../lib/path";
import { LocalTime } from "./local-time";

/** Who did it: a member by name, also one who has left. */
export function Who({ who }: Pick<JournalItem, "who">): ReactNode {
  return (
    <>
      {who.name}
      {who.left ? <span className="text-soft"> (left the club)</span> : null}
    </>
  );
}

/** What an entry changed, field by field in words. */
export function Changes({ changes }: Pick<JournalItem, "changes">): ReactNode {
  if (changes.length === 0) return null;
  return (
    <ul className="text-small">
      {changes.map(({ label, before, after }) => (
        <li key={label}>
          {label}: {before === "" ? null : <Before text={before} />}
          {after === "" ? (
            <span className="text-soft">{before === "" ? "" : "nothing"}</span>
          ) : (
            <strong>{after}</strong>
          )}
        </li>
      ))}
    </ul>
  );
}

function Before({ text }: { readonly text: string }): ReactNode {
  return (
    <>
      {text} <span aria-hidden>→</span>
      <span className="sr-only">to</span>{" "}
    </>
  );
}

export interface EntryItemProps {
  readonly club: string;
  readonly item: JournalItem;
  /** On a car's own journal its name is said once, at the head. */
  readonly nameCar: boolean;
}

/** One entry: when and who, what and why, before and after. */
export function EntryItem({ club, item, nameCar }: EntryItemProps): ReactNode {
  const { sequence, at, what, car, file, reason, changes } = item;
  return (
    <li className="journal-entry">
      <p className="journal-when">
        <LocalTime at={at} />
        <span className="block text-small">
          <Who who={item.who} />
        </span>
      </p>
      <div className="min-w-0">
        <h3>
          {what}
          {car === undefined || !nameCar ? null : (
            <>
              : <a href={carPath(club, car.reference)}>{car.chassis}</a>
            </>
          )}
        </h3>
        {reason === undefined ? null : <p>{reason}</p>}
        {file === undefined || reason?.includes(file) ? null : (
          <p className="text-small text-soft">Read in from {file}</p>
        )}
        <Changes changes={changes} />
      </div>
      <p className="journal-place text-fine">
        <a href={journalEntryPath(club, sequence)}>
          <span className="sr-only">Entry </span>no. {sequence}
        </a>
      </p>
    </li>
  );
}
