import type { Spread } from "@trunnion/api";
import type { ValueAxis, YearTable } from "@trunnion/register";
import { SectionHead } from "../../components/page-head";
import { Legend } from "../../components/plot/hatch";
import { QuartilePlot, SharePlot, shareHatches } from "../../components/plot/year-plot";

interface YearSectionProps {
  readonly page: Spread;
  readonly axis: ValueAxis | undefined;
}

/** Fewer values than this in a year say little of it. */
const FEW = 5;

/** The same by year of building and by year in which it was measured or fitted. */
export function YearSection({ page, axis }: YearSectionProps) {
  const { built, recorded } = page;
  if (built.rows.length === 0 && recorded.rows.length === 0) return null;
  return (
    <section aria-labelledby="years" className="grid grid-cols-1 gap-4">
      <SectionHead id="years" title="Over the years" />
      <div className="grid grid-cols-1 gap-10 wide:grid-cols-2">
        <YearFigure
          id="recorded"
          title="By the year it was measured or fitted"
          text="Every reading and every change, those that were changed again since among them."
          table={recorded}
          axis={axis}
        />
        <YearFigure
          id="built"
          title="By the year the car was built"
          text="What the cars have now; cars whose year of building is not certain are left out."
          table={built}
          axis={axis}
        />
      </div>
    </section>
  );
}

interface YearFigureProps {
  readonly id: string;
  readonly title: string;
  readonly text: string;
  readonly table: YearTable;
  readonly axis: ValueAxis | undefined;
}

function YearFigure({ id, title, text, table, axis }: YearFigureProps) {
  const few = table.rows.filter(({ count }) => count < FEW).length;
  return (
    <figure className="grid content-start gap-2">
      <figcaption>
        <span className="font-semibold">{title}</span>
        <span className="block max-w-prose text-small text-soft">
          {text}
          {few === 0
            ? ""
            : ` ${few === 1 ? "One year has" : `${few} years have`} fewer than ${FEW} values: they say little.`}
        </span>
      </figcaption>
      {table.rows.length === 0 ? (
        <p className="text-small">Nothing with a year.</p>
      ) : (
        <YearPlot id={id} table={table} axis={axis} />
      )}
      {table.rows.length === 0 ? null : (
        <details className="print-open text-small">
          <summary className="print:hidden min-h-11 cursor-pointer py-2">As a table</summary>
          <YearRows title={title} table={table} />
        </details>
      )}
    </figure>
  );
}

function YearPlot({ id, table, axis }: Pick<YearFigureProps, "id" | "table" | "axis">) {
  if (table.as === "quartiles")
    return axis === undefined ? null : <QuartilePlot rows={table.rows} axis={axis} />;
  const last = table.names.length - 1;
  const used = table.names.flatMap((label, kind) => {
    const some = table.rows.some(({ counts }) => (counts[kind] ?? 0) > 0);
    const hatch = kind === last ? ("open" as const) : (shareHatches[kind] ?? "open");
    return some ? [{ hatch, label }] : [];
  });
  return (
    <>
      <Legend id={`${id}-legend`} entries={used} />
      <SharePlot id={`${id}-plot`} rows={table.rows.map((row) => spreadOut(row, last))} />
    </>
  );
}

/** The last count is of all other kinds, and has the last filling however few kinds are named. */
function spreadOut(
  row: { readonly year: number; readonly count: number; readonly counts: readonly number[] },
  last: number,
) {
  const named = row.counts.slice(0, last);
  const gap = Array.from({ length: shareHatches.length - 1 - named.length }, () => 0);
  return { ...row, counts: [...named, ...gap, row.counts[last] ?? 0] };
}

/** The figures of the drawing. */
export function YearRows({ title, table }: { readonly title: string; readonly table: YearTable }) {
  return (
    <div className="overflow-x-auto">
      <table className="plain-table">
        <caption className="sr-only">{title}</caption>
        <thead>
          <tr>
            <th scope="col">Year</th>
            <th scope="col" className="num">
              Values
            </th>
            {table.as === "quartiles" ? (
              <th scope="col">Median (half lie between)</th>
            ) : (
              table.names.map((name) => (
                <th key={name} scope="col" className="num">
                  {name}
                </th>
              ))
            )}
          </tr>
        </thead>
        <tbody>
          {table.as === "quartiles"
            ? table.rows.map(({ year, count, said }) => (
                <tr key={year}>
                  <th scope="row" className="font-normal">
                    {year}
                  </th>
                  <td className="num">{count}</td>
                  <td>{said}</td>
                </tr>
              ))
            : table.rows.map(({ year, count, counts }) => (
                <tr key={year}>
                  <th scope="row" className="font-normal">
                    {year}
                  </th>
                  <td className="num">{count}</td>
                  {counts.map((one, kind) => (
                    // biome-ignore lint/suspicious/noArrayIndexKey: a kind has no name but its place
                    <td key={kind} className="num">
                      {one}
                    </td>
                  ))}
                </tr>
              ))}
        </tbody>
      </table>
    </div>
  );
}
