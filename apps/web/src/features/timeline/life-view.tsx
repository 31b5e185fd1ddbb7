"use client";
import type { CarTimeline } from "@trunnion/api";
import { dayOfEvent } from "@trunnion/register";
import { type MouseEvent, type ReactNode, useDeferredValue, useEffect, useMemo, useState } from "react";
import { Button } from "../../components/button";
import { SectionHead } from "../../components/page-head";
import { sayLongDay } from "../../lib/day";
import { timelinePath } from "../../lib/path";
import { DayField } from "./day-field";
import { DayPanel, HappenedAround } from "./day-panel";
import { ChangeList, DayState, Doubts } from "./day-state";
import { EventTable } from "./event-table";
import { within } from "./handle";
import { LifeHandle } from "./life-handle";
import { lifeScale } from "./scale";
import { changesOver, dayView, type LifeEngine, lifeEngine, turnBefore } from "./view";

export interface LifeViewProps {
  readonly timeline: CarTimeline;
  /** ISO day asked for. */
  readonly on: string;
  /** A second day, to compare with. */
  readonly since?: string;
}

/** Milliseconds that the handle rests before the address follows. */
const REST = 250;

/** Keeps the address at the day shown, so that it can be sent and come back to. Dragging makes no history. */
function useAddress(address: string): void {
  useEffect(() => {
    if (window.location.pathname + window.location.search === address) return;
    const timer = window.setTimeout(
      () => window.history.replaceState(window.history.state, "", address),
      REST,
    );
    return () => window.clearTimeout(timer);
  }, [address]);
}

/** A car's life with a handle: the state on whatever day it is dragged to is worked out here, from data sent once. */
export function LifeView({ timeline, on, since: asked }: LifeViewProps): ReactNode {
  const { events, today, club, car, believed } = timeline;
  const [day, setDay] = useState(on);
  const [since, setSince] = useState(asked ?? "");
  const scale = useMemo(() => lifeScale(events, today), [events, today]);
  const engine = useMemo(() => lifeEngine(timeline), [timeline]);
  const eventDays = useMemo(
    () => [...new Set(events.flatMap((event) => dayOfEvent(event) ?? []))].sort(),
    [events],
  );

  const query = {
    on: day,
    ...(since === "" ? {} : { since }),
    ...(believed === undefined ? {} : { believed }),
  };
  const address = timelinePath(club.slug, car.reference, query);
  useAddress(address);
  const move = (to: string) => setDay(within(scale, to));
  const addressOn = (other: string) => timelinePath(club.slug, car.reference, { ...query, on: other });

  return (
    <>
      <section aria-labelledby="life" className="grid grid-cols-1 gap-3">
        <h2 id="life" className="sr-only">
          The whole life, over the years
        </h2>
        <LifeHandle
          events={events}
          scale={scale}
          turns={eventDays}
          day={day}
          since={since === "" ? undefined : since}
          move={move}
        />
        <p id="timeline-keys" className="scriptless:hidden print:hidden text-fine text-soft">
          Drag the handle, or use the arrow keys: a month at a time, with Shift a day, Page Up and Page Down a
          year. A tick is drawn on the last day its date allows; the thin line before it covers the other days
          it may have been.
        </p>
        <form
          action={timelinePath(club.slug, car.reference)}
          className="print:hidden grid max-w-4xl grid-cols-1 items-end gap-x-5 gap-y-3 sm:grid-cols-[1fr_1fr_1fr_auto]"
        >
          <DayField
            name="on"
            label="Day shown"
            value={day}
            from={scale.from}
            to={today}
            change={(to) => to !== "" && move(to)}
          />
          <DayField
            name="since"
            label="What changed since"
            value={since}
            from={scale.from}
            to={today}
            change={setSince}
          />
          <DayField
            name="believed"
            label="As the record stood on"
            value={believed ?? ""}
            from="1900-01-01"
            to={today}
          />
          <Button>Show</Button>
        </form>
        <Steps days={eventDays} day={day} addressOn={addressOn} move={move} />
      </section>
      <DayShown engine={engine} timeline={timeline} day={day} since={since} />
      <section aria-labelledby="in-order" className="timeline-below">
        <SectionHead id="in-order" title="The whole life, in order" />
        <EventTable events={events} />
      </section>
    </>
  );
}

