import type { ImportView } from "@trunnion/api";
import { Fragment } from "react";
import { LinkButton } from "../../components/button";
import { SectionHead } from "../../components/page-head";
import { carPath, importProblemsPath } from "../../lib/path";

type Car = ImportView["preview"][number];
type Doubt = ImportView["doubtGroups"][number]["first"][number];

function CarChange({ club, car }: { readonly club: string; readonly car: Car }) {
  return (
    <details className="border-hair border-b py-2" open={!car.added}>
      <summary className="min-h-11 py-2">
        <span className="font-semibold">{car.car}</span>
        <span className="pl-3 text-small text-soft">
          line {car.line}, {car.added ? "new" : "changed"}, {car.lines.length}{" "}
          {car.lines.length === 1 ? "thing" : "things"}
        </span>
      </summary>
      {car.added ? null : (
        <p className="pb-2 text-small">
          <a href={carPath(club, car.car)}>The car as it is now</a>
        </p>
      )}
      <div className="overflow-x-auto">
        <table className="text-small">
          <thead>
            <tr className="border-ink border-b text-left">
              <th scope="col" className="py-1 pr-6">
                What
              </th>
              <th scope="col" className="py-1 pr-6">
                Before
              </th>
              <th scope="col" className="py-1">
                After
              </th>
            </tr>
          </thead>
          <tbody>
            {car.lines.map(({ what, before, after }) => (
              <tr key={what} className="border-hair border-b align-top">
                <th scope="row" className="py-1 pr-6 font-normal">
                  {what}
                </th>
                <td className="py-1 pr-6 text-soft">{before || "–"}</td>
                <td className="whitespace-pre-line py-1">{after}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </details>
  );
}

/** What would change on the cars, before and after. */
export function PreviewSection({ club, view }: { readonly club: string; readonly view: ImportView }) {
  if (view.preview.length === 0) return null;
  const all = view.carsAdded + view.carsChanged;
  return (
    <section aria-labelledby="preview">
      <SectionHead id="preview" title="What would change">
        {all > view.preview.length ? (
          <span className="text-small text-soft">
            the first {view.preview.length} of {all.toLocaleString("en-GB")} cars
          </span>
        ) : null}
      </SectionHead>
      {view.preview.map((car) => (
        <CarChange key={`${car.line}`} club={club} car={car} />
      ))}
    </section>
  );
}

const head = "py-1 pr-6";

/** A thing to look at: where, what stands there, why it is asked about. */
function DoubtRow({ doubt }: { readonly doubt: Doubt }) {
  return (
    <tr className="border-hair border-b align-top">
      <td className={head}>{doubt.line}</td>
      <td className={head}>{doubt.column ?? ""}</td>
      <td className={`${head} break-words font-semibold`}>{doubt.found ?? ""}</td>
      <td className="py-1">{doubt.text}</td>
    </tr>
  );
}

/** What to look at in rows that are taken, the rarest kind first. */
function DoubtTable({ view }: { readonly view: ImportView }) {
  const { doubtGroups, doubts } = view;
  return (
    <div className="overflow-x-auto">
      <table className="w-full text-small">
        <caption className="pb-1 text-left font-semibold">
          {doubts.toLocaleString("en-GB")} {doubts === 1 ? "thing" : "things"} to look at, in rows that are
          taken
        </caption>
        <thead>
          <tr className="border-ink border-b text-left">
            <th scope="col" className={head}>
              Line
            </th>
            <th scope="col" className={head}>
              Column
            </th>
            <th scope="col" className={head}>
              Found
            </th>
            <th scope="col" className="py-1">
              Why it is asked about
            </th>
          </tr>
        </thead>
        <tbody>
          {doubtGroups.map(({ rows, first }) => {
            const more = rows - first.length;
            return (
              <Fragment key={`${first[0]?.line} ${first[0]?.text}`}>
                {first.map((doubt) => (
                  <DoubtRow key={`${doubt.line} ${doubt.column} ${doubt.text}`} doubt={doubt} />
                ))}
                {more === 0 ? null : (
                  <tr className="border-hair border-b">
                    <td />
                    <td colSpan={3} className="py-1 text-soft">
                      and {more.toLocaleString("en-GB")} more of this kind, in the file to download
                    </td>
                  </tr>
                )}
              </Fragment>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}

/** Rows that are left out, and why; and those that are taken but somebody should look at. */
export function RowSection({ club, view }: { readonly club: string; readonly view: ImportView }) {
  const { refusedRows, doubtGroups, rowsRefused } = view;
  if (refusedRows.length === 0 && doubtGroups.length === 0) return null;
  return (
    <section aria-labelledby="rows" className="grid gap-6">
      <SectionHead id="rows" title="Rows to look at">
        <LinkButton href={importProblemsPath(club, view.id)}>Download them as CSV</LinkButton>
      </SectionHead>
      {refusedRows.length === 0 ? null : (
        <div className="overflow-x-auto">
          <table className="w-full text-small">
            <caption className="pb-1 text-left font-semibold">
              {rowsRefused.toLocaleString("en-GB")} {rowsRefused === 1 ? "row is" : "rows are"} left out
            </caption>
            <thead>
              <tr className="border-ink border-b text-left">
                <th scope="col" className="py-1 pr-6">
                  Line
                </th>
                <th scope="col" className="py-1 pr-6">
                  Column
                </th>
                <th scope="col" className="py-1 pr-6">
                  Found
                </th>
                <th scope="col" className="py-1">
                  Expected
                </th>
              </tr>
            </thead>
            <tbody>
              {refusedRows.map(({ line, column, found, expected }) => (
                <tr key={`${line} ${column}`} className="border-hair border-b align-top">
                  <td className="py-1 pr-6">{line}</td>
                  <td className="py-1 pr-6">{column}</td>
                  <td className="break-words py-1 pr-6 font-semibold">{found}</td>
                  <td className="py-1">{expected}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
      {doubtGroups.length === 0 ? null : <DoubtTable view={view} />}
    </section>
  );
}
