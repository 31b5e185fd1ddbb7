import type { ImportLine } from "@trunnion/api";
import { type RefusalText, registerFileBytes } from "@trunnion/register";
import { Button } from "../../components/button";
import { Notice } from "../../components/notice";
import { PageHead, SectionHead } from "../../components/page-head";
import type { ClubFace } from "../../components/shell/shell";
import { deskPath, importFormPath, importPath } from "../../lib/path";
import { DropZone } from "./drop-zone";
import { sayCounts, sayStatus } from "./status";

export interface ImportsPageProps {
  readonly club: ClubFace;
  readonly imports: readonly ImportLine[];
  /** Why the file that was just sent was not taken. */
  readonly refusal?: RefusalText;
}

const ACCEPT =
  ".csv,.tsv,.txt,.xlsx,.ods,text/csv,application/vnd.openxmlformats-officedocument.spreadsheetml.sheet,application/vnd.oasis.opendocument.spreadsheet";

function FileForm({ club }: { readonly club: string }) {
  return (
    <DropZone action={importFormPath(club)}>
      <div className="grid gap-1">
        <label htmlFor="import-file" className="font-semibold">
          File
        </label>
        <input
          id="import-file"
          type="file"
          name="file"
          accept={ACCEPT}
          aria-describedby="import-hint"
          className="field"
        />
        <p id="import-hint" className="text-fine text-soft">
          CSV, XLSX or ODS, up to {registerFileBytes / 1e6} MB and 200,000 rows, with a line of headings.
          <span className="scriptless:hidden"> Or drop it anywhere on this page.</span>
        </p>
      </div>
      <details>
        <summary className="min-h-11 py-2 font-semibold">Or paste a table</summary>
        <div className="grid gap-1 pt-2">
          <label htmlFor="import-pasted">Copied from a spreadsheet, its headings first</label>
          <textarea id="import-pasted" name="pasted" rows={6} className="field" />
        </div>
      </details>
      <div>
        <Button weight="mark">Read it</Button>
        <p className="pt-2 text-fine text-soft">
          Nothing is written yet: first you settle what its columns hold, and see what would change.
        </p>
      </div>
    </DropZone>
  );
}

/** Choose a file to read in, and what was read in before. */
export function ImportsPage({ club, imports, refusal }: ImportsPageProps) {
  return (
    <>
      <PageHead title="Read in a list of cars" back={{ href: deskPath(club.slug), label: "Desk" }} />
      <div className="grid gap-10">
        <div className="grid gap-5">
          {refusal === undefined ? null : <Notice text={refusal} />}
          <FileForm club={club.slug} />
        </div>
        <section aria-labelledby="earlier">
          <SectionHead id="earlier" title="Imports" />
          {imports.length === 0 ? (
            <p className="text-soft">None yet.</p>
          ) : (
            <table className="list-table">
              <thead>
                <tr>
                  <th scope="col">File</th>
                  <th scope="col">When</th>
                  <th scope="col">How it stands</th>
                  <th scope="col">What it did</th>
                </tr>
              </thead>
              <tbody>
                {imports.map((line) => (
                  <tr key={line.id}>
                    <th scope="row" className="list-lead">
                      <a
                        href={importPath(club.slug, line.id)}
                        className="inline-flex min-h-11 items-center break-all"
                      >
                        {line.file}
                      </a>
                    </th>
                    <td>{line.recordedAt.toISOString().slice(0, 16).replace("T", " ")} UTC</td>
                    <td>{sayStatus(line)}</td>
                    <td>{line.status === "planned" && line.stage !== "looked" ? "" : sayCounts(line)}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          )}
        </section>
      </div>
    </>
  );
}
