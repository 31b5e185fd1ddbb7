import type { CarEvents } from "@trunnion/api";
import { decisionOutcomeWords, stationLabels } from "@trunnion/register";
import { SectionHead } from "../../components/page-head";
import { sayLongDay } from "../../lib/day";
import { eventPath, ruledCarPath } from "../../lib/path";
import { ClassList } from "./class-list";

export interface CarEventSectionProps {
  readonly club: string;
  readonly car: string;
  readonly events: CarEvents;
}

/** What events have to do with a car: what is open from them, where it is entered, which classes it may enter. */
export function CarEventSection({ club, car, events: { open, entries, ruleSets } }: CarEventSectionProps) {
  if (entries.length === 0 && ruleSets.length === 0) return null;
  return (
    <section aria-labelledby="events" className="grid gap-5">
      <SectionHead id="events" title="At events" />
      {open === undefined || open.length === 0 ? null : <Open open={open} />}
      {entries.length === 0 ? null : (
        <div>
          <h3 className="pb-1 font-semibold">Entered</h3>
          <ul className="border-hair border-t">
            {entries.map(({ event, name, on, number, className, outcome }) => (
              <li key={`${event} ${number}`} className="border-hair border-b py-1.5">
                <a href={eventPath(club, event)}>{name}</a>, {sayLongDay(on)}, number {number}
                {className === "" ? null : `, class ${className}`}
                {outcome === undefined ? null : (
                  <b>
                    : {outcome === "conflict" ? "decided twice, differently" : decisionOutcomeWords[outcome]}
                  </b>
                )}
              </li>
            ))}
          </ul>
        </div>
      )}
      {ruleSets.map(({ slug, version, name, edition, classes }) => (
        <div key={slug}>
          <h3 className="pb-1 font-semibold">
            Classes of {name}, {edition}
          </h3>
          <ClassList classes={classes} />
          <p className="pt-1 text-small">
            By what is recorded today; the organiser's current regulations decide.{" "}
            <a className="print:hidden" href={ruledCarPath(club, { slug, version }, { car })}>
              Checks that follow from this car
            </a>
          </p>
        </div>
      ))}
    </section>
  );
}

function Open({ open }: { readonly open: NonNullable<CarEvents["open"]> }) {
  return (
    <div>
      <h3 className="pb-1 font-semibold">Open from events</h3>
      <ul className="border-hair border-t">
        {open.map(({ checkCode, result, note, text, station, event, on }) => (
          <li key={checkCode} className="border-hair border-b py-2">
            <p>
              <b>{result === "refuse" ? "Refused" : "Advised"}</b>: {text === "" ? checkCode : text}
              {note === "" ? null : <span className="block border-red border-l-4 pl-2">{note}</span>}
            </p>
            <p className="text-small text-soft">
              {event}, {sayLongDay(on)}; {stationLabels[station].toLowerCase()}. It stands until an event's
              check passes it.
            </p>
          </li>
        ))}
      </ul>
    </div>
  );
}
