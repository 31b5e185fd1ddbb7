import { type Scale, scaleLinear, scaleUtc } from "d3-scale";
import { line } from "d3-shape";
import type { ReactNode } from "react";

/** One reading on a day, in the plot's unit. */
export interface TimePoint {
  /** ISO day. */
  readonly on: string;
  readonly value: number;
  /** Half length of its whisker. */
  readonly uncertainty: number;
}

export interface TimeLine {
  readonly key: string;
  readonly label: string;
  readonly points: readonly TimePoint[];
}

export interface TimePlotProps {
  readonly unit: string;
  readonly lines: readonly TimeLine[];
  readonly lower?: number;
  readonly upper?: number;
}

const size = { width: 560, height: 220 } as const;
const box = { left: 52, right: 460, top: 14, bottom: 190 } as const;
/** Marks that stay apart in black and white: a filled square, an open circle. */
const marks = ["square", "circle"] as const;

const at = (day: string) => new Date(`${day}T00:00:00Z`);
const DAY = 86_400_000;

interface Scales {
  readonly x: Scale<Date>;
  readonly y: Scale<number>;
}

function scalesOf({ lines, lower, upper }: TimePlotProps): Scales {
  const points = lines.flatMap((one) => one.points);
  const times = points.map(({ on }) => at(on).getTime());
  const [first, last] = [Math.min(...times), Math.max(...times)];
  // A month on either side, so that no mark stands on the frame, and one day alone still has a scale.
  const ends = [new Date(first - 30 * DAY), new Date(last + 30 * DAY)] as const;
  const heights = [
    ...points.flatMap(({ value, uncertainty }) => [value - uncertainty, value + uncertainty]),
    ...[lower, upper].filter((limit) => limit !== undefined),
  ];
  const [low, high] = [Math.min(...heights), Math.max(...heights)];
  const room = high === low ? Math.max(1, Math.abs(high) / 10) : (high - low) / 12;
  return {
    x: scaleUtc().domain(ends).range([box.left, box.right]),
    y: scaleLinear()
      .domain([low - room, high + room])
      .range([box.bottom, box.top])
      .nice(5),
  };
}

const r = (value: number) => Math.round(value * 10) / 10;

/**
 * Readings over the years as a picture of the table beside it, which says the same in words: limits as the bracket's
 * rails, each reading a mark with its whisker. Drawn on the server; reads in black and white.
 */
export function TimePlot(props: TimePlotProps): ReactNode {
  const { unit, lines, lower, upper } = props;
  if (lines.every(({ points }) => points.length === 0)) return null;
  const scales = scalesOf(props);
  const format = scales.y.tickFormat(5);
  const year = scales.x.tickFormat(6);
  return (
    <svg aria-hidden viewBox={`0 0 ${size.width} ${size.height}`} className="time-plot">
      {scales.y.ticks(5).map((tick) => (
        <g key={tick}>
          <path d={`M${box.left} ${r(scales.y(tick))}H${box.right}`} className="stroke-hair" />
          <text x={box.left - 6} y={r(scales.y(tick)) + 4} textAnchor="end">
            {format(tick)}
          </text>
        </g>
      ))}
      <text x={box.left - 6} y={box.bottom + 26} textAnchor="end">
        {unit}
      </text>
      {scales.x.ticks(6).map((tick) => (
        <g key={tick.getTime()}>
          <path d={`M${r(scales.x(tick))} ${box.bottom}v5`} className="stroke-ink" />
          <text x={r(scales.x(tick))} y={box.bottom + 18} textAnchor="middle">
            {year(tick)}
          </text>
        </g>
      ))}
      <path d={`M${box.left} ${box.bottom}H${box.right}`} className="stroke-ink" />
      {[lower, upper].map((limit, index) =>
        limit === undefined ? null : (
          <path
            key={index === 0 ? "lower" : "upper"}
            d={`M${box.left} ${r(scales.y(limit)) + (index === 0 ? -5 : 5)}v${index === 0 ? 5 : -5}H${box.right}v${index === 0 ? -5 : 5}`}
            fill="none"
            className="stroke-ink"
            strokeWidth="1.6"
          />
        ),
      )}
      {lines.map((one, index) => (
        <Line
          key={one.key}
          one={one}
          scales={scales}
          mark={marks[index % 2] ?? "square"}
          last={lastOf(lines, index)}
        />
      ))}
    </svg>
  );
}

/** Labels of lines that end at nearly the same height are set apart. */
function lastOf(lines: readonly TimeLine[], index: number): number {
  return lines.length > 1 && index === 1 ? 7 : lines.length > 1 ? -7 : 0;
}

interface LineProps {
  readonly one: TimeLine;
  readonly scales: Scales;
  readonly mark: (typeof marks)[number];
  readonly last: number;
}

function Line({ one, scales: { x, y }, mark, last }: LineProps) {
  const path = line<TimePoint>()
    .x(({ on }) => r(x(at(on))))
    .y(({ value }) => r(y(value)))(one.points);
  const end = one.points.at(-1);
  return (
    <g>
      {path === null ? null : (
        <path
          d={path}
          fill="none"
          className="stroke-ink"
          strokeWidth="1.2"
          {...(mark === "circle" ? { strokeDasharray: "5 3" } : {})}
        />
      )}
      {one.points.map((point) => {
        const [cx, cy] = [r(x(at(point.on))), r(y(point.value))];
        const reach = Math.abs(y(point.value + point.uncertainty) - y(point.value));
        return (
          <g key={`${point.on} ${point.value}`}>
            {point.uncertainty === 0 ? null : (
              <path
                d={`M${cx} ${r(cy - reach)}V${r(cy + reach)}M${cx - 3} ${r(cy - reach)}h6M${cx - 3} ${r(cy + reach)}h6`}
                className="stroke-ink"
              />
            )}
            {mark === "square" ? (
              <rect x={cx - 3.2} y={cy - 3.2} width="6.4" height="6.4" className="fill-ink" />
            ) : (
              <circle cx={cx} cy={cy} r="3.6" className="fill-paper stroke-ink" strokeWidth="1.4" />
            )}
          </g>
        );
      })}
      {end === undefined ? null : (
        <text x={box.right + 8} y={r(y(end.value)) + 4 + last}>
          {one.label}
        </text>
      )}
    </g>
  );
}
