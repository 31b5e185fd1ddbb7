import type { Spread, SpreadFigures } from "@trunnion/api";
import { type SpreadRow, standings, standingWords, type ValueAxis } from "@trunnion/register";
import { Figure } from "../../components/figure";
import { SectionHead } from "../../components/page-head";
import { CountBar } from "../../components/plot/count-bar";
import { Legend } from "../../components/plot/hatch";
import {
  type ClassRow,
  DRAWN_LIMITS,
  Histogram,
  type LimitMark,
  standingLegend,
} from "../../components/plot/histogram";
import { sayCount } from "../../lib/car-count";
import type { FleetQuery } from "../../lib/path";
import { differingPath } from "./differing";

interface ValueSectionProps {
  readonly page: Spread;
  readonly axis: ValueAxis | undefined;
  readonly query: FleetQuery;
}

/** How often which value: a histogram over the limits, or each value with its bar. */
export function ValueSection({ page, axis, query }: ValueSectionProps) {
  const { rows, as, figures, absent, further, characteristic, club } = page;
  const cars = rows.some(({ differs }) => differs > 0)
    ? differingPath(club.slug, characteristic.key, query)
    : undefined;
  return (
    <section aria-labelledby="spread" className="grid grid-cols-1 gap-4">
      <SectionHead id="spread" title="How it is spread" />
      {figures === undefined ? null : <Figures figures={figures} absent={absent} />}
      <Legend id="spread-legend" entries={standingLegend(rows, sayCount)} />
      {as === "classes" && axis !== undefined ? (
        <Classes rows={rows} axis={axis} page={page} />
      ) : (
        <EachTable rows={rows} />
      )}
      {cars === undefined ? null : (
        <a
          href={cars}
          className="print:hidden inline-flex min-h-11 items-center justify-self-start text-small underline underline-offset-4"
        >
          The cars on which it differs
        </a>
      )}
      {further ? (
        <p className="text-small">
          There are more kinds of value than the {rows.length} commonest shown here.
        </p>
      ) : null}
    </section>
  );
}

function Figures({ figures, absent }: { readonly figures: SpreadFigures; readonly absent: number }) {
  const { count, median, lower, upper, least, most, scale } = figures;
  return (
    <p className="max-w-prose">
      Median <strong>{median}</strong>. Half of the {sayCount(count)} values lie from {lower} to {upper}, all
      of them from {least} to {most}
      {scale === undefined ? "" : `; robust standard deviation ${scale}`}.
      {absent === 0 ? "" : ` On ${sayCount(absent)} more it is not fitted.`}
    </p>
  );
}

function limitMarks({ limits }: Spread): readonly LimitMark[] {
  const drawn = limits.filter(
    ({ lower, upper, at }) => lower !== undefined || upper !== undefined || at !== undefined,
  );
  return drawn.map(({ series, cars, lower, upper, at }) => ({
    label: cars === "" ? series : `${series}, ${cars}`,
    ...(lower === undefined ? {} : { lower }),
    ...(upper === undefined ? {} : { upper }),
    ...(at === undefined ? {} : { at }),
  }));
}

const isClass = (row: SpreadRow): row is ClassRow => row.from !== undefined && row.to !== undefined;

interface ClassesProps {
  readonly rows: readonly SpreadRow[];
  readonly axis: ValueAxis;
  readonly page: Spread;
}

function Classes({ rows, axis, page }: ClassesProps) {
  const marks = limitMarks(page);
  return (
    <figure className="grid content-start gap-2">
      <Histogram id="spread-plot" rows={rows.filter(isClass)} axis={axis} limits={marks} />
      <figcaption className="max-w-prose text-small text-soft">
        Values by class; a value on an edge is in the class above it. Brackets are limits, notches nominals,
        of the specifications{marks.length > DRAWN_LIMITS ? ": the first five; all stand below" : ""}.
      </figcaption>
      <details className="print-open text-small">
        <summary className="print:hidden min-h-11 cursor-pointer py-2">As a table</summary>
        <ClassTable rows={rows} />
      </details>
    </figure>
  );
}

/** The figures of the drawing, to the last one. */
export function ClassTable({ rows }: { readonly rows: readonly SpreadRow[] }) {
  return (
    <div className="overflow-x-auto">
      <table className="plain-table">
        <caption className="sr-only">Values by class and by how they stand against factory</caption>
        <thead>
          <tr>
            <th scope="col">From, up to</th>
            <th scope="col" className="num">
              Values
            </th>
            {standings.map((standing) => (
              <th key={standing} scope="col" className="num">
                {standingWords[standing]}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.label}>
              <th scope="row" className="whitespace-nowrap font-normal">
                {row.label}
              </th>
              <td className="num">{row.count}</td>
              {standings.map((standing) => (
                <td key={standing} className="num">
                  {row[standing]}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

/** Picture and table in one: each kind of value with its count and its bar. */
export function EachTable({ rows }: { readonly rows: readonly SpreadRow[] }) {
  const most = Math.max(1, ...rows.map(({ count }) => count));
  const total = rows.reduce((sum, { count }) => sum + count, 0);
  return (
    <table className="plain-table bar-table">
      <caption className="sr-only">Each kind of value with how many there are</caption>
      <thead>
        <tr>
          <th scope="col">Value</th>
          <th scope="col" className="num">
            Values
          </th>
          <th scope="col" className="num">
            Share
          </th>
          <th scope="col" className="bar-cell">
            <span className="sr-only">Drawn</span>
          </th>
          <th scope="col" className="num">
            Differ
          </th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row, index) => (
          <tr key={row.label}>
            <th scope="row" className="font-normal">
              <Figure text={row.label} column />
            </th>
            <td className="num">{sayCount(row.count)}</td>
            <td className="num whitespace-nowrap text-soft">{Math.round((100 * row.count) / total)} %</td>
            <td className="bar-cell">
              <CountBar id={`each-${index}`} row={row} most={most} />
            </td>
            <td className="num">
              {row.differs === 0 ? <span className="text-soft">none</span> : sayCount(row.differs)}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
