import { standsOn, type TimelineEvent } from "@trunnion/register";
import type { ReactNode } from "react";
import { Provenance } from "../../components/provenance";
import { sayWhen } from "./life-drawing";

export interface DayPanelProps {
  readonly events: readonly TimelineEvent[];
  /** ISO day. */
  readonly day: string;
}

const doubtWords = {
  yes: "",
  maybe: "perhaps: the dates leave it open",
  undated: "dates not known",
  no: "",
} as const;

interface Standing {
  readonly event: TimelineEvent;
  readonly doubt: string;
}

function standing(
  events: readonly TimelineEvent[],
  lane: TimelineEvent["lane"],
  day: string,
): readonly Standing[] {
  return events.flatMap((event) => {
    if (event.lane !== lane || event.until === undefined) return [];
    const stands = standsOn(event, day);
    return stands === "no" ? [] : [{ event, doubt: doubtWords[stands] }];
  });
}

/** Whether the car was built on the day, where the record tells. */
export function builtText(events: readonly TimelineEvent[], day: string): string {
  const when = events.find(({ id }) => id === "built")?.when;
  if (when === undefined || day >= when.latest) return "";
  if (day < when.earliest) return "Not built yet on this day: below is how it left the works.";
  return `Perhaps not built yet on this day: it was built ${when.text}.`;
}

const rows = [
  { lane: "life", label: "Status", none: "not known" },
  { lane: "number", label: "Numbers and marks", none: "none recorded" },
  { lane: "keeper", label: "Kept by", none: "" },
] as const;

/** What became of the car, which marks it bore and, for who may know, who kept it, on the day. */
export function DayPanel({ events, day }: DayPanelProps): ReactNode {
  const built = builtText(events, day);
  return (
    <>
      {built === "" ? null : <p className="border-red border-l-4 pl-3">{built}</p>}
      <dl className="border-hair border-t">
        {rows.map(({ lane, label, none }) => {
          const here = standing(events, lane, day);
          if (here.length === 0 && none === "") return null;
          return (
            <div key={lane} className="grid grid-cols-[8.5rem_1fr] gap-x-4 border-hair border-b py-1.5">
              <dt className="font-normal text-small text-soft">{label}</dt>
              <dd>
                {here.length === 0 ? (
                  <span className="text-soft">{none}</span>
                ) : (
                  <ul>
                    {here.map((one) => (
                      <StandingLine key={one.event.id} {...one} />
                    ))}
                  </ul>
                )}
              </dd>
            </div>
          );
        })}
      </dl>
    </>
  );
}

function StandingLine({ event, doubt }: Standing): ReactNode {
  const dates = event.when === undefined && event.until === "open" ? "" : sayWhen(event);
  const said = [dates, doubt].filter((part) => part !== "").join("; ");
  return (
    <li>
      {event.title}
      {event.text === undefined ? null : <span className="text-soft">, {event.text.toLowerCase()}</span>}
      {said === "" ? null : <span className="text-small text-soft"> ({said})</span>}
    </li>
  );
}

/** What happened on, or may have happened around, the day. */
export function HappenedAround({ events, day }: DayPanelProps): ReactNode {
  const then = events.filter(
    ({ when, until }) =>
      when !== undefined && until === undefined && when.earliest <= day && day <= when.latest,
  );
  if (then.length === 0) return null;
  return (
    <ul className="grid gap-2">
      {then.map((event) => (
        <li key={event.id}>
          <strong>{event.title}</strong>, {sayWhen(event)}
          {event.when?.earliest === event.when?.latest ? null : (
            <span className="text-soft">: on, before or after this day</span>
          )}
          {event.text === undefined ? null : <span>. {event.text}</span>}
          {event.source === undefined ? null : <Provenance known={{ source: event.source }} />}
        </li>
      ))}
    </ul>
  );
}
