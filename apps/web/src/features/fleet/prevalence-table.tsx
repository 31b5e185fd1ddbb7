import type { PrevalenceRow } from "@trunnion/api";
import type { ReactNode } from "react";
import { CountBar } from "../../components/plot/count-bar";
import { sayCars, sayCount } from "../../lib/car-count";

/** Cars below which a share says little. */
const FEW = 10;

/** "14 of 52 cars, 27 %"; of few cars without the share, and said so. */
export function sayShare({ differs, compared }: Pick<PrevalenceRow, "differs" | "compared">): string {
  if (compared === 0) return "nothing to compare with";
  const of = `${sayCount(differs)} of ${sayCars(compared)}`;
  return compared < FEW ? `${of}: few` : `${of}, ${Math.round((100 * differs) / compared)} %`;
}

/** "1989 to 2021: 34 changes"; empty where none is dated. */
function sayChanges({ changed }: PrevalenceRow): string {
  const [first] = changed;
  const last = changed.at(-1);
  if (first === undefined || last === undefined) return "";
  const count = changed.reduce((sum, { cars }) => sum + cars, 0);
  const when = first.year === last.year ? `${first.year}` : `${first.year} to ${last.year}`;
  return `${sayCount(count)} ${count === 1 ? "change" : "changes"}, ${when}`;
}

export interface PrevalenceTableProps<T extends PrevalenceRow> {
  readonly caption: string;
  readonly rows: readonly T[];
  readonly href: (key: string) => string;
  /** The cars that differ, as a list; left out where no car may be named. */
  readonly carsHref?: (key: string) => string | undefined;
  /** A further column. */
  readonly own?: { readonly head: string; readonly cell: (row: T) => ReactNode };
}

/** Picture and table in one: each characteristic, how many of the cars compared differ, drawn beside it. */
export function PrevalenceTable<T extends PrevalenceRow>({
  caption,
  rows,
  href,
  carsHref = () => undefined,
  own,
}: PrevalenceTableProps<T>) {
  const further = own ?? { head: "Changes with a date", cell: sayChanges };
  return (
    <table className="stack-table even-table">
      <caption className="sr-only">{caption}</caption>
      <thead>
        <tr>
          <th scope="col">Characteristic</th>
          <th scope="col">Differs on</th>
          <th scope="col" className="bar-cell">
            <span className="sr-only">Drawn</span>
          </th>
          <th scope="col">Most often instead</th>
          <th scope="col">{further.head}</th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={row.key}>
            <th scope="row" className="font-normal">
              <a href={href(row.key)}>{row.label}</a>
            </th>
            <td data-label="Differs on">
              <Share row={row} href={row.differs === 0 ? undefined : carsHref(row.key)} />
              {row.known === row.compared ? null : (
                <span className="block text-fine text-soft">known of {sayCount(row.known)}</span>
              )}
            </td>
            <td className="bar-cell">{row.compared === 0 ? null : <ShareBar row={row} />}</td>
            <td data-label="Most often instead">
              {row.commonest === undefined ? "" : `${row.commonest.said}, on ${sayCars(row.commonest.cars)}`}
            </td>
            <td data-label={further.head}>{further.cell(row)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Share({ row, href }: { readonly row: PrevalenceRow; readonly href: string | undefined }) {
  return href === undefined ? sayShare(row) : <a href={href}>{sayShare(row)}</a>;
}

function ShareBar({ row: { key, compared, differs } }: { readonly row: PrevalenceRow }) {
  const parts = { differs, asSpecified: compared - differs, accepted: 0, notCompared: 0 };
  return <CountBar id={`share-${key.replaceAll(".", "-")}`} row={parts} most={compared} />;
}