interface StepsProps {
  readonly days: readonly string[];
  readonly day: string;
  readonly addressOn: (day: string) => string;
  readonly move: (day: string) => void;
}

/** From one thing that happened to the next; links, so that they work without a script. */
function Steps({ days, day, addressOn, move }: StepsProps): ReactNode {
  const places = [
    { label: "← Before that", to: days.findLast((one) => one < day) },
    { label: "What came next →", to: days.find((one) => one > day) },
  ];
  const go = (event: MouseEvent, to: string) => {
    if (event.ctrlKey || event.metaKey || event.shiftKey) return;
    event.preventDefault();
    move(to);
  };
  return (
    <nav aria-label="From event to event" className="print:hidden flex gap-6 text-small">
      {places.map(({ label, to }) =>
        to === undefined ? null : (
          <a
            key={label}
            href={addressOn(to)}
            onClick={(event) => go(event, to)}
            className="inline-flex min-h-11 items-center"
          >
            {label}
          </a>
        ),
      )}
    </nav>
  );
}

interface DayShownProps {
  readonly engine: LifeEngine;
  readonly timeline: CarTimeline;
  readonly day: string;
  readonly since: string;
}

const count = (number: number, one: string, many: string) =>
  number === 1 ? `1 ${one}` : `${number} ${many}`;

/** Everything about the day. It may lag behind a fast hand: the handle goes first. */
function DayShown({ engine, timeline, day, since }: DayShownProps): ReactNode {
  const shown = useDeferredValue(day);
  // Between two turns nothing changes, so nothing is worked out either.
  const turn = turnBefore(engine, shown);
  const view = useMemo(() => dayView(engine, turn), [engine, turn]);
  const state = useMemo(() => <DayState view={view} on={sayLongDay(shown)} />, [view, shown]);
  const between = useMemo(() => (since === "" ? [] : compared(engine, since, turn)), [engine, since, turn]);
  const on = sayLongDay(shown);
  return (
    <>
      <section aria-labelledby="day" className="grid gap-4">
        <SectionHead id="day" title={`On ${on}`}>
          <span role="status" className="text-small text-soft">
            {view.deviating.length} of {count(view.compared, "characteristic", "characteristics")} compared
            differed
          </span>
        </SectionHead>
        <DayPanel events={timeline.events} day={shown} />
        <HappenedAround events={timeline.events} day={shown} />
      </section>
      {since === "" ? null : (
        <section aria-labelledby="between">
          <SectionHead id="between" title={betweenTitle(since, shown)} />
          {between.length === 0 ? <p>Nothing that is recorded changed.</p> : <ChangeList lines={between} />}
        </section>
      )}
      {view.changedOn === undefined || view.changed.length === 0 ? null : (
        <section aria-labelledby="changed">
          <SectionHead id="changed" title={`What changed last, ${saidOf(view.changed)}`} />
          <ChangeList lines={view.changed} />
        </section>
      )}
      <Doubts doubts={view.doubts} />
      {state}
    </>
  );
}

/** When a change was, in the record's own words: its lines all have the same. */
const saidOf = (lines: DayShownLines) => [...new Set(lines.map(({ since }) => since))].join(", ");
type DayShownLines = ReturnType<typeof changesOver>;

function compared(engine: LifeEngine, since: string, turn: string): DayShownLines {
  const other = turnBefore(engine, since);
  return other < turn ? changesOver(engine, other, turn) : changesOver(engine, turn, other);
}

const betweenTitle = (since: string, day: string) => {
  const [from, to] = since < day ? [since, day] : [day, since];
  return `What changed between ${sayLongDay(from)} and ${sayLongDay(to)}`;
};
