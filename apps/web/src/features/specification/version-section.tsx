import type { VersionLine } from "@trunnion/api";
import { SectionHead } from "../../components/page-head";
import { sayLongDay } from "../../lib/day";
import { specificationComparePath, specificationPath } from "../../lib/path";

const statusWords = { draft: "draft", current: "current", superseded: "superseded" } as const;

/** What a version's dates say: since when it is current, or from when to when it was. */
function sayWhen({ status, begun, madeCurrent, superseded }: VersionLine): string {
  const since = sayLongDay(madeCurrent ?? begun);
  if (status === "draft") return `begun ${sayLongDay(begun)}`;
  return superseded === undefined ? `since ${since}` : `${since} to ${sayLongDay(superseded)}`;
}

export interface VersionSectionProps {
  readonly club: string;
  readonly series: string;
  readonly versions: readonly VersionLine[];
  readonly shown: number | undefined;
}

/** Every version of a series' specification: who, when, why, and what each changed. */
export function VersionSection({ club, series, versions, shown }: VersionSectionProps) {
  return (
    <section aria-labelledby="versions" className="print:hidden">
      <SectionHead id="versions" title="Versions" />
      <table className="list-table">
        <caption className="sr-only">Versions of the specification, latest first</caption>
        <thead>
          <tr>
            <th scope="col">Version</th>
            <th scope="col">Status</th>
            <th scope="col">When</th>
            <th scope="col">Entries</th>
            <th scope="col">By</th>
            <th scope="col">Why</th>
            <th scope="col">
              <span className="sr-only">Differences</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {versions.map((line, index) => (
            <tr key={line.version} {...(line.version === shown ? { "aria-current": "true" as const } : {})}>
              <th scope="row" className="list-lead font-normal">
                <a
                  href={specificationPath(club, series, line.version)}
                  className="inline-flex min-h-11 items-center"
                >
                  Version {line.version}
                </a>
              </th>
              <td className={line.status === "superseded" ? "text-soft" : "font-semibold"}>
                {statusWords[line.status]}
              </td>
              <td>{sayWhen(line)}</td>
              <td>
                {line.entries}
                <span className="wide:sr-only"> entries</span>
              </td>
              <td>{line.by === "" ? <span className="text-soft">command line</span> : line.by}</td>
              <td className="list-strip">
                {line.note}
                {line.copiedFrom === undefined ? null : (
                  <span className="block text-fine text-soft">
                    begun as a copy of {line.copiedFrom.series}, version {line.copiedFrom.version}
                  </span>
                )}
              </td>
              <td>
                <EarlierLink club={club} series={series} line={line} earlier={versions[index + 1]} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

interface EarlierLinkProps {
  readonly club: string;
  readonly series: string;
  readonly line: VersionLine;
  readonly earlier: VersionLine | undefined;
}

function EarlierLink({ club, series, line, earlier }: EarlierLinkProps) {
  if (earlier === undefined) return null;
  const query = { before: `${series}@${earlier.version}`, after: `${series}@${line.version}` };
  return (
    <a href={specificationComparePath(club, query)} className="inline-flex min-h-11 items-center">
      Differences from {earlier.version}
    </a>
  );
}
