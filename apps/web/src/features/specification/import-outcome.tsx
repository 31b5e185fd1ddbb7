import type { SpecificationImport } from "@trunnion/api";
import { Notice } from "../../components/notice";
import { SectionHead } from "../../components/page-head";
import { ChangeList, sayChanges } from "./change-list";

export interface ImportOutcomeProps {
  readonly report: SpecificationImport;
  readonly sideWords: { readonly left: string; readonly right: string };
}

const rows = (count: number) => (count === 1 ? "1 row" : `${count} rows`);

/** What reading a table in would do: every cell that is wrong, or what changes in the draft. */
export function ImportOutcome({ report, sideWords }: ImportOutcomeProps) {
  const { file, problems, changes, contradictions, newSources } = report;
  return (
    <section aria-labelledby="outcome" className="grid gap-6">
      <div>
        <SectionHead id="outcome" title="What it would change" />
        <p>
          {file} has {rows(report.rows)}.{" "}
          {problems.length > 0
            ? "Nothing can be read in yet."
            : `In the draft: ${sayChanges(changes)}; ${report.after} entries in all.`}
        </p>
      </div>
      {problems.length > 0 ? <CellProblems problems={problems} /> : null}
      {newSources.length === 0 || problems.length > 0 ? null : (
        <p>Sources that the club gets with it: {newSources.join(", ")}.</p>
      )}
      {contradictions.length === 0 || problems.length > 0 ? null : (
        <Notice
          tone="note"
          text={{
            what: "The draft would contradict itself.",
            remedy: "It may be read in; the draft cannot be made current before these are mended.",
          }}
          details={[...new Set(contradictions.slice(0, 50))]}
        />
      )}
      {problems.length > 0 || changes.length === 0 ? null : (
        <ChangeList changes={changes} sideWords={sideWords} />
      )}
    </section>
  );
}

/** Most problems shown in the page. */
const SHOWN = 200;

function CellProblems({ problems }: Pick<SpecificationImport, "problems">) {
  const what = problems.length === 1 ? "1 cell is wrong." : `${problems.length} cells are wrong.`;
  return (
    <div>
      <Notice text={{ what, remedy: "Mend them in the file and choose it again; nothing was written." }} />
      <table className="list-table mt-4">
        <caption className="sr-only">Cells that are wrong</caption>
        <thead>
          <tr>
            <th scope="col">Line</th>
            <th scope="col">Column</th>
            <th scope="col">Found</th>
            <th scope="col">What is wrong</th>
          </tr>
        </thead>
        <tbody>
          {problems.slice(0, SHOWN).map(({ line, column, heading, found, message }, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: one cell may be wrong in two ways, and the list never moves
            <tr key={index}>
              <th scope="row" className="font-normal">
                <span className="wide:hidden">Line </span>
                {line}
              </th>
              <td>
                {column} {heading}
              </td>
              <td>{found}</td>
              <td className="list-strip">{message}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {problems.length <= SHOWN ? null : (
        <p className="pt-2 text-small text-soft">The first {SHOWN} are listed.</p>
      )}
    </div>
  );
}
