import type { CarForm, RowProvenance } from "@trunnion/api";
import { adviseOnNumber, carStatusWords, sayDay } from "@trunnion/register";
import type { ReactNode } from "react";
import { Notice } from "../../../components/notice";
import { PageHead, SectionHead } from "../../../components/page-head";
import { Plate } from "../../../components/plate";
import type { ClubFace } from "../../../components/shell/shell";
import { carPath, correctCarPath, editCarPath, editPartPath } from "../../../lib/path";
import { kindWords, standingWords, trustWords } from "./words";

interface RecordPageProps {
  readonly club: ClubFace;
  readonly car: CarForm;
}

interface Line {
  readonly key: string;
  readonly label: string;
  readonly value: ReactNode;
  readonly known?: RowProvenance;
  readonly href: string;
  /** What the link does, for who cannot see beside what it stands. */
  readonly correct: string;
}

interface PartSectionProps {
  readonly id: string;
  readonly title: string;
  readonly lines: readonly Line[];
  readonly add?: { readonly href: string; readonly label: string };
  readonly children?: ReactNode;
}

function sayKnown({ source, locus, trust }: RowProvenance): string {
  const where = [source, locus].filter((part) => part !== "").join(", ");
  return `${where === "" ? "no source given" : where} (${trustWords[trust]?.toLowerCase() ?? trust})`;
}

