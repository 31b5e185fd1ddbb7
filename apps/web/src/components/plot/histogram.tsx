import { type SpreadRow, standings, standingWords } from "@trunnion/register";
import { scaleLinear } from "d3-scale";
import { type Hatch, HatchDefinitions, hatchFill } from "./hatch";
import { axisTicks, type PlotAxis } from "./tick";

/** Limits along the axis, drawn as a bracket under the classes. */
export interface LimitMark {
  readonly label: string;
  readonly lower?: number;
  readonly upper?: number;
  readonly at?: number;
}

/** A row that is a class: it has both its ends. */
export type ClassRow = SpreadRow & { readonly from: number; readonly to: number };

export interface HistogramProps {
  readonly id: string;
  readonly rows: readonly ClassRow[];
  readonly axis: PlotAxis;
  readonly limits: readonly LimitMark[];
}

export const standingHatch: Readonly<Record<(typeof standings)[number], Hatch>> = {
  asSpecified: "lines",
  accepted: "dots",
  differs: "mark",
  notCompared: "open",
};

/** Of bars that only say whether something differs. */
export const differsLegend = [
  { hatch: standingHatch.asSpecified, label: "does not differ" },
  { hatch: standingHatch.differs, label: "differs" },
] as const;

const box = { width: 360, left: 34, right: 350, top: 16, bottom: 156 } as const;
const ROW = 26;
/** Most brackets that are drawn; the table has all. */
export const DRAWN_LIMITS = 5;
const r = (value: number) => Math.round(value * 10) / 10;

/**
 * Values by class, each bar split by how its values stand against factory, over the limits of the specifications. A
 * picture of the table beside it, drawn on the server.
 */
export function Histogram({ id, rows, axis, limits }: HistogramProps) {
  const drawn = limits.slice(0, DRAWN_LIMITS);
  const places = [
    ...rows.flatMap(({ from, to }) => [from, to]),
    ...drawn.flatMap(({ lower, upper, at }) => [lower, upper, at]).filter((one) => one !== undefined),
  ];
  const x = scaleLinear()
    .domain([Math.min(...places), Math.max(...places)])
    .range([box.left, box.right]);
  const most = Math.max(1, ...rows.map(({ count }) => count));
  const y = scaleLinear().domain([0, most]).range([box.bottom, box.top]);
  const height = box.bottom + 34 + drawn.length * ROW;
  return (
    <svg aria-hidden viewBox={`0 0 ${box.width} ${height}`} className="plot">
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
      {rows.map((row) => (
        <Bar key={row.from} id={id} row={row} x={x} y={y} />
      ))}
      <path d={`M${box.left} ${box.bottom}H${box.right}`} className="stroke-ink" />
      {axisTicks(axis, [
        places.reduce((a, b) => Math.min(a, b)),
        places.reduce((a, b) => Math.max(a, b)),
      ]).map(({ place, label }) => (
        <g key={place}>
          <path d={`M${r(x(place))} ${box.bottom}v5`} className="stroke-ink" />
          <text x={r(x(place))} y={box.bottom + 18} textAnchor="middle">
            {label}
          </text>
        </g>
      ))}
      {drawn.map((mark, index) => (
        <LimitBracket
          key={`${mark.label} ${mark.lower} ${mark.upper}`}
          mark={mark}
          at={x}
          floor={box.bottom + 48 + index * ROW}
        />
      ))}
    </svg>
  );
}

interface BarProps {
  readonly id: string;
  readonly row: ClassRow;
  readonly x: (place: number) => number;
  readonly y: (count: number) => number;
}

/** Where each part of a bar begins and ends, from the bottom. */
export function stackOf(counts: readonly number[]): readonly (readonly [number, number])[] {
  let below = 0;
  return counts.map((count) => {
    const from = below;
    below += count;
    return [from, below] as const;
  });
}

function Bar({ id, row, x, y }: BarProps) {
  const [left, right] = [x(row.from), x(row.to)];
  const stack = stackOf(standings.map((standing) => row[standing]));
  return (
    <g data-count={row.count}>
      {standings.map((standing, index) => {
        const [from, to] = stack[index] ?? [0, 0];
        if (from === to) return null;
        const { className, ...fill } = hatchFill(id, standingHatch[standing]);
        return (
          <rect
            key={standing}
            data-standing={standing}
            data-count={to - from}
            x={r(left + 0.8)}
            width={r(Math.max(1, right - left - 1.6))}
            y={r(y(to))}
            height={r(y(from) - y(to))}
            strokeWidth="0.8"
            className={className}
            {...fill}
          />
        );
      })}
    </g>
  );
}

interface BracketProps {
  readonly mark: LimitMark;
  readonly at: (place: number) => number;
  readonly floor: number;
}

/** The signature bracket on the plot's axis: an end that is open stays open, the nominal is a notch under the floor. */
function LimitBracket({ mark: { label, lower, upper, at: nominal }, at, floor }: BracketProps) {
  const from = lower === undefined ? `M${box.left} ${floor}` : `M${r(at(lower))} ${floor - 8}V${floor}`;
  const to = upper === undefined ? `H${box.right}` : `H${r(at(upper))}V${floor - 8}`;
  const bounded = lower !== undefined || upper !== undefined;
  const middle = ((lower ?? nominal ?? upper ?? 0) + (upper ?? nominal ?? lower ?? 0)) / 2;
  const place = Math.min(box.right - 40, Math.max(box.left + 40, at(middle)));
  return (
    <g>
      {bounded ? <path d={from + to} fill="none" className="stroke-ink" strokeWidth="1.6" /> : null}
      {nominal === undefined ? null : (
        <path
          d={`M${r(at(nominal))} ${floor + 1}l3 5h-6z`}
          className="fill-paper stroke-ink"
          strokeWidth="0.9"
        />
      )}
      <text x={r(place)} y={floor - 4} textAnchor="middle" className="plot-fine">
        {label}
      </text>
    </g>
  );
}

/** What the drawing's fillings stand for, with how many values there are of each; those there are none of are left out. */
export function standingLegend(rows: readonly SpreadRow[], say: (count: number) => string) {
  return standings.flatMap((standing) => {
    const count = rows.reduce((sum, row) => sum + row[standing], 0);
    if (count === 0) return [];
    return [{ hatch: standingHatch[standing], label: standingWords[standing], count: say(count) }];
  });
}
