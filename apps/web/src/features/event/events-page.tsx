import { PageHead } from "../../components/page-head";
import type { ClubFace } from "../../components/shell/shell";
import { TitleBlock } from "../../components/shell/title-block";
import { eventPath, newEventPath } from "../../lib/path";

export interface EventRow {
  readonly slug: string;
  readonly name: string;
  /** The day, as written: "26 September 2026". */
  readonly on: string;
  readonly venue: string;
  readonly entryCount: number;
  readonly ruleSet: string;
}

export interface EventsPageProps {
  readonly club: ClubFace;
  /** Today and later, the next first. */
  readonly ahead: readonly EventRow[];
  /** Before today, the latest first. */
  readonly past: readonly EventRow[];
  /** Who may not plan one is not offered it. */
  readonly mayPlan?: boolean;
}

export const sayEntries = (entries: number): string => {
  if (entries === 0) return "no entries yet";
  return entries === 1 ? "1 car entered" : `${entries} cars entered`;
};

/** The club's events: what is coming, then what was. */
export function EventsPage({ club, ahead, past, mayPlan = false }: EventsPageProps) {
  const total = ahead.length + past.length;
  return (
    <>
      <PageHead title="Events">
        {mayPlan ? <a href={newEventPath(club.slug)}>Plan an event</a> : null}
      </PageHead>
      <EventList club={club.slug} title="Coming" events={ahead} none="No event is coming up." />
      {past.length === 0 ? null : <EventList club={club.slug} title="Past" events={past} none="" />}
      <TitleBlock
        club={club.name}
        kind="List"
        title="Events"
        facts={[{ label: "Events", value: String(total) }]}
      />
    </>
  );
}

interface EventListProps {
  readonly club: string;
  readonly title: string;
  readonly events: readonly EventRow[];
  readonly none: string;
}

function EventList({ club, title, events, none }: EventListProps) {
  return (
    <section className="pb-8">
      <h2 className="border-ink border-t-2 pt-2 pb-1 text-head">{title}</h2>
      {events.length === 0 ? <p>{none}</p> : null}
      <ul>
        {events.map((event) => (
          <li
            key={event.slug}
            className="grid gap-x-8 border-hair border-b py-3 wide:grid-cols-[12rem_1fr_12rem] wide:items-baseline"
          >
            <p className="text-small text-soft wide:text-base">{event.on}</p>
            <div>
              <h3 className="text-lead">
                <a href={eventPath(club, event.slug)}>{event.name}</a>
              </h3>
              <p className="text-small text-soft">
                {event.venue}. Checked by {event.ruleSet}.
              </p>
            </div>
            <p className="text-small wide:text-right">{sayEntries(event.entryCount)}</p>
          </li>
        ))}
      </ul>
    </section>
  );
}