function PartSection({ id, title, lines, add, children }: PartSectionProps) {
  return (
    <section aria-labelledby={id}>
      <SectionHead id={id} title={title}>
        {add === undefined ? null : (
          <a href={add.href} className="inline-flex min-h-11 items-center">
            {add.label}
          </a>
        )}
      </SectionHead>
      {children}
      {lines.length === 0 ? <p className="text-soft">Nothing is recorded.</p> : null}
      <ul>
        {lines.map(({ key, label, value, known, href, correct }) => (
          <li
            key={key}
            className="grid grid-cols-[1fr_auto] items-baseline gap-x-6 border-hair border-b py-1.5 sm:grid-cols-[11rem_1fr_auto]"
          >
            <span className="col-span-2 text-small text-soft sm:col-span-1">{label}</span>
            <span className="min-w-0">
              {value === "" ? <span className="text-soft">not recorded</span> : value}
              {known === undefined ? null : (
                <span className="block text-fine text-soft">{sayKnown(known)}</span>
              )}
            </span>
            <a href={href} className="inline-flex min-h-11 items-center text-small">
              Correct<span className="sr-only"> {correct}</span>
            </a>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** A last day is kept as an ISO day, other ends as written. */
const sayEnd = (to: string) => (/^\d{4}-\d{2}-\d{2}$/.test(to) ? sayDay(to) : to);

const span = (from: string, to: string, open: string) =>
  from === "" && to === "" ? "" : ` (${from === "" ? "?" : from} to ${to === "" ? open : sayEnd(to)})`;

function linesOf({ club, car }: RecordPageProps) {
  const part = (name: string, query: Readonly<Record<string, string>> = {}) =>
    editPartPath(club.slug, car.reference, name, query);
  const facts = correctCarPath(club.slug, car.reference);
  return {
    part,
    filed: [
      {
        key: "chassis",
        label: "Chassis number",
        value: car.chassis,
        href: part("filed"),
        correct: "the number",
      },
      { key: "series", label: "Series", value: car.seriesName, href: part("filed"), correct: "the series" },
    ],
    facts: [
      { key: "built", label: "Built", value: car.built, href: facts, correct: "when it was built" },
      {
        key: "first",
        label: "First registered",
        value: car.firstRegistered,
        href: facts,
        correct: "when it was first registered",
      },
      { key: "remarks", label: "Remarks", value: car.remarks, href: facts, correct: "the remarks" },
    ],
    identities: car.identities.map((row) => ({
      key: row.id,
      label: kindWords[row.kind] ?? row.kind,
      value: `${row.number}${span(row.from, row.to, "now")}${row.standing === "accepted" ? "" : `, ${standingWords[row.standing]?.toLowerCase()}`}`,
      known: row,
      href: part("identity", { row: row.id }),
      correct: row.number,
    })),
    statuses: car.statuses.map((row) => ({
      key: row.id,
      label: row.to === "" ? "Now" : "Earlier",
      value: `${carStatusWords[row.status]}${span(row.from, row.to, "now")}`,
      known: row,
      href: part("status", { row: row.id }),
      correct: carStatusWords[row.status],
    })),
    keepers: car.keepers.map((row) => ({
      key: row.id,
      label: row.to === "" ? "Keeper" : "Earlier keeper",
      value: `${row.name}${span(row.from, row.to, "now")}${row.isMember ? ", member" : ""}`,
      known: row,
      href: part("keeper", { row: row.id }),
      correct: row.name,
    })),
    asBuilt: car.asBuilt.map((row) => ({
      key: row.id,
      label: row.side === "whole" ? row.label : `${row.label}, ${row.side}`,
      value: row.entered,
      known: row,
      href: part("as-built", { characteristic: row.characteristic }),
      correct: row.label,
    })),
    notes: car.notes.map((row) => ({
      key: row.id,
      label: row.on === "" ? "Date not known" : row.on,
      value: <span className="whitespace-pre-line">{row.text}</span>,
      known: row,
      href: part("note", { row: row.id }),
      correct: "this note",
    })),
  };
}

function NumberAdvice({ car }: Pick<RecordPageProps, "car">) {
  const { problem, proposals } = adviseOnNumber(
    car.chassis,
    car.allSeries,
    car.series === "" ? undefined : car.series,
  );
  if (problem === undefined) return null;
  const remedy =
    proposals.length === 0
      ? "Nothing near it fits either."
      : `Could be meant: ${proposals.map(({ number, because }) => `${number} (${because})`).join("; ")}.`;
  return (
    <div className="pb-3">
      <Notice tone="note" text={{ what: `${problem}.`, remedy }} />
    </div>
  );
}

/** A car's record row by row, each with the way to correct it. */
export function RecordPage({ club, car }: RecordPageProps) {
  const lines = linesOf({ club, car });
  const { part } = lines;
  const colours = ["body.colour", "body.trimColour"].map((key) => ({
    key,
    label: key === "body.colour" ? "Body colour" : "Trim colour",
    value: car.asBuilt.find((row) => row.characteristic === key)?.entered ?? "",
    href: part("as-built", { characteristic: key }),
    correct: key === "body.colour" ? "the body colour" : "the trim colour",
  }));
  const options = {
    key: "options",
    label: "Options",
    value: car.options.join(", "),
    href: part("option"),
    correct: "the options",
  };
  return (
    <>
      <PageHead
        title="The record"
        back={{ href: carPath(club.slug, car.reference), label: "The car" }}
        plate={<Plate chassis={car.chassis} />}
        lead={`Version ${car.version}`}
      />
      {car.mergedInto === undefined ? null : (
        <Notice
          tone="note"
          text={{
            what: `This record turned out to be of the same car as ${car.mergedInto}.`,
            remedy: "What is left here was on that record already.",
          }}
        >
          <a href={editCarPath(club.slug, car.mergedInto)}>Open the record of {car.mergedInto}</a>
        </Notice>
      )}
      <div className="grid max-w-4xl gap-10">
        <PartSection id="filed" title="Filed under" lines={lines.filed}>
          <NumberAdvice car={car} />
        </PartSection>
        <PartSection id="facts" title="Dates and remarks" lines={lines.facts} />
        <PartSection
          id="identity"
          title="Numbers and marks"
          lines={lines.identities}
          add={{ href: part("identity"), label: "Add a number or mark" }}
        />
        <PartSection
          id="status"
          title="Status"
          lines={lines.statuses}
          add={{ href: part("status"), label: "Add a status" }}
        />
        <PartSection id="option" title="Options and colours as built" lines={[options, ...colours]} />
        <PartSection
          id="keeper"
          title="Keepers"
          lines={lines.keepers}
          add={{ href: part("keeper"), label: "Add a keeper" }}
        />
        <PartSection
          id="as-built"
          title="As-built values"
          lines={lines.asBuilt}
          add={{ href: part("as-built"), label: "Add an as-built value" }}
        />
        <PartSection
          id="note"
          title="Notes of its history"
          lines={lines.notes}
          add={{ href: part("note"), label: "Add a note" }}
        />
      </div>
    </>
  );
}
