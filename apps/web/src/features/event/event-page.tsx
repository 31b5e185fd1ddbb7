import type { DeviceLine } from "@trunnion/api";
import { LinkButton } from "../../components/button";
import { Caution } from "../../components/caution";
import { PageHead, SectionHead } from "../../components/page-head";
import type { ClubFace } from "../../components/shell/shell";
import { TitleBlock } from "../../components/shell/title-block";
import {
  changeEntryPath,
  changeEventPath,
  entryListPath,
  eventReportPath,
  eventsPath,
  newEntryPath,
  paddockPath,
} from "../../lib/path";
import { DropForm } from "../sheet-form/drop-form";
import { Devices } from "./device-list";
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
  readonly withdrawn?: readonly { readonly number: string; readonly car: string }[];
  /** Phones that took it along. */
  readonly devices?: readonly DeviceLine[];
}

/** One event: print the sheets, or look at who is entered. */
export function EventPage(props: EventPageProps) {
  const {
    club,
    event,
    entries,
    paper = "A4",
    mayPrint = true,
    cautions,
    devices = [],
    withdrawn = [],
  } = props;
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
        {withdrawn.length === 0 ? null : (
          <p className="pt-2 text-small">
            Withdrawn:{" "}
            {withdrawn.map(({ number, car }, at) => (
              <span key={number}>
                {at === 0 ? null : ", "}
                <a href={changeEntryPath(club.slug, event.slug, number)}>
                  number {number}
                  {car === "" ? null : `, ${car}`}
                </a>
              </span>
            ))}
          </p>
        )}
      </section>
      {entries.length === 0 || !mayPrint ? null : (
        <>
          <Report {...place} />
          <DropForm {...place} />
        </>
      )}
      <Devices devices={devices} />
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

function Report({ club, event }: { readonly club: string; readonly event: string }) {
  return (
    <section aria-labelledby="report" className="print:hidden pt-8">
      <SectionHead id="report" title="What became of it" />
      <p className="max-w-prose pb-1">
        Each car's decision, what was refused, advised or not looked at, and every figure measured.
      </p>
      <p className="flex flex-wrap gap-x-6">
        <a href={eventReportPath(club, event, "pdf")} className="inline-flex min-h-11 items-center">
          Report (PDF)
        </a>
        <a href={eventReportPath(club, event, "csv")} className="inline-flex min-h-11 items-center">
          Report (CSV)
        </a>
      </p>
    </section>
  );
}
