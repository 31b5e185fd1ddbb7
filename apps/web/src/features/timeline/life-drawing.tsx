import { type KnownTime, type Lane, lanes, laneWords, sayTime, type TimelineEvent } from "@trunnion/register";
import type { ReactNode } from "react";
import { inRows, type Mark, type TimeScale, yearTicks } from "./scale";

export interface LifeDrawingProps {
  readonly events: readonly TimelineEvent[];
  readonly scale: TimeScale;
}

/** Heights in pixels. */
const label = 15;
const row = 20;
const gap = 9;
const foot = 24;

interface PlacedLane {
  readonly lane: Lane;
  readonly marks: readonly Mark[];
  readonly top: number;
}

interface Layout {
  readonly lanes: readonly PlacedLane[];
  readonly height: number;
}

/** Lanes that have something in them, one below the other. */
export function layoutOf({ events, scale }: LifeDrawingProps): Layout {
  let top = 4;
  const placed = lanes.flatMap((lane): PlacedLane[] => {
    const here = events.filter(
      (event) => event.lane === lane && (event.when !== undefined || event.until !== undefined),
    );
    if (here.length === 0) return [];
    const marks = inRows(here, scale);
    const rows = 1 + Math.max(...marks.map((mark) => mark.row));
    const at = top;
    top += label + rows * row + gap;
    return [{ lane, marks, top: at }];
  });
  return { lanes: placed, height: top + foot };
}

const per = (at: number) => `${at}%`;

/**
 * A life drawn over the years: what happened as a tick with a whisker over the days its date allows, what lasted as a
 * bar. Everything across is in per cent, so that letters keep their size on any screen. It is a picture of the table
 * below it, which says the same in words.
 */
export function LifeDrawing({ events, scale }: LifeDrawingProps) {
  const layout = layoutOf({ events, scale });
  return (
    <svg aria-hidden width="100%" height={layout.height} className="timeline-drawing">
      <Years scale={scale} height={layout.height} />
      {layout.lanes.map(({ lane, marks, top }) => (
        <g key={lane}>
          <text x="0" y={top + 11} className="timeline-lane">
            {laneWords[lane]}
          </text>
          {marks.map(({ event, row: place }) => (
            <Drawn key={event.id} event={event} scale={scale} y={top + label + place * row + row / 2} />
          ))}
        </g>
      ))}
    </svg>
  );
}

function Years({ scale, height }: { readonly scale: TimeScale; readonly height: number }): ReactNode {
  const base = height - foot;
  return (
    <g>
      <line x1="0" x2="100%" y1={base} y2={base} className="stroke-ink" strokeWidth="1.5" />
      {yearTicks(scale).map(({ year, at, minor }) => (
        <g key={year} className={minor ? "timeline-minor" : ""}>
          <line x1={per(at)} x2={per(at)} y1="0" y2={base} className="stroke-hair" strokeWidth="1" />
          <line x1={per(at)} x2={per(at)} y1={base} y2={base + 5} className="stroke-ink" strokeWidth="1.5" />
          <text
            x={per(at)}
            y={base + 18}
            textAnchor={at < 2 ? "start" : at > 97 ? "end" : "middle"}
            className="timeline-year"
          >
            {year}
          </text>
        </g>
      ))}
    </g>
  );
}

interface DrawnProps {
  readonly event: TimelineEvent;
  readonly scale: TimeScale;
  readonly y: number;
}

function Drawn({ event, scale, y }: DrawnProps): ReactNode {
  return event.until === undefined ? (
    <Tick event={event} scale={scale} y={y} />
  ) : (
    <Bar event={event} scale={scale} y={y} />
  );
}

/** Over the days a date allows: a thin line with two ends. Nothing where the day is known. */
function Whisker({
  time,
  scale,
  y,
}: {
  readonly time: KnownTime;
  readonly scale: TimeScale;
  readonly y: number;
}): ReactNode {
  const [from, to] = [scale.at(time.earliest), scale.at(time.latest)];
  if (time.earliest === time.latest) return null;
  const open = time.earliest < scale.from;
  return (
    <g className="stroke-ink" strokeWidth="1">
      <line x1={per(from)} x2={per(to)} y1={y} y2={y} {...(open ? { strokeDasharray: "2 2" } : {})} />
      {open ? null : <line x1={per(from)} x2={per(from)} y1={y - 3} y2={y + 3} />}
      <line x1={per(to)} x2={per(to)} y1={y - 3} y2={y + 3} />
    </g>
  );
}

function Tick({ event: { when }, scale, y }: DrawnProps): ReactNode {
  if (when === undefined) return null;
  const at = scale.at(when.latest);
  return (
    <>
      <Whisker time={when} scale={scale} y={y} />
      <line x1={per(at)} x2={per(at)} y1={y - 7} y2={y + 7} className="stroke-ink" strokeWidth="2.4" />
    </>
  );
}

/** From when it surely was to when it surely still was, with a whisker at each end that is not a day. */
function Bar({ event: { when, until, title }, scale, y }: DrawnProps): ReactNode {
  const start = when === undefined ? 0 : scale.at(when.latest);
  const end = until === "open" || until === undefined ? 100 : scale.at(until.earliest);
  const last = until === "open" || until === undefined ? 100 : scale.at(until.latest);
  const width = Math.max(0, end - start);
  return (
    <>
      {when === undefined ? null : <Whisker time={when} scale={scale} y={y} />}
      {typeof until === "object" ? <Whisker time={until} scale={scale} y={y} /> : null}
      <line
        x1={per(start)}
        x2={per(Math.max(start, end))}
        y1={y + 5}
        y2={y + 5}
        className="stroke-ink"
        strokeWidth="3"
        {...(when === undefined ? { strokeDasharray: "1 3" } : {})}
      />
      {when === undefined ? null : (
        <line
          x1={per(start)}
          x2={per(start)}
          y1={y - 6}
          y2={y + 6.5}
          className="stroke-ink"
          strokeWidth="1.5"
        />
      )}
      {until === "open" ? null : (
        <line
          x1={per(last)}
          x2={per(last)}
          y1={y - 1}
          y2={y + 6.5}
          className="stroke-ink"
          strokeWidth="1.5"
        />
      )}
      <svg aria-hidden x={per(start)} y={y - 9} width={per(Math.max(width, 0))} height="16" overflow="hidden">
        <text x="4" y="10" className="timeline-name">
          {title}
        </text>
      </svg>
    </>
  );
}

/** When an event was, in words, no sharper than the record. */
export function sayWhen({ when, until }: TimelineEvent): string {
  const start = when === undefined ? "date not known" : sayWritten(when);
  if (until === undefined) return start;
  if (until === "open") return when === undefined ? "dates not known" : `since ${start}`;
  return `${start} to ${sayWritten(until)}`;
}

const sayWritten = (time: KnownTime): string => sayTime(time);
