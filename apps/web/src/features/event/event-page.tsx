import { LinkButton } from "../../components/button";
import { Caution } from "../../components/caution";
import { PageHead, SectionHead } from "../../components/page-head";
import type { ClubFace } from "../../components/shell/shell";
import { TitleBlock } from "../../components/shell/title-block";
import { changeEventPath, entryListPath, eventsPath, newEntryPath, paddockPath } from "../../lib/path";
import { DropForm } from "../sheet-form/drop-form";
import { type EntryRow, EntryTable } from "./entry-table";
import type { EventRow } from "./events-page";
import { type Paper, PrintForm } from "./print-form";

export interface EventPageProps {
  readonly club: ClubFace;
  readonly event: EventRow;
  /** In running-number order, withdrawn ones left out. */
  readonly entries: readonly EntryRow[];
  /** Paper chosen first. */
  readonly paper?: Paper;
  /** Who may not print is offered nothing to print. */
  readonly mayPrint?: boolean;
  readonly cautions: readonly string[];
}

/** One event: print the sheets, or look at who is entered. */
export function EventPage({ club, event, entries, paper = "A4", mayPrint = true, cautions }: EventPageProps) {
  const place = { club: club.slug, event: event.slug };
  return (
    <>
      <PageHead
        title={event.name}
        back={{ href: eventsPath(club.slug), label: "Events" }}
        lead={
          <>
            <p>
              {event.on}, {event.venue}
            </p>
            <p className="text-small">Checked by {event.ruleSet}</p>
          </>
        }
      >
        {entries.length === 0 || !mayPrint ? null : (
          <div className="grid gap-4">
            <PrintForm {...place} sheets={entries.length} paper={paper} />
            <p>
              <LinkButton href={paddockPath(place.club, place.event)}>Take it into the paddock</LinkButton>
            </p>
          </div>
        )}
      </PageHead>
      <section aria-labelledby="entries">
        <SectionHead id="entries" title="Entries">
          <span className="text-small text-soft">in running-number order</span>
          {mayPrint ? (
            <nav aria-label="Entries" className="print:hidden flex flex-wrap gap-x-6 text-small">
              <a href={newEntryPath(club.slug, event.slug)}>Enter a car</a>
              <a href={entryListPath(club.slug, event.slug)}>Read in an entry list</a>
              <a href={changeEventPath(club.slug, event.slug)}>Change the event</a>
            </nav>
          ) : null}
        </SectionHead>
        {entries.length === 0 ? (
          <p className="max-w-prose">
            Nobody is entered yet, so there is no sheet to print. Enter cars first.
          </p>
        ) : (
          <EntryTable {...place} entries={entries} paper={paper} mayPrint={mayPrint} />
        )}
      </section>
      {entries.length === 0 || !mayPrint ? null : <DropForm {...place} />}
      <div className="pt-8">
        <Caution cautions={cautions} />
      </div>
      <TitleBlock
        club={club.name}
        kind="Event"
        title={event.name}
        facts={[
          { label: "On", value: event.on },
          { label: "Entries", value: String(entries.length) },
        ]}
        notes={["A sheet shows the record as it stood when it was printed."]}
      />
    </>
  );
}
