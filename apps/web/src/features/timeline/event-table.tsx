import { laneWords, type TimelineEvent } from "@trunnion/register";
import { memo, type ReactNode } from "react";
import { Provenance } from "../../components/provenance";
import { sayWhen } from "./life-drawing";

/** The whole life in words: what the drawing shows, for who does not see it and for paper. Never drawn anew by dragging. */
export const EventTable = memo(function EventTable({
  events,
}: {
  readonly events: readonly TimelineEvent[];
}) {
  if (events.length === 0) return <p>Nothing is recorded of this car&rsquo;s life.</p>;
  return (
    <table className="life-table">
      <caption className="sr-only">The whole life, in order of the dates</caption>
      <thead>
        <tr>
          <th scope="col">When</th>
          <th scope="col">What</th>
          <th scope="col">Of</th>
          <th scope="col">How it is known</th>
        </tr>
      </thead>
      <tbody>
        {events.map((event) => (
          <EventRow key={event.id} event={event} />
        ))}
      </tbody>
    </table>
  );
});

function EventRow({ event }: { readonly event: TimelineEvent }): ReactNode {
  const { lane, title, text, details = [], source } = event;
  return (
    <tr>
      <th scope="row" className="life-when font-normal">
        {sayWhen(event)}
      </th>
      <td className="life-what">
        <strong>{title}</strong>
        {text === undefined ? null : <span className="block">{text}</span>}
        {details.length === 0 ? null : (
          <ul className="text-small">
            {details.map(({ label, before, after }) => (
              <li key={label}>
                {label}: {before === undefined ? null : <Before text={before} />}
                <strong>{after}</strong>
              </li>
            ))}
          </ul>
        )}
      </td>
      <td className="life-lane text-soft">{laneWords[lane]}</td>
      <td className="life-known">{source === undefined ? null : <Provenance known={{ source }} />}</td>
    </tr>
  );
}

function Before({ text }: { readonly text: string }): ReactNode {
  return (
    <>
      {text === "" ? "not recorded" : text} <span aria-hidden>→</span>
      <span className="sr-only">to</span>{" "}
    </>
  );
}
