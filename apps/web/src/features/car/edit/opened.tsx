export interface OpenedProps {
  /** Last place in the journal that spoke of the car; left out where there is no car. */
  readonly at?: number;
  readonly fields: Readonly<Record<string, string>>;
}

/** What the form was opened with, sent along: so that somebody else's change can be shown beside it. */
export function Opened({ at, fields }: OpenedProps) {
  return (
    <>
      {at === undefined ? null : <input type="hidden" name="openedAt" value={at} />}
      {Object.entries(fields).map(([name, value]) => (
        <input key={name} type="hidden" name={`opened.${name}`} value={value} />
      ))}
    </>
  );
}
