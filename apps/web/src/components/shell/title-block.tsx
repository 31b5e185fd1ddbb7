export interface TitleBlockProps {
  readonly club: string;
  /** What this sheet is of: "Car", "Event", "Register". */
  readonly kind: string;
  readonly title: string;
  /** Short facts in the block's cells: record version, day, rule set. */
  readonly facts?: readonly { readonly label: string; readonly value: string }[];
  /** What has to be said of the figures on this sheet, numbered beside the block as notes on a drawing are. */
  readonly notes?: readonly string[];
}

/** What every sheet says of the limits of its figures. */
export const generalNote =
  "A record, not a certificate: the organiser's regulations, local codes, and a licensed engineer or competent mechanic decide.";

/** The block in the corner of the sheet: what it is, whose, as of when, and what was assumed. */
export function TitleBlock({ club, kind, title, facts = [], notes = [] }: TitleBlockProps) {
  return (
    <footer className="mt-auto pt-12">
      <div className="grid gap-6 wide:grid-cols-[1fr_minmax(0,36rem)] wide:items-end">
        <section aria-label="Notes" className="max-w-prose text-fine">
          <h2 className="text-soft">Notes</h2>
          <ol className="list-decimal pl-5">
            {[...notes, generalNote].map((note) => (
              <li key={note}>{note}</li>
            ))}
          </ol>
        </section>
        <dl className="title-block">
          <Cell label="Club" value={club} />
          <Cell label={kind} value={title} strong />
          {facts.map((fact) => (
            <Cell key={fact.label} {...fact} />
          ))}
        </dl>
      </div>
    </footer>
  );
}

function Cell({
  label,
  value,
  strong = false,
}: {
  readonly label: string;
  readonly value: string;
  readonly strong?: boolean;
}) {
  return (
    <div>
      <dt className="font-normal text-fine text-soft leading-tight">{label}</dt>
      <dd className={strong ? "font-semibold text-lead" : "text-small"}>{value}</dd>
    </div>
  );
}
