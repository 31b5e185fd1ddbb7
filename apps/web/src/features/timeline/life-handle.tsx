"use client";
import type { TimelineEvent } from "@trunnion/register";
import { type KeyboardEvent, type ReactNode, useRef } from "react";
import { sayLongDay } from "../../lib/day";
import { dayAt, dayByKey, placeOf, snapped } from "./handle";
import { LifeDrawing, layoutOf } from "./life-drawing";
import type { TimeScale } from "./scale";

export interface LifeHandleProps {
  readonly events: readonly TimelineEvent[];
  readonly scale: TimeScale;
  /** Days that the handle is caught by when it is dragged near. */
  readonly turns: readonly string[];
  /** ISO day. */
  readonly day: string;
  /** A second day, to compare with. */
  readonly since?: string | undefined;
  readonly move: (day: string) => void;
}

/** Pixels within which a dragged handle is caught by a day on which something happened. */
const REACH = 6;

/**
 * The drawn life with its handle. The handle is a range over the whole drawing: pointer, touch, keyboard and screen
 * reader work it as one; a line through all lanes shows where it stands.
 */
export function LifeHandle({ events, scale, turns, day, since, move }: LifeHandleProps): ReactNode {
  const dragging = useRef(false);
  const range = useRef<HTMLInputElement>(null);
  const { height } = layoutOf({ events, scale });

  const onKeyDown = (event: KeyboardEvent) => {
    const next = event.altKey || event.ctrlKey || event.metaKey ? undefined : dayByKey(scale, day, event);
    if (next === undefined) return;
    event.preventDefault();
    move(next);
  };
  const onPlace = (place: number) => {
    const wanted = dayAt(scale, place);
    const width = range.current?.clientWidth ?? 0;
    // Only a pointer is that coarse: whoever steps by keys must be able to stand next to a day.
    move(dragging.current && width > 0 ? snapped(wanted, turns, (REACH * scale.days) / width) : wanted);
  };
  return (
    <div className="timeline">
      <LifeDrawing events={events} scale={scale} />
      <svg aria-hidden width="100%" height={height} className="timeline-hand">
        {since === undefined ? null : (
          <line
            x1={`${scale.at(since)}%`}
            x2={`${scale.at(since)}%`}
            y1="0"
            y2={height - 20}
            className="stroke-red"
            strokeWidth="1.5"
            strokeDasharray="5 3"
          />
        )}
        <svg aria-hidden x={`${scale.at(day)}%`} overflow="visible" className="timeline-grip">
          <line x1="0" x2="0" y1="0" y2={height - 20} className="stroke-red" strokeWidth="2" />
          <path d={`M0 ${height - 24}l8 9v12h-16v-12z`} className="fill-red stroke-paper" strokeWidth="1.5" />
        </svg>
      </svg>
      <input
        ref={range}
        type="range"
        className="timeline-range"
        aria-label="Day shown"
        aria-describedby="timeline-keys"
        aria-valuetext={sayLongDay(day)}
        min={0}
        max={scale.days}
        step={1}
        value={placeOf(scale, day)}
        onChange={({ target }) => onPlace(Number(target.value))}
        onKeyDown={onKeyDown}
        onPointerDown={() => {
          dragging.current = true;
        }}
        onPointerUp={() => {
          dragging.current = false;
        }}
        onPointerCancel={() => {
          dragging.current = false;
        }}
      />
    </div>
  );
}
