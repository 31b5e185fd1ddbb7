import type { YearQuartiles, YearShares } from "@trunnion/register";
import { scaleLinear } from "d3-scale";
import { line } from "d3-shape";
import { type Hatch, HatchDefinitions, hatchFill } from "./hatch";
import { stackOf } from "./histogram";
import { axisTicks, type PlotAxis } from "./tick";

const box = { width: 360, left: 62, right: 352, top: 12, bottom: 170, height: 196 } as const;
const r = (value: number) => Math.round(value * 10) / 10;

/** Fillings of the kinds named, the last for all others. */
export const shareHatches: readonly Hatch[] = ["lines", "ink", "dots", "cross", "open"];

function yearScale(years: readonly number[]) {
  const [first, last] = [Math.min(...years), Math.max(...years)];
  return scaleLinear()
    .domain([first - 1, last + 1])
    .range([box.left, box.right]);
}

function Years({ years, x }: { readonly years: readonly number[]; readonly x: (year: number) => number }) {
  const [first, last] = [Math.floor(Math.min(...years)), Math.ceil(Math.max(...years))];
  const step = Math.max(1, Math.ceil((last - first) / 5));
  const told = Array.from(
    { length: Math.floor((last - first) / step) + 1 },
    (_, index) => first + index * step,
  );
  return (
    <>
      <path d={`M${box.left} ${box.bottom}H${box.right}`} className="stroke-ink" />
      {told.map((year) => (
        <g key={year}>
          <path d={`M${r(x(year))} ${box.bottom}v5`} className="stroke-ink" />
          <text x={r(x(year))} y={box.bottom + 18} textAnchor="middle">
            {year}
          </text>
        </g>
      ))}
    </>
  );
}

export interface QuartilePlotProps {
  readonly rows: readonly YearQuartiles[];
  readonly axis: PlotAxis;
}

/** Year by year where the values lie: the stroke from quartile to quartile, a square at the median, joined. */
export function QuartilePlot({ rows, axis }: QuartilePlotProps) {
  const years = rows.map(({ year }) => year);
  const x = yearScale(years);
  const places = rows.flatMap(({ lower, upper }) => [lower, upper]);
  const [least, most] = [Math.min(...places), Math.max(...places)];
  const room = most === least ? Math.max(1, Math.abs(most) / 10) : (most - least) / 10;
  const y = scaleLinear()
    .domain([least - room, most + room])
    .range([box.bottom, box.top]);
  const path = line<YearQuartiles>()
    .x(({ year }) => r(x(year)))
    .y(({ median }) => r(y(median)))(rows);
  return (
    <svg aria-hidden viewBox={`0 0 ${box.width} ${box.height}`} className="plot">
      {axisTicks(axis, [least - room, most + room], 60).map(({ place, label }) => (
        <g key={place}>
          <path d={`M${box.left} ${r(y(place))}H${box.right}`} className="stroke-hair" />
          <text
            x={box.left - 5}
            y={r(y(place)) + 4}
            textAnchor="end"
            className={label.length > 9 ? "plot-fine" : ""}
          >
            {label.replace(" per side", "")}
          </text>
        </g>
      ))}
      <Years years={years} x={x} />
      {path === null ? null : <path d={path} fill="none" className="stroke-soft" strokeDasharray="4 3" />}
      {rows.map(({ year, lower, median, upper }) => (
        <g key={year} data-year={year}>
          <path d={`M${r(x(year))} ${r(y(lower))}V${r(y(upper))}`} className="stroke-ink" strokeWidth="1.6" />
          <rect x={r(x(year)) - 3} y={r(y(median)) - 3} width="6" height="6" className="fill-ink" />
        </g>
      ))}
    </svg>
  );
}

export interface SharePlotProps {
  readonly id: string;
  /** A year, or a part of one: 1971.25 is April. */
  readonly rows: readonly YearShares[];
  /** Years from one bar to the next. */
  readonly step?: number;
}

/** Year by year how many of each kind, one on the other. */
export function SharePlot({ id, rows, step = 1 }: SharePlotProps) {
  const years = rows.map(({ year }) => year);
  const x = yearScale(years);
  const most = Math.max(1, ...rows.map(({ count }) => count));
  const y = scaleLinear().domain([0, most]).range([box.bottom, box.top]);
  const width = Math.min(22, Math.max(1.5, (x(step) - x(0)) * 0.7));
  return (
    <svg aria-hidden viewBox={`0 0 ${box.width} ${box.height}`} className="plot">
      <HatchDefinitions id={id} />
      {y
        .ticks(4)
        .filter((tick) => Number.isInteger(tick))
        .map((tick) => (
          <g key={tick}>
            <path d={`M${box.left} ${r(y(tick))}H${box.right}`} className="stroke-hair" />
            <text x={box.left - 5} y={r(y(tick)) + 4} textAnchor="end">
              {tick}
            </text>
          </g>
        ))}
      {rows.map(({ year, counts }) =>
        stackOf(counts).map(([from, to], kind) => {
          if (from === to) return null;
          const { className, ...fill } = hatchFill(id, shareHatches[kind] ?? "open");
          return (
            <rect
              // biome-ignore lint/suspicious/noArrayIndexKey: a kind has no name but its place
              key={`${year} ${kind}`}
              data-year={year}
              data-count={to - from}
              x={r(x(year) - width / 2)}
              width={r(width)}
              y={r(y(to))}
              height={r(y(from) - y(to))}
              strokeWidth="0.8"
              className={className}
              {...fill}
            />
          );
        }),
      )}
      <Years years={years} x={x} />
    </svg>
  );
}
