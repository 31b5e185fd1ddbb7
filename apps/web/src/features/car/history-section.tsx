import type { Known } from "@trunnion/register";
import type { ReactNode } from "react";
import { SectionHead } from "../../components/page-head";
import { Provenance } from "../../components/provenance";

/** One thing that happened to the car. */
export interface HistoryLine {
  readonly key: string;
  /** As written: "c. 1971", "12 April 2026". */
  readonly on: string;
  readonly title: string;
  readonly text?: string;
  /** What it changed, as written. */
  readonly changes?: readonly { readonly label: string; readonly before: string; readonly after: string }[];
  readonly known?: Known;
  /** What supports it. */
  readonly support?: ReactNode;
}

/** What became of the car, latest first, down one line. */
export function HistorySection({
  lines,
  children,
}: {
  readonly lines: readonly HistoryLine[];
  /** Beside the heading: where notes are added. */
  readonly children?: ReactNode;
}) {
  return (
    <section aria-labelledby="history">
      <SectionHead id="history" title="History">
        {children}
      </SectionHead>
      {lines.length === 0 ? (
        <p>Nothing is recorded but that the car was built.</p>
      ) : (
        <ol className="history">
          {lines.map((line) => (
            <Line key={line.key} line={line} />
          ))}
        </ol>
      )}
    </section>
  );
}

function Line({ line }: { readonly line: HistoryLine }) {
  return (
    <li>
      <p className="history-on">{line.on}</p>
      <div className="max-w-prose">
        <h3>{line.title}</h3>
        {line.text === undefined ? null : <p className="whitespace-pre-line">{line.text}</p>}
        {line.changes === undefined || line.changes.length === 0 ? null : (
          <ul className="text-small">
            {line.changes.map(({ label, before, after }) => (
              <li key={label}>
                {label}: {before === "" ? "not recorded" : before} <span aria-hidden>→</span>
                <span className="sr-only">to</span> <strong>{after}</strong>
              </li>
            ))}
          </ul>
        )}
        {line.known === undefined ? null : <Provenance known={line.known} />}
        {line.support}
      </div>
    </li>
  );
}
